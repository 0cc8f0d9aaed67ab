import { isThreatened } from '../../taxa/red-list.ts';
import { type EntryTaxon, isSpecies, taxonName } from '../../visit/entry.ts';
import type { VisitDigest } from './digest.ts';

/** One taxon of a list of those on record. */
export interface TaxonSeen {
  key: string;
  name: string;
  /** As in its latest record. */
  taxon: EntryTaxon;
  visits: number;
  first: string;
  last: string;
}

/** The taxa on record in visits in the order of time, those in most visits first. */
export function taxaSeen(visits: readonly VisitDigest[]): TaxonSeen[] {
  const taxa = new Map<string, TaxonSeen>();
  for (const { date, seen } of visits)
    for (const { key, taxon } of seen) {
      const so = taxa.get(key);
      taxa.set(key, {
        key,
        name: taxonName(taxon),
        taxon,
        visits: (so?.visits ?? 0) + 1,
        first: so?.first ?? date,
        last: date,
      });
    }
  return [...taxa.values()].sort(
    (one, two) => two.visits - one.visits || (one.key < two.key ? -1 : 1),
  );
}

/** The threatened taxa on record (CR, EN, VU, by the list of their latest record). */
export function threatenedSeen(visits: readonly VisitDigest[]): TaxonSeen[] {
  return taxaSeen(visits).filter(({ taxon }) => isThreatened(taxon.redListCategory));
}

/** How many species are on record; a genus, a pair and a hybrid are none. */
export function speciesCount(seen: readonly Pick<TaxonSeen, 'taxon'>[]): number {
  return seen.filter(({ taxon }) => isSpecies(taxon)).length;
}
