import { readFile } from 'node:fs/promises';
import { type Adapter, Low } from 'lowdb';
import type * as z from 'zod';
import { migrated } from '../visit/migrate.ts';
import { FORMAT_VERSION, Visit } from '../visit/visit.ts';
import { DISK, type Disk } from './disk.ts';
import { type FileMark, markOf, replaceDurably } from './durable-file.ts';
import { parsedJson } from './json-text.ts';
import { reasonWords } from './reason.ts';

/** The most bytes of a file that is read: some hundred times the longest day. */
const MOST_BYTES = 64 * 1024 * 1024;

/** A visit with its file, and the mark that the file bore when it was read. */
export interface OpenedVisit {
  path: string;
  mark: FileMark | null;
  visit: Visit;
}

/** Why a file gives no visit. A broken one holds none; another may, for who can read it. */
export interface NoVisit {
  problem: string;
  broken: boolean;
}

/** A visit file as read, or the reason why it can't be. */
export type VisitRead = OpenedVisit | ({ path: string } & NoVisit);

/** A visit as it stands in its file: indented, so that it can be read and compared by eye. */
export function visitText(visit: Visit): string {
  return `${JSON.stringify(visit, null, 2)}\n`;
}

/** lowdb's port to one visit file: what is read is checked, what is written is flushed. */
function visitAdapter(path: string, disk: Disk = DISK): Adapter<Visit> {
  return {
    async read() {
      const read = visitFrom(await readFile(path, 'utf8'));
      if ('problem' in read) throw new UnreadableVisit(read);
      return read.visit;
    },
    write: (visit) => replaceDurably(path, visitText(visit), disk),
  };
}

class UnreadableVisit extends Error {
  readonly why: NoVisit;

  constructor(why: NoVisit) {
    super(why.problem);
    this.why = why;
  }
}

/** A database of one visit at a path, holding `visit`; write it with `.write()`. */
export function visitDatabase(path: string, visit: Visit, disk: Disk = DISK): Low<Visit> {
  return new Low(visitAdapter(path, disk), visit);
}

/** Reads a visit file. Whatever is wrong with it is a value; the file is only looked at. */
export async function readVisit(path: string): Promise<VisitRead> {
  try {
    // Marked first: a change that comes between is then seen as one at the next save.
    const mark = await markOf(path);
    if (mark !== null && mark.size > MOST_BYTES)
      return { path, problem: `it is larger than ${MOST_BYTES / 1024 ** 2} MB`, broken: false };
    const visit = await visitAdapter(path).read();
    return visit ? { path, mark, visit } : { path, problem: 'the file is empty', broken: true };
  } catch (error) {
    if (error instanceof UnreadableVisit) return { path, ...error.why };
    return { path, problem: reasonWords(error), broken: false };
  }
}

/**
 * Checks the text of a visit file. One of a newer format is read as far as it fits, and keeps the
 * number of its format, by which `newerWords` and the store know it.
 */
export function visitFrom(text: string): { visit: Visit } | NoVisit {
  const parsed = parsedJson(text);
  if ('problem' in parsed) return { problem: parsed.problem, broken: true };
  const { data } = parsed;
  const version = (data as { formatVersion?: unknown } | null)?.formatVersion;
  if (typeof version === 'number' && version > FORMAT_VERSION) {
    const read = Visit.safeParse({ ...(data as object), formatVersion: FORMAT_VERSION });
    if (read.success) return { visit: { ...read.data, formatVersion: version } as Visit };
    return {
      problem: `it was written by a newer Tussock (format ${version}; this one reads ${FORMAT_VERSION})`,
      broken: false,
    };
  }
  const read = Visit.safeParse(migrated(data));
  if (read.success) return { visit: read.data };
  return { problem: `it is not a visit, ${issueWords(read.error.issues[0])}`, broken: true };
}

/** What is to be said of a visit that a newer version wrote; null for any other. */
export function newerWords(visit: Visit): string | null {
  // The schema knows one format only; a newer one keeps its number when it is read.
  const format: number = visit.formatVersion;
  return format > FORMAT_VERSION
    ? `was written by a newer Tussock (format ${format}; this one writes ${FORMAT_VERSION}): it can be read here and is never changed.`
    : null;
}

function issueWords(issue: z.core.$ZodIssue | undefined): string {
  if (issue === undefined) return 'not understood';
  const where = issue.path.length > 0 ? `at ${issue.path.join('.')}: ` : '';
  const words = issue.message
    .replace(/^Invalid (?:input|option): expected (.*), received undefined$/, 'missing, a $1')
    .replace(/^Invalid (?:input|option): expected (.*), received (.*)$/, 'a $1 is needed, not a $2')
    .replace(/^Invalid (?:input|option): expected /, 'needed is ');
  return where + words;
}
