import type { RedListCategory } from '../visit/entry.ts';

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

/** The letters of a category, with a sign for threatened ones: meaning never hangs on colour. */
export function categoryLetters(category: RedListCategory): string {
  return isThreatened(category) ? `${category} !` : category;
}

/** Threatened is CR, EN and VU only; data deficient is no category of threat (IUCN 2012, part II). */
export function isThreatened(category: RedListCategory): boolean {
  return THREATENED.has(category);
}
