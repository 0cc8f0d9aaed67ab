import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readSpeciesList, type SpeciesList } from '../taxa/species-list.ts';

/** The folder of shipped lists beside the built program. */
const FOLDER = fileURLToPath(new URL('../taxa/', import.meta.url));

/** Reads every species list that ships with the program. */
export async function shippedLists(folder = FOLDER): Promise<SpeciesList[]> {
  const files = (await readdir(folder)).filter((name) => name.endsWith('.csv')).sort();
  return Promise.all(
    files.map(async (file) =>
      readSpeciesList(basename(file, '.csv'), await readFile(join(folder, file), 'utf8')),
    ),
  );
}

/** The groups of lists, from the last word of their names: `birds` of `britain-ireland-birds`. */
export function groupsOf(lists: readonly SpeciesList[]): string[] {
  return [...new Set(lists.map((list) => list.name.split('-').at(-1) ?? list.name))];
}
