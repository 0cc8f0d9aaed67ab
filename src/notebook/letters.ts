import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as z from 'zod';
import { createDurably, isCode, replaceDurably } from './durable-file.ts';

/** Which species stand on which letters of the Board, by the keys of places: the notebook's `letters.json`. */
const Letters = z.looseObject({
  format: z.literal('tussock-letters'),
  formatVersion: z.literal(1),
  places: z.record(z.string(), z.record(z.string().regex(/^[a-z]$/), z.string())),
});
export type LettersOfPlaces = z.infer<typeof Letters>['places'];

function lettersPath(notebook: string): string {
  return join(notebook, 'letters.json');
}

/** The letters of every place; none where they can't be read: they are quickly laid anew. */
export async function readLetters(notebook: string): Promise<LettersOfPlaces> {
  try {
    const read = Letters.safeParse(JSON.parse(await readFile(lettersPath(notebook), 'utf8')));
    return read.success ? read.data.places : {};
  } catch (error) {
    if (isCode(error, 'ENOENT') || error instanceof SyntaxError) return {};
    throw error;
  }
}

/** The keeping that was asked for last: each waits for the one before, or an older state might stay. */
let before: Promise<void> = Promise.resolve();

/**
 * Keeps the letters of one place, and those of all others as they stand on the disk now: another program
 * may have changed them. A file that can't be read is replaced.
 */
export function keepLetters(
  notebook: string,
  place: string,
  letters: LettersOfPlaces[string],
): Promise<void> {
  const kept = before.then(() => write(notebook, place, letters));
  before = kept.catch(() => {});
  return kept;
}

async function write(
  notebook: string,
  place: string,
  letters: LettersOfPlaces[string],
): Promise<void> {
  const places = { ...(await readLetters(notebook)), [place]: letters };
  const path = lettersPath(notebook);
  const text = `${JSON.stringify({ format: 'tussock-letters', formatVersion: 1, places }, null, 2)}\n`;
  if (!(await createDurably(path, text))) await replaceDurably(path, text);
}
