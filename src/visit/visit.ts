import * as z from 'zod';
import { Count } from './count.ts';
import type { Declared } from './declared.ts';
import { Effort, watchedTime } from './effort.ts';
import { Entry, isAbsence, isSpecies, taxonKey } from './entry.ts';
import { Place } from './place.ts';
import { epochOf, isTimeZone, Stamp } from './time.ts';
import { Weather } from './weather.ts';

/** The number in every visit file; it rises when an older program could misread a newer file. */
export const FORMAT_VERSION = 2;

const about = {
  /** When the change was made. */
  time: Stamp,
  /** Place in the list of changes of the one that this change takes back. */
  undoes: z.number().int().min(0).nullable(),
  /** Place in the list of changes of the undo that this change takes back. */
  redoes: z.number().int().min(0).nullable(),
  /** Why, in the observer's words. */
  reason: z.string().nullable(),
};

/**
 * One change of a visit with the value that stood before it. Together the changes reach back to the
 * empty visit: nothing that was ever logged is lost, and undo works after a restart.
 */
export const Change = z.discriminatedUnion('part', [
  /** `before` is null where the entry was logged by this change. */
  z.looseObject({
    ...about,
    part: z.literal('entry'),
    number: z.number().int(),
    before: Entry.nullable(),
  }),
  /** The count alone was another: a stroke of a tally. */
  z.looseObject({
    ...about,
    part: z.literal('count'),
    number: z.number().int(),
    before: Count,
  }),
  z.looseObject({ ...about, part: z.literal('place'), before: Place.nullable() }),
  z.looseObject({ ...about, part: z.literal('weather'), before: z.array(Weather) }),
  z.looseObject({ ...about, part: z.literal('effort'), before: Effort }),
  z.looseObject({ ...about, part: z.literal('description'), before: z.string().nullable() }),
  z.looseObject({ ...about, part: z.literal('end'), before: Stamp.nullable() }),
  z.looseObject({ ...about, part: z.literal('highest'), before: z.array(z.string()) }),
]);
export type Change = Declared<z.infer<typeof Change>>;

/**
 * A part of the visit that two copies of the notebook changed each in its own way: the value that
 * stands and the other one, in words, for a person to settle. Both stand in the changes whole.
 */
export const Conflict = z.looseObject({
  part: z.enum(['entry', 'place', 'weather', 'effort', 'description', 'end', 'highest']),
  /** Of the entry; null for another part. */
  entryId: z.uuid().nullable(),
  /** Time of the change that stands. */
  time: Stamp,
  stands: z.string(),
  other: z.string(),
});
export type Conflict = Declared<z.infer<typeof Conflict>>;

/** One outing at one place: one file. Fields that this version does not know are kept. */
export const Visit = z.looseObject({
  format: z.literal('tussock-visit'),
  formatVersion: z.literal(FORMAT_VERSION),
  id: z.uuid(),
  /** IANA zone of the machine; the place's own zone goes before it. */
  timeZone: z.string().refine(isTimeZone, 'a time zone that this machine knows'),
  start: Stamp,
  end: Stamp.nullable(),
  place: Place.nullable(),
  weather: z.array(Weather),
  effort: Effort,
  description: z.string().nullable(),
  /**
   * Taxa (by `taxonKey`) whose counts are of the same birds seen again, so that the highest is the
   * visit's; those of all others add up.
   */
  highest: z.array(z.string()),
  entries: z.array(Entry),
  changes: z.array(Change),
  conflicts: z.array(Conflict),
});
export type Visit = Declared<z.infer<typeof Visit>>;

/** An empty visit that starts at `start`. */
export function newVisit(given: {
  id: string;
  timeZone: string;
  start: Stamp;
  place: Place | null;
}): Visit {
  return {
    format: 'tussock-visit',
    formatVersion: FORMAT_VERSION,
    ...given,
    end: null,
    weather: [],
    effort: {
      pauses: [],
      distance: null,
      observers: null,
      method: null,
      track: null,
      complete: null,
      groups: null,
    },
    description: null,
    highest: [],
    entries: [],
    changes: [],
    conflicts: [],
  };
}

/** A new visit with the usual number of observers; one that was changed or that has a number stays. */
export function withObservers(visit: Visit, observers: number | null): Visit {
  if (observers === null || visit.changes.length > 0 || visit.effort.observers !== null)
    return visit;
  return { ...visit, effort: { ...visit.effort, observers } };
}

/** The zone whose clocks the visit goes by: the place's, else the machine's. */
export function zoneOf(visit: Visit): string {
  return visit.place?.timeZone ?? visit.timeZone;
}

/** Entries that stand: not struck out. */
export function standing(visit: Visit): Entry[] {
  return visit.entries.filter((entry) => entry.struck === null);
}

/** How many species a visit has seen: standing, named to the species and not counted as none. */
export function speciesSeen(visit: Visit): number {
  const seen = standing(visit).flatMap(({ taxon, ...entry }) =>
    taxon !== null && isSpecies(taxon) && !isAbsence(entry) ? taxonKey(taxon) : [],
  );
  return new Set(seen).size;
}

/** Milliseconds for which somebody watched: until the end, or until `now` (epoch milliseconds). */
export function watched({ effort, start, end }: Visit, now: number): number {
  return watchedTime(effort, epochOf(start), end === null ? now : epochOf(end));
}

export function entryNumbered(visit: Visit, number: number): Entry | null {
  return visit.entries.find((entry) => entry.number === number) ?? null;
}
