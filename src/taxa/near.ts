import Fuse from 'fuse.js';
import type { Match } from './match.ts';
import type { IndexedName, IndexedTaxon, TaxonIndex } from './taxon-index.ts';

/** Fits of misspelt names lie under every fit of a name as typed. */
const NEAR = { oneSlip: 46, eachFurther: 6, loose: 20 } as const;
/** How many candidates fuse.js is given: it costs some 3 ms a thousand names. */
const LOOSE_CANDIDATES = 200;

/** Slips that a word of this length may hold: none below 4 letters, 1 to 6 letters, then 2. */
function slipsAllowed(length: number): number {
  if (length < 4) return 0;
  return length < 7 ? 1 : 2;
}

/**
 * Taxa whose name words start with the query's words but for a few slips: a letter wrong, missing,
 * too many, or two swapped. At least one word of the query must be long enough to hold a slip.
 */
export function nearMatches(query: readonly string[], index: TaxonIndex): [IndexedTaxon, Match][] {
  return index.taxa.flatMap((indexed): [IndexedTaxon, Match][] => {
    let best: Match | null = null;
    for (const name of indexed.names) {
      const slips = slipsIn(query, name);
      if (slips === null) continue;
      const score =
        NEAR.oneSlip - NEAR.eachFurther * (slips - 1) - (name.kind === 'vernacular' ? 0 : 2);
      if (best === null || score > best.score) best = { score, name };
    }
    return best === null ? [] : [[indexed, best]];
  });
}

function slipsIn(query: readonly string[], name: IndexedName): number | null {
  let slips = 0;
  for (const part of query) {
    const allowed = slipsAllowed(part.length);
    const least = Math.min(
      ...name.words.map((word) => prefixSlips(part, word, allowed)),
      Number.POSITIVE_INFINITY,
    );
    if (least > allowed) return null;
    slips += least;
  }
  return slips;
}

/** Least edit distance from `part` to any start of `word`; more than `allowed` as soon as that is sure. */
function prefixSlips(part: string, word: string, allowed: number): number {
  if (word.startsWith(part)) return 0;
  if (allowed === 0 || word.length < part.length - allowed) return allowed + 1;
  // Most slips leave one of the first two letters in place; the loose step finds the others.
  if (word[0] !== part[0] && word[0] !== part[1] && word[1] !== part[0] && word[1] !== part[1])
    return allowed + 1;
  const longest = Math.min(word.length, part.length + allowed);
  return Math.min(...lastRow(part, word.slice(0, longest)));
}

/**
 * The last row of the optimal string alignment table (Damerau 1964; Levenshtein 1966, with swaps of
 * neighbours): distances from the whole of `part` to every start of `word`.
 */
function lastRow(part: string, word: string): number[] {
  let before: number[] = [];
  let above = Array.from({ length: word.length + 1 }, (_, column) => column);
  for (let row = 1; row <= part.length; row += 1) {
    const here = [row];
    for (let column = 1; column <= word.length; column += 1) {
      const same = part[row - 1] === word[column - 1] ? 0 : 1;
      let least = Math.min(
        (above[column] ?? 0) + 1,
        (here[column - 1] ?? 0) + 1,
        (above[column - 1] ?? 0) + same,
      );
      const swapped = part[row - 1] === word[column - 2] && part[row - 2] === word[column - 1];
      if (row > 1 && column > 1 && swapped) least = Math.min(least, (before[column - 2] ?? 0) + 1);
      here.push(least);
    }
    before = above;
    above = here;
  }
  return above;
}

/**
 * Taxa that share stretches with the query, by fuse.js over the candidates with most three-letter
 * stretches in common. These are guesses: they are offered and never taken by themselves.
 */
export function looseMatches(query: readonly string[], index: TaxonIndex): [IndexedTaxon, Match][] {
  const wanted = threes(query);
  const candidates = index.taxa
    .flatMap((indexed) =>
      indexed.names.map((name) => ({ indexed, name, shared: shared(wanted, name) })),
    )
    .filter((candidate) => candidate.shared > 0)
    .sort((one, two) => two.shared - one.shared)
    .slice(0, LOOSE_CANDIDATES);
  const fuse = new Fuse(candidates, {
    keys: ['name.text'],
    includeScore: true,
    ignoreLocation: true,
    ignoreDiacritics: true,
    threshold: 0.4,
  });
  const found = new Map<IndexedTaxon, Match>();
  for (const { item, score } of fuse.search(query.join(' ')))
    if (!found.has(item.indexed))
      found.set(item.indexed, { score: NEAR.loose * (1 - (score ?? 1)), name: item.name });
  return [...found];
}

function threes(words: readonly string[]): Set<string> {
  const all = words.flatMap((word) =>
    Array.from({ length: Math.max(0, word.length - 2) }, (_, at) => word.slice(at, at + 3)),
  );
  return new Set(all);
}

function shared(wanted: ReadonlySet<string>, name: IndexedName): number {
  let count = 0;
  for (const three of wanted) if (name.words.some((word) => word.includes(three))) count += 1;
  return count;
}
