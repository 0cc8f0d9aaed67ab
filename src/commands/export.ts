import { basename } from 'node:path';
import { type ReadVisits, readVisits, visitFiles } from '../notebook/notebook.ts';
import { newerWords } from '../notebook/visit-file.ts';
import { visitTable } from '../outputs/visit-table.ts';
import { knownFrom } from '../taxa/known.ts';
import { dateOf, epochOf } from '../visit/time.ts';
import type { Visit } from '../visit/visit.ts';
import { visitNamed } from './named-visit.ts';
import { EXIT, Refusal } from './refusal.ts';

/** Writes the table of one visit as CSV, and to `complain` what was withheld and why. */
export async function exportVisit(
  notebook: string,
  file: string | undefined,
  options: { last?: boolean; exact?: boolean },
  io: { write(text: string): void; complain(line: string): void },
): Promise<void> {
  const last = options.last === true;
  if (last === (file !== undefined))
    throw new Refusal(EXIT.usage, 'Name one visit: tussock export FILE, or tussock export --last.');
  const all = await readVisits(await visitFiles(notebook));
  const visit =
    file === undefined ? latest(notebook, all) : (await visitNamed(notebook, file)).visit;
  for (const { words } of all.problems) io.complain(words);
  const newer = newerWords(visit);
  if (newer !== null) io.complain(`This visit ${newer}`);
  const before = all.visits
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
      `Place and remarks are withheld for the sake of ${hidden} ${hidden === 1 ? 'entry' : 'entries'} of threatened or sensitive species; --exact writes them.`,
    );
}

/** The visit that began last. One that can't be read may be it: then none is given out as the last. */
function latest(notebook: string, { visits, problems }: ReadVisits): Visit {
  const newest = visits
    .map((read) => read.visit)
    .toSorted((one, two) => epochOf(one.start) - epochOf(two.start))
    .at(-1);
  const unread = problems.findLast(
    ({ path }) => !newest || basename(path).slice(0, 10) >= dateOf(newest.start),
  );
  if (unread !== undefined)
    throw new Refusal(
      EXIT.notTaken,
      `${unread.words} It may be the latest: name the visit instead.`,
    );
  if (!newest) throw new Refusal(EXIT.notTaken, `There is no visit in ${notebook} yet.`);
  return newest;
}
