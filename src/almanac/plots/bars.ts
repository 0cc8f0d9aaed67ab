import stringWidth from 'string-width';
import { fitted } from './fitted.ts';

/** One bar; a null value is a gap that `beside` explains, and no bar of length 0. */
export interface Bar {
  label: string;
  value: number | null;
  /** What stands behind the bar: the number, and what it is out of. */
  beside: string;
}

const MOST_LABEL = 20;
const LEAST_BAR = 8;

/**
 * Bars as rows of ASCII, none wider than `columns` (from 30 on), the greatest value the longest. Any
 * value above 0 has at least one sign.
 */
export function barRows(bars: readonly Bar[], columns: number): string[] {
  const widest = Math.max(0, ...bars.map(({ label }) => stringWidth(label)));
  const label = Math.min(widest, MOST_LABEL, Math.floor(columns / 3));
  const wanted = Math.max(0, ...bars.map(({ beside }) => stringWidth(beside)));
  const beside = Math.min(wanted, columns - label - LEAST_BAR - 3);
  const room = Math.max(1, columns - label - beside - 3);
  const greatest = greatestOf(bars);
  return bars.map(({ value, ...bar }) => {
    const signs = value === null ? '' : '#'.repeat(lengthOf(value, greatest, room));
    const cells = [fitted(bar.label, label), `|${signs.padEnd(room)}`, fitted(bar.beside, beside)];
    return cells.join(' ').trimEnd();
  });
}

/** The greatest value; 0 where none is above it. */
function greatestOf(bars: readonly Bar[]): number {
  return Math.max(0, ...bars.map(({ value }) => value ?? 0));
}

function lengthOf(value: number, greatest: number, room: number): number {
  if (value <= 0 || greatest <= 0) return 0;
  return Math.max(1, Math.round((value / greatest) * room));
}
