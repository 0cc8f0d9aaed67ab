import { access, constants, readdir, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import envPaths from 'env-paths';
import type { Visit } from '../visit/visit.ts';
import { isCode, makeFolder } from './durable-file.ts';
import { reasonWords } from './reason.ts';
import { type OpenedVisit, readVisit } from './visit-file.ts';

/** The notebook folder: the option, else `TUSSOCK_NOTEBOOK`, else the platform's place for such data. */
export function notebookFolder(option: string | undefined, environment: NodeJS.ProcessEnv): string {
  const named = option ?? environment.TUSSOCK_NOTEBOOK;
  return named === undefined || named === ''
    ? envPaths('tussock', { suffix: '' }).data
    : resolve(named);
}

/**
 * Makes sure of the notebook folder: null when it can be read and written, else a sentence. A folder
 * that is not there is made, unless there is nothing to `make` it for.
 */
export async function openNotebook(folder: string, make: boolean): Promise<string | null> {
  const mend = 'Name another folder with --notebook DIR or TUSSOCK_NOTEBOOK, or mend its rights.';
  try {
    if (make) await makeFolder(folder);
    if (!(await stat(folder)).isDirectory())
      return `The notebook ${folder} is not a folder. ${mend}`;
    await access(folder, constants.R_OK | constants.W_OK | constants.X_OK);
    await listing(join(folder, 'visits'));
    return null;
  } catch (error) {
    if (!make && isCode(error, 'ENOENT'))
      return `There is no notebook ${folder} yet. Log a visit first, or name another with --notebook DIR.`;
    return `The notebook ${folder} can't be used: ${reasonWords(error)}. ${mend}`;
  }
}

/** Every visit file of a notebook, oldest first; their names begin with the date. */
export async function visitFiles(folder: string): Promise<string[]> {
  const visits = join(folder, 'visits');
  const years = (await listing(visits)).filter((name) => /^\d{4}$/.test(name)).sort();
  const files: string[] = [];
  for (const year of years) {
    const names = (await listing(join(visits, year))).filter((name) =>
      /^\d{4}-.*\.json$/.test(name),
    );
    files.push(...names.sort().map((name) => join(visits, year, name)));
  }
  return files;
}

async function listing(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if (isCode(error, 'ENOENT')) return [];
    throw error;
  }
}

/** The visits that could be read, and a sentence for each file that could not. */
export interface ReadVisits {
  visits: OpenedVisit[];
  problems: { path: string; words: string }[];
}

/** Reads visit files. Of two files of one visit (a copy left behind) the one with more changes counts. */
export async function readVisits(paths: readonly string[]): Promise<ReadVisits> {
  const byId = new Map<Visit['id'], OpenedVisit>();
  const problems: ReadVisits['problems'] = [];
  for (const path of paths) {
    const read = await readVisit(path);
    if ('problem' in read) {
      const words = `${path} can't be read (${read.problem}). It is left as it is.`;
      problems.push({ path, words });
      continue;
    }
    const other = byId.get(read.visit.id);
    if (!other || other.visit.changes.length < read.visit.changes.length)
      byId.set(read.visit.id, read);
  }
  return { visits: [...byId.values()], problems };
}
