import { access } from 'node:fs/promises';
import { join } from 'node:path';
import { readVisits, visitFiles } from '../notebook/notebook.ts';
import { readVisit } from '../notebook/visit-file.ts';
import { visitTable } from '../outputs/visit-table.ts';
import { knownFrom } from '../taxa/known.ts';
import { epochOf } from '../visit/time.ts';
import { EXIT, Refusal } from './refusal.ts';

/** Writes the table of one visit as CSV, and to `complain` what was withheld and why. */
export async function exportVisit(
  notebook: string,
  file: string | undefined,
  options: { last?: boolean; exact?: boolean },
  io: { write(text: string): void; complain(line: string): void },
): Promise<void> {
  const files = await visitFiles(notebook);
  const path = await chosenFile(notebook, file, options.last === true, files);
  const read = await readVisit(path);
  if ('problem' in read)
    throw new Refusal(
      EXIT.notTaken,
      `${path} can't be read: ${read.problem}. It is left as it is.`,
    );
  const { visit } = read;
  const { visits, problems } = await readVisits(files);
  for (const problem of problems) io.complain(problem);
  const before = visits
    .map((other) => other.visit)
    .filter((other) => other.id !== visit.id && epochOf(other.start) < epochOf(visit.start));
  const exact = options.exact === true;
  const { csv, hidden } = visitTable(visit, knownFrom(before), exact);
  io.write(csv);
  if (exact)
    io.complain(
      'Exact places: for your own use, and for those who may know where threatened species are.',
    );
  else if (hidden > 0)
    io.complain(
      `The place is withheld for the sake of ${hidden} ${hidden === 1 ? 'entry' : 'entries'} of threatened or sensitive species; --exact writes it.`,
    );
}

async function chosenFile(
  notebook: string,
  file: string | undefined,
  last: boolean,
  files: readonly string[],
): Promise<string> {
  if (last === (file !== undefined))
    throw new Refusal(EXIT.usage, 'Name one visit: tussock export FILE, or tussock export --last.');
  if (file === undefined) {
    const latest = files.at(-1);
    if (latest === undefined)
      throw new Refusal(EXIT.notTaken, `There is no visit in ${notebook} yet.`);
    return latest;
  }
  const inNotebook = join(
    notebook,
    'visits',
    file.slice(0, 4),
    file.endsWith('.json') ? file : `${file}.json`,
  );
  for (const path of [file, inNotebook]) if (await exists(path)) return path;
  throw new Refusal(EXIT.notTaken, `There is no visit file ${file}, here or in ${notebook}.`);
}

async function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
