import type { Match, Query } from './match.ts';
import { lettersOf } from './names.ts';
import type { IndexedName, TaxonIndex } from './taxon-index.ts';

/** Fits of misspelt names lie under every fit of a name as typed, and guesses under those. */
const NEAR = {
  oneSlip: 40,
  eachFurther: 6,
  otherKind: 2,
  noSpecies: 12,
  wholeName: 12,
  guess: 20,
} as const;
/** Cost of a word that goes on behind what was typed. */
const GOES_ON = 0.5;
/** Shorter words are too often another word with a letter changed: `seal` is no Teal. */
const LEAST_SURE = 5;

/** Slips that a word of this length may hold: none below 4 letters, 1 to 6 letters, then 2. */
function slipsAllowed(length: number): number {
  if (length < 4) return 0;
  return length < 7 ? 1 : 2;
}

/**
 * Names whose words start with the query's words but for a few slips: a letter wrong, missing, too
 * many, or two swapped. At least one word of the query must be long enough to hold a slip.
 */
export function nearMatches(query: Query, index: TaxonIndex): Match[] {
  const costs = query.byLength.map(costsTo);
  const [longest] = costs;
  if (!longest) return [];
  const letters = lettersOf(longest.part);
  const names = new Set<IndexedName>();
  for (let at = 0; at < index.words.length; at += 1) {
    // Each letter that the word lacks is a slip of its own: most words are ruled out by this alone.
    if (bitsIn(letters & ~(index.wordLetters[at] ?? 0)) > longest.mostLacking) continue;
    const word = index.words[at];
    if (word && longest.of(word.text) !== null) for (const name of word.names) names.add(name);
  }
  return [...names].flatMap((name) => nearMatch(name, costs) ?? []);
}

/** A word of the query with what it costs to take a word of a name for it: null for too much. */
interface Costs {
  part: string;
  mostLacking: number;
  of(word: string): number | null;
}

/** Costs are slips, reckoned once for each word; a plural is none. */
function costsTo(part: string): Costs {
  const allowed = slipsAllowed(part.length);
  const singulars = [/s$/, /es$/].flatMap((end) => (end.test(part) ? [part.replace(end, '')] : []));
  const known = new Map<string, number | null>(singulars.map((word) => [word, 0]));
  return {
    part,
    mostLacking: Math.max(allowed, singulars.length),
    of(word) {
      const before = known.get(word);
      if (before !== undefined) return before;
      const cost = costOf(part, word, allowed);
      known.set(word, cost);
      return cost;
    },
  };
}

function bitsIn(set: number): number {
  let bits = 0;
  for (let rest = set; rest !== 0; rest &= rest - 1) bits += 1;
  return bits;
}

function costOf(part: string, word: string, allowed: number): number | null {
  if (word.startsWith(part)) return word.length === part.length ? 0 : GOES_ON;
  if (allowed === 0 || word.length < part.length - allowed) return null;
  // Most slips leave one of the first two letters in place; the loose step finds the others.
  if (word[0] !== part[0] && word[0] !== part[1] && word[1] !== part[0] && word[1] !== part[1])
    return null;
  const longest = Math.min(word.length, part.length + allowed);
  const row = lastRow(part, word.slice(0, longest), allowed);
  if (row === null) return null;
  const slips = Math.min(...row);
  return longest === word.length && row[longest] === slips ? slips : slips + GOES_ON;
}

/**
 * The last row of the optimal string alignment table (Damerau 1964; Levenshtein 1966, with swaps of
 * neighbours): distances from the whole of `part` to every start of `word`. Null as soon as all of them
 * are sure to be above `allowed`.
 */
function lastRow(part: string, word: string, allowed: number): number[] | null {
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
    if (Math.min(...here) > allowed) return null;
    before = above;
    above = here;
  }
  return above;
}

/**
 * Sure are names that are misspelt as a whole, and first English names in part; each word whole, with
 * the right first letter, and but one slip away (two in a whole first English name). The rest are
 * guesses: `otter` is the start of Dotterel but for one letter.
 */
function nearMatch(name: IndexedName, costs: readonly Costs[]): Match | null {
  const english = name.kind === 'vernacular';
  const whole = costs.length === name.words.length;
  let sure = english || whole;
  let sum = 0;
  for (const { part, of } of costs) {
    let word = '';
    let least = Number.POSITIVE_INFINITY;
    for (const each of name.words) {
      const cost = of(each);
      if (cost === null || cost >= least) continue;
      word = each;
      least = cost;
    }
    if (word === '') return null;
    sum += least;
    if (least < 1) continue;
    const alike = word.length >= LEAST_SURE && word[0] === part[0];
    if (!alike || !(least === 1 || (least === 2 && english && whole))) sure = false;
  }
  const score =
    NEAR.oneSlip -
    NEAR.eachFurther * (sum - 1) -
    (english ? 0 : NEAR.otherKind) -
    (name.of === 'species' ? 0 : NEAR.noSpecies);
  if (!sure) return { how: 'loose', score: Math.max(1, score - NEAR.guess), name };
  return { how: 'near', score: whole ? score + NEAR.wholeName : score, name };
}
