import { completeFor } from '../asking/complete.ts';
import type { VisitDigest } from '../asking/digest.ts';
import { type Figure, many, named } from './figure.ts';
import { numberOf } from './number.ts';

/** How many times the visits are drawn anew; with one more, the ranks of 2.5 and 97.5 % are whole. */
const DRAWS = 1999;
const TAIL = 0.025;
const LEAST_VISITS = 5;
const HOUR = 3_600_000;
const KILOMETRE = 1000;

/** By what the individuals are divided. */
export type Per = 'hour' | 'kilometre';

export interface Rate {
  /** Individuals an hour or a kilometre. */
  rate: number;
  /** 95 % interval over visits. */
  interval: readonly [low: number, high: number];
  individuals: number;
  /** Hours or kilometres. */
  effort: number;
  visits: number;
}

/** Draws from 0 up to, not including, 1; the caller seeds it. */
export type NextDraw = () => number;

/**
 * How many individuals of a taxon are met an hour or a kilometre: the sum of its visit totals through
 * the sum of the effort (the ratio of sums, Cochran 1977, Sampling Techniques, chapter 6), over visits
 * complete for its group, those without it too. The interval is the percentile bootstrap over visits
 * (Efron & Tibshirani 1993). Hours are those of the visit, whatever the number of observers.
 */
export function rate(
  visits: readonly VisitDigest[],
  of: { key: string; group: string },
  per: Per,
  next: NextDraw,
): Figure<Rate> {
  const complete = visits.filter((visit) => completeFor(visit, of.group));
  const rows = complete.flatMap((visit) => {
    const effort = effortOf(visit, per);
    const total = visit.seen.find(({ key }) => key === of.key)?.total;
    const entering = total ? numberOf(total) : ({ number: 0, how: 'exact' } as const);
    return effort === null ? [] : { ...entering, rounded: total?.rounded === true, effort, visit };
  });
  if (rows.length < LEAST_VISITS)
    return {
      refused: `${many(rows.length, 'visit')} complete for ${of.group} with ${per === 'hour' ? 'an end' : 'a distance'}: ${LEAST_VISITS} are needed for a rate.`,
    };
  const uncounted = rows.filter(({ number }) => number === null).map(({ visit }) => visit.date);
  if (uncounted.length > 0)
    return {
      refused: `Seen and not counted on ${named(uncounted)}: give a count there, or ask for the share of visits.`,
    };
  const pairs = rows.map(({ number, effort }) => ({ number: number ?? 0, effort }));
  const draws = Array.from({ length: DRAWS }, () =>
    ratio(pairs.map((_, at) => pairs[Math.floor(next() * pairs.length)] ?? pairs[at] ?? NOTHING)),
  ).sort((one, two) => one - two);
  const rank = Math.round(TAIL * (DRAWS + 1));
  const low = draws[rank - 1] ?? 0;
  const high = draws[DRAWS - rank] ?? low;
  return {
    rate: ratio(pairs),
    interval: [low, high],
    individuals: pairs.reduce((sum, { number }) => sum + number, 0),
    effort: pairs.reduce((sum, { effort }) => sum + effort, 0),
    visits: pairs.length,
    notes: notesOf(rows, visits.length - rows.length),
  };
}

interface Pair {
  number: number;
  effort: number;
}
const NOTHING: Pair = { number: 0, effort: 0 };

function ratio(pairs: readonly Pair[]): number {
  let [number, effort] = [0, 0];
  for (const pair of pairs) {
    number += pair.number;
    effort += pair.effort;
  }
  return number / effort;
}

function effortOf({ watched, distance }: VisitDigest, per: Per): number | null {
  const effort = per === 'hour' ? (watched ?? 0) / HOUR : (distance ?? 0) / KILOMETRE;
  return effort > 0 ? effort : null;
}

function notesOf(
  rows: readonly (Pick<ReturnType<typeof numberOf>, 'how'> & { rounded: boolean })[],
  left: number,
): string[] {
  const having = (how: string) => rows.filter((row) => row.how === how).length;
  const estimates = rows.filter((row) => row.how === 'estimate' || row.rounded).length;
  return [
    ...told(estimates, 'with an estimate, by its number'),
    ...told(having('lower bound'), 'with at least so many, by that lower bound'),
    ...told(having('low end'), 'with a range, by its low end'),
    ...told(left, 'without the effort or not complete, left out'),
  ];
}

function told(number: number, words: string): string[] {
  return number === 0 ? [] : [`${many(number, 'visit')} ${words}.`];
}
