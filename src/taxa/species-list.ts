import { parse } from 'csv-parse/sync';
import { type Taxon, TaxonRow } from './taxon.ts';

/** A species list as read, with a sentence for each row that could not be taken. */
export interface SpeciesList {
  name: string;
  taxa: Taxon[];
  problems: string[];
}

/**
 * Reads a species list from CSV text (RFC 4180, UTF-8, header line with the columns of `TaxonRow`).
 * A bad row is told with its line and left out; the others stand.
 */
export function readSpeciesList(name: string, csv: string): SpeciesList {
  const list: SpeciesList = { name, taxa: [], problems: [] };
  let rows: { record: Record<string, string>; info: { lines: number } }[];
  try {
    rows = parse(csv, { columns: true, bom: true, info: true, skip_empty_lines: true, trim: true });
  } catch (error) {
    list.problems.push(
      `${name}: not a CSV table: ${error instanceof Error ? error.message : String(error)}`,
    );
    return list;
  }
  const seen = new Set<string>();
  for (const { record, info } of rows) {
    const read = TaxonRow.safeParse(record);
    const where = `${name}, line ${info.lines}`;
    if (!read.success) {
      const issue = read.error.issues[0];
      list.problems.push(
        `${where}: ${issue?.path.join('.') ?? 'row'}: ${issue?.message ?? 'not understood'}`,
      );
    } else if (seen.has(read.data.scientificName)) {
      list.problems.push(`${where}: ${read.data.scientificName} stands in the list twice.`);
    } else {
      seen.add(read.data.scientificName);
      list.taxa.push({ ...read.data, list: name });
    }
  }
  return list;
}
