import { visitFiles } from '../notebook/notebook.ts';
import { meetSpecies, type SpeciesMet } from '../outputs/absences.ts';
import { type Chosen, type Source, sourceOf } from './export-chosen.ts';
import { type Choice, choiceOf, type ExportOptions, type Form, formOf } from './export-options.ts';
import { type Tally, tallied, tallyWords } from './export-tally.ts';
import { type Beside, columnsOf, textOf } from './export-text.ts';
import { factsOfLists, groupAsked } from './lists-known.ts';
import { EXIT, Refusal } from './refusal.ts';

/** Where an export goes. `write` says whether anybody still reads. */
export interface ExportIo {
  write(text: string): Promise<boolean>;
  answer(line: string): void;
  complain(line: string): void;
}

/** What an export is handed of the world: a new identifier and the moment. */
export interface Moment {
  id: string;
  now: Date;
}

/** Writes the chosen visits in the form that is asked for, and to `complain` what was withheld and why. */
export async function exportVisits(
  notebook: string,
  file: string | undefined,
  options: ExportOptions,
  moment: Moment,
  io: ExportIo,
): Promise<void> {
  const form = formOf(options);
  const choice = choiceOf(file, options);
  const known = await factsOfLists(notebook, io.complain);
  const group = groupAsked(options.group, known);
  const exact = options.exact === true;
  const firsts = form.as === 'table' && form.table === 'entries';
  const giving = { facts: known, exact, group, firsts };
  const source = await sourceOf(notebook, await visitFiles(notebook), choice, giving);
  const once = onlyOnce(io.complain);
  const met = options.absences === true ? await speciesMet(source, once) : null;
  const tally: Tally = { visits: 0, hidden: 0, unnamed: 0 };
  const chosen = await notNone(tallied(source(once), tally), notebook, choice);
  const beside = { facts: known, by: options.by ?? [], met };
  if (form.as === 'archive') await archived(form, chosen, beside, options, moment);
  else for await (const text of textOf(form, chosen, beside)) if (!(await io.write(text))) return;
  for (const words of tallyWords(tally, form, choice, exact)) io.complain(words);
}

/** Prints the columns of a table, each with a sentence. */
export function tellColumns(options: ExportOptions, io: Pick<ExportIo, 'answer'>): void {
  const form = formOf(options);
  if (form.as === 'archive') return;
  for (const { name, sentence } of columnsOf(form)) io.answer(`${name}: ${sentence}`);
}

async function archived(
  form: Extract<Form, { as: 'archive' }>,
  chosen: AsyncIterable<Chosen>,
  beside: Beside,
  { exact, absences }: ExportOptions,
  { id, now }: Moment,
): Promise<void> {
  const { refuseTaken, writeArchive } = await import('./export-archive.ts');
  await refuseTaken(form.path);
  await writeArchive(form.path, chosen, beside, {
    packageId: `urn:uuid:${id}`,
    title: form.title,
    by: beside.by,
    licence: form.licence,
    published: now.toISOString().slice(0, 10),
    absences: absences === true,
    exact: exact === true,
    made: now,
  });
}

async function speciesMet(source: Source, complain: (words: string) => void): Promise<SpeciesMet> {
  const met: SpeciesMet = new Map();
  for await (const { visit } of source(complain)) meetSpecies(met, visit);
  return met;
}

/** The same visits, once it is sure that there is one: nothing is written of none. */
async function notNone(
  chosen: AsyncGenerator<Chosen>,
  notebook: string,
  choice: Choice,
): Promise<AsyncGenerator<Chosen>> {
  const first = await chosen.next();
  if (first.done) {
    const where = 'place' in choice && choice.place !== null ? ` at ${choice.place}` : '';
    throw new Refusal(EXIT.notTaken, `There is no visit${where} in ${notebook} that fits.`);
  }
  return (async function* all() {
    yield first.value;
    yield* chosen;
  })();
}

/** A source that is read twice would else tell each fault twice. */
function onlyOnce(complain: (words: string) => void): (words: string) => void {
  const told = new Set<string>();
  return (words) => {
    if (told.has(words)) return;
    told.add(words);
    complain(words);
  };
}
