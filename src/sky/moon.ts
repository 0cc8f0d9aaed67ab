import { getMoonIllumination, getMoonTimes } from 'suncalc';
import { Temporal } from 'temporal-polyfill';
import type { Position } from '../ground/position.ts';
import { dateFromEpoch } from './instant.ts';

/** The phases in the order in which the moon goes through them; the odd ones last for days. */
export const MOON_PHASES = [
  'new moon',
  'waxing crescent',
  'first quarter',
  'waxing gibbous',
  'full moon',
  'waning gibbous',
  'last quarter',
  'waning crescent',
] as const;
type MoonPhase = (typeof MOON_PHASES)[number];

/** The moon of a moment; the same for the whole Earth, but for its parallax. */
export interface Moon {
  phase: MoonPhase;
  /** Illuminated part of the disc, 0 to 1. */
  illuminated: number;
  /** From new to full. */
  waxing: boolean;
}

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const HALF_DAY = DAY / 2;

/**
 * Phase and illuminated part of the moon at a moment (epoch milliseconds).
 *
 * New moon, full moon and the quarters are moments; their names hold from half a day before to half
 * a day after it, which is the project's own choice. The illuminated part (suncalc) is within 0.1 %
 * of astronomy-engine, the moments within a quarter of an hour, between 1950 and 2050.
 */
export function moonAt(epoch: number): Moon {
  const before = quarterOf(epoch - HALF_DAY);
  const after = quarterOf(epoch + HALF_DAY);
  const phase = MOON_PHASES[before === after ? 2 * after + 1 : 2 * after];
  return {
    phase: phase ?? 'new moon',
    illuminated: getMoonIllumination(dateFromEpoch(epoch)).fraction,
    waxing: elongation(epoch) < 180,
  };
}

function quarterOf(epoch: number): number {
  return Math.floor(elongation(epoch) / 90) % 4;
}

/**
 * Largest terms of the moon's longitude less those of the sun's, in degrees, with the multiples of
 * D, M, M' and F in the sine: Meeus, Astronomical Algorithms, table 47.A and chapter 25 (from memory).
 */
const TERMS: readonly (readonly [number, number, number, number, number])[] = [
  [6.289, 0, 0, 1, 0],
  [-2.1, 0, 1, 0, 0],
  [1.274, 2, 0, -1, 0],
  [0.658, 2, 0, 0, 0],
  [0.214, 0, 0, 2, 0],
  [-0.114, 0, 0, 0, 2],
  [0.059, 2, 0, -2, 0],
  [0.057, 2, -1, -1, 0],
  [0.053, 2, 0, 1, 0],
  [0.046, 2, -1, 0, 0],
  [-0.041, 0, 1, -1, 0],
  [-0.035, 1, 0, 0, 0],
  [-0.03, 0, 1, 1, 0],
  [-0.02, 0, 2, 0, 0],
];

/**
 * Degrees of ecliptic longitude from the sun to the moon, 0 up to 360, within 0.1. The almanacs'
 * phases are at its quarters. suncalc's own `phase` is not used: it follows the angle between the
 * two bodies and the equator, and is up to 13 hours from the almanacs around new and full moon.
 */
function elongation(epoch: number): number {
  // Days from 1970 to 2000-01-01T12:00, and the 69 s by which Terrestrial Time is ahead of UTC.
  const centuries = (epoch / DAY - 10_957.5 + 69 / 86_400) / 36_525;
  const d = 297.8501921 + 445_267.1114034 * centuries - 0.0018819 * centuries ** 2;
  const sun = 357.5291092 + 35_999.0502909 * centuries - 0.0001536 * centuries ** 2;
  const moon = 134.9633964 + 477_198.8675055 * centuries + 0.0087414 * centuries ** 2;
  const f = 93.272095 + 483_202.0175233 * centuries - 0.0036539 * centuries ** 2;
  const degrees = TERMS.reduce((sum, [size, ofD, ofSun, ofMoon, ofF]) => {
    const angle = ofD * d + ofSun * sun + ofMoon * moon + ofF * f;
    return sum + size * Math.sin((angle * Math.PI) / 180);
  }, d);
  return ((degrees % 360) + 360) % 360;
}

/** What the moon does next, or that it stays where it is for a day and more. */
export type MoonCourse =
  | { next: 'rises' | 'sets'; at: number }
  | { next: 'stays up' | 'stays down' };

/**
 * The next moonrise or moonset after a moment (epoch milliseconds), on a level horizon at sea level.
 * suncalc's times were within 8 s of astronomy-engine's for latitudes up to 60 degrees.
 */
export function moonCourse(position: Position, now: number): MoonCourse {
  const { latitude, longitude } = position;
  let up = false;
  for (const day of [0, 1, 2]) {
    const times = getMoonTimes(dateFromEpoch(now + day * DAY), latitude, longitude);
    const rise = times.rise?.valueOf() ?? Number.NEGATIVE_INFINITY;
    const set = times.set?.valueOf() ?? Number.NEGATIVE_INFINITY;
    if (rise > now && (set <= now || rise < set)) return { next: 'rises', at: rise };
    if (set > now) return { next: 'sets', at: set };
    up = times.alwaysUp === true;
  }
  return { next: up ? 'stays up' : 'stays down' };
}

/**
 * The moon in words for a head line: `moon 38 %, waxing`, and with a zone and a position what comes
 * next within a day: `moon 38 %, waxing, rises 14:05`.
 */
export function moonWords(
  now: number,
  place: { position: Position; timeZone: string } | null,
): string {
  const { phase, illuminated, waxing } = moonAt(now);
  const way = waxing ? 'waxing' : 'waning';
  // Rounding would call a moon full on days that the almanac does not.
  const named = phase === 'new moon' ? 'new' : phase === 'full moon' ? 'full' : way;
  const words = `moon ${Math.round(illuminated * 100)} %, ${named}`;
  if (place === null) return words;
  const course = moonCourse(place.position, now);
  if (!('at' in course)) return `${words}, ${course.next}`;
  if (course.at - now >= DAY) return words;
  return `${words}, ${course.next} ${clock(course.at, place.timeZone)}`;
}

function clock(epoch: number, timeZone: string): string {
  return Temporal.Instant.fromEpochMilliseconds(epoch)
    .round('minute')
    .toZonedDateTimeISO(timeZone)
    .toPlainTime()
    .toString({ smallestUnit: 'minute' });
}
