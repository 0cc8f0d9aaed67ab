import { clockOf, dateOf, epochOf } from '../visit/time.ts';
import type { Change, Visit } from '../visit/visit.ts';

/** Something in a visit that does not fit together; what is no `fault` is worth a look only. */
export interface Oddity {
  what: string;
  fault: boolean;
}

/** An entry this far outside the hours of its visit is worth a look, in milliseconds. */
const OUTSIDE = 2 * 3_600_000;
/** Clocks are set: a change may lie this far before the one that it follows, in milliseconds. */
const BACK = 5 * 60_000;

/** What does not fit together in a visit that its schema lets pass. */
export function odditiesIn(visit: Visit): Oddity[] {
  return [...twiceIn(visit), ...danglingIn(visit), ...hoursOf(visit), ...backwardIn(visit)];
}

function fault(what: string): Oddity {
  return { what, fault: true };
}

function twiceIn({ entries }: Visit): Oddity[] {
  const numbers = repeated(entries.map((entry) => String(entry.number)));
  const ids = repeated(entries.map((entry) => entry.id));
  return [
    ...numbers.map((number) => fault(`two entries bear the number ${number}`)),
    ...ids.map((id) => fault(`two entries bear the id ${id}`)),
  ];
}

function repeated(values: readonly string[]): string[] {
  return [...new Set(values.filter((value, at) => values.indexOf(value) !== at))];
}

function danglingIn({ entries, changes }: Visit): Oddity[] {
  const numbers = new Set(entries.map((entry) => entry.number));
  return changes.flatMap((change, at) => {
    const odd = [change.undoes, change.redoes]
      .filter((place) => place !== null && place >= at)
      .map((place) => fault(`change ${at} takes back change ${place}, which is not before it`));
    return change.part === 'entry' && !numbers.has(change.number)
      ? [...odd, fault(`change ${at} is of entry ${change.number}, which is not there`)]
      : odd;
  });
}

function hoursOf({ start, end, entries }: Visit): Oddity[] {
  if (end !== null && epochOf(end) < epochOf(start))
    return [{ what: `it ends at ${clockOf(end)}, before it starts`, fault: false }];
  const from = epochOf(start) - OUTSIDE;
  const until = end === null ? Number.POSITIVE_INFINITY : epochOf(end) + OUTSIDE;
  return entries
    .filter(({ time }) => epochOf(time) < from || epochOf(time) > until)
    .map(({ number, time }) => ({
      what: `entry ${number} lies hours outside the visit, on ${dateOf(time)} at ${clockOf(time)}`,
      fault: false,
    }));
}

/** Told once, at the widest step back: a clock that was set wrong once steps back once. */
function backwardIn({ changes }: Visit): Oddity[] {
  const back = (change: Change, at: number) =>
    epochOf(changes[at - 1]?.time ?? change.time) - epochOf(change.time);
  const steps = changes.map(back);
  const widest = Math.max(0, ...steps);
  if (widest <= BACK) return [];
  const what = `the clock of change ${steps.indexOf(widest)} stands ${Math.round(widest / 60_000)} minutes before that of the change ahead of it`;
  return [{ what, fault: false }];
}
