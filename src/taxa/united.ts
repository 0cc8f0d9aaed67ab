import { taxonKey } from '../visit/entry.ts';
import { sensitivityOf } from './sensitivity.ts';
import type { SpeciesList } from './species-list.ts';
import { SENSITIVITIES, type Taxon } from './taxon.ts';

const STRENGTHS = [null, ...SENSITIVITIES] as const;

/**
 * The taxa of several lists, each once. A taxon of several lists stands as in the first, with the names
 * of all; what the first does not say is taken from the next, and the strongest sensitivity holds, also
 * the one for its category: a list of one's own must not uncover a place.
 */
export function unitedTaxa(lists: readonly SpeciesList[]): Taxon[] {
  const [only, ...others] = lists;
  if (only && others.length === 0) return only.taxa;
  const byKey = new Map<string, Taxon>();
  for (const taxon of lists.flatMap((list) => list.taxa)) {
    const key = taxonKey(taxon);
    const first = byKey.get(key);
    byKey.set(key, first ? united(first, taxon) : taxon);
  }
  return [...byKey.values()];
}

function united(first: Taxon, next: Taxon): Taxon {
  const evaluated = first.redListCategory === 'NE' ? next : first;
  const vernacularName = first.vernacularName ?? next.vernacularName;
  const names = [...first.otherEnglishNames, ...english(next)];
  return {
    ...next,
    ...first,
    vernacularName,
    otherEnglishNames: [...new Set(names)].filter((name) => name !== vernacularName),
    olderScientificNames: [
      ...new Set([...first.olderScientificNames, ...next.olderScientificNames]),
    ],
    kingdom: first.kingdom || next.kingdom,
    class: first.class || next.class,
    order: first.order || next.order,
    family: first.family || next.family,
    establishmentMeans: first.establishmentMeans ?? next.establishmentMeans,
    redListCategory: evaluated.redListCategory,
    redListSource: evaluated.redListSource,
    // One by one is also what a list means that says nothing.
    countedSingly: first.countedSingly && next.countedSingly,
    frequency: first.frequency ?? next.frequency,
    sensitivity: stronger(sensitivityOf(first), sensitivityOf(next)),
    ...(first.namesIn || next.namesIn ? { namesIn: { ...next.namesIn, ...first.namesIn } } : {}),
  };
}

function english({ vernacularName, otherEnglishNames }: Taxon): string[] {
  return [...(vernacularName === null ? [] : [vernacularName]), ...otherEnglishNames];
}

function stronger(one: Taxon['sensitivity'], two: Taxon['sensitivity']): Taxon['sensitivity'] {
  return STRENGTHS[Math.max(STRENGTHS.indexOf(one), STRENGTHS.indexOf(two))] ?? null;
}
