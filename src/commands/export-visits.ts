import { basename } from 'node:path';
import { readVisits } from '../notebook/notebook.ts';
import { dateOf, epochOf } from '../visit/time.ts';
import type { Visit } from '../visit/visit.ts';
import { EXIT, Refusal } from './refusal.ts';

/** Is told of each file that could not be read. */
export type Unread = (problem: { path: string; words: string }) => void;

/**
 * The visits of a notebook in the order of time, read a day at a time, so that memory does not grow
 * with their number. Within a day they go by their start and never by file name, which has the name
 * of the place. A copy left behind is passed over.
 */
export async function* visitsInOrder(
  paths: readonly string[],
  unread: Unread,
): AsyncGenerator<Visit> {
  const days = byDay(paths);
  for (const [day, files] of days) {
    const { visits, problems } = await readVisits(files);
    problems.forEach(unread);
    const twice = sameEntries(visits.map(({ visit }) => visit));
    if (twice !== null) unread({ path: files[0] ?? '', words: twice });
    for (const { visit } of visits.sort((one, two) => inTime(one.visit, two.visit))) {
      const date = dateOf(visit.start);
      // Under the name of another day: perhaps a copy of one that lies where it belongs.
      if (date !== day && (await holds(days.get(date) ?? [], visit))) continue;
      yield visit;
    }
  }
}

/** The visit that began last. One that can't be read may be it: then none is given out as the last. */
export async function latestVisit(notebook: string, paths: readonly string[]): Promise<Visit> {
  for (const files of [...byDay(paths).values()].reverse()) {
    const { visits, problems } = await readVisits(files);
    const [unread] = problems;
    if (unread !== undefined)
      throw new Refusal(
        EXIT.notTaken,
        `${unread.words} It may be the latest: name the visit instead.`,
      );
    const newest = visits.sort((one, two) => inTime(one.visit, two.visit)).at(-1);
    if (newest) return newest.visit;
  }
  throw new Refusal(EXIT.notTaken, `There is no visit in ${notebook} yet.`);
}

function byDay(paths: readonly string[]): Map<string, string[]> {
  const days = new Map<string, string[]>();
  for (const path of paths) {
    const day = basename(path).slice(0, 10);
    days.set(day, [...(days.get(day) ?? []), path]);
  }
  return days;
}

async function holds(paths: readonly string[], { id }: Visit): Promise<boolean> {
  const { visits } = await readVisits(paths);
  return visits.some(({ visit }) => visit.id === id);
}

/**
 * Says that two visits hold one entry, as where two programs went on with one visit: both are given
 * out, and the entry then stands twice.
 */
function sameEntries(visits: readonly Visit[]): string | null {
  const holder = new Map<string, Visit>();
  for (const visit of visits)
    for (const { id, struck } of visit.entries) {
      const other = holder.get(id);
      if (struck === null && other !== undefined && other !== visit)
        return `Two visits of ${dateOf(visit.start)} hold the same entries, which are given out twice: strike them out in one of them.`;
      if (struck === null) holder.set(id, visit);
    }
  return null;
}

function inTime(one: Visit, two: Visit): number {
  return epochOf(one.start) - epochOf(two.start) || (one.id < two.id ? -1 : 1);
}
