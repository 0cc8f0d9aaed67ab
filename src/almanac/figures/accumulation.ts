import { isSpecies } from '../../visit/entry.ts';
import { completeFor, type GroupOf } from '../asking/complete.ts';
import type { VisitDigest } from '../asking/digest.ts';
import { chancesOfNone } from './drawing.ts';
import { type Figure, many } from './figure.ts';

/** Species to expect in so many visits, over all choices of them. */
export interface Accumulated {
  visits: number;
  species: number;
  /** Standard deviation over all choices of so many of these visits. */
  sd: number;
  /** The same by the correlations of presence, as R vegan's 'exact' has it: near `sd`, not equal. */
  correlationSd: number;
}

/**
 * The exact species accumulation over visits in place of the mean of random orders: the sum of
 * 1 - C(V - Vi, v) / C(V, v) over species that Vi of V visits have (Mao tau of Colwell, Mao & Chang
 * 2004; Ugland, Gray & Ellingsen 2003). `sets` are the species of each visit, by any key.
 */
export function accumulation(sets: readonly ReadonlySet<string>[]): Accumulated[] {
  const pairs = pairsOf(sets);
  const all = sets.length;
  return sets.map((_, at) => {
    const visits = at + 1;
    const none = chancesOfNone(all, visits);
    const missing = (marked: number) => none[marked] ?? 0;
    const spread = (having: number) => missing(having) * (1 - missing(having));
    const roots = none.map((_, having) => Math.sqrt(spread(having)));
    let [species, variance, byCorrelation] = [0, 0, 0];
    for (const [having, alike] of pairs.having) {
      species += alike * (1 - missing(having));
      variance += alike * spread(having);
      byCorrelation += alike * spread(having);
    }
    for (const { one, two, both, correlation, alike } of pairs.pairs) {
      variance += 2 * alike * (missing(one + two - both) - missing(one) * missing(two));
      byCorrelation += 2 * alike * correlation * (roots[one] ?? 0) * (roots[two] ?? 0);
    }
    return {
      visits,
      species,
      sd: Math.sqrt(Math.max(0, variance)),
      correlationSd: Math.sqrt(Math.max(0, byCorrelation)),
    };
  });
}

interface Pair {
  /** Visits that have the one, the other, and both. */
  one: number;
  two: number;
  both: number;
  /** Of the one's presence with the other's; 0 where one is in all visits. */
  correlation: number;
  /** How many pairs of species are alike in these. */
  alike: number;
}

/** How many visits the species, and each two of them, are in; what is alike is counted together. */
function pairsOf(sets: readonly ReadonlySet<string>[]): {
  having: Map<number, number>;
  pairs: Pair[];
} {
  const visitsOf = new Map<string, number[]>();
  for (const [at, set] of sets.entries())
    for (const key of set) {
      const having = visitsOf.get(key) ?? [];
      visitsOf.set(key, having);
      having.push(at);
    }
  const species = [...visitsOf.values()].sort((one, two) => one.length - two.length);
  const having = new Map<number, number>();
  const pairs = new Map<string, Pair>();
  for (const [at, one] of species.entries()) {
    having.set(one.length, (having.get(one.length) ?? 0) + 1);
    const has = new Set(one);
    for (const two of species.slice(at + 1)) {
      const both = two.reduce((sum, visit) => (has.has(visit) ? sum + 1 : sum), 0);
      const key = `${one.length} ${two.length} ${both}`;
      const pair = pairs.get(key) ?? pairOf(sets.length, one.length, two.length, both);
      pair.alike += 1;
      pairs.set(key, pair);
    }
  }
  return { having, pairs: [...pairs.values()] };
}

function pairOf(all: number, one: number, two: number, both: number): Pair {
  const root = Math.sqrt(one * (all - one) * two * (all - two));
  return { one, two, both, correlation: root > 0 ? (all * both - one * two) / root : 0, alike: 0 };
}

/** The accumulation of a group's species over the visits that were complete for it. */
export function accumulationOf(
  visits: readonly VisitDigest[],
  group: string,
  groupOf: GroupOf,
): Figure<{ steps: Accumulated[] }> {
  const complete = visits.filter((visit) => completeFor(visit, group));
  if (complete.length < 2)
    return {
      refused: `${many(complete.length, 'visit')} of ${visits.length} ${complete.length === 1 ? 'is' : 'are'} complete for ${group}: two are needed. Say at the end of a visit that everything was logged.`,
    };
  const sets = complete.map(
    ({ seen }) =>
      new Set(
        seen
          .filter(({ taxon }) => isSpecies(taxon) && groupOf(taxon.list) === group)
          .map(({ key }) => key),
      ),
  );
  const left = visits.length - complete.length;
  const notes =
    left === 0 ? [] : [`Not complete for ${group} and left out: ${many(left, 'visit')}.`];
  return { steps: accumulation(sets), notes };
}
