import { parse } from 'csv-parse/sync';
import { taxonKey } from '../visit/entry.ts';
import { type Column, readHeader } from './list-columns.ts';
import { separatorOf } from './list-text.ts';
import { qualifierApart, rankOf, withoutAuthor } from './scientific-name.ts';
import { namesOf, type Taxon, TaxonRow } from './taxon.ts';

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
    const line = firstLine(record, info.lines);
    const where = `${name}, line ${line}`;
    if (typeof read === 'string') {
      list.problems.push(`${where}: ${read}`);
      continue;
    }
    const key = taxonKey(read);
    const before = seen.get(key);
    if (before !== undefined)
      list.problems.push(`${where}: ${key} stands in the list twice, first in line ${before}.`);
    else {
      seen.set(key, line);
      list.taxa.push({ ...read, list: name });
    }
  }
  return list;
}

/** The parser tells the line in which a row ends, and a cell in quotes may go over several. */
function firstLine(cells: readonly string[], last: number): number {
  return last - cells.reduce((ends, cell) => ends + cell.split('\n').length - 1, 0);
}

function rowsOf(csv: string): Row[] | string {
  try {
    // The parser counts CRLF in quotes as two line ends.
    return parse(csv.replace(/\r\n?/g, '\n'), {
      bom: true,
      info: true,
      delimiter: separatorOf(csv),
      // A row with a cell too many or too few must not take the others with it.
      relax_column_count: true,
      // A quote inside a cell that has none around it is a part of it: 5" shell.
      relax_quotes: true,
      // Spreadsheets end a table with rows of separators only.
      skip_records_with_empty_values: true,
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
  for (const [at, column] of columns.entries()) {
    if (column === null) continue;
    const cell = (cells[at] ?? '').trim();
    const heading = 'column' in column ? column.column : `vernacularName:${column.language}`;
    if (/\p{Cc}/u.test(cell))
      return `${heading}: ${JSON.stringify(cell)} holds a control character or a line end: take it out.`;
    if ('column' in column) record[column.column] = cell;
    else if (namesOf(cell).length > 0) namesIn[column.language] = namesOf(cell);
  }
  const read = TaxonRow.safeParse(record);
  if (!read.success) {
    const issue = read.error.issues[0];
    return `${issue?.path.join('.') ?? 'row'}: ${issue?.message ?? 'not understood'}`;
  }
  const row = { ...read.data, ...nameAndRank(read.data) };
  return Object.keys(namesIn).length === 0 ? row : { ...row, namesIn };
}

/** The name apart from its author and from what it leaves open, with the rank that is given or told by its form. */
function nameAndRank({ scientificName, identificationQualifier, taxonRank }: TaxonRow) {
  const apart =
    identificationQualifier === null
      ? qualifierApart(scientificName)
      : { scientificName, identificationQualifier };
  const name = withoutAuthor(apart.scientificName);
  const told = apart.identificationQualifier === 'agg.' ? 'speciesAggregate' : rankOf(name);
  return { ...apart, scientificName: name, taxonRank: taxonRank || told };
}
