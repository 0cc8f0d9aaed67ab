import { visitFiles } from '../notebook/notebook.ts';
import { htmlReport } from '../outputs/report/html.ts';
import { markdownReport } from '../outputs/report/markdown.ts';
import { reportOf } from '../outputs/report/report.ts';
import { seasonOf, type VisitOfSeason } from '../outputs/report/season.ts';
import type { ExportIo } from './export.ts';
import { sourceOf } from './export-chosen.ts';
import { type Choice, choiceOf } from './export-options.ts';
import { factsOfLists, groupAsked } from './lists-known.ts';
import { EXIT, Refusal } from './refusal.ts';

/** The options of `tussock report` as typed. */
export interface ReportOptions {
  year?: string;
  from?: string;
  to?: string;
  place?: string;
  group?: string;
  by?: string[];
  exact?: boolean;
  markdown?: boolean;
}

/** Writes the report of the chosen visits as HTML, or as Markdown; `today` is a local date. */
export async function seasonReport(
  notebook: string,
  options: ReportOptions,
  today: string,
  io: Pick<ExportIo, 'write' | 'complain'>,
): Promise<void> {
  const choice = choiceFrom(options);
  const facts = await factsOfLists(notebook, io.complain);
  const group = groupAsked(options.group, facts);
  const exact = options.exact === true;
  const giving = { facts, exact, group, firsts: true };
  const source = await sourceOf(notebook, await visitFiles(notebook), choice, giving);
  const all: VisitOfSeason[] = [];
  for await (const each of source(io.complain)) all.push(each);
  // The title and every other visit would tell the place that a hidden one has.
  const told = choice.place === null ? all : all.filter(({ visit }) => visit.hiding === null);
  refuseNone(all.length, told.length, notebook, choice);
  const { from, to, place } = choice;
  const asked = { from, to, place, group, exact, by: options.by ?? [], made: today };
  const report = reportOf(seasonOf(told, asked, facts));
  await io.write(options.markdown ? markdownReport(report) : htmlReport(report));
  for (const words of beside(all.length - told.length, exact)) io.complain(words);
}

function choiceFrom(options: ReportOptions): Extract<Choice, { place: string | null }> {
  const { year, from, to, place, group } = options;
  if ([year, from, to, place, group].every((each) => each === undefined))
    throw new Refusal(
      EXIT.usage,
      'Say which visits: tussock report --year 2026, or --from DATE --to DATE, --place NAME or --group birds.',
    );
  const choice = choiceOf(undefined, options);
  if ('place' in choice) return choice;
  throw new Refusal(EXIT.usage, 'A report is of a season: give --year, or --from and --to.');
}

function refuseNone(
  all: number,
  told: number,
  notebook: string,
  { place }: { place: string | null },
) {
  if (told > 0) return;
  if (all > 0)
    throw new Refusal(
      EXIT.notTaken,
      `No visit at ${place} may be given out with its place: leave --place out, or add --exact for your own use.`,
    );
  const where = place === null ? '' : ` at ${place}`;
  throw new Refusal(EXIT.notTaken, `There is no visit${where} in ${notebook} that fits.`);
}

/** What who made the report has to know, and who reads it must not. */
function beside(left: number, exact: boolean): string[] {
  if (exact)
    return [
      'Exact places: for your own use, and for those who may know where threatened species are. Pass it on to nobody else; local law goes first.',
    ];
  if (left === 0) return [];
  return [
    `Left out: ${left} ${left === 1 ? 'visit' : 'visits'} to this place that may not be given out with it; --exact has them.`,
  ];
}
