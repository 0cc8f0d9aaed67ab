import { withShortChanges, withWholeChanges } from './count-changes.ts';
import type { Entry } from './entry.ts';
import { alike, bothMembers, inOrder } from './join-canonical.ts';
import { changesOf, withNumber } from './join-changes.ts';
import { allConflicts, conflictOf } from './join-conflict.ts';
import {
  type History,
  historiesOf,
  PARTS,
  plainChange,
  type Step,
  stepOf,
  type Target,
  type Value,
} from './join-history.ts';
import { numbersOf } from './join-numbers.ts';
import { inOneOrder } from './join-order.ts';
import { united } from './join-united.ts';
import { epochOf } from './time.ts';
import type { Settable } from './update.ts';
import type { Conflict, Visit } from './visit.ts';

/**
 * One visit out of two copies of it, each of which may have gone on by itself. Nothing is dropped: all
 * entries, and all values that ever stood, stay in the entries or in the changes. The later change
 * of a thing stands; where both copies changed it, the other value is told in `conflicts`.
 *
 * The order of the two makes no difference, a copy joined with itself or with its own past stays as it
 * is, and joining either copy once more changes nothing. Both must have the same id, and entries of
 * one copy ids and numbers of their own (`unsound`).
 */
export function joinVisits(one: Visit, two: Visit): Visit {
  return withShortChanges(joinedWhole(withWholeChanges(one), withWholeChanges(two)));
}

function joinedWhole(one: Visit, two: Visit): Visit {
  const { start, timeZone } = [one, two].sort(byStart)[0] ?? one;
  const [here, there] = historiesOf(one, two, start);
  const began = new Map([...there.began, ...here.began]);
  const { steps, conflicts } = settled(inOneOrder(here.steps, there.steps), here, there, began);
  const now = new Map(began);
  for (const { target, after } of steps) now.set(target, after);
  const ids = new Set([...one.entries, ...two.entries].map(({ id }) => id));
  const unordered = [...ids].map((id) => now.get(id) as Entry);
  const numbers = numbersOf(unordered, one.entries, two.entries);
  const entries = unordered
    .map((entry) => withNumber(entry, numbers.get(entry.id)))
    .sort((a, b) => a.number - b.number);
  const parts = Object.fromEntries(PARTS.map((part) => [part, now.get(part)])) as Settable;
  return {
    ...bothMembers(one, two),
    ...parts,
    ...{ start, timeZone, entries },
    changes: changesOf(steps, began, numbers),
    conflicts: allConflicts(...one.conflicts, ...two.conflicts, ...conflicts),
  };
}

/** Why a visit can't be joined with another copy, as the end of a sentence; null where it can. */
export function unsound({ entries, changes }: Visit): string | null {
  for (const key of ['id', 'number'] as const) {
    const seen = new Set<string | number>();
    for (const entry of entries) {
      if (seen.has(entry[key])) return `two of its entries have the ${key} ${entry[key]}`;
      seen.add(entry[key]);
    }
  }
  const logged = new Set<number>();
  for (const change of changes) {
    if (change.part !== 'entry' || change.before !== null) continue;
    if (logged.has(change.number)) return `entry ${change.number} is logged twice in its changes`;
    logged.add(change.number);
  }
  return null;
}

function byStart(one: Visit, two: Visit): number {
  return (
    epochOf(one.start) - epochOf(two.start) ||
    inOrder(one.start, two.start) ||
    inOrder(one.timeZone, two.timeZone)
  );
}

/**
 * The steps with one more for each list that both copies added to, and the conflicts of what both
 * changed without knowing of each other: the last change of neither is in the other.
 */
function settled(
  order: readonly Step[],
  here: History,
  there: History,
  began: ReadonlyMap<Target, Value>,
): { steps: Step[]; conflicts: Conflict[] } {
  const [lastHere, lastThere] = [lastOf(here.steps), lastOf(there.steps)];
  const [inHere, inThere] = [idsOf(here.steps), idsOf(there.steps)];
  const had = new Map(began);
  for (const { id, target, after } of order)
    if (inHere.has(id) && inThere.has(id)) had.set(target, after);
  const steps = [...order];
  const conflicts: Conflict[] = [];
  for (const [target, stands] of lastOf(order)) {
    const [mine, theirs] = [lastHere.get(target), lastThere.get(target)];
    if (!mine || !theirs || inThere.has(mine.id) || inHere.has(theirs.id)) continue;
    const all = united(target, had.get(target) ?? null, mine.after, theirs.after);
    if (all === null) {
      const told = [mine, theirs].map((step) => conflictOf(stands, step.after));
      conflicts.push(...told.filter((conflict) => conflict !== null));
    } else if (!alike(all, stands.after)) {
      const change = plainChange(target, stands.change.time, stands.after);
      const bare = { target, change, after: all };
      const both = stepOf(bare, (says) => steps.filter((step) => step.says === says).length + 1);
      steps.splice(steps.indexOf(stands) + 1, 0, both);
    }
  }
  return { steps, conflicts };
}

function lastOf(steps: readonly Step[]): Map<Target, Step> {
  return new Map(steps.map((step) => [step.target, step]));
}

function idsOf(steps: readonly Step[]): Set<string> {
  return new Set(steps.map(({ id }) => id));
}
