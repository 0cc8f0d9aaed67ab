import type { Count } from './count.ts';
import { entrySnapshot } from './count-changes.ts';
import type { Entry, Observation } from './entry.ts';
import { nameOf } from './entry.ts';
import type { Stamp } from './time.ts';
import { type Change, entryNumbered, type Visit } from './visit.ts';

/** The parts of a visit that are set whole. */
export type Settable = Pick<
  Visit,
  'place' | 'weather' | 'effort' | 'description' | 'end' | 'highest'
>;
type SettableChange = {
  [Part in keyof Settable]: { do: 'set'; part: Part; value: Settable[Part] };
}[keyof Settable];

/** What can be done to a visit. Times and ids are handed in. */
export type VisitAction = {
  time: Stamp;
} /** `at` is when it was seen, where that is not when it is written down. */ & (
  | { do: 'log'; id: string; at?: Stamp; observation: Observation }
  | { do: 'amend'; number: number; observation: Observation; reason?: string }
  | { do: 'recount'; number: number; count: Count }
  | { do: 'strike'; number: number }
  | { do: 'unstrike'; number: number }
  | SettableChange
  | { do: 'undo' }
  | { do: 'redo' }
);

type Snapshot = DistributiveOmit<Change, 'time' | 'undoes' | 'redoes' | 'reason'>;
type DistributiveOmit<T, Key extends PropertyKey> = T extends unknown ? Omit<T, Key> : never;

/**
 * The visit after an action. An action that finds nothing to act on (an unknown number, nothing to
 * undo) gives back the same visit, so that `===` tells whether anything changed.
 */
export function updateVisit(visit: Visit, action: VisitAction): Visit {
  switch (action.do) {
    case 'log': {
      const identity = { id: action.id, number: nextNumber(visit), time: action.at ?? action.time };
      // Behind the observation too, which may be a whole entry that is logged once more.
      const entry: Entry = { ...identity, ...action.observation, ...identity, struck: null };
      const entries = [...visit.entries, entry];
      return noted({ ...visit, entries }, action.time, {
        part: 'entry',
        number: entry.number,
        before: null,
      });
    }
    case 'amend':
      return changeEntry(
        visit,
        action.number,
        action.time,
        (entry) => {
          const { id, number, time, struck } = entry;
          return { ...entry, ...action.observation, id, number, time, struck };
        },
        action.reason,
      );
    case 'recount':
      return changeEntry(visit, action.number, action.time, (entry) => ({
        ...entry,
        count: action.count,
      }));
    case 'strike':
      return changeEntry(visit, action.number, action.time, (entry) =>
        entry.struck === null ? { ...entry, struck: action.time } : entry,
      );
    case 'unstrike':
      return changeEntry(visit, action.number, action.time, (entry) =>
        entry.struck === null ? entry : { ...entry, struck: null },
      );
    case 'set': {
      if (same(visit[action.part], action.value)) return visit;
      const before = { part: action.part, before: visit[action.part] } as Snapshot;
      return noted({ ...visit, [action.part]: action.value }, action.time, before);
    }
    case 'undo': {
      const index = standingChanges(visit).done.at(-1);
      return index === undefined ? visit : reverted(visit, action.time, index, { undoes: index });
    }
    case 'redo': {
      const index = standingChanges(visit).undone.at(-1);
      return index === undefined ? visit : reverted(visit, action.time, index, { redoes: index });
    }
  }
}

/** Numbers only rise: a struck entry keeps its own, so that pictures and paper notes stay right. */
function nextNumber(visit: Visit): number {
  return visit.entries.reduce((most, entry) => Math.max(most, entry.number), 0) + 1;
}

function changeEntry(
  visit: Visit,
  number: number,
  time: Stamp,
  change: (entry: Entry) => Entry,
  reason?: string,
): Visit {
  const before = entryNumbered(visit, number);
  if (!before) return visit;
  const after = change(before);
  if (same(after, before)) return visit;
  return noted(withEntry(visit, after), time, entrySnapshot(before, after), {
    reason: reason ?? null,
  });
}

/** A change that changes nothing would be an undo that does nothing. */
function same(one: unknown, two: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(two);
}

function withEntry(visit: Visit, entry: Entry): Visit {
  return {
    ...visit,
    entries: visit.entries.map((each) => (each.number === entry.number ? entry : each)),
  };
}

function noted(
  visit: Visit,
  time: Stamp,
  snapshot: Snapshot,
  about: Partial<Pick<Change, 'undoes' | 'redoes' | 'reason'>> = {},
): Visit {
  const change = {
    time,
    undoes: null,
    redoes: null,
    reason: null,
    ...about,
    ...snapshot,
  } as Change;
  return { ...visit, changes: [...visit.changes, change] };
}

/**
 * Which changes undo and redo would take next (last of each list; places in `visit.changes`).
 * Derived from the changes alone, so it is the same after a restart. A redone change stands in `done`
 * by the place of its redo, an undone one in `undone` by the place of its undo.
 */
export function standingChanges(visit: Visit): { done: number[]; undone: number[] } {
  const done: number[] = [];
  let undone: number[] = [];
  visit.changes.forEach((change, index) => {
    // By their places, not as the last: the changes of two copies of a visit may stand between.
    if (change.undoes !== null) {
      takeOut(done, change.undoes);
      undone.push(index);
    } else if (change.redoes !== null) {
      takeOut(undone, change.redoes);
      done.push(index);
    } else {
      done.push(index);
      undone = [];
    }
  });
  return { done, undone };
}

/** Mostly it is the last: a tally takes back hundreds of strokes, and to go through all each time is slow. */
function takeOut(places: number[], place: number): void {
  const at = places.lastIndexOf(place);
  if (at !== -1) places.splice(at, 1);
}

/** Puts the value before a change back, and notes the value that it replaces. */
function reverted(visit: Visit, time: Stamp, index: number, about: Partial<Change>): Visit {
  const change = visit.changes[index];
  if (!change) return visit;
  if (change.part !== 'entry' && change.part !== 'count') {
    const before = { part: change.part, before: visit[change.part] } as Snapshot;
    return noted({ ...visit, [change.part]: change.before }, time, before, about);
  }
  const now = entryNumbered(visit, change.number);
  if (!now) return visit;
  const then = entryBefore(change, now, time);
  return noted(withEntry(visit, then), time, entrySnapshot(now, then), about);
}

/** Taking back a logged entry strikes it out: its number is never given to another. */
function entryBefore(change: Change & { part: 'entry' | 'count' }, now: Entry, time: Stamp): Entry {
  if (change.part === 'count') return { ...now, count: change.before };
  return change.before ?? { ...now, struck: time };
}

/** What undo or redo would take back next, in words; null when there is nothing. */
export function nextInWords(visit: Visit, way: 'undo' | 'redo'): string | null {
  const { done, undone } = standingChanges(visit);
  const change = visit.changes[(way === 'undo' ? done : undone).at(-1) ?? -1];
  return change ? changeInWords(visit, change) : null;
}

const PART_WORDS = {
  place: 'the place',
  weather: 'the weather',
  effort: 'the effort',
  description: 'the description',
  end: 'the end of the visit',
  highest: 'how counts are summed',
} as const;

function changeInWords(visit: Visit, change: Change): string {
  if (!('number' in change)) return PART_WORDS[change.part];
  const entry = entryNumbered(visit, change.number);
  return `${change.number} ${entry ? nameOf(entry) : ''}`.trim();
}
