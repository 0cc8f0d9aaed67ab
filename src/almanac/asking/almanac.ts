import type { Visit } from '../../visit/visit.ts';
import { digestOf, type VisitDigest } from './digest.ts';

/** The visits of one or more notebooks by their ids. */
export type Almanac = ReadonlyMap<string, VisitDigest>;

/** The almanac of visits, taken in one by one; their order makes no difference. */
export function almanacOf(visits: Iterable<Visit>): Almanac {
  return almanacFrom(digests(visits));
}

/** The almanac of digests that were kept, in any order. */
export function almanacFrom(kept: Iterable<VisitDigest>): Almanac {
  const almanac = new Map<string, VisitDigest>();
  for (const digest of kept) {
    const other = almanac.get(digest.id);
    almanac.set(digest.id, other ? newer(other, digest) : digest);
  }
  return almanac;
}

/** Two almanacs as one: that of all their visits. */
export function joined(one: Almanac, two: Almanac): Almanac {
  return almanacFrom([...one.values(), ...two.values()]);
}

/** The visits from the earliest start to the latest: what all questions are put to. */
export function visitsIn(almanac: Almanac): VisitDigest[] {
  return [...almanac.values()].sort(
    (one, two) => one.epoch - two.epoch || (one.id < two.id ? -1 : 1),
  );
}

function* digests(visits: Iterable<Visit>): Iterable<VisitDigest> {
  for (const visit of visits) yield digestOf(visit);
}

/** Of two copies of one visit the one that was changed more often; the choice must not hang on their order. */
function newer(one: VisitDigest, two: VisitDigest): VisitDigest {
  if (one.changes !== two.changes) return one.changes > two.changes ? one : two;
  return JSON.stringify(one) >= JSON.stringify(two) ? one : two;
}
