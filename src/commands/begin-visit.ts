import { randomUUID } from 'node:crypto';
import { basename } from 'node:path';
import { needsGrids } from '../ground/read-position.ts';
import { readVisits, visitFiles } from '../notebook/notebook.ts';
import { readPlaces } from '../notebook/places.ts';
import type { OpenedVisit } from '../notebook/visit-file.ts';
import { fileWords } from '../notebook/visit-name.ts';
import { paused } from '../visit/effort.ts';
import { readMoment } from '../visit/moment.ts';
import { type Place, placeKey, readPlace } from '../visit/place.ts';
import { positioned } from '../visit/positioned.ts';
import { epochOf, stamp } from '../visit/time.ts';
import { updateVisit } from '../visit/update.ts';
import { newVisit, type Visit, zoneOf } from '../visit/visit.ts';
import { loadGrids } from './load-grids.ts';
import { remembering } from './places-known.ts';
import { EXIT, Refusal } from './refusal.ts';

/** A visit without an end goes on if its last change is no older than this, in milliseconds. */
const GOES_ON_FOR = 12 * 3_600_000;
/** A visit that goes on after longer than this, in milliseconds, was not watched meanwhile. */
const AWAY = 15 * 60_000;
/** An entry that was written down so long after it was seen was typed in later, in milliseconds. */
const TYPED_LATER = 3_600_000;
/** How many of the latest files are looked at, at least, before the screen opens. */
const LATEST = 3;
/** Files of this age by their names, in milliseconds, may still be open, whatever the zone. */
const MAY_BE_OPEN = 2 * 86_400_000;

export interface Beginning {
  visit: Visit;
  /** The file of a visit that goes on; null for a new one. */
  opened: OpenedVisit | null;
  placeAssumed: boolean;
  /** When what is typed was seen, in epoch milliseconds; null for now. */
  moment: number | null;
  /** Sentences on the files among them that could not be read. */
  problems: string[];
}

/**
 * The visit to log into: the open one of the last hours, at the place asked for if one was, else a
 * new one. A new visit takes the place asked for, else that of the latest visit, marked as assumed,
 * with what the notebook remembers of it before what the last visit there has.
 * A visit that goes on gets the coordinates asked for, and a pause for the time in which nobody logged;
 * it is then another than the opened one.
 * `when`, as `readMoment` reads it, is when the visit began that is typed in later: the open one that
 * began then goes on, else there is a new one.
 * Only the files that matter are read here; the screen does not wait for the others.
 */
export async function beginVisit(
  notebook: string,
  asked: Place | null,
  now: number,
  timeZone: string,
  when: string | null = null,
): Promise<Beginning> {
  const remembered = readPlaces(notebook);
  const files = await visitFiles(notebook);
  const { visits, problems: unread } = await readVisits(
    when === null ? filesToRead(files, asked, now) : files,
  );
  const { places, problem } = await remembered;
  const problems = unread.map(({ words }) => words).concat(problem ?? []);
  const newestFirst = visits.toSorted(
    (one, two) => epochOf(two.visit.start) - epochOf(one.visit.start),
  );
  const open =
    when === null &&
    newestFirst.find(({ visit }) => goesOn(visit, now) && (asked === null || isAt(visit, asked)));
  if (open)
    return {
      visit: withPause(withPosition(open.visit, asked, now), open.visit, now),
      opened: open,
      placeAssumed: false,
      moment: momentOf(open.visit),
      problems,
    };
  const last = newestFirst.find(({ visit }) => visit.place !== null)?.visit.place ?? null;
  const there = asked && newestFirst.find(({ visit }) => isAt(visit, asked))?.visit.place;
  const visited = asked === null ? last : (there ?? asked);
  const taken = visited && placeNow(asked, visited, places);
  const zone = taken?.timeZone ?? timeZone;
  const moment = when === null ? null : askedMoment(when, now, zone);
  const begun = newestFirst.find(({ visit }) => began(visit, moment, asked));
  if (begun) return { visit: begun.visit, opened: begun, placeAssumed: false, moment, problems };
  const start = stamp(moment ?? now, zone);
  const visit = newVisit({ id: randomUUID(), timeZone, start, place: taken });
  return { visit, opened: null, placeAssumed: asked === null && last !== null, moment, problems };
}

/** What is known of a visited place, with the position that was asked for. */
function placeNow(asked: Place | null, visited: Place, places: readonly Place[]): Place {
  const key = placeKey(visited.name);
  const known = remembering(
    places.find(({ name }) => placeKey(name) === key),
    visited,
  );
  if (asked === null || asked.position === null) return known;
  return positioned({ ...known, name: asked.name }, asked);
}

/** The place of `--place`; null where there is none. Refuses what is no place. */
export async function askedPlace(text: string | undefined): Promise<Place | null> {
  if (text === undefined) return null;
  const read = readPlace(text, needsGrids(text) ? await loadGrids() : null);
  if ('problem' in read) throw new Refusal(EXIT.usage, `--place: ${read.problem}`);
  return positioned(read.place, read.place);
}

/** Files that may hold the open visit or the last one, and the last one at the place asked for. */
function filesToRead(files: readonly string[], asked: Place | null, now: number): string[] {
  const dateIn = (path: string) => basename(path).slice(0, 10);
  const openSince = new Date(now - MAY_BE_OPEN).toISOString().slice(0, 10);
  const [since = ''] = [dateIn(files.at(-LATEST) ?? ''), openSince].sort();
  const named = asked && new RegExp(`^.{10}-${fileWords(asked.name)}(?:-\\d+)?\\.json$`, 'u');
  const there = files.findLast((path) => named?.test(basename(path)) === true);
  return files.filter((path) => path === there || dateIn(path) >= since);
}

/** The visit with the coordinates that were asked for, where they are news to it. */
function withPosition(visit: Visit, asked: Place | null, now: number): Visit {
  const { place } = visit;
  if (place === null || asked === null || asked.position === null) return visit;
  const { latitude, longitude } = asked.position;
  if (place.position?.latitude === latitude && place.position.longitude === longitude) return visit;
  return updateVisit(visit, {
    do: 'set',
    time: stamp(now, zoneOf(visit)),
    part: 'place',
    value: positioned(place, asked),
  });
}

/**
 * When what is typed into a visit was seen, in epoch milliseconds: when its last entry was, where that was
 * written down much later; else null for now.
 */
function momentOf({ entries, changes }: Visit): number | null {
  const last = entries.at(-1);
  const logged = changes.findLast(
    (change) => change.part === 'entry' && change.before === null && change.number === last?.number,
  );
  if (!last || !logged) return null;
  return epochOf(logged.time) - epochOf(last.time) > TYPED_LATER ? epochOf(last.time) : null;
}

/** The moment of `--when` on the clocks of a place. Refuses what is none. */
function askedMoment(text: string, now: number, timeZone: string): number {
  const read = readMoment(text, { now, day: now, timeZone });
  if ('problem' in read) throw new Refusal(EXIT.usage, `--when: ${read.problem}`);
  return read.moment;
}

/** The visit with a pause from its last change until now, where it was left for long. */
function withPause(visit: Visit, asLeft: Visit, now: number): Visit {
  const left = asLeft.changes.at(-1)?.time;
  const { effort } = visit;
  if (left === undefined || now - epochOf(left) < AWAY || paused(effort)) return visit;
  // What is typed in later was watched then, not now.
  if (momentOf(asLeft) !== null) return visit;
  const time = stamp(now, zoneOf(visit));
  const pauses = [...effort.pauses, { start: left, end: time }];
  return updateVisit(visit, { do: 'set', time, part: 'effort', value: { ...effort, pauses } });
}

/** Is it the open visit that began at a moment, at the place asked for if one was? */
function began(visit: Visit, moment: number | null, asked: Place | null): boolean {
  if (visit.end !== null || moment === null || epochOf(visit.start) !== moment) return false;
  return asked === null || isAt(visit, asked);
}

function goesOn(visit: Visit, now: number): boolean {
  if (visit.end !== null) return false;
  const last = epochOf(visit.changes.at(-1)?.time ?? visit.start);
  return now - last < GOES_ON_FOR && now >= epochOf(visit.start) - GOES_ON_FOR;
}

function isAt(visit: Visit, place: Place): boolean {
  return visit.place !== null && placeKey(visit.place.name) === placeKey(place.name);
}
