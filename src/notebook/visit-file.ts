import { readFile } from 'node:fs/promises';
import { type Adapter, Low } from 'lowdb';
import { migrated } from '../visit/migrate.ts';
import { FORMAT_VERSION, Visit } from '../visit/visit.ts';
import { type FileMark, markOf, replaceDurably } from './durable-file.ts';

/** A visit with its file, and the mark that the file bore when it was read. */
export interface OpenedVisit {
  path: string;
  mark: FileMark | null;
  visit: Visit;
}

/** A visit file as read, or the reason why it can't be. */
export type VisitRead = OpenedVisit | { path: string; problem: string };

/** A visit as it stands in its file: indented, so that it can be read and compared by eye. */
export function visitText(visit: Visit): string {
  return `${JSON.stringify(visit, null, 2)}\n`;
}

/** lowdb's port to one visit file: what is read is checked, what is written is flushed. */
function visitAdapter(path: string): Adapter<Visit> {
  return {
    async read() {
      const read = visitFrom(await readFile(path, 'utf8'));
      if ('problem' in read) throw new UnreadableVisit(read.problem);
      return read.visit;
    },
    write: (visit) => replaceDurably(path, visitText(visit)),
  };
}

class UnreadableVisit extends Error {}

/** A database of one visit at a path, holding `visit`; write it with `.write()`. */
export function visitDatabase(path: string, visit: Visit): Low<Visit> {
  return new Low(visitAdapter(path), visit);
}

/** Reads a visit file. Whatever is wrong with it is a value; the file is only looked at. */
export async function readVisit(path: string): Promise<VisitRead> {
  try {
    // Marked first: a change that comes between is then seen as one at the next save.
    const mark = await markOf(path);
    const visit = await visitAdapter(path).read();
    return visit ? { path, mark, visit } : { path, problem: 'the file is empty' };
  } catch (error) {
    if (error instanceof UnreadableVisit) return { path, problem: error.message };
    return { path, problem: error instanceof Error ? error.message : String(error) };
  }
}

/** Checks the text of a visit file. */
export function visitFrom(text: string): { visit: Visit } | { problem: string } {
  if (text.trim() === '') return { problem: 'the file is empty' };
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    return {
      problem: `it is not whole JSON: ${error instanceof Error ? error.message : String(error)}`,
    };
  }
  const version = (data as { formatVersion?: unknown } | null)?.formatVersion;
  if (typeof version === 'number' && version > FORMAT_VERSION)
    return {
      problem: `it was written by a newer Tussock (format ${version}; this one reads ${FORMAT_VERSION})`,
    };
  const read = Visit.safeParse(migrated(data));
  if (read.success) return { visit: read.data };
  const issue = read.error.issues[0];
  const where = issue && issue.path.length > 0 ? `at ${issue.path.join('.')}: ` : '';
  return { problem: `it is not a visit, ${where}${issue?.message ?? 'not understood'}` };
}
