import type { Position } from '../ground/position.ts';
import type { Effort } from '../visit/effort.ts';
import { epochOf, type Stamp, stamp } from '../visit/time.ts';
import { distanceShown } from '../visit/units-shown.ts';
import { updateVisit } from '../visit/update.ts';
import { standing, type Visit, zoneOf } from '../visit/visit.ts';

/** A track as a visit takes it: epoch milliseconds, whole metres. */
export interface WalkedTrack {
  file: string;
  start: number;
  end: number;
  distance: number;
  movingTime: number;
  climb: number | null;
  /** Where the observer was at a moment; null where the track does not say. */
  positionAt(time: number): Position | null;
}

/** What became of a track: the visit, lines on what was done, and sentences on what was left as it is. */
export interface TakenTrack {
  visit: Visit;
  lines: string[];
  left: string[];
}

/** From its start to its end, or to the last thing logged; epoch milliseconds. */
export function spanOf(visit: Visit): { start: number; end: number } {
  const start = epochOf(visit.start);
  if (visit.end !== null) return { start, end: epochOf(visit.end) };
  return { start, end: Math.max(start, ...visit.entries.map(({ time }) => epochOf(time))) };
}

export function overlapping(visit: Visit, track: WalkedTrack): boolean {
  const { start, end } = spanOf(visit);
  return track.start <= end && track.end >= start;
}

/**
 * The visit with a track's distance as its effort and with positions for standing entries that have
 * none; each a change of its own that undo takes back. A distance that stands is left unless
 * `replace`.
 */
export function withTrack(
  visit: Visit,
  track: WalkedTrack,
  time: Stamp,
  replace: boolean,
): TakenTrack {
  const taken = withDistance(visit, track, time, replace);
  const placed = withPositions(taken.visit, track, time);
  return {
    visit: placed.visit,
    lines: [...outsideWords(visit, track), ...taken.lines, ...placed.lines],
    left: taken.left,
  };
}

function withDistance(visit: Visit, track: WalkedTrack, time: Stamp, replace: boolean): TakenTrack {
  const { effort } = visit;
  const value = effortOf(visit, track);
  const lasting = { visit, lines: [], left: [] };
  const next = updateVisit(visit, { do: 'set', time, part: 'effort', value });
  if (next === visit) return { ...lasting, lines: ['It has this track already.'] };
  const words = distanceShown(track.distance);
  if (effort.distance === null) return { ...lasting, visit: next, lines: [`Distance ${words}.`] };
  const before = `${distanceShown(effort.distance)}, ${effort.track === null ? 'given by hand' : `of ${effort.track.file}`}`;
  if (replace)
    return { ...lasting, visit: next, lines: [`Distance ${words} in place of ${before}.`] };
  return {
    ...lasting,
    left: [`The distance stays ${before}. --replace takes the ${words} of the track.`],
  };
}

function effortOf(visit: Visit, track: WalkedTrack): Effort {
  const { file, movingTime, climb, distance } = track;
  const zone = zoneOf(visit);
  const [start, end] = [stamp(track.start, zone), stamp(track.end, zone)];
  return { ...visit.effort, distance, track: { file, start, end, movingTime, climb } };
}

function withPositions(visit: Visit, track: WalkedTrack, time: Stamp): TakenTrack {
  const without = standing(visit).filter(({ position }) => position === null);
  let next = visit;
  let placed = 0;
  for (const entry of without) {
    const position = track.positionAt(epochOf(entry.time));
    if (position === null) continue;
    const observation = { ...entry, position };
    const reason = `position from ${track.file}`;
    next = updateVisit(next, { do: 'amend', number: entry.number, time, observation, reason });
    placed += 1;
  }
  const rest = without.length - placed;
  const lines = [
    `${entriesWords(placed)} got a position from it.`,
    ...(rest === 0
      ? []
      : [`${entriesWords(rest)} got none: before it, behind it, or in a gap of over 5 minutes.`]),
  ];
  return { visit: next, lines: without.length === 0 ? [] : lines, left: [] };
}

function entriesWords(count: number): string {
  return `${count} ${count === 1 ? 'entry' : 'entries'}`;
}

/** Milliseconds by which a track may begin before a visit or end after it without a word. */
const UNSAID = 10 * 60_000;

function outsideWords(visit: Visit, track: WalkedTrack): string[] {
  const { start, end } = spanOf(visit);
  if (!overlapping(visit, track))
    return [
      'The track was not recorded during the visit: is it the right one, and was the clock right?',
    ];
  const early = start - track.start > UNSAID ? 'begins before the visit' : '';
  const late = visit.end !== null && track.end - end > UNSAID ? 'ends after it' : '';
  if (early === '' && late === '') return [];
  const ways = early === '' ? 'ends after the visit' : [early, late].filter(Boolean).join(' and ');
  return [`The track ${ways}; its distance is that of all of it.`];
}
