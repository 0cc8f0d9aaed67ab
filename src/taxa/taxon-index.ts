import { isOfSeveral, isSpecies } from '../visit/entry.ts';
import { fourLetterCode, initialsOf, lettersOf, otherSpelling, plainWords } from './names.ts';
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
  /** Of a species, of a genus or family whose species was not named, or of a pair or hybrid. */
  of: 'species' | 'group' | 'several';
  /** Empty for scientific names, and for what is no species, which nobody abbreviates so. */
  initials: string;
  /** Small letters; empty like the initials. */
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
  // `gra` must find a Grey Heron as it finds a Gray Wolf, so both spellings are names.
  const spelt = (kind: NameKind) => (text: string) => {
    const other = otherSpelling(text);
    const name = indexed(taxon, text, kind);
    return other === text ? [name] : [name, { ...indexed(taxon, other, kind), text }];
  };
  const ready = (kind: NameKind) => (text: string) => indexed(taxon, text, kind);
  return [
    ...(taxon.vernacularName === null ? [] : [taxon.vernacularName]).flatMap(spelt('vernacular')),
    ...taxon.otherEnglishNames.flatMap(spelt('other')),
    // A genus is no name of the pairs and hybrids within it.
    ...(isOfSeveral(taxon) ? [] : [taxon.scientificName]).map(ready('scientific')),
    ...taxon.olderScientificNames.map(ready('older')),
  ];
}

function indexed(taxon: Taxon, text: string, kind: NameKind): IndexedName {
  const words = plainWords(text);
  const of = whatOf(taxon);
  const short = of === 'species' && (kind === 'vernacular' || kind === 'other');
  return {
    of,
    taxon,
    text,
    kind,
    words,
    joined: words.join(''),
    initials: short ? initialsOf(words) : '',
    code: short ? fourLetterCode(text, words).toLowerCase() : '',
  };
}

function whatOf(taxon: Taxon): IndexedName['of'] {
  if (isOfSeveral(taxon)) return 'several';
  return isSpecies(taxon) ? 'species' : 'group';
}
