import { MONTHS, monthOf, yearOf } from '../../almanac/asking/days.ts';
import type { Season } from './season.ts';

const HOUR = 3_600_000;

/** A date as `3 Apr`, with the year where the season has visits of several. */
export function dayWords(date: string, { visits }: Pick<Season, 'visits'>): string {
  const day = `${Number(date.slice(8, 10))} ${MONTHS[monthOf(date) - 1]?.slice(0, 3)}`;
  const one = visits.every((visit) => yearOf(visit.date) === yearOf(date));
  return one ? day : `${day} ${yearOf(date)}`;
}

/** A date as `3 April 2026`. */
export function dateWords(date: string): string {
  return `${Number(date.slice(8, 10))} ${MONTHS[monthOf(date) - 1]} ${yearOf(date)}`;
}

/** Hours to a tenth. */
export function hoursWords(milliseconds: number): string {
  return (milliseconds / HOUR).toFixed(1);
}

/** A rate with no more digits than its interval bears out: 0.12, 3.4, 56. */
export function rateWords(rate: number): string {
  if (rate === 0) return '0';
  if (rate < 0.005) return 'under 0.01';
  return rate.toFixed(rate < 0.995 ? 2 : rate < 9.95 ? 1 : 0);
}

/** `a`, `a and b`, `a, b and c`. */
export function joinedWords(parts: readonly string[]): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** With a capital letter in front. */
export function capital(words: string): string {
  return words.charAt(0).toLocaleUpperCase('en') + words.slice(1);
}
