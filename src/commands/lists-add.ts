import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { createDurably, replaceDurably } from '../notebook/durable-file.ts';
import { reasonWords } from '../notebook/reason.ts';
import { readRenamed } from '../taxa/list-columns.ts';
import { listText } from '../taxa/list-text.ts';
import { type ListIdentity, readSpeciesList, type SpeciesList } from '../taxa/species-list.ts';
import { ownListPath } from './lists-in-use.ts';
import { EXIT, Refusal } from './refusal.ts';

export interface AddOptions {
  name?: string;
  region?: string;
  group?: string;
  columns?: string;
}

/** Larger files are no species lists; all species that have a name would fit. In bytes. */
const MOST_BYTES = 200_000_000;

/**
 * Adds a user's list to the notebook, checked and ready to be read at a start. Rows that do not fit
 * are told and left out. Returns the exit code: 1 if there was any such row.
 */
export async function addList(
  notebook: string,
  file: string,
  options: AddOptions,
  io: { answer(line: string): void; complain(line: string): void },
): Promise<number> {
  const { list, encoding } = await readListFile(file, options);
  for (const problem of list.problems) io.complain(problem);
  if (list.taxa.length === 0)
    throw new Refusal(
      EXIT.notTaken,
      `${file} holds no row that could be taken; nothing was added.`,
    );
  const path = ownListPath(notebook, list.name);
  const text = JSON.stringify({ ...list, problems: [] });
  const made = await written(path, text);
  if (encoding !== 'UTF-8') io.answer(`Read as ${encoding}.`);
  const left = list.problems.length;
  io.answer(
    `${made ? 'Added' : 'Replaced'} ${list.name}: ${list.taxa.length} taxa${left === 0 ? '' : `, ${left} ${left === 1 ? 'row' : 'rows'} left out`}. It is in use from the next start on.`,
  );
  return left === 0 ? EXIT.done : EXIT.notTaken;
}

/** Writes a list; whether it is a new one. */
async function written(path: string, text: string): Promise<boolean> {
  try {
    const made = await createDurably(path, text);
    if (!made) await replaceDurably(path, text);
    return made;
  } catch (error) {
    throw new Refusal(EXIT.notebook, `${path} can't be written: ${reasonWords(error)}.`);
  }
}

/**
 * A user's file as a list, with the encoding in which it was written. `otherwise` is what it is called
 * where its name has no letters.
 */
export async function readListFile(
  file: string,
  options: AddOptions,
  otherwise = '',
): Promise<{ list: SpeciesList; encoding: string }> {
  const renamed = options.columns === undefined ? {} : readRenamed(options.columns);
  if (renamed === null)
    throw new Refusal(
      EXIT.usage,
      '--columns: write pairs such as "Latin=scientificName,English=vernacularName".',
    );
  const bytes = await readFile(file).catch((error: unknown) => {
    throw new Refusal(EXIT.notTaken, `${file} can't be read: ${reasonWords(error)}.`);
  });
  if (bytes.length > MOST_BYTES)
    throw new Refusal(EXIT.notTaken, `${file} is too large for a species list.`);
  const { text, encoding } = listText(bytes);
  return { list: readSpeciesList(identityOf(file, options, otherwise), text, renamed), encoding };
}

/** Its name is also that of a file in the notebook: small letters, digits and hyphens. */
function identityOf(
  file: string,
  { name, region, group }: AddOptions,
  otherwise: string,
): ListIdentity {
  const given = name ?? basename(file).replace(/\.[^.]*$/, '');
  const plain = plainName(given) || otherwise;
  if (plain === '')
    throw new Refusal(EXIT.usage, `"${given}" gives no name for a list: name it with --name.`);
  return {
    name: `own-${plain}`,
    region: region ?? 'own',
    group: group ?? plain,
  };
}

/** A file's name may have 255 bytes; a letter takes up to four. */
const LONGEST = 50;

/** Letters of any script stay, so that two names in it don't become one. */
function plainName(given: string): string {
  const letters = given
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}+/gu, '')
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .replace(/^own-/, '');
  return [...letters].slice(0, LONGEST).join('').replace(/-+$/, '');
}
