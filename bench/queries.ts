import { fourLetterCode, initialsOf, plainWords } from '../src/taxa/names.ts';
import type { Taxon } from '../src/taxa/taxon.ts';

/** Longest stretch of a single word, and of each of two words, that is tried. */
const LONGEST = { alone: 8, paired: 4 } as const;

/** Every name of a taxon, the English name first. */
export function namesOf(taxon: Taxon): string[] {
  return [
    ...(taxon.vernacularName === null ? [] : [taxon.vernacularName]),
    ...taxon.otherEnglishNames,
    taxon.scientificName,
    ...taxon.olderScientificNames,
  ];
}

/**
 * What an observer might type for a taxon, shortest first: starts of any word of any of its names,
 * of two words, of the name run together, of its initials and its four-letter code.
 */
export function queriesFor(taxon: Taxon): string[] {
  const queries = namesOf(taxon).flatMap(queriesOf);
  return [...new Set(queries)].toSorted((one, two) => one.length - two.length);
}

function queriesOf(name: string): string[] {
  const words = plainWords(name);
  return [
    ...words.flatMap((word) => starts(word, LONGEST.alone)),
    ...words.flatMap((one, place) =>
      words.flatMap((two, other) => (place === other ? [] : pairs(one, two))),
    ),
    ...starts(words.join(''), LONGEST.alone),
    ...starts(initialsOf(words), LONGEST.alone),
    ...starts(fourLetterCode(name).toLowerCase(), LONGEST.alone),
  ];
}

function starts(word: string, longest: number): string[] {
  return Array.from({ length: Math.min(word.length, longest) }, (_, last) =>
    word.slice(0, last + 1),
  );
}

function pairs(one: string, two: string): string[] {
  return starts(one, LONGEST.paired).flatMap((first) =>
    starts(two, LONGEST.paired).map((second) => `${first} ${second}`),
  );
}

/** The starts of the English name as it is said, shortest first. */
export function startsOf(taxon: Taxon): string[] {
  const name = (taxon.vernacularName ?? taxon.scientificName).toLowerCase();
  return starts(name, name.length).filter((start) => !start.endsWith(' '));
}
