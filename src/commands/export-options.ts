import { Temporal } from 'temporal-polyfill';
import { LICENCES, type Licence } from '../outputs/archive-eml.ts';
import type { TableForm } from '../outputs/csv-rows.ts';
import { EXIT, Refusal } from './refusal.ts';

/** The options of `tussock export` as typed. */
export interface ExportOptions {
  last?: boolean;
  all?: boolean;
  from?: string;
  to?: string;
  year?: string;
  place?: string;
  group?: string;
  table?: string;
  columns?: boolean;
  decimal?: string;
  separator?: string;
  darwinCore?: boolean;
  archive?: string;
  geojson?: boolean;
  gpx?: boolean;
  absences?: boolean;
  by?: string[];
  title?: string;
  licence?: string;
  exact?: boolean;
}

const TABLES = ['entries', 'species', 'matrix'] as const;
type TableName = (typeof TABLES)[number];

/** Which visits: one by its file, the last one, or all that fit. Dates are local, both inclusive. */
export type Choice =
  | { file: string }
  | { last: true }
  | { from: string | null; to: string | null; place: string | null };

/** What they are written as. */
export type Form =
  | { as: 'table'; table: TableName; form: TableForm }
  | { as: 'darwin-core' }
  | { as: 'archive'; path: string; title: string | null; licence: Licence | null }
  | { as: 'geojson' }
  | { as: 'gpx' };

function refuse(sentence: string): never {
  throw new Refusal(EXIT.usage, sentence);
}

/** Which visits are asked for. */
export function choiceOf(file: string | undefined, options: ExportOptions): Choice {
  const { last, all, from, to, year, place, group } = options;
  const many = [all, from, to, year, place].some((each) => each !== undefined);
  const ways = [file !== undefined, last === true, many].filter(Boolean).length;
  if (ways > 1)
    refuse(
      'Choose the visits in one way: a file, --last, or --all, --year, --from, --to, --place.',
    );
  if (file !== undefined) return { file };
  if (last) return { last };
  if (!many && group === undefined)
    refuse(
      'Say which visits: tussock export FILE, or --last, --year 2026, --from DATE --to DATE, --place NAME, --group birds or --all.',
    );
  const dates = datesOf(options);
  return { ...dates, place: place ?? null };
}

function datesOf({ from, to, year }: ExportOptions): { from: string | null; to: string | null } {
  if (year !== undefined) {
    if (from !== undefined || to !== undefined)
      refuse('Give --year, or --from and --to, not both.');
    if (!/^\d{4}$/.test(year)) refuse(`"${year}" is no year: write one such as 2026.`);
    return { from: `${year}-01-01`, to: `${year}-12-31` };
  }
  for (const date of [from, to]) if (date !== undefined && !isDate(date)) refuse(badDate(date));
  if (from !== undefined && to !== undefined && from > to)
    refuse(`--from ${from} is after --to ${to}: give the earlier date first.`);
  return { from: from ?? null, to: to ?? null };
}

function badDate(text: string): string {
  return `"${text}" is no date: write year, month and day, such as 2026-11-14.`;
}

function isDate(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false;
  try {
    Temporal.PlainDate.from(text);
    return true;
  } catch {
    return false;
  }
}

/** What is to be written. Options that another form would need are refused, not passed over. */
export function formOf(options: ExportOptions): Form {
  const { darwinCore, archive, geojson, gpx, table, columns } = options;
  const asked = [darwinCore, archive, geojson, gpx, table].filter((each) => each !== undefined);
  if (asked.length > 1)
    refuse('Choose one form: --table, --darwin-core, --archive, --geojson or --gpx.');
  const darwin = darwinCore === true || archive !== undefined;
  if (options.absences && !darwin)
    refuse('--absences goes with --darwin-core or --archive: tables have no row for it.');
  if (options.by !== undefined && !darwin) refuse('--by goes with --darwin-core or --archive.');
  if (archive === undefined && (options.title ?? options.licence) !== undefined)
    refuse('--title and --licence go with --archive, which has metadata.');
  if ((darwin || geojson || gpx) && (options.decimal ?? options.separator) !== undefined)
    refuse('--decimal and --separator go with tables; the other forms are set by their standards.');
  if (columns && (archive !== undefined || geojson || gpx))
    refuse('--columns tells of tables and of --darwin-core.');
  if (darwinCore) return { as: 'darwin-core' };
  if (archive !== undefined)
    return {
      as: 'archive',
      path: archive,
      title: options.title ?? null,
      licence: licenceOf(options),
    };
  if (geojson) return { as: 'geojson' };
  if (gpx) return { as: 'gpx' };
  return { as: 'table', table: tableOf(table), form: tableForm(options) };
}

function tableOf(named: string | undefined): TableName {
  if (named === undefined) return 'entries';
  const table = TABLES.find((name) => name === named);
  return table ?? refuse(`There is no table "${named}": choose ${TABLES.join(', ')}.`);
}

function tableForm({ decimal = '.', separator = ',' }: ExportOptions): TableForm {
  if (decimal !== '.' && decimal !== ',')
    refuse(`"${decimal}" is no decimal sign: write a point or a comma.`);
  const sign = separator === 'tab' || separator === '\\t' ? '\t' : separator;
  if (sign !== ',' && sign !== ';' && sign !== '\t')
    refuse(`"${separator}" can't separate cells: write a comma, a semicolon or tab.`);
  return { separator: sign, decimal, apostrophes: true };
}

function licenceOf({ licence }: ExportOptions): Licence | null {
  if (licence === undefined) return null;
  const names = Object.keys(LICENCES) as Licence[];
  const known = names.find((name) => name.toLowerCase() === licence.toLowerCase());
  return known ?? refuse(`"${licence}" is not known: choose ${names.join(', ')}.`);
}
