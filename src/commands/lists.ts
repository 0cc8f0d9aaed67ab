import { readdir, readFile } from 'node:fs/promises';
import { readSettings, type Settings } from '../notebook/settings.ts';
import { languagesOf } from '../taxa/languages.ts';
import { checkedTogether } from '../taxa/list-check.ts';
import { isThreatened } from '../taxa/red-list.ts';
import { listName, REGIONS, type Region } from '../taxa/regions.ts';
import { readSpeciesList, type SpeciesList } from '../taxa/species-list.ts';
import { changeOrRefuse } from './change-settings.ts';
import { readListFile } from './lists-add.ts';
import { listsInUse, ownLists, shippedLists } from './lists-in-use.ts';
import { EXIT, Refusal } from './refusal.ts';

interface Answers {
  answer(line: string): void;
  complain(line: string): void;
}

const ALL_REGIONS = Object.keys(REGIONS) as Region[];
/** The lists as they were compiled, beside the program. */
const TAXA = new URL('../taxa/', import.meta.url);

/** Shows every list there is, and which are in use at the place of a time zone. */
export async function showLists(notebook: string, timeZone: string, io: Answers): Promise<void> {
  const [{ lists, problems, read }, own, ...shipped] = await Promise.all([
    listsInUse(notebook, timeZone),
    ownLists(notebook),
    ...ALL_REGIONS.map(shippedLists),
  ]);
  for (const problem of problems) io.complain(problem);
  const used = new Set(lists.map(({ name }) => name));
  const row = (cells: readonly string[]) =>
    [cells[0]?.padEnd(1), cells[1]?.padEnd(41), cells[2]?.padStart(6), cells[3]?.padStart(11)]
      .join(' ')
      .trimEnd();
  const rows = (all: readonly SpeciesList[]) => {
    for (const list of all) io.answer(row(cellsOf(list, used.has(list.name))));
  };
  io.answer(row(['', 'list (* in use)', 'taxa', 'threatened']));
  ALL_REGIONS.forEach((region, at) => {
    io.answer(`${REGIONS[region]} (sources: taxa/${region}/sources.md)`);
    rows(shipped[at] ?? []);
  });
  if (own.lists.length > 0) io.answer("This notebook's own");
  rows(own.lists);
  const taxa = lists.reduce((sum, list) => sum + list.taxa.length, 0);
  io.answer(`In use: ${lists.length} lists, ${taxa} taxa, ${chosenWords(read.settings, timeZone)}`);
  const { shown, searched } = read.settings.languages;
  const others = languagesOf(lists.flatMap((list) => list.taxa));
  io.answer(
    `Names are shown in ${shown}, searched in ${searched.join(', ')}${others.length === 0 ? '' : `; the lists in use also have ${others.join(', ')}`}.`,
  );
}

function cellsOf({ name, taxa }: SpeciesList, inUse: boolean): string[] {
  const threatened = taxa.filter((taxon) => isThreatened(taxon.redListCategory)).length;
  return [inUse ? '*' : '', name, String(taxa.length), String(threatened)];
}

function chosenWords({ lists }: Settings, timeZone: string): string {
  if (lists !== null) return 'as chosen with tussock lists use.';
  return `those of the region for ${timeZone} and all own ones. tussock lists use NAME... chooses others.`;
}

/** Chooses the lists in use by their names, or leaves the choice to the place again where there is none. */
export async function chooseLists(
  notebook: string,
  names: readonly string[],
  io: Answers,
): Promise<void> {
  const read = await readSettings(notebook);
  const own = await ownLists(notebook);
  const shipped = await Promise.all(ALL_REGIONS.map(shippedLists));
  const all = [...own.lists, ...shipped.flat()];
  const chosen = [...new Set(names.flatMap((name) => namesFor(name, all)))];
  await changeOrRefuse(notebook, read, { lists: names.length === 0 ? null : chosen });
  io.answer(
    names.length === 0
      ? 'The place decides which lists are in use.'
      : `In use from the next start on: ${chosen.join(', ')}.`,
  );
}

/** The lists that a word names: one list, or all lists of a region. */
function namesFor(word: string, all: readonly SpeciesList[]): string[] {
  const found = all.filter(({ name, region }) => name === word || region === word);
  if (found.length > 0) return found.map(({ name }) => name);
  throw new Refusal(
    EXIT.usage,
    `There is no list or region ${word}: tussock lists shows all of them.`,
  );
}

/** Chooses in which languages names are shown and searched. */
export async function chooseLanguages(
  notebook: string,
  { shown, searched }: { shown?: string; searched?: string },
  io: Answers,
): Promise<void> {
  const { lists, read } = await listsInUse(notebook, 'UTC');
  const { languages } = read.settings;
  const show = shown?.toLowerCase() ?? languages.shown;
  const asked = searched?.toLowerCase().match(/[^,\s]+/g);
  const search = [...new Set(asked ?? [show, ...languages.searched])];
  const known = ['en', ...languagesOf(lists.flatMap((list) => list.taxa))];
  const strange = [show, ...search].find((tag) => !known.includes(tag));
  if (strange !== undefined)
    throw new Refusal(
      EXIT.usage,
      `No list in use has names in "${strange}"; they have ${known.join(', ')}. A column vernacularName:${strange} in a list of your own brings them.`,
    );
  await changeOrRefuse(notebook, read, {
    'languages.shown': show,
    'languages.searched': search,
  });
  io.answer(
    `Names are shown in ${show} and searched in ${search.join(', ')} from the next start on.`,
  );
}

/**
 * Checks files as lists, or without any the lists that ship with the program, as they were compiled.
 * Returns the exit code: 1 where something is wrong.
 */
export async function checkLists(files: readonly string[], io: Answers): Promise<number> {
  const lists =
    files.length === 0
      ? await compiledLists()
      : await Promise.all(files.map(async (file) => (await readListFile(file, {}, 'list')).list));
  const problems = checkedTogether(lists);
  for (const problem of problems) io.complain(problem);
  const taxa = lists.reduce((sum, list) => sum + list.taxa.length, 0);
  io.answer(
    `${lists.length} ${lists.length === 1 ? 'list' : 'lists'}, ${taxa} taxa: ${problems.length === 0 ? 'nothing is wrong' : `${problems.length} faults`}.`,
  );
  return problems.length === 0 ? EXIT.done : EXIT.notTaken;
}

async function compiledLists(): Promise<SpeciesList[]> {
  const lists: SpeciesList[] = [];
  for (const region of ALL_REGIONS)
    for (const file of (await readdir(new URL(`${region}/`, TAXA))).sort()) {
      if (!file.endsWith('.csv')) continue;
      const group = file.replace(/\.csv$/, '').replaceAll('-', ' ');
      const text = await readFile(new URL(`${region}/${file}`, TAXA), 'utf8');
      lists.push(readSpeciesList({ name: listName(region, group), region, group }, text));
    }
  return lists;
}
