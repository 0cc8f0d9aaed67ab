import { basename, join } from 'node:path';
import { moveDurably } from './durable-file.ts';
import { momentName } from './moment-name.ts';

const MOST_COPIES = 999;

/**
 * Moves a file out of the way into `set-aside/`, under the time (epoch milliseconds) and its name,
 * durably and never over another. Gives its new path; rejects with the system's error.
 */
export async function setAside(notebook: string, path: string, now: number): Promise<string> {
  for (let copy = 1; copy <= MOST_COPIES; copy += 1) {
    const number = copy > 1 ? `-${copy}` : '';
    const to = join(notebook, 'set-aside', `${momentName(now)}${number}-${basename(path)}`);
    if (await moveDurably(path, to)) return to;
  }
  throw new Error(`every name for ${basename(path)} in set-aside is taken`);
}
