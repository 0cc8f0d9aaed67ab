import { type EntryTaxon, isSpecies, type RedListCategory } from '../visit/entry.ts';

/** IUCN Red List Categories and Criteria, version 3.1, second edition (2012): letters and words. */
export const CATEGORY_WORDS: Record<RedListCategory, string> = {
  EX: 'extinct',
  EW: 'extinct in the wild',
  CR: 'critically endangered',
  EN: 'endangered',
  VU: 'vulnerable',
  NT: 'near threatened',
  LC: 'least concern',
  DD: 'data deficient',
  NE: 'not evaluated',
};

const THREATENED: ReadonlySet<RedListCategory> = new Set(['CR', 'EN', 'VU']);

/**
 * The letters of a taxon's category, with a sign for threatened ones: meaning never hangs on colour. Only
 * species are evaluated; a genus, a pair and a hybrid have none.
 */
export function categoryLetters(
  taxon: Pick<EntryTaxon, 'redListCategory' | 'taxonRank' | 'identificationQualifier'>,
): string {
  const category = taxon.redListCategory;
  if (category === 'NE' && !isSpecies(taxon)) return '';
  return isThreatened(category) ? `${category} !` : category;
}

/** Threatened is CR, EN and VU only; data deficient is no category of threat (IUCN 2012, part II). */
export function isThreatened(category: RedListCategory): boolean {
  return THREATENED.has(category);
}
