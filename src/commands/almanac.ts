import { almanacOf, visitsIn } from '../almanac/asking/almanac.ts';
import { groupsFrom } from '../almanac/asking/complete.ts';
import type { TaxonSearch } from '../almanac/asking/reading.ts';
import { type Report, reportOf } from '../almanac/telling/report.ts';
import { reportLines } from '../almanac/telling/report-lines.ts';
import { readVisits, visitFiles } from '../notebook/notebook.ts';
import { harmless } from '../screens/paint.ts';
import { knownFrom } from '../taxa/known.ts';
import { REGIONS, type Region } from '../taxa/regions.ts';
import { clearHit, search } from '../taxa/search.ts';
import type { SpeciesList } from '../taxa/species-list.ts';
import { indexTaxa, type TaxonIndex } from '../taxa/taxon-index.ts';
import { taxonKey, taxonName } from '../visit/entry.ts';
import { dateOf, stamp } from '../visit/time.ts';
import { groupsOf, listsInUse, shippedLists, taxaInUse } from './lists-in-use.ts';
import { EXIT, Refusal } from './refusal.ts';

export interface AlmanacOptions {
  json?: boolean;
  figures?: boolean;
  width?: string;
}

/** Where answers go, and how the world is when one asks. */
interface Io {
  answer(line: string): void;
  complain(line: string): void;
}

interface Moment {
  /** Epoch milliseconds. */
  now: number;
  timeZone: string;
  /** Of the terminal; null where there is none. */
  columns: number | null;
}

const LEAST_WIDTH = 40;
const MOST_WIDTH = 1000;
const USUAL_WIDTH = 80;

/** Asks the notebook in words and prints the answer. Returns the exit code. */
export async function askAlmanac(
  notebookIn: () => Promise<string>,
  words: string,
  options: AlmanacOptions,
  { now, timeZone, columns }: Moment,
  io: Io,
): Promise<number> {
  const width = widthIn(options.width) ?? Math.max(LEAST_WIDTH, columns ?? USUAL_WIDTH);
  const notebook = await notebookIn();
  const inUse = await listsInUse(notebook, timeZone);
  const { visits, problems } = await readVisits(await visitFiles(notebook));
  for (const problem of [...inUse.problems, ...problems.map((each) => each.words)])
    io.complain(problem);
  if (visits.length === 0)
    throw new Refusal(
      EXIT.notTaken,
      `There is no visit in ${notebook} yet: log one, or try tussock demo.`,
    );
  const index = indexTaxa(taxaInUse(inUse));
  const all = visits.map(({ visit }) => visit);
  const report = safe(
    reportOf(words, {
      visits: visitsIn(almanacOf(all)),
      search: listSearch(index),
      groupOf: groupsFrom(groupsOf([...(await everyShipped()), ...inUse.lists])),
      index,
      known: knownFrom(all),
      today: dateOf(stamp(now, timeZone)),
      figures: options.figures === true,
    }),
  );
  if (report.unknown.length > 0) throw new Refusal(EXIT.notTaken, unknownWords(report.unknown));
  const lines = options.json
    ? JSON.stringify(report, null, 2).split('\n')
    : reportLines(report, width);
  for (const line of lines) io.answer(line);
  return EXIT.done;
}

/** An entry may come from a list that is no longer in use. */
async function everyShipped(): Promise<SpeciesList[]> {
  const regions = Object.keys(REGIONS) as Region[];
  return (await Promise.all(regions.map(shippedLists))).flat();
}

/** The taxa that words name without doubt, or else those whose names have them. Guesses are not taken. */
function listSearch(index: TaxonIndex): TaxonSearch {
  return (words) => {
    const hits = search(index, words, () => 0);
    const clear = clearHit(hits);
    const found = clear ? [clear] : hits.filter(({ how }) => how === 'named');
    return found.map(({ taxon }) => ({ key: taxonKey(taxon), name: taxonName(taxon) }));
  };
}

/** A report is plain data, so that what files hold can be made harmless before it is measured and laid out. */
function safe(report: Report): Report {
  return JSON.parse(
    JSON.stringify(report, (_, value) => (typeof value === 'string' ? harmless(value) : value)),
  );
}

function unknownWords(words: readonly string[]): string {
  const quoted = words.map((word) => `"${word}"`).join(' and ');
  return `Nothing in this notebook is called ${quoted}, and no description has it: ask for a species, place, group, month, year or category, such as: tern may.`;
}

function widthIn(text: string | undefined): number | null {
  if (text === undefined) return null;
  const width = /^\d{1,4}$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (width >= LEAST_WIDTH && width <= MOST_WIDTH) return width;
  throw new Refusal(
    EXIT.usage,
    `--width "${text}" is no width: write columns from ${LEAST_WIDTH} to ${MOST_WIDTH}.`,
  );
}
