import type { IndexedName, IndexedTaxon } from './taxon-index.ts';

/** How a query fits a taxon: the best of its names, and how well, from 0 to 120. */
export interface Match {
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
  wordsInOrder: 80,
  initials: 80,
  runTogether: 78,
  wordsAnyOrder: 76,
  codeStart: 62,
  initialsStart: 58,
} as const;

/** What a name of another kind than the first English name loses. */
const KIND_LOSS = { vernacular: 0, other: 3, scientific: 4, older: 6 } as const;
/** What a completely typed word adds; part of it for part of the word. */
const WHOLE_WORD = 6;

/** The best fit of a query (plain words) among a taxon's names, or null. */
export function matchTaxon(query: readonly string[], indexed: IndexedTaxon): Match | null {
  let best: Match | null = null;
  for (const name of indexed.names) {
    const score = matchName(query, name);
    if (score !== null && (best === null || score > best.score)) best = { score, name };
  }
  return best;
}

function matchName(query: readonly string[], name: IndexedName): number | null {
  const joined = query.join('');
  const loss = KIND_LOSS[name.kind];
  if (joined === name.joined) return FIT.wholeName - loss;
  const only = query.length === 1 ? joined : null;
  const fits = [
    wordFit(query, name.words),
    only !== null && only.length === 4 && name.code === only ? FIT.code : null,
    only !== null && only.length > 1 && name.initials === only ? FIT.initials : null,
    joined.length > 3 && name.joined.startsWith(joined) ? FIT.runTogether : null,
    only !== null && only.length === 3 && name.code.startsWith(only) ? FIT.codeStart : null,
    only !== null && only.length > 1 && name.initials.startsWith(only) ? FIT.initialsStart : null,
  ].filter((fit) => fit !== null);
  return fits.length === 0 ? null : Math.max(...fits) - loss;
}

/**
 * Each query word must start a word of its own, or be the initials of a run of words (`bh gull`).
 * Words that follow the name's order, from its first word on, fit best.
 */
function wordFit(query: readonly string[], words: readonly string[]): number | null {
  const inOrder = place(query, words, true);
  if (inOrder) {
    const base = inOrder.first === 0 ? FIT.wordsFromFirst : FIT.wordsInOrder;
    return base + WHOLE_WORD * inOrder.typed;
  }
  if (query.length < 2) return null;
  // Longest first, so that a single letter does not take the word that a longer part needs.
  const anyOrder = place(
    [...query].sort((one, two) => two.length - one.length),
    words,
    false,
  );
  return anyOrder ? FIT.wordsAnyOrder + WHOLE_WORD * anyOrder.typed : null;
}

interface Placed {
  first: number;
  /** Mean share of each placed word that was typed, 0 to 1. */
  typed: number;
}

function place(
  query: readonly string[],
  words: readonly string[],
  ordered: boolean,
): Placed | null {
  const taken = new Set<number>();
  let from = 0;
  let typed = 0;
  let first = words.length;
  for (const part of query) {
    const at = words.findIndex(
      (word, index) => index >= from && !taken.has(index) && word.startsWith(part),
    );
    const run = at === -1 ? initialsRun(part, words, from, taken) : null;
    if (at === -1 && run === null) return null;
    const start = run ?? at;
    const end = run === null ? at + 1 : run + part.length;
    for (let index = start; index < end; index += 1) taken.add(index);
    typed += run === null ? part.length / (words[at]?.length ?? 1) : 0.5;
    first = Math.min(first, start);
    if (ordered) from = end;
  }
  return { first, typed: typed / query.length };
}

function initialsRun(
  part: string,
  words: readonly string[],
  from: number,
  taken: ReadonlySet<number>,
): number | null {
  if (part.length < 2 || part.length >= words.length) return null;
  for (let start = from; start + part.length <= words.length; start += 1) {
    const fits = [...part].every((letter, index) => {
      const word = words[start + index];
      return !taken.has(start + index) && word?.startsWith(letter) === true;
    });
    if (fits) return start;
  }
  return null;
}
