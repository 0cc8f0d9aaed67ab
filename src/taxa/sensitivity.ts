import type { EntryTaxon } from '../visit/entry.ts';
import { isThreatened } from './red-list.ts';

type Level = NonNullable<EntryTaxon['sensitivity']>;

const LEVELS: readonly Level[] = ['low', 'medium', 'high', 'extreme'];

/**
 * How strongly the places of a taxon are hidden in what is given out; null for not at all. It is what the
 * species list says, at least high for critically endangered and endangered taxa and medium for
 * vulnerable ones, which is the project's own choice. Where people brought a taxon its global category
 * is no reason: the rabbit is endangered, but in Spain and Portugal.
 */
export function sensitivityOf({
  sensitivity,
  redListCategory,
  establishmentMeans,
}: Pick<EntryTaxon, 'sensitivity' | 'redListCategory' | 'establishmentMeans'>): Level | null {
  const brought = establishmentMeans === 'introduced';
  if (brought || !isThreatened(redListCategory)) return sensitivity;
  const least = redListCategory === 'VU' ? 'medium' : 'high';
  return sensitivity !== null && LEVELS.indexOf(sensitivity) > LEVELS.indexOf(least)
    ? sensitivity
    : least;
}
