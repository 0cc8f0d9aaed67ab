import type { Entry } from './entry.ts';
import { alike } from './join-canonical.ts';
import { type Step, type Target, unnumbered, type Value } from './join-history.ts';
import type { Change } from './visit.ts';

/**
 * The changes that a file keeps for steps in order: with the values before them, the places of what
 * they take back, and the numbers of their entries.
 *
 * Between a change and its undo may now stand another copy's change of the same thing. Such an undo
 * no longer takes back what it took back: it stays as a plain change to the value that it brought.
 * So the value before any change is always the one that the changes not taken back make without it,
 * and undo leads to the beginning (`updateVisit`).
 */
export function changesOf(
  steps: readonly Step[],
  began: ReadonlyMap<Target, Value>,
  numbers: ReadonlyMap<Entry['id'], number>,
): Change[] {
  const now = new Map(began);
  const stands = standingSteps();
  const placeOf = new Map(steps.map((step, place) => [step.id, place]));
  const placeAt = (id: string | null) => (id === null ? null : (placeOf.get(id) ?? null));
  return steps.map((step) => {
    const before = now.get(step.target) ?? null;
    const { undoes, redoes } = stands.take(step, before);
    now.set(step.target, step.after);
    const number = numbers.get(step.target);
    return {
      ...step.change,
      ...(number === undefined ? {} : { number }),
      before: withNumber(before, number),
      undoes: placeAt(undoes),
      redoes: placeAt(redoes),
    } as Change;
  });
}

/** The value with the number that its entry has now, if it is one. */
export function withNumber<T extends Value>(value: T, number: number | undefined): T {
  return number === undefined || value === null ? value : { ...(value as object & T), number };
}

/** Follows what is done and undone as `standingChanges` does, each target for itself. */
function standingSteps() {
  const done = new Map<Target, { id: string; before: Value }[]>();
  const undone = new Map<string, Value>();
  return {
    /** What a step takes back of what stands before it: an undo, a redo, or neither. */
    take(step: Step, before: Value): Pick<Step, 'undoes' | 'redoes'> {
      const ofTarget = done.get(step.target) ?? [];
      done.set(step.target, ofTarget);
      const last = ofTarget.at(-1);
      if (last && last.id === step.undoes && bringsBack(step.after, last.before)) {
        ofTarget.pop();
        undone.set(step.id, before);
        return { undoes: last.id, redoes: null };
      }
      ofTarget.push({ id: step.id, before });
      const { redoes } = step;
      const again = redoes === null ? undefined : undone.get(redoes);
      if (redoes !== null && again !== undefined && bringsBack(step.after, again)) {
        undone.delete(redoes);
        return { undoes: null, redoes };
      }
      undone.clear();
      return { undoes: null, redoes: null };
    },
  };
}

/** Undoing the logging of an entry, before which nothing was, leaves it struck out. */
function bringsBack(after: Value, before: Value): boolean {
  if (before === null && after !== null && typeof after === 'object' && 'struck' in after)
    return after.struck !== null;
  return alike(unnumbered(after), unnumbered(before));
}
