import { type Cell, csvRows, type TableForm } from './csv-rows.ts';

/**
 * A table as CSV text in pieces: the head, then the rows of each visit as they come. Nothing is held
 * from one visit to the next.
 */
export async function* csvTable(
  head: readonly string[],
  rows: AsyncIterable<readonly (readonly Cell[])[]>,
  form: TableForm,
): AsyncGenerator<string> {
  yield csvRows([head], form);
  for await (const some of rows) yield csvRows(some, form);
}
