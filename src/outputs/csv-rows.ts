import { stringify } from 'csv-stringify/sync';

/** One cell; `''` where there is nothing to say. */
export type Cell = string | number;

/** A column of a table with the sentence that tells what it holds. */
export interface Column {
  name: string;
  sentence: string;
}

/** How a table is written for the spreadsheet that will open it. */
export interface TableForm {
  separator: ',' | ';' | '\t';
  decimal: '.' | ',';
  /** Put an apostrophe before text that a spreadsheet would run as a formula. */
  apostrophes: boolean;
}

export const USUAL_FORM: TableForm = { separator: ',', decimal: '.', apostrophes: true };

/** As Darwin Core has it: text as it is. */
export const PLAIN_FORM: TableForm = { separator: ',', decimal: '.', apostrophes: false };

/** What begins a formula (OWASP, CSV injection), with the full-width forms of the signs. */
const FORMULA = /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;

/**
 * Rows as CSV (RFC 4180: CRLF, quotes where needed; the separator and the decimal sign may be others).
 * Numbers stay numbers; text never becomes a formula.
 */
export function csvRows(rows: readonly (readonly Cell[])[], form: TableForm): string {
  if (rows.length === 0) return '';
  return stringify(
    rows.map((row) => row.map((cell) => written(cell, form))),
    {
      delimiter: form.separator,
      record_delimiter: 'windows',
      // A line break alone is quoted too: readers take any of the three for the end of a record.
      quote_record_delimiter: true,
      quoted_match: /[\r\n]/,
    },
  );
}

function written(cell: Cell, { decimal, apostrophes }: TableForm): string {
  if (typeof cell === 'number') return digits(cell).replace('.', decimal);
  return apostrophes && FORMULA.test(cell) ? `'${cell}` : cell;
}

/** Without an exponent, which not every reader takes. */
function digits(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(12).replace(/\.?0+$/, '') : text;
}

/** The cells of a record in the order of the columns. */
export function cellsOf<Name extends string>(
  columns: readonly { name: Name }[],
  record: Record<Name, Cell>,
): Cell[] {
  return columns.map(({ name }) => record[name]);
}
