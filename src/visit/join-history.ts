import type { Entry } from './entry.ts';
import { canonical, inOrder } from './join-canonical.ts';
import { epochOf, type Stamp } from './time.ts';
import { type Change, Conflict, type Visit } from './visit.ts';

/** What a change replaces: a part of the visit, or the entry with an id. */
export type Target = Exclude<Change['part'], 'entry' | 'count'> | Entry['id'];
export type Value = Change['before'];

/** A change as it can be told apart in any copy of the visit. */
export interface Step {
  /** The same in every copy; it hangs on no place in the list, no entry number and no earlier value. */
  id: string;
  /** What the id is made of: all that the change says, and which of several that say the same it is. */
  says: string;
  nth: number;
  /** Epoch milliseconds. */
  epoch: number;
  target: Target;
  change: Change;
  /** The value that stood behind the change. */
  after: Value;
  /** Ids of the steps that it takes back. */
  undoes: string | null;
  redoes: string | null;
}

/** The value that each target began with, and the changes since. */
export interface History {
  began: Map<Target, Value>;
  steps: Step[];
}

type Bare = Pick<Step, 'target' | 'change' | 'after'>;

/** Everything of a visit that changes keep, but for its entries. */
export const PARTS = Conflict.shape.part.exclude(['entry']).options;

/**
 * The histories of two copies of one visit, made to begin alike: where their beginnings differ (a file
 * was changed by hand), the greater one becomes a change at `time` that one copy made first.
 */
export function historiesOf(one: Visit, two: Visit, time: Stamp): [History, History] {
  const [here, there] = [bareHistory(one), bareHistory(two)];
  for (const [target, value] of here.began) {
    const other = there.began.get(target);
    if (other === undefined) continue;
    const order = inOrder(canonical(unnumbered(value)), canonical(unnumbered(other)));
    if (order < 0) beginWith(there, target, value, time);
    if (order > 0) beginWith(here, target, other, time);
  }
  return [told(here), told(there)];
}

/** A value without the number of its entry, which another copy may have had to change. */
export function unnumbered(value: Value): unknown {
  if (value === null || typeof value !== 'object' || !('number' in value)) return value;
  const { number: _, ...rest } = value;
  return rest;
}

/** A step that takes nothing back, the `nth` of those that say the same. */
export function stepOf({ target, change, after }: Bare, nth: (says: string) => number): Step {
  const says = canonical([change.time, target, unnumbered(after), change.reason]);
  const which = nth(says);
  const id = `${which} ${says}`;
  const epoch = epochOf(change.time);
  return { id, says, nth: which, epoch, target, change, after, undoes: null, redoes: null };
}

/** Steps by time, then by what they say. */
export function stepOrder(one: Step, two: Step): number {
  return one.epoch - two.epoch || inOrder(one.says, two.says) || one.nth - two.nth;
}

/** A change that takes nothing back; its earlier value and its number are set when all are in order. */
export function plainChange(target: Target, time: Stamp, before: Value): Change {
  const about = { time, undoes: null, redoes: null, reason: null, before };
  const part = PARTS.find((name) => name === target);
  return (part ? { ...about, part } : { ...about, part: 'entry', number: 0 }) as Change;
}

interface BareHistory {
  began: Map<Target, Value>;
  /** Put before the changes of the file. */
  first: Bare[];
  bare: Bare[];
}

/** Backwards: the value behind a change is the one before the next change of its target. */
function bareHistory(visit: Visit): BareHistory {
  const idOf = new Map(visit.entries.map(({ number, id }) => [number, id]));
  const began = new Map<Target, Value>([
    ...PARTS.map((part) => [part, visit[part]] as const),
    ...visit.entries.map((entry) => [entry.id, entry] as const),
  ]);
  const bare = visit.changes.toReversed().map((change) => {
    const target =
      'number' in change ? (idOf.get(change.number) ?? `entry ${change.number}`) : change.part;
    const after = began.get(target) ?? null;
    began.set(target, change.before);
    return { target, change, after };
  });
  return { began, first: [], bare: bare.reverse() };
}

function beginWith(history: BareHistory, target: Target, value: Value, time: Stamp): void {
  const after = history.began.get(target) ?? null;
  history.first.push({ target, change: plainChange(target, time, value), after });
  history.began.set(target, value);
}

function told({ began, first, bare }: BareHistory): History {
  const seen = new Map<string, number>();
  const ordered = first.toSorted((one, two) => inOrder(one.target, two.target));
  const steps = [...ordered, ...bare].map((each) =>
    stepOf(each, (says) => {
      const nth = (seen.get(says) ?? 0) + 1;
      seen.set(says, nth);
      return nth;
    }),
  );
  const idAt = (place: number | null) =>
    place === null ? null : (steps[place + first.length]?.id ?? null);
  return {
    began,
    steps: steps.map((step) => ({
      ...step,
      undoes: idAt(step.change.undoes),
      redoes: idAt(step.change.redoes),
    })),
  };
}
