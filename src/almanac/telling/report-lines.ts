import { COUNT_RULE } from '../figures/number.ts';
import type { FigureTold } from './figures-told.ts';
import { firstRows, placeRows, speciesRows, taxaRows } from './page-lines.ts';
import type { EntryTold, Report } from './report.ts';
import { headed, sentenceRows, tableRows } from './rows.ts';
import { yearRows } from './year-lines.ts';

const MOST_ENTRIES = 20;
const MOST_WEEK = 12;

/** A report as lines, none wider than `width` (from 40 on); ASCII but for the names and words in it. */
export function reportLines(report: Report, width: number): string[] {
  const { species, places, years, taxa, firsts, entries, described, week, figures } = report;
  const asked = report.understood.length > 0;
  const list = species.length === 0 ? taxa : null;
  return [
    ...(asked ? sentenceRows(report.sentence, width) : []),
    ...report.notes.flatMap((note) => sentenceRows(note, width)),
    ...(week === null ? [] : weekRows(report, width)),
    ...species.flatMap((page) => speciesRows(page, width)),
    ...places.flatMap((place) => placeRows(place, width)),
    ...(years === null ? [] : yearRows(years, width)),
    ...taxaRows('On record: visits, first and last', list ?? [], width),
    ...firstRows('Firsts, the latest above', firsts ?? [], ['first', 'place'], width),
    ...entryRows(entries ?? [], width),
    ...headed(
      'Visits with these words',
      tableRows(
        described.map(({ date, place, description }) => [date, place ?? '', description]),
        width,
      ),
      width,
      MOST_ENTRIES,
    ),
    ...waitingRows(report.unnamed ?? 0, width),
    ...(figures === null ? [] : figureRows(figures, width)),
  ];
}

function weekRows({ week, today }: Report, width: number): string[] {
  const heading = `This week (${today.slice(5)}, three days to either side) in earlier years`;
  const rows = tableRows(
    (week ?? []).map(({ name, years, last }) => [name, last, years.join(' ')]),
    width,
  );
  if (rows.length > 0) return headed(heading, rows, width, MOST_WEEK).slice(1);
  return sentenceRows(`${heading}: no record.`, width);
}

function entryRows(entries: readonly EntryTold[], width: number): string[] {
  const rows = entries
    .slice(0, MOST_ENTRIES)
    .flatMap(({ date, time, place, name, count, description }) => [
      ...sentenceRows(
        `${date} ${time} ${name}, ${count}${place === null ? '' : `, ${place}`}`,
        width,
        '  ',
      ),
      ...(description === null ? [] : sentenceRows(description, width, '    ')),
    ]);
  const more = entries.length - MOST_ENTRIES;
  const left = more > 0 ? [`  and ${more} more; --json has all`] : [];
  return headed('Entries, the latest above', [...rows, ...left], width);
}

function waitingRows(number: number, width: number): string[] {
  if (number === 0) return [];
  const entries = number === 1 ? '1 entry waits' : `${number} entries wait`;
  return ['', ...sentenceRows(`${entries} for a name: tussock almanac unnamed`, width)];
}

function figureRows(figures: readonly FigureTold[], width: number): string[] {
  const of = [...new Set(figures.map((each) => each.of))];
  if (of.length === 0) return ['', 'Figures: nothing on record to make them of.'];
  return [
    ...of.flatMap((group) => {
      const own = figures.filter((each) => each.of === group);
      const notes = new Set(own.flatMap(({ figure }) => ('notes' in figure ? figure.notes : [])));
      return [
        ...headed(
          `Figures: ${group}`,
          own.flatMap((each) => oneFigure(each, width)),
          width,
        ),
        ...[...notes].flatMap((note) => sentenceRows(`! ${note}`, width, '  ')),
      ];
    }),
    '',
    ...sentenceRows(COUNT_RULE, width),
  ];
}

function oneFigure({ name, needs, shown, figure }: FigureTold, width: number): string[] {
  if ('refused' in figure) return sentenceRows(`${name}: refused. ${figure.refused}`, width, '  ');
  const [only, ...more] = shown;
  const values =
    more.length === 0
      ? sentenceRows(`${name}: ${only ?? ''}`, width, '  ')
      : [`  ${name}:`, ...shown.flatMap((each) => sentenceRows(each, width, '    '))];
  return [...values, ...sentenceRows(needs, width, '    ')];
}
