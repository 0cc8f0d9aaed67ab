import { MONTHS } from '../../almanac/asking/days.ts';
import { element, svgPicture } from './svg.ts';

/** A month of a species: the share of complete visits that met it (0 to 1), null where there were none. */
interface MonthBar {
  share: number | null;
  /** Met, be it on a visit that was not complete. */
  met: boolean;
}

export interface MonthRow {
  name: string;
  /** Twelve, from January on. */
  months: readonly MonthBar[];
}

const LABEL = 150;
const COLUMN = 38;
const BAR = 12;
const LINE = 22;
const ROW = 24;
const HEAD = 46;
const TALLEST = 17;
const MOST_LETTERS = 23;

/**
 * A row of small bars for each species, a column a month, with the number of complete visits above: the
 * height of a bar is the share. A dot is a record without a share.
 */
export function monthsPicture(
  id: string,
  title: string,
  visits: readonly number[],
  rows: readonly MonthRow[],
): string {
  const left = (month: number) => LABEL + month * COLUMN;
  const head = MONTHS.flatMap((name, month) => {
    const x = left(month) + COLUMN / 2;
    const centred = { x, 'text-anchor': 'middle' };
    return [
      element('text', { ...centred, y: 15 }, name.slice(0, 3)),
      element('text', { ...centred, y: 33 }, String(visits[month] ?? 0)),
    ];
  });
  const bars = rows.flatMap(({ name, months }, at) => {
    const bottom = HEAD + at * ROW + ROW - 3;
    return [
      element('text', { x: LABEL - 8, y: bottom - 3, 'text-anchor': 'end' }, shortened(name)),
      ...months.flatMap((month, number) => barOf(month, left(number), bottom)),
    ];
  });
  const width = LABEL + 12 * COLUMN + 4;
  const height = HEAD + rows.length * ROW + 6;
  const description = `A row for each of ${rows.length} species, a column for each month; the table that follows has the numbers.`;
  return svgPicture({ id, title, description, width, height }, [
    element('text', { x: LABEL - 8, y: 33, 'text-anchor': 'end' }, 'complete visits'),
    ...head,
    ...bars,
  ]);
}

function barOf({ share, met }: MonthBar, left: number, bottom: number): string[] {
  const x = left + (COLUMN - BAR) / 2;
  const dot = element('circle', { cx: left + COLUMN / 2, cy: bottom - 5, r: 2.5, fill: '#000' });
  if (share === null) return met ? [dot] : [];
  const base = element('path', {
    d: `M${left + (COLUMN - LINE) / 2} ${bottom}h${LINE}`,
    stroke: '#777',
  });
  if (share === 0) return met ? [base, dot] : [base];
  const height = Math.max(1, share * TALLEST);
  return [base, element('rect', { x, y: bottom - height, width: BAR, height, fill: '#555' })];
}

function shortened(name: string): string {
  const letters = [...name];
  return letters.length <= MOST_LETTERS ? name : `${letters.slice(0, MOST_LETTERS - 1).join('')}…`;
}
