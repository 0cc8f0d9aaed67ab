import { lettersOf, plainWords } from './names.ts';
import type { IndexedName } from './taxon-index.ts';

/** Words that are looked for, made ready as names are. */
export interface Query {
  words: readonly string[];
  /** The words longest first, so that a single letter does not take the word that a longer part needs. */
  byLength: readonly string[];
  joined: string;
  letters: number;
}

export function queryOf(text: string): Query {
  const words = plainWords(text);
  const joined = words.join('');
  const byLength = words.toSorted((one, two) => two.length - one.length);
  return { words, byLength, joined, letters: lettersOf(joined) };
}

/** `named`: as typed; `near`: but for a slip or two; `loose`: a guess that is never taken by itself. */
export type How = 'named' | 'near' | 'loose';

/** A name that a query fits, and how well, from 0 to 120. */
export interface Match {
  how: How;
  score: number;
  name: IndexedName;
}

/**
 * The scale of fits, best first. Names typed in full stand clear of everything (no prior lifts
 * another species over them); the rest lie so close together that the season decides between them.
 */
const FIT = {
  wholeName: 120,
  code: 92,
  wordsFromFirst: 84,
  wordsInOrder: 81,
  initials: 80,
  runTogether: 78,
  wordsAnyOrder: 76,
  initialsStart: 74,
  startsRunTogether: 64,
} as const;

/** What a name of another kind than the first English name loses, typed in full and in part. */
const WHOLE_LOSS = { vernacular: 0, other: 3, scientific: 5, older: 6 } as const;
const KIND_LOSS = { vernacular: 0, other: 8, scientific: 6, older: 9 } as const;
/**
 * What a name loses that is of no one species: `tuf` is Tufted Duck before Tufted Duck/Scaup. A group
 * whose words are typed in full loses nothing: `bat` may well mean a bat whose species was not named.
 */
const VAGUE_LOSS = 30;
/**
 * What whole words add (`sparrow` is House Sparrow before Sparrowhawk), and, in proportion, what is
 * typed of the whole name (`gre` is Great Tit before longer names that are as common).
 */
const WHOLE_WORDS = 3.5;
const WHOLE_NAME = 4;
/** Shortest text that is tried as run together from starts of words: less fits by chance. */
const LEAST_RUN = 4;
const CODE_LENGTH = 4;

/** How well a query fits a name as typed; null where it does not. */
export function fitOf(query: Query, name: IndexedName): number | null {
  const { joined } = query;
  // A genus in full may well be the start of one of its species.
  const genus = name.of === 'group' && name.kind === 'scientific';
  if (joined === name.joined && !genus) return FIT.wholeName - WHOLE_LOSS[name.kind];
  const fit = Math.max(
    wordFit(query, name.words),
    name.of === 'species' ? runTogetherFit(query, name) : 0,
  );
  if (fit === 0) return null;
  const whole = (WHOLE_NAME * joined.length) / name.joined.length;
  return fit + whole - KIND_LOSS[name.kind] - vagueLoss(query, name);
}

function vagueLoss({ words }: Query, name: IndexedName): number {
  if (name.of === 'species') return 0;
  const inFull = name.of === 'group' && words.every((word) => name.words.includes(word));
  return inFull ? 0 : VAGUE_LOSS;
}

/** One word for several: a code, initials, or starts of words run together (`btit`, `goldenpl`). */
function runTogetherFit({ words, joined }: Query, name: IndexedName): number {
  if (joined.length === CODE_LENGTH && name.code === joined) return FIT.code;
  if (joined.length >= LEAST_RUN && name.joined.startsWith(joined)) return FIT.runTogether;
  if (words.length > 1 || joined.length < 2) return 0;
  if (name.initials === joined) return FIT.initials;
  if (name.kind !== 'vernacular') return 0;
  const starts =
    joined.length < LEAST_RUN
      ? joined.length === CODE_LENGTH - 1 && name.code.startsWith(joined)
      : startsRunTogether(joined, name.words);
  return starts ? FIT.startsRunTogether : 0;
}

/** Is the text made of starts of consecutive words, from the name's first on, none left out? */
function startsRunTogether(text: string, words: readonly string[], at = 0): boolean {
  if (text === '') return true;
  const word = words[at];
  if (word === undefined) return false;
  for (let taken = 1; taken <= text.length && text[taken - 1] === word[taken - 1]; taken += 1)
    if (startsRunTogether(text.slice(taken), words, at + 1)) return true;
  return false;
}

/**
 * Each query word must start a word of its own, or be the initials of a run of words (`bh gull`).
 * Words that follow the name's order, from its first word on, fit best.
 */
function wordFit(query: Query, words: readonly string[]): number {
  const [only = ''] = query.words;
  if (query.words.length === 1) return oneWordFit(only, words);
  const inOrder = placed(query.words, words, true);
  if (inOrder?.initialsOnly === true) return FIT.initialsStart;
  if (inOrder)
    return (
      (inOrder.first === 0 ? FIT.wordsFromFirst : FIT.wordsInOrder) + WHOLE_WORDS * inOrder.whole
    );
  if (query.words.length < 2) return 0;
  const anyOrder = placed(query.byLength, words, false);
  return anyOrder ? FIT.wordsAnyOrder + WHOLE_WORDS * anyOrder.whole : 0;
}

/** The same for a single word, without more ado: a letter is tried on every name of the lists. */
function oneWordFit(part: string, words: readonly string[]): number {
  const at = words.findIndex((word) => word.startsWith(part));
  if (at !== -1)
    return (
      (at === 0 ? FIT.wordsFromFirst : FIT.wordsInOrder) + (words[at] === part ? WHOLE_WORDS : 0)
    );
  if (part.length < 2 || part.length >= words.length) return 0;
  return initialsRun(
    part,
    words,
    words.map(() => true),
    0,
  ) === -1
    ? 0
    : FIT.initialsStart;
}

interface Placed {
  /** Place of the first word that was taken. */
  first: number;
  /** Share of the query's words that are whole words of the name, 0 to 1. */
  whole: number;
  /** No word is spelled out: all are initials of runs. */
  initialsOnly: boolean;
}

function placed(
  query: readonly string[],
  words: readonly string[],
  ordered: boolean,
): Placed | null {
  const free = words.map(() => true);
  let from = 0;
  let whole = 0;
  let first = words.length;
  let initialsOnly = true;
  for (const part of query) {
    const at = words.findIndex(
      (word, index) => index >= from && free[index] && word.startsWith(part),
    );
    const start = at === -1 ? initialsRun(part, words, free, from) : at;
    if (start === -1) return null;
    if (at !== -1) initialsOnly = false;
    if (words[at] === part) whole += 1;
    const end = at === -1 ? start + part.length : at + 1;
    free.fill(false, start, end);
    first = Math.min(first, start);
    if (ordered) from = end;
  }
  return { first, whole: whole / query.length, initialsOnly };
}

/** Where a run of free words starts whose initials are the part; -1 for none. */
function initialsRun(
  part: string,
  words: readonly string[],
  free: readonly boolean[],
  from: number,
): number {
  if (part.length < 2 || part.length >= words.length) return -1;
  for (let start = from; start + part.length <= words.length; start += 1) {
    const fits = [...part].every(
      (letter, index) => free[start + index] && words[start + index]?.startsWith(letter) === true,
    );
    if (fits) return start;
  }
  return -1;
}
