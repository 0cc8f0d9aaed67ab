import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';
import { fitted } from '../plots/fitted.ts';

const INDENT = '  ';
const GAP = '  ';
const LEAST_NAME = 8;

/** A sentence over as many rows as it needs, the later ones indented. */
export function sentenceRows(text: string, width: number, indent = ''): string[] {
  const rows = wrapAnsi(text, width - indent.length - INDENT.length, { hard: true, trim: true });
  return rows.split('\n').map((row, at) => (at === 0 ? indent : indent + INDENT) + row);
}

/** Cells as rows in columns, indented: the first column, of names, gives way where room is short. */
export function tableRows(cells: readonly (readonly string[])[], width: number): string[] {
  const columns = Math.max(0, ...cells.map(({ length }) => length));
  const widths = Array.from({ length: columns }, (_, at) =>
    Math.max(0, ...cells.map((row) => stringWidth(row[at] ?? ''))),
  );
  const others = widths.slice(1).reduce((sum, each) => sum + each + GAP.length, INDENT.length);
  widths[0] = Math.min(widths[0] ?? 0, Math.max(LEAST_NAME, width - others));
  return cells.map((row) =>
    fitted(
      INDENT + widths.map((wide, at) => fitted(row[at] ?? '', wide)).join(GAP),
      width,
    ).trimEnd(),
  );
}

/** The first few rows under a heading, and how many more there are; nothing where there is none. */
export function headed(
  heading: string,
  rows: readonly string[],
  width: number,
  most = Number.POSITIVE_INFINITY,
): string[] {
  if (rows.length === 0) return [];
  const more = rows.length - most;
  const left = more > 0 ? [`${INDENT}and ${more} more; --json has all`] : [];
  return ['', ...sentenceRows(heading, width), ...rows.slice(0, Math.max(0, most)), ...left];
}

/** Rows moved in under a heading. */
export function indented(rows: readonly string[]): string[] {
  return rows.map((row) => (row === '' ? row : INDENT + row));
}
