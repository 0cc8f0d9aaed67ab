import { stat } from 'node:fs/promises';
import { homedir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { createDurably } from '../notebook/durable-file.ts';
import { reasonWords } from '../notebook/reason.ts';
import { visitText } from '../notebook/visit-file.ts';
import { visitPath } from '../notebook/visit-name.ts';
import type { Visit } from '../visit/visit.ts';

const MOST_COPIES = 99;

/**
 * Writes a visit that can't be saved in its place as a new file in another folder, which must be there;
 * never over a file. Says in a sentence what came of it; `done` where the file is on disk.
 */
export async function saveElsewhere(
  named: string,
  visit: Visit,
): Promise<{ words: string; done: boolean }> {
  const folder = resolve(named.replace(/^~(?=$|[/\\])/, homedir()));
  try {
    if (!(await stat(folder)).isDirectory())
      return { words: `${folder} is not a folder.`, done: false };
    for (let copy = 1; copy <= MOST_COPIES; copy += 1) {
      const path = join(folder, basename(visitPath(folder, visit, copy)));
      if (await createDurably(path, visitText(visit)))
        return { words: `The visit up to now is also in ${path}.`, done: true };
    }
    return { words: `Every name for it in ${folder} is taken.`, done: false };
  } catch (error) {
    return { words: `Not written to ${folder}: ${reasonWords(error)}.`, done: false };
  }
}
