import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { SpeciesList } from '../../src/taxa/species-list.ts';
import { type Ran, run } from './run.ts';

/** An invented observer's table of two real moths. */
export const TABLE =
  'scientificName,vernacularName\nArctia caja,Garden Tiger\nSaturnia pavonia,Emperor é';

/** What the tests of species lists do in a notebook. */
export function listsIn(notebook: string) {
  const lists = (...args: string[]) => run(['lists', ...args], { notebook });
  return {
    lists,
    /** Writes a table beside the notebook's own files and adds it. */
    async adding(bytes: string | Uint8Array, ...args: string[]): Promise<Ran> {
      await writeFile(join(notebook, 'moths.csv'), bytes);
      return lists('add', 'moths.csv', ...args);
    },
    /** Names of the files of lists that were added. */
    async ownFiles(): Promise<string[]> {
      return (await readdir(join(notebook, 'lists')).catch(() => [])).sort();
    },
    async ownList(name: string): Promise<SpeciesList> {
      return JSON.parse(await readFile(join(notebook, 'lists', `${name}.json`), 'utf8'));
    },
    /** Lines of the settings that are in force. */
    async settings(): Promise<string[]> {
      const text = await readFile(join(notebook, 'settings.yaml'), 'utf8');
      return text.split('\n').filter((line) => /^[^#]/.test(line));
    },
    field: (...lines: string[]) => run(['field', '--stdin'], { notebook, input: lines.join('\n') }),
  };
}
