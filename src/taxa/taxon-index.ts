import { fourLetterCode, initialsOf, lettersOf, plainWords } from './names.ts';
import type { Taxon } from './taxon.ts';

/** Which of a taxon's names matched. */
type NameKind = 'vernacular' | 'other' | 'scientific' | 'older';

/** A name made ready for the search. */
export interface IndexedName {
  taxon: Taxon;
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

/** A word with all names that have it, so that slips in it are counted once for all of them. */
interface IndexedWord {
  text: string;
  names: IndexedName[];
}

/**
 * Everything that a search reads: the names of the lists in use, made ready once. The letters of names
 * and words (`lettersOf`) stand in lists of their own: most names are ruled out without a look at them.
 */
export interface TaxonIndex {
  names: readonly IndexedName[];
  nameLetters: Int32Array;
  words: readonly IndexedWord[];
  wordLetters: Int32Array;
}

/** Makes the taxa of the lists in use ready for the search. */
export function indexTaxa(taxa: readonly Taxon[]): TaxonIndex {
  const names = taxa.flatMap(namesOf);
  const byText = new Map<string, IndexedWord>();
  for (const name of names)
    for (const text of new Set(name.words)) {
      const word = byText.get(text) ?? { text, names: [] };
      byText.set(text, word);
      word.names.push(name);
    }
  const words = [...byText.values()];
  return {
    names,
    nameLetters: Int32Array.from(names, (name) => lettersOf(name.joined)),
    words,
    wordLetters: Int32Array.from(words, (word) => lettersOf(word.text)),
  };
}

function namesOf(taxon: Taxon): IndexedName[] {
  const ready = (kind: NameKind) => (text: string) => indexed(taxon, text, kind);
  return [
    ...(taxon.vernacularName === null ? [] : [taxon.vernacularName]).map(ready('vernacular')),
    ...taxon.otherEnglishNames.map(ready('other')),
    ...[taxon.scientificName].map(ready('scientific')),
    ...taxon.olderScientificNames.map(ready('older')),
  ];
}

function indexed(taxon: Taxon, text: string, kind: NameKind): IndexedName {
  const words = plainWords(text);
  const english = kind === 'vernacular' || kind === 'other';
  return {
    taxon,
    text,
    kind,
    words,
    joined: words.join(''),
    initials: english ? initialsOf(words) : '',
    code: english ? fourLetterCode(text).toLowerCase() : '',
  };
}
