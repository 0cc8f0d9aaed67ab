import { type Count, type CountPart, countShown, PART_LETTERS, type PartLetter } from './count.ts';
import { type Entry, isAbsence, type Observation, taxonKey, taxonName } from './entry.ts';
import { standing, type Visit } from './visit.ts';

/** How counts of one taxon in a visit become one. */
export type SumRule = 'adds up' | 'highest';

/** What several counts come to. Unlike a count in a file, a sum may pass the highest that can be typed. */
export interface Sum {
  count: Count;
  /** Some of it was only an estimate: an `at least` then has no certain lower end. */
  rounded: boolean;
  parts: CountPart[];
}

/** What is summed. */
export type Counted = Pick<Observation, 'count' | 'parts'>;

const NOTHING: Sum = { count: { kind: 'exact', value: 0 }, rounded: false, parts: [] };

/**
 * Counts of one taxon as one count; none at all come to an exact 0.
 *
 * `adds up`, for different individuals. What is known least decides the kind, and the number is the
 * sum of the lower numbers (the number of an exact, at least or about, the low end of a range, none
 * for present), so that a sum never claims more than was counted:
 *
 * | one      | other           | sum      | reason                                                    |
 * |----------|-----------------|----------|-----------------------------------------------------------|
 * | exact    | exact           | exact    | both are known                                            |
 * | exact    | range           | range    | each end moves by the number                              |
 * | range    | range           | range    | the lows and the highs are both possible                  |
 * | about    | exact or range  | about    | an estimate stays one; of a range its low end counts      |
 * | about    | about           | about    | the same                                                  |
 * | at least | exact or range  | at least | there is no upper end; below it is the low end            |
 * | at least | about           | at least | no upper end, and rounded: the lower end is no longer sure|
 * | present  | any number      | at least | some were there besides; how many nobody knows            |
 * | present  | present or none | present  | no number was ever given, and none is made up             |
 * | none     | any             | the other| an absence adds nothing                                   |
 *
 * The order in which counts are added makes no difference. Parts by sex and age are added letter by
 * letter; they are parts of those told apart, not of all.
 *
 * `highest`, for the same individuals seen again: the count, with its kind and its parts, that has
 * the greatest lower number. At the same number the one that leaves more open goes before (at least,
 * range, about, exact), and present stands between none and one.
 */
export function sumOf(counts: readonly Counted[], rule: SumRule): Sum {
  const sums = counts.map(({ count, parts }): Sum => {
    const rounded = count.kind === 'about';
    return { count, rounded, parts: plusParts([], parts) };
  });
  return sums.reduce(rule === 'highest' ? higher : plus, NOTHING);
}

/** Two sums of different individuals as one, by the table of `sumOf`. */
export function plus(one: Sum, two: Sum): Sum {
  const counts = [one.count, two.count];
  const low = lowOf(one.count) + lowOf(two.count);
  const open = counts.some(({ kind }) => kind === 'at least' || kind === 'present');
  const present = counts.some(({ kind }) => kind === 'present');
  const rounded = one.rounded || two.rounded;
  return {
    count: countFrom({ low, high: highOf(one.count) + highOf(two.count), open, present, rounded }),
    rounded,
    parts: plusParts(one.parts, two.parts),
  };
}

function countFrom(sum: {
  low: number;
  high: number;
  open: boolean;
  present: boolean;
  rounded: boolean;
}): Count {
  const { low, high } = sum;
  if (sum.present && low === 0) return { kind: 'present' };
  if (sum.open) return { kind: 'at least', value: low };
  if (sum.rounded) return { kind: 'about', value: low };
  return low === high ? { kind: 'exact', value: low } : { kind: 'range', low, high };
}

function lowOf(count: Count): number {
  if (count.kind === 'present') return 0;
  return count.kind === 'range' ? count.low : count.value;
}

/** Only read where both counts have an upper end. */
function highOf(count: Count): number {
  return count.kind === 'range' ? count.high : lowOf(count);
}

/** From the least open kind to the most. */
const OPENNESS: readonly Count['kind'][] = ['exact', 'about', 'range', 'at least', 'present'];

function higher(one: Sum, two: Sum): Sum {
  const rank = ({ count, parts }: Sum): number[] => [
    count.kind === 'present' ? 0.5 : lowOf(count),
    OPENNESS.indexOf(count.kind),
    highOf(count),
    // Of the same count, the one of which more were told apart.
    ...LETTERS.map((letter) => parts.find((part) => part.letter === letter)?.value ?? -1),
  ];
  const others = rank(two);
  const difference = rank(one)
    .map((value, at) => value - (others[at] ?? 0))
    .find((each) => each !== 0);
  return (difference ?? 0) < 0 ? two : one;
}

const LETTERS = Object.keys(PART_LETTERS) as PartLetter[];

function valueFor(parts: readonly CountPart[], letter: PartLetter): number {
  return parts.reduce((sum, part) => (part.letter === letter ? sum + part.value : sum), 0);
}

function plusParts(one: readonly CountPart[], two: readonly CountPart[]): CountPart[] {
  const all = [...one, ...two];
  return LETTERS.filter((letter) => all.some((part) => part.letter === letter)).map((letter) => ({
    letter,
    value: valueFor(all, letter),
  }));
}

/** A sum to look at, as a count is; `~50+` where the lower end itself is an estimate. */
export function sumShown({ count, rounded }: Sum): string {
  return rounded && count.kind === 'at least' ? `~${countShown(count)}` : countShown(count);
}

/** One taxon of a visit with all that was counted of it. */
export interface Total extends Sum {
  /** Of `taxonKey`. */
  key: string;
  name: string;
  rule: SumRule;
  /** Some of it bears a name that the observer was not sure of. */
  uncertain: boolean;
  /** The entries that were summed, by number. */
  entries: number[];
}

/**
 * What a visit has of each taxon, in the order in which the taxa were first logged. Entries that are
 * struck out count for nothing; unnamed ones have no total, since the same words need not mean the
 * same taxon.
 */
export function totals(visit: Visit): Total[] {
  const byKey = new Map<string, Entry[]>();
  for (const entry of standing(visit))
    if (entry.taxon !== null) {
      const key = taxonKey(entry.taxon);
      byKey.set(key, [...(byKey.get(key) ?? []), entry]);
    }
  return [...byKey].map(([key, entries]) => {
    const rule: SumRule = visit.highest.includes(key) ? 'highest' : 'adds up';
    const [first] = entries;
    return {
      key,
      name: first?.taxon ? taxonName(first.taxon) : key,
      rule,
      ...sumOf(entries, rule),
      uncertain: entries.some((entry) => entry.uncertain && !isAbsence(entry)),
      entries: entries.map(({ number }) => number),
    };
  });
}
