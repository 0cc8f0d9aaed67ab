import * as z from 'zod';
import { type EntryTaxon, RedListCategory } from '../visit/entry.ts';

const names = z.string().transform((text) =>
  text
    .split('|')
    .map((name) => name.trim())
    .filter((name) => name !== ''),
);
const orNull = z.string().transform((text) => (text === '' ? null : text));

/**
 * One row of a species list. Columns are named by Darwin Core where it has a term; several names
 * in one cell are separated by ` | `, as Darwin Core recommends for lists.
 */
export const TaxonRow = z.object({
  scientificName: z.string().min(1),
  vernacularName: orNull,
  otherEnglishNames: names,
  olderScientificNames: names,
  taxonRank: z.string().min(1),
  kingdom: z.string().min(1),
  class: z.string(),
  order: z.string(),
  family: z.string(),
  establishmentMeans: z.string(),
  redListCategory: RedListCategory,
  redListSource: orNull,
  /** Whether people count these one by one (birds) or only note that they are there (plants). */
  countedSingly: z.enum(['true', 'false']).transform((text) => text === 'true'),
  /** How often it is met in the region: 1 common, 2 fairly common, 3 scarce, 4 rare. */
  frequency: z.coerce.number().int().min(1).max(4),
  /** How strongly its places are to be hidden in what is given out. */
  sensitivity: z
    .enum(['', 'low', 'medium', 'high', 'extreme'])
    .transform((level) => (level === '' ? null : level)),
});

export type TaxonRow = z.infer<typeof TaxonRow>;

/** A taxon of a species list. */
export type Taxon = TaxonRow & { list: string };

/** What an entry keeps of a taxon. */
export function entryTaxon(taxon: Taxon): EntryTaxon {
  const {
    scientificName,
    vernacularName,
    taxonRank,
    redListCategory,
    redListSource,
    sensitivity,
    list,
  } = taxon;
  return {
    scientificName,
    vernacularName,
    taxonRank,
    redListCategory,
    redListSource,
    sensitivity,
    list,
  };
}
