import { readFile } from 'node:fs/promises';
import type { SpeciesList } from '../taxa/species-list.ts';

/** Every species list that ships with the program, as the build read and checked it. */
const FILE = new URL('./lists.json', import.meta.url);

export async function shippedLists(file = FILE): Promise<SpeciesList[]> {
  return JSON.parse(await readFile(file, 'utf8'));
}

/** The groups of lists, from the last word of their names: `birds` of `britain-ireland-birds`. */
export function groupsOf(lists: readonly SpeciesList[]): string[] {
  return [...new Set(lists.map((list) => list.name.split('-').at(-1) ?? list.name))];
}
