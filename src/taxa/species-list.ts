import { parse } from 'csv-parse/sync';
import { taxonKey } from '../visit/entry.ts';
import { type Column, readHeader } from './list-columns.ts';
import { separatorOf } from './list-text.ts';
import { rankOf, withoutAuthor } from './scientific-name.ts';
import { type Taxon, TaxonRow } from './taxon.ts';

/** What a list is called, and of which region and group it is. */
export interface ListIdentity {
  /** Such as `britain-ireland-birds`; entries keep it. */
  name: string;
  region: string;
  group: string;
}

/** A species list as read, with a sentence for each row that could not be taken. */
export interface SpeciesList extends ListIdentity {
  taxa: Taxon[];
  problems: string[];
}

interface Row {
  record: string[];
  info: { lines: number };
}

/**
 * Reads a species list from the text of a table (RFC 4180, also with semicolons or tabs; a header line
 * with the columns of `TaxonRow`). A bad row is told with its line and column and left out; the others
 * stand. `renamed` is as in `readHeader`.
 */
export function readSpeciesList(
  identity: ListIdentity,
  csv: string,
  renamed?: Record<string, string>,
): SpeciesList {
  const list: SpeciesList = { ...identity, taxa: [], problems: [] };
  const { name } = identity;
  const rows = rowsOf(csv);
  if (typeof rows === 'string') return { ...list, problems: [`${name}: not a table: ${rows}`] };
  const [first, ...others] = rows;
  if (!first) return { ...list, problems: [`${name}: the file is empty.`] };
  const header = readHeader(first.record, renamed);
  if ('problem' in header) return { ...list, problems: [`${name}: ${header.problem}`] };
  const seen = new Map<string, number>();
  for (const { record, info } of others) {
    const read = readRow(record, header.columns);
    const where = `${name}, line ${info.lines}`;
    if (typeof read === 'string') {
      list.problems.push(`${where}: ${read}`);
      continue;
    }
    const key = taxonKey(read);
    const before = seen.get(key);
    if (before !== undefined)
      list.problems.push(`${where}: ${key} stands in the list twice, first in line ${before}.`);
    else {
      seen.set(key, info.lines);
      list.taxa.push({ ...read, list: name });
    }
  }
  return list;
}

function rowsOf(csv: string): Row[] | string {
  try {
    return parse(csv, {
      bom: true,
      info: true,
      delimiter: separatorOf(csv),
      // A row with a cell too many or too few must not take the others with it.
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
    }) as unknown as Row[];
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** The row's taxon, or what is wrong with it. */
function readRow(
  cells: readonly string[],
  columns: readonly Column[],
): Omit<Taxon, 'list'> | string {
  if (cells.length !== columns.length)
    return `${cells.length} cells, where the first line has ${columns.length}: put cells that hold a separator in quotes.`;
  const record: Record<string, string> = {};
  const namesIn: Record<string, string[]> = {};
  columns.forEach((column, at) => {
    const cell = cells[at] ?? '';
    if (column === null) return;
    if ('column' in column) record[column.column] = cell;
    else if (cell !== '') namesIn[column.language] = cell.split('|').map((name) => name.trim());
  });
  const strange = Object.values(record).find((cell) => /\p{Cc}/u.test(cell));
  if (strange !== undefined)
    return `${JSON.stringify(strange)} holds a control character: take it out.`;
  const read = TaxonRow.safeParse(record);
  if (!read.success) {
    const issue = read.error.issues[0];
    return `${issue?.path.join('.') ?? 'row'}: ${issue?.message ?? 'not understood'}`;
  }
  const scientificName = withoutAuthor(read.data.scientificName);
  const taxonRank = read.data.taxonRank || rankOf(scientificName);
  const row = { ...read.data, scientificName, taxonRank };
  return Object.keys(namesIn).length === 0 ? row : { ...row, namesIn };
}
