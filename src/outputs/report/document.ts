/** A cell of a table: text, or a scientific name, which is set in italics. */
export type Cell = string | { scientific: string };

/** A column; numbers stand at its right side. */
export interface Column {
  name: string;
  number?: true;
}

/** A table with what it shows; the first cell of a row names the row. */
export interface Table {
  caption: string;
  columns: readonly Column[];
  rows: readonly (readonly Cell[])[];
}

/** A piece of a report in plain text: how it is escaped is the matter of each form. */
export type Block =
  | { kind: 'text'; text: string }
  | { kind: 'list'; items: readonly string[] }
  | { kind: 'subheading'; text: string }
  | { kind: 'table'; table: Table }
  /** SVG that is safe as it stands; whatever it shows, the table that follows it has in numbers. */
  | { kind: 'picture'; svg: string; words: string };

export interface Section {
  /** For links within the page: small letters and hyphens. */
  id: string;
  heading: string;
  blocks: readonly Block[];
}

export interface Report {
  title: string;
  /** Which visits, and made when. */
  subtitle: string;
  sections: readonly Section[];
}

export function text(words: string): Block {
  return { kind: 'text', text: words };
}

/** A list; nothing where there are no items. */
export function list(items: readonly string[]): Block[] {
  return items.length === 0 ? [] : [{ kind: 'list', items }];
}

export function table(
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
): Block {
  return { kind: 'table', table: { caption, columns, rows } };
}
