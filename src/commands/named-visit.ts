import { access } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { type OpenedVisit, readVisit } from '../notebook/visit-file.ts';
import { EXIT, Refusal } from './refusal.ts';

/** The file of a visit, as a path or as its name in the notebook. Refuses where there is none. */
export async function fileNamed(notebook: string, file: string): Promise<string> {
  const name = file.endsWith('.json') ? file : `${file}.json`;
  const inNotebook = join(notebook, 'visits', file.slice(0, 4), name);
  const path = (await exists(file)) ? resolve(file) : inNotebook;
  if (await exists(path)) return path;
  throw new Refusal(EXIT.notTaken, `There is no visit file ${file}, here or in ${notebook}.`);
}

/** The visit of a file, here or in the notebook. Refuses what can't be read. */
export async function visitNamed(notebook: string, file: string): Promise<OpenedVisit> {
  const path = await fileNamed(notebook, file);
  const read = await readVisit(path);
  if ('visit' in read) return read;
  throw new Refusal(EXIT.notTaken, `${path} can't be read (${read.problem}). It is left as it is.`);
}

async function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
