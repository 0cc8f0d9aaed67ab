import { parse } from 'csv-parse/sync';
import { type Taxon, TaxonRow } from './taxon.ts';

/** A species list as read, with a sentence for each row that could not be taken. */
export interface SpeciesList {
  name: string;
  taxa: Taxon[];
  problems: string[];
}

interface Row {
  record: Record<string, string>;
  info: { lines: number; error?: unknown };
}

/**
 * Reads a species list from CSV text (RFC 4180, UTF-8, header line with the columns of `TaxonRow`).
 * A bad row is told with its line and left out; the others stand.
 */
export function readSpeciesList(name: string, csv: string): SpeciesList {
  const list: SpeciesList = { name, taxa: [], problems: [] };
  let header: string[] = [];
  let rows: Row[];
  try {
    rows = parse(csv, {
      columns: (cells: string[]) => {
        header = cells;
        return cells;
      },
      bom: true,
      info: true,
      // A row with a cell too many or too few must not take the others with it.
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
    }) as unknown as Row[];
  } catch (error) {
    list.problems.push(
      `${name}: not a CSV table: ${error instanceof Error ? error.message : String(error)}`,
    );
    return list;
  }
  const missing = Object.keys(TaxonRow.shape).filter((column) => !header.includes(column));
  if (missing.length > 0) {
    list.problems.push(`${name}: the first line has no column ${missing.join(', ')}: add it.`);
    return list;
  }
  const seen = new Set<string>();
  for (const row of rows) {
    const read = readRow(row, header.length);
    const where = `${name}, line ${row.info.lines}`;
    if (typeof read === 'string') list.problems.push(`${where}: ${read}`);
    else if (seen.has(read.scientificName))
      list.problems.push(`${where}: ${read.scientificName} stands in the list twice.`);
    else {
      seen.add(read.scientificName);
      list.taxa.push({ ...read, list: name });
    }
  }
  return list;
}

/** The row's taxon, or what is wrong with it. */
function readRow({ record, info }: Row, cells: number): TaxonRow | string {
  if (info.error)
    return `not as many cells as the first line, which has ${cells}: put cells with a comma in quotes.`;
  const read = TaxonRow.safeParse(record);
  if (read.success) return read.data;
  const issue = read.error.issues[0];
  return `${issue?.path.join('.') ?? 'row'}: ${issue?.message ?? 'not understood'}`;
}
