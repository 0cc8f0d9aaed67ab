import { type Occasion, priorFor } from '../../taxa/expected.ts';
import type { Known } from '../../taxa/known.ts';
import type { Taxon } from '../../taxa/taxon.ts';
import type { TaxonIndex } from '../../taxa/taxon-index.ts';
import { isSpecies, taxonKey } from '../../visit/entry.ts';

/** A species to look for, and what the notebook has of it. */
export interface Likely {
  taxon: Taxon;
  /** From 0 to 20: what the search expects of it here and now. */
  expected: number;
  /** Visits on record with it, anywhere and here. */
  visits: number;
  visitsHere: number;
}

/** The species of the lists in use that are most expected on an occasion, as the search expects them. */
export function likelyHere(
  index: TaxonIndex,
  known: Known,
  occasion: Occasion,
  limit: number,
): Likely[] {
  const expected = priorFor(index, known, occasion);
  const taxa = new Map(index.names.map(({ taxon }) => [taxonKey(taxon), taxon]));
  return [...taxa]
    .filter(([, taxon]) => isSpecies(taxon))
    .map(([key, taxon]) => {
      const met = known.taxa.get(key);
      const here = occasion.place === null ? undefined : met?.here.get(occasion.place);
      return {
        taxon,
        expected: expected(taxon),
        visits: met?.visits ?? 0,
        visitsHere: here?.visits ?? 0,
      };
    })
    .sort(
      (one, two) =>
        two.expected - one.expected ||
        (one.taxon.scientificName < two.taxon.scientificName ? -1 : 1),
    )
    .slice(0, limit);
}
