import type { Count } from './count.ts';
import type { Entry } from './entry.ts';
import type { Change, Visit } from './visit.ts';

type Snapshot =
  | { part: 'entry'; number: number; before: Entry | null }
  | { part: 'count'; number: number; before: Count };

/**
 * What a change of an entry keeps: the earlier entry whole, or its count alone where nothing else is
 * another. A tally makes thousands of changes, each of which would else repeat the whole entry.
 */
export function entrySnapshot(before: Entry | null, after: Entry): Snapshot {
  const { number } = after;
  return before !== null && differInCount(before, after)
    ? { part: 'count', number, before: before.count }
    : { part: 'entry', number, before };
}

function differInCount(one: Entry, two: Entry): boolean {
  if (one.count === two.count) return false;
  const recounted = { ...one, count: two.count };
  return JSON.stringify(recounted) === JSON.stringify({ ...one, ...two });
}

/** The visit with every change of an entry kept whole, so that each can be looked at by itself. */
export function withWholeChanges(visit: Visit): Visit {
  return retold(visit, (change, after) =>
    change.part === 'count' && after !== null
      ? { ...change, part: 'entry', before: { ...after, count: change.before } }
      : change,
  );
}

/** The visit with its changes kept as short as `entrySnapshot` keeps them. */
export function withShortChanges(visit: Visit): Visit {
  return retold(visit, (change, after) => {
    if (change.part !== 'entry' || change.before === null || after === null) return change;
    const { before } = change;
    return { ...change, ...entrySnapshot(before, after) } as Change;
  });
}

/** Goes back through the changes with the entry as it stood behind each, if it is of one. */
function retold(visit: Visit, tell: (change: Change, after: Entry | null) => Change): Visit {
  if (!visit.changes.some(({ part }) => part === 'entry' || part === 'count')) return visit;
  const now = new Map<number, Entry | null>(visit.entries.map((entry) => [entry.number, entry]));
  const changes = visit.changes.toReversed().map((change) => {
    if (change.part !== 'entry' && change.part !== 'count') return change;
    const after = now.get(change.number) ?? null;
    const told = tell(change, after);
    const before =
      change.part === 'entry' ? change.before : after && { ...after, count: change.before };
    now.set(change.number, before);
    return told;
  });
  return { ...visit, changes: changes.reverse() };
}
