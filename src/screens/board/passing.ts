import type { Count } from '../../visit/count.ts';
import { clockOf, stamp } from '../../visit/time.ts';
import { standing, zoneOf } from '../../visit/visit.ts';
import { type Session, stampNow } from '../field/session.ts';
import { cut, type Row, span } from '../paint.ts';
import type { Passing } from './board.ts';
import { intervalOf, intervalStart } from './tally.ts';

/** So many intervals are shown at most, the latest last. */
const MOST = 4;
const HOUR = 60;

/** Birds an hour of the latest intervals, with a bar each; the running one by what it has so far. */
export function passingRows(session: Session, width: number, most: number): Row[] {
  const { board, visit } = session;
  const passing = board?.passing;
  if (!passing) return [];
  const counts = new Map<number, number>();
  for (const entry of standing(visit)) {
    if (entry.heading !== passing.heading) continue;
    const at = intervalOf(entry.time, passing);
    counts.set(at, (counts.get(at) ?? 0) + leastOf(entry.count));
  }
  const now = intervalOf(stampNow(session), passing);
  const shown = Array.from({ length: Math.min(MOST, most) }, (_, at) => now - at).reverse();
  const first = Math.min(now, ...counts.keys());
  const rates = shown
    .filter((at) => at >= first)
    .map((at) => ({
      at,
      count: counts.get(at) ?? 0,
      rate: ((counts.get(at) ?? 0) * HOUR) / passing.minutes,
    }));
  const highest = Math.max(1, ...rates.map(({ rate }) => rate));
  const words = rates.map(({ at, count, rate }) => {
    const begun = `${clockAt(session, at, passing)} ${passing.heading}`;
    const still = at === now ? 'so far' : '';
    return `${begun} ${String(count).padStart(5)} ${still.padEnd(6)} ${String(Math.round(rate)).padStart(5)} an hour `;
  });
  // One scale for all bars: they are there to be compared.
  const room = Math.max(0, width - 1 - Math.max(0, ...words.map((each) => each.length)));
  return rates.map(({ rate }, row) => [
    span(cut((words[row] ?? '') + '#'.repeat(Math.round((rate / highest) * room)), width)),
  ]);
}

/** What the place's clock showed when an interval began. */
function clockAt(session: Session, interval: number, passing: Passing): string {
  const begun = intervalStart(interval, passing, stampNow(session));
  return clockOf(stamp(begun, zoneOf(session.visit)));
}

/** What is sure of a count; a flow is never made larger than what was counted. */
function leastOf(count: Count): number {
  if (count.kind === 'present') return 0;
  return count.kind === 'range' ? count.low : count.value;
}
