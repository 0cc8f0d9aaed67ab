import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isCode } from '../notebook/durable-file.ts';
import { reasonWords } from '../notebook/reason.ts';
import { faultsTold, readSettings, type SettingsRead } from '../notebook/settings.ts';
import type { Values } from '../notebook/settings-keys.ts';
import { inLanguages } from '../taxa/languages.ts';
import { REGIONS, type Region, regionFor } from '../taxa/regions.ts';
import type { SpeciesList } from '../taxa/species-list.ts';
import type { Taxon } from '../taxa/taxon.ts';
import { wrongField } from '../taxa/taxon-check.ts';
import { unitedTaxa } from '../taxa/united.ts';

/** The species lists that a notebook uses, as read, and what could not be read. */
export interface ListsInUse {
  lists: SpeciesList[];
  problems: string[];
  read: SettingsRead;
}

/** A region's lists as the build read and checked them. */
export async function shippedLists(region: Region): Promise<SpeciesList[]> {
  const file = new URL(`./lists/${region}.json`, import.meta.url);
  return JSON.parse(await readFile(file, 'utf8'));
}

/** Where the notebook keeps the lists that were added to it. */
export function ownListPath(notebook: string, name: string): string {
  return join(notebook, 'lists', `${name}.json`);
}

/**
 * The settings in force, those of this run first, and their lists: those that they name, else those for the region of a time zone and all own ones; own ones
 * first. They were checked when they were built or added: a start only reads them.
 */
export async function listsInUse(
  notebook: string,
  timeZone: string,
  options: Partial<Values> = {},
): Promise<ListsInUse> {
  const read = await readSettings(notebook, options);
  const problems = faultsTold(read);
  const wanted = read.settings.lists;
  const regions = (Object.keys(REGIONS) as Region[]).filter((region) =>
    wanted === null
      ? region === regionFor(timeZone)
      : wanted.some((name) => name.startsWith(`${region}-`)),
  );
  const [own, ...shipped] = await Promise.all([ownLists(notebook), ...regions.map(shippedLists)]);
  const all = [...own.lists, ...shipped.flat()];
  const lists = wanted === null ? all : all.filter(({ name }) => wanted.includes(name));
  const missing = (wanted ?? []).filter((name) => !lists.some((list) => list.name === name));
  for (const name of missing)
    problems.push(`The species list ${name} is not there. tussock lists shows which are.`);
  return { lists, problems: [...problems, ...own.problems], read };
}

/** The taxa of the lists in use, each once, with the names that the settings ask for. */
export function taxaInUse({ lists, read }: ListsInUse): Taxon[] {
  return unitedTaxa(lists).map((taxon) => inLanguages(taxon, read.settings.languages));
}

/** The group of each list by the list's name. */
export function groupsOf(lists: readonly SpeciesList[]): Record<string, string> {
  return Object.fromEntries(lists.map(({ name, group }) => [name, group]));
}

/** The lists that were added to a notebook. */
export async function ownLists(
  notebook: string,
): Promise<{ lists: SpeciesList[]; problems: string[] }> {
  const folder = join(notebook, 'lists');
  const lists: SpeciesList[] = [];
  const problems: string[] = [];
  const names = await readdir(folder).catch((error: unknown) => {
    if (!isCode(error, 'ENOENT')) problems.push(`${folder} can't be read: ${reasonWords(error)}.`);
    return [];
  });
  for (const name of names.filter((each) => each.endsWith('.json')).sort()) {
    const path = join(folder, name);
    const read = await readFile(path, 'utf8').then(
      (text) => listFrom(text, name.replace(/\.json$/, '')),
      reasonWords,
    );
    if (typeof read === 'string')
      problems.push(`${path} can't be read (${read}). Add the list again with tussock lists add.`);
    else lists.push(read);
  }
  return { lists, problems };
}

/**
 * The list of a file, or what is wrong with it. Entries keep what a list says of a taxon, so a list that
 * was mended by hand must not bring a visit what its file can't hold.
 */
function listFrom(text: string, name: string): SpeciesList | string {
  try {
    const list = JSON.parse(text) as Partial<SpeciesList> | null;
    if (
      !Array.isArray(list?.taxa) ||
      typeof list.name !== 'string' ||
      typeof list.group !== 'string' ||
      typeof list.region !== 'string'
    )
      return 'it is not a species list';
    if (list.name !== name) return `it holds a list of another name, ${list.name}`;
    for (const [at, taxon] of list.taxa.entries()) {
      const wrong = wrongField(taxon);
      if (wrong !== null) return `taxon ${at + 1} is not whole: ${wrong}`;
    }
    return list as SpeciesList;
  } catch (error) {
    return `it is not whole JSON: ${reasonWords(error)}`;
  }
}
