/**
 * What it costs to write many visits as a table of entries or as Darwin Core, beside only reading the
 * same bytes and beside reading them as visits: time, and the memory that a program of its own needs at
 * its peak. `node bench/export.ts 2000 20000 200000` takes other sizes. The files of 2,000 visits are
 * gone over again and again, so that the disk need not hold more.
 */
import { spawnSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { type Chosen, chosenFrom } from '../src/commands/export-chosen.ts';
import type { Form } from '../src/commands/export-options.ts';
import { textOf } from '../src/commands/export-text.ts';
import { visitFiles } from '../src/notebook/notebook.ts';
import { readVisit } from '../src/notebook/visit-file.ts';
import { USUAL_FORM } from '../src/outputs/csv-rows.ts';
import { firstsInOrder } from '../src/outputs/firsts.ts';
import { type ListFacts, listFacts } from '../src/outputs/list-facts.ts';
import type { Visit } from '../src/visit/visit.ts';
import { inFolder, shipped, weeklyVisits, writeVisits } from './invented.ts';
import { clock, figure, printTable, times } from './measure.ts';

const FILES = 2000;
const ENTRIES = 10;
const SIZES = [2000, 20_000];
const KINDS = ['bytes', 'visits', 'entries', 'darwin-core'] as const;
type Kind = (typeof KINDS)[number];

interface Measured {
  milliseconds: number;
  /** Megabytes resident at the peak. */
  peak: number;
  /** Characters read or written. */
  size: number;
}

const FORMS: Record<Exclude<Kind, 'bytes' | 'visits'>, Exclude<Form, { as: 'archive' }>> = {
  entries: { as: 'table', table: 'entries', form: USUAL_FORM },
  'darwin-core': { as: 'darwin-core' },
};

async function* over(paths: readonly string[], visits: number): AsyncGenerator<Visit> {
  for (let at = 0; at < visits; at += 1) {
    const read = await readVisit(paths[at % paths.length] ?? '');
    if (!('visit' in read)) throw new Error(read.problem);
    yield read.visit;
  }
}

async function* chosen(visits: AsyncIterable<Visit>, facts: ListFacts): AsyncGenerator<Chosen> {
  const firsts = firstsInOrder(false);
  const giving = { facts, exact: false, group: null, firsts: true };
  for await (const visit of visits) {
    yield chosenFrom(visit, firsts, giving, console.error);
    firsts.learn(visit);
  }
}

async function work(kind: Kind, notebook: string, visits: number): Promise<number> {
  const paths = await visitFiles(notebook);
  let size = 0;
  if (kind === 'bytes')
    for (let at = 0; at < visits; at += 1)
      size += (await readFile(paths[at % paths.length] ?? '', 'utf8')).length;
  else if (kind === 'visits')
    for await (const visit of over(paths, visits)) size += visit.entries.length;
  else {
    const facts = listFacts([]);
    const beside = { facts, by: [], met: null };
    for await (const text of textOf(FORMS[kind], chosen(over(paths, visits), facts), beside))
      size += text.length;
  }
  return size;
}

/** A run in a Node of its own: the peak of this one would tell of all runs before. */
function measured(kind: Kind, notebook: string, visits: number): Measured {
  const args = [fileURLToPath(import.meta.url), kind, notebook, String(visits)];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout);
}

async function main(sizes: readonly number[]): Promise<void> {
  const { taxa } = await shipped();
  await inFolder(async (notebook) => {
    await writeVisits(
      notebook,
      weeklyVisits(taxa, { visits: FILES, entries: ENTRIES }, Date.UTC(2026, 0, 17, 9)),
    );
    for (const visits of sizes) {
      const runs = KINDS.map((kind) => ({ kind, ...measured(kind, notebook, visits) }));
      const [floor] = runs;
      printTable(
        `${visits} visits of ${ENTRIES} entries`,
        ['', 's', 'ms a visit', 'of the bytes', 'peak MB'],
        runs.map(({ kind, milliseconds, peak }) => [
          kind,
          figure(milliseconds / 1000),
          figure(milliseconds / visits),
          times(milliseconds, floor?.milliseconds ?? Number.NaN),
          figure(peak),
        ]),
      );
    }
  });
}

const [first, notebook, visits] = process.argv.slice(2);
const kind = KINDS.find((each) => each === first);
if (kind !== undefined && notebook !== undefined) {
  const begun = clock();
  const size = await work(kind, notebook, Number(visits));
  const peak = process.resourceUsage().maxRSS / 1024;
  console.log(JSON.stringify({ milliseconds: clock() - begun, peak, size }));
} else {
  const sizes = process.argv.slice(2).map(Number);
  await main(sizes.length > 0 ? sizes : SIZES);
}
