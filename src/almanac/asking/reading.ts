import { plainWords } from '../../taxa/names.ts';
import { fixedPart, MOST_WORDS } from './fixed-words.ts';
import { type Named, type NamesKnown, placeWholly, starting, wholly } from './names-known.ts';
import type { Part } from './query.ts';

/** The taxa that words mean by the species lists, surest first; empty where they mean none. */
export type TaxonSearch = (words: string) => readonly Named[];

/** Words in the order typed, with what each run was taken for, and what else it could have been. */
export interface Read {
  parts: Part[];
  notes: string[];
}

/** A run of words not yet taken for anything, or a part. */
type Piece = string[] | Part;
type Taking = (words: readonly string[]) => Part | null;

/**
 * Takes words for what they most surely mean, the longest run first: whole names of two words and
 * more (so that the place May Hill is no month); months, years, categories and groups; names that the
 * notebook knows, taxa before places; words that stand in a description; what the species lists know,
 * by codes, initials and in spite of slips. What is left over is looked for as a word.
 */
export function readWords(text: string, known: NamesKnown, search: TaxonSearch): Read {
  const notes: string[] = [];
  const takings: [most: number, taking: Taking][] = [
    [Number.POSITIVE_INFINITY, (words) => (words.length < 2 ? null : whole(words, known))],
    [MOST_WORDS, (words) => fixedPart(words.join(' '))],
    [Number.POSITIVE_INFINITY, (words) => groupPart(words, known)],
    [Number.POSITIVE_INFINITY, (words) => whole(words, known) ?? nameIn(words, known, notes)],
    [1, ([word = '']) => (isDescribed(word, known) ? { kind: 'word', said: word } : null)],
    [Number.POSITIVE_INFINITY, (words) => listed(words.join(' '), search)],
    [1, ([word = '']) => ({ kind: 'word', said: word })],
  ];
  const typed = text.split(/[\s,;]+/).filter((word) => plainWords(word).length > 0);
  let pieces: Piece[] = [typed];
  for (const [most, taking] of takings)
    pieces = pieces.flatMap((piece) =>
      Array.isArray(piece) ? taken(piece, most, taking) : [piece],
    );
  return { parts: pieces.flatMap((piece) => (Array.isArray(piece) ? [] : piece)), notes };
}

/** A run cut at what `taking` takes of it, the longest part first. */
function taken(words: string[], most: number, taking: Taking): Piece[] {
  for (let length = Math.min(most, words.length); length > 0; length -= 1)
    for (let from = 0; from + length <= words.length; from += 1) {
      const part = taking(words.slice(from, from + length));
      if (part === null) continue;
      return [
        ...taken(words.slice(0, from), length, taking),
        part,
        ...taken(words.slice(from + length), length, taking),
      ];
    }
  return words.length === 0 ? [] : [words];
}

function whole(words: readonly string[], known: NamesKnown): Part | null {
  const said = words.join(' ');
  const places = placeWholly(known.places, said);
  if (places.length > 0) return namedPart('place', said, places);
  return namedPart('taxa', said, wholly(known.taxa, plainWords(said)));
}

function nameIn(words: readonly string[], known: NamesKnown, notes: string[]): Part | null {
  const said = words.join(' ');
  const plain = plainWords(said);
  const taxa = starting(known.taxa, plain);
  const places = starting(known.places, plain);
  const [place] = places;
  if (taxa.length > 0 && place)
    notes.push(`"${said}" was taken for a species: type ${place.name} whole for the place.`);
  return namedPart('taxa', said, taxa) ?? namedPart('place', said, places);
}

function groupPart(words: readonly string[], known: NamesKnown): Part | null {
  const said = words.join(' ');
  const [group] = wholly(known.groups, plainWords(said));
  return group ? { kind: 'group', said, group: group.key } : null;
}

function listed(said: string, search: TaxonSearch): Part | null {
  return namedPart('taxa', said, search(said));
}

function namedPart(kind: 'taxa' | 'place', said: string, found: readonly Named[]): Part | null {
  if (found.length === 0) return null;
  return { kind, said, keys: found.map(({ key }) => key), names: found.map(({ name }) => name) };
}

function isDescribed(word: string, { described }: NamesKnown): boolean {
  return plainWords(word).every((each) => described.has(each));
}
