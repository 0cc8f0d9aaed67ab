import { fourLetterCode, initialsOf, plainWords } from './names.ts';
import type { Taxon } from './taxon.ts';

/** Which of a taxon's names matched. */
export type NameKind = 'vernacular' | 'other' | 'scientific' | 'older';

/** A name made ready for the search. */
export interface IndexedName {
  text: string;
  kind: NameKind;
  words: readonly string[];
  /** All words run together, for `woodpigeon` and `wood pigeon` alike. */
  joined: string;
  /** Empty for scientific names, which nobody abbreviates so. */
  initials: string;
  /** Small letters; empty for scientific names. */
  code: string;
}

export interface IndexedTaxon {
  taxon: Taxon;
  names: readonly IndexedName[];
}

/** Everything that a search reads: the taxa of the lists in use, made ready once. */
export interface TaxonIndex {
  taxa: readonly IndexedTaxon[];
}

/** Makes the taxa of the lists in use ready for the search. */
export function indexTaxa(taxa: readonly Taxon[]): TaxonIndex {
  return { taxa: taxa.map((taxon) => ({ taxon, names: namesOf(taxon) })) };
}

function namesOf(taxon: Taxon): IndexedName[] {
  return [
    ...(taxon.vernacularName === null ? [] : [indexed(taxon.vernacularName, 'vernacular')]),
    ...taxon.otherEnglishNames.map((name) => indexed(name, 'other')),
    indexed(taxon.scientificName, 'scientific'),
    ...taxon.olderScientificNames.map((name) => indexed(name, 'older')),
  ];
}

function indexed(text: string, kind: NameKind): IndexedName {
  const words = plainWords(text);
  const english = kind === 'vernacular' || kind === 'other';
  return {
    text,
    kind,
    words,
    joined: words.join(''),
    initials: english ? initialsOf(words) : '',
    code: english ? fourLetterCode(text).toLowerCase() : '',
  };
}
