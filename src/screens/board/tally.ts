import { observationOf } from '../../taxa/observation.ts';
import type { Taxon } from '../../taxa/taxon.ts';
import { type Count, MOST } from '../../visit/count.ts';
import { type Entry, taxonKey, taxonName } from '../../visit/entry.ts';
import { readEntryLine } from '../../visit/entry-line.ts';
import { epochOf, offsetOf, type Stamp } from '../../visit/time.ts';
import { updateVisit } from '../../visit/update.ts';
import type { Visit } from '../../visit/visit.ts';
import type { Board, Passing } from './board.ts';

/** When something is written down, and when it was seen. */
export interface When {
  time: Stamp;
  at: Stamp;
}

/**
 * The entry to which a stroke of a taxon adds: that of this flock, or of this interval in passing. A
 * stroke is sure of its name: it adds to no entry whose name is not.
 */
export function flockEntry(visit: Visit, board: Board, taxon: Taxon, now: Stamp): Entry | null {
  const key = taxonKey(taxon);
  const heading = board.passing?.heading ?? null;
  const found = visit.entries.findLast(
    (entry) =>
      entry.number > board.flockAfter &&
      entry.struck === null &&
      !entry.uncertain &&
      entry.heading === heading &&
      entry.taxon !== null &&
      taxonKey(entry.taxon) === key,
  );
  if (!found || !board.passing) return found ?? null;
  return intervalOf(found.time, board.passing) === intervalOf(now, board.passing) ? found : null;
}

/** Which interval a moment lies in: they are numbered through and begin at the place's full hours. */
export function intervalOf(moment: Stamp, { minutes }: Passing): number {
  return Math.floor((epochOf(moment) / MINUTE + beyondHours(moment)) / minutes);
}

/** When an interval of `intervalOf` began (epoch milliseconds), on the clock that `moment` shows. */
export function intervalStart(interval: number, { minutes }: Passing, moment: Stamp): number {
  return (interval * minutes - beyondHours(moment)) * MINUTE;
}

const MINUTE = 60_000;

/**
 * Minutes by which an offset passes whole hours, as +05:30 does. Whole hours are left out, so that the
 * hour that comes twice when clocks go back is two intervals.
 */
function beyondHours(moment: Stamp): number {
  const minutes = Number(offsetOf(moment).slice(4));
  return offsetOf(moment).startsWith('-') ? -minutes : minutes;
}

/** The visit with a stroke of a taxon: so many more in this flock, or its first. */
export function struck(
  visit: Visit,
  board: Board,
  taxon: Taxon,
  { time, at, id }: When & { id: string },
): Visit {
  const entry = flockEntry(visit, board, taxon, at);
  if (entry) {
    const count = more(entry.count, board.step);
    return updateVisit(visit, { do: 'recount', time, number: entry.number, count });
  }
  // The name stands for the words that were not typed.
  const observation = {
    ...observationOf('', readEntryLine(taxonName(taxon)), taxon),
    words: taxonName(taxon),
    uncertain: false,
    description: null,
    parts: [],
    count: { kind: 'exact' as const, value: board.step },
    heading: board.passing?.heading ?? null,
  };
  return updateVisit(visit, { do: 'log', time, at, id, observation });
}

/** What the count of a flock is with so many more; what was about or at least stays so. */
export function more(count: Count, by: number): Count {
  if (count.kind === 'present') return { kind: 'at least', value: Math.min(MOST, by) };
  if (count.kind === 'range')
    return { ...count, low: Math.min(MOST, count.low + by), high: Math.min(MOST, count.high + by) };
  return { ...count, value: Math.min(MOST, count.value + by) };
}

/** What it is with so many fewer; null where nothing would be left. Of a range some may be left. */
export function fewer(count: Count, by: number): Count | null {
  if (count.kind === 'present') return null;
  if (count.kind === 'range')
    return count.high > by
      ? { ...count, low: Math.max(0, count.low - by), high: count.high - by }
      : null;
  return count.value > by ? { ...count, value: count.value - by } : null;
}

/** The visit with a step of a taxon taken back in this flock; a flock of none is struck out. */
export function takenBack(visit: Visit, board: Board, taxon: Taxon, { time, at }: When): Visit {
  const entry = flockEntry(visit, board, taxon, at);
  if (!entry) return visit;
  const count = fewer(entry.count, board.step);
  return count === null
    ? updateVisit(visit, { do: 'strike', time, number: entry.number })
    : updateVisit(visit, { do: 'recount', time, number: entry.number, count });
}

/** The visit with the flock's count of a taxon marked as about or at least, or as exact again. */
export function marked(
  visit: Visit,
  board: Board,
  taxon: Taxon,
  kind: 'about' | 'at least',
  { time, at }: When,
): Visit {
  const entry = flockEntry(visit, board, taxon, at);
  if (!entry || !('value' in entry.count)) return visit;
  const { value } = entry.count;
  const count: Count = { kind: entry.count.kind === kind ? 'exact' : kind, value };
  return updateVisit(visit, { do: 'recount', time, number: entry.number, count });
}

/** The visit with the other rule of summing for a taxon. */
export function ruleTurned(visit: Visit, taxon: Taxon, time: Stamp): Visit {
  const key = taxonKey(taxon);
  const value = visit.highest.includes(key)
    ? visit.highest.filter((other) => other !== key)
    : [...visit.highest, key];
  return updateVisit(visit, { do: 'set', time, part: 'highest', value });
}
