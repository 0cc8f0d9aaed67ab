import { randomUUID } from 'node:crypto';
import { timeZoneAt } from '../ground/time-zone.ts';
import { readVisits, visitFiles } from '../notebook/notebook.ts';
import type { OpenedVisit } from '../notebook/visit-file.ts';
import { type Place, placeKey, readPlace } from '../visit/place.ts';
import { epochOf, stamp } from '../visit/time.ts';
import { newVisit, type Visit } from '../visit/visit.ts';
import { EXIT, Refusal } from './refusal.ts';

/** A visit without an end goes on if its last change is no older than this, in milliseconds. */
const GOES_ON_FOR = 12 * 3_600_000;
/** How many of the latest files are looked at before the screen opens. */
const LATEST = 3;

export interface Beginning {
  visit: Visit;
  /** The file of a visit that goes on; null for a new one. */
  opened: OpenedVisit | null;
  placeAssumed: boolean;
  /** Sentences on files that could not be read. */
  problems: string[];
}

/**
 * The visit to log into: the open one of the last hours, at the place asked for if one was, else a
 * new one. A new visit takes the place asked for, else that of the latest visit, marked as assumed.
 * Only the latest files are read here; the screen does not wait for the others.
 */
export async function beginVisit(
  notebook: string,
  place: string | undefined,
  now: number,
  timeZone: string,
): Promise<Beginning> {
  const asked = place === undefined ? null : askedPlace(place);
  const latest = (await visitFiles(notebook)).slice(-LATEST);
  const { visits, problems } = await readVisits(latest);
  const newestFirst = visits.toSorted(
    (one, two) => epochOf(two.visit.start) - epochOf(one.visit.start),
  );
  const open = newestFirst.find(
    ({ visit }) => goesOn(visit, now) && (asked === null || isAt(visit, asked)),
  );
  if (open) return { visit: open.visit, opened: open, placeAssumed: false, problems };
  const last = newestFirst.find(({ visit }) => visit.place !== null)?.visit.place ?? null;
  const remembered = asked && newestFirst.find(({ visit }) => isAt(visit, asked))?.visit.place;
  const taken = asked === null ? last : asked.position === null ? (remembered ?? asked) : asked;
  const zone = taken?.timeZone ?? timeZone;
  const visit = newVisit({ id: randomUUID(), timeZone, start: stamp(now, zone), place: taken });
  return { visit, opened: null, placeAssumed: asked === null && last !== null, problems };
}

function askedPlace(text: string): Place {
  const read = readPlace(text);
  if ('problem' in read) throw new Refusal(EXIT.usage, `--place: ${read.problem}`);
  const { position } = read.place;
  return { ...read.place, timeZone: position ? timeZoneAt(position) : null };
}

function goesOn(visit: Visit, now: number): boolean {
  if (visit.end !== null) return false;
  const last = epochOf(visit.changes.at(-1)?.time ?? visit.start);
  return now - last < GOES_ON_FOR && now >= epochOf(visit.start) - GOES_ON_FOR;
}

function isAt(visit: Visit, place: Place): boolean {
  return visit.place !== null && placeKey(visit.place.name) === placeKey(place.name);
}
