import { fitted } from './fitted.ts';

/** A line of points in the order of x. */
export interface Series {
  name: string;
  points: readonly (readonly [x: number, y: number])[];
}

/** A plot of lines: where x begins and ends, and what stands under it. */
export interface Plot {
  series: readonly Series[];
  from: number;
  to: number;
  /** Labels under the axis, each at its x. */
  ticks: readonly { x: number; label: string }[];
  /** A total stays until the next point; else points are joined by straight lines. */
  stepped: boolean;
}

/** The signs of the lines in their order; each line has its own, so that none needs a colour. */
const SIGNS = ['o', 'x', '+', '*', '%', '@'] as const;

/** More lines than signs would look alike. */
export const MOST_SERIES = SIGNS.length;

/**
 * Lines as rows of ASCII, `size.rows` rows for the plot itself and below it the axis, its labels and the
 * names of the lines. Where lines meet, the sign of the earlier one shows. Lines past the sixth are left out.
 */
export function lineRows(plot: Plot, size: { columns: number; rows: number }): string[] {
  const series = plot.series.slice(0, MOST_SERIES);
  const top = topOf(series);
  const margin = Math.max(String(top).length, String(top / 2).length);
  const room = Math.max(10, size.columns - margin - 2);
  const field = Array.from({ length: size.rows }, () => Array.from({ length: room }, () => ' '));
  for (const [at, { points }] of [...series.entries()].reverse())
    for (let column = 0; column < room; column += 1) {
      const x = plot.from + ((plot.to - plot.from) * column) / (room - 1);
      const y = valueAt(points, x, plot.stepped);
      const row = y === null ? undefined : field[rowOf(y, top, size.rows)];
      if (row) row[column] = SIGNS[at] ?? '?';
    }
  const rows = field.map((signs, at) => {
    return `${labelOf(at, top, size.rows).padStart(margin)} |${signs.join('')}`.trimEnd();
  });
  const pad = ' '.repeat(margin + 2);
  return [
    ...rows,
    `${' '.repeat(margin + 1)}+${'-'.repeat(room)}`,
    `${pad}${tickRow(plot, room)}`.trimEnd(),
    ...series.map(({ name }, at) => fitted(`${pad}${SIGNS[at]} ${name}`, size.columns).trimEnd()),
  ];
}

/** A round number not below any value, where the axis ends: 1, 2 or 5 and noughts, at least 1. */
export function topOf(series: readonly Series[]): number {
  const greatest = Math.max(1, ...series.flatMap(({ points }) => points.map(([, y]) => y)));
  const power = 10 ** Math.floor(Math.log10(greatest));
  return ([1, 2, 5, 10].find((step) => step * power >= greatest) ?? 10) * power;
}

/** The value of a line at x; null before its first point, and after its last where it is not drawn on. */
export function valueAt(points: Series['points'], x: number, stepped: boolean): number | null {
  const after = points.findIndex(([at]) => at > x);
  const before = points[after < 0 ? points.length - 1 : after - 1];
  if (before === undefined || before[0] > x) return null;
  if (before[0] === x) return before[1];
  const next = points[after];
  if (next === undefined) return null;
  if (stepped) return before[1];
  return before[1] + ((next[1] - before[1]) * (x - before[0])) / (next[0] - before[0]);
}

/** The top, the nought and, where a row lies at it, the half. */
function labelOf(row: number, top: number, rows: number): string {
  if (row === rows - 1) return '0';
  if (row === 0) return String(top);
  return row === (rows - 1) / 2 ? String(top / 2) : '';
}

function rowOf(y: number, top: number, rows: number): number {
  return rows - 1 - Math.min(rows - 1, Math.max(0, Math.round((y / top) * (rows - 1))));
}

function tickRow({ ticks, from, to }: Plot, room: number): string {
  let row = '';
  for (const { x, label } of ticks) {
    const wanted = Math.round(((x - from) / (to - from)) * (room - 1));
    const at = Math.min(Math.max(0, wanted), room - label.length);
    // A label that would touch the one before it is left out.
    if (row === '' ? at >= 0 : at > row.length) row = row.padEnd(at) + label;
  }
  return row;
}
