import { getPosition, getTimes } from 'suncalc';
import { Temporal } from 'temporal-polyfill';
import type { Position } from '../ground/position.ts';
import { dateFromEpoch } from './instant.ts';

/**
 * The sun of one date at one position. Times are epoch milliseconds; civil twilight runs from
 * dawn to sunrise and from sunset to dusk.
 *
 * The day is the solar day, midnight to midnight by the sun, around the solar noon of the date.
 * So one daylight stays whole: in a bright night, or where the clock runs far from the sun, the
 * sunset may fall after 24:00 of the date, or the sunrise before 00:00.
 *
 * - `rises`: at least one of the two events happens. Just before and just after polar day there are
 *   days with one only: no sunset (null) when the sun then stays up past solar midnight, no sunrise
 *   (null) when it was up from the midnight before.
 * - `polar-day`: the sun stays up all day.
 * - `polar-night`: it stays down all day; civil twilight may still come.
 *
 * Dawn and dusk are null when the sun does not cross -6 degrees: no civil twilight comes in a polar
 * night, or twilight lasts all night beside a day on which the sun rises.
 */
export type SunDay =
  | {
      kind: 'rises';
      noon: number;
      sunrise: number | null;
      sunset: number | null;
      dawn: number | null;
      dusk: number | null;
    }
  | { kind: 'polar-day' }
  | { kind: 'polar-night'; dawn: number | null; dusk: number | null };

type Direction = 'up' | 'down';

const HALF_DAY = 12 * 60 * 60 * 1000;

/**
 * Altitudes in degrees of the sun's centre, without refraction, at sunrise and sunset (34' of
 * refraction and 16' of radius) and at the limits of civil twilight: US Naval Observatory,
 * "Rise, Set, and Twilight Definitions".
 */
const RISE_ALTITUDE = -0.833;
const TWILIGHT_ALTITUDE = -6;

/**
 * Degrees that suncalc adds to any altitude below the horizon: its form of formula 16.4 of Meeus,
 * Astronomical Algorithms, taken at 0 degrees, where it stops following the altitude down.
 */
const HORIZON_REFRACTION = 1.02 / 60 / Math.tan(((10.26 / 5.1) * Math.PI) / 180);

/**
 * Sunrise, sunset and civil twilight of a date.
 *
 * Within 60 s of the tables for latitudes up to 60 degrees, on a level horizon at sea level; weaker
 * where the sun grazes the horizon, within 2 degrees of a pole, and before 1900.
 *
 * @param isoDate local date, YYYY-MM-DD
 * @param timeZone IANA name; only tells which solar noon is the date's: the one nearest to 12:00
 * @throws RangeError for a date or zone that does not exist, which the caller has to exclude
 */
export function sunDay(position: Position, isoDate: string, timeZone: string): SunDay {
  const noon = solarNoon(position, isoDate, timeZone);
  const crossing = (altitude: number, direction: Direction) =>
    crossingTime(position, noon, altitude, direction);

  const sunrise = crossing(RISE_ALTITUDE, 'up');
  const sunset = crossing(RISE_ALTITUDE, 'down');
  const dawn = crossing(TWILIGHT_ALTITUDE, 'up');
  const dusk = crossing(TWILIGHT_ALTITUDE, 'down');

  if (sunrise !== null || sunset !== null) {
    return { kind: 'rises', noon, sunrise, sunset, dawn, dusk };
  }
  if (isAbove(position, noon, RISE_ALTITUDE)) return { kind: 'polar-day' };
  return { kind: 'polar-night', dawn, dusk };
}

function solarNoon(position: Position, isoDate: string, timeZone: string): number {
  const clockNoon = Temporal.PlainDate.from(isoDate).toZonedDateTime({
    timeZone,
    plainTime: '12:00',
  });
  const { latitude, longitude } = position;
  return getTimes(
    dateFromEpoch(clockNoon.epochMilliseconds),
    latitude,
    longitude,
  ).solarNoon.valueOf();
}

/**
 * The sun only climbs from midnight to noon and only sinks from noon to midnight (but for the last
 * degrees before a pole), so either half day holds one crossing at most and bisection finds it.
 *
 * suncalc's own sunrise and sunset are not used because they reckon both from the declination at
 * noon: beside polar day they give both or neither where there is one, and times minutes out.
 */
function crossingTime(
  position: Position,
  noon: number,
  altitude: number,
  direction: Direction,
): number | null {
  const halves: [number, number][] = [
    [noon - HALF_DAY, noon],
    [noon, noon + HALF_DAY],
  ];
  for (const [start, end] of halves) {
    const endsAbove = isAbove(position, end, altitude);
    if (isAbove(position, start, altitude) === endsAbove) continue;
    if (endsAbove !== (direction === 'up')) continue;
    return bisect(start, end, (epoch) => isAbove(position, epoch, altitude) === endsAbove);
  }
  return null;
}

/** First whole millisecond at which `reached` holds; it fails at `start` and holds at `end`. */
function bisect(start: number, end: number, reached: (epoch: number) => boolean): number {
  let before = start;
  let after = end;
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (reached(middle)) after = middle;
    else before = middle;
  }
  return after;
}

/** Whether the sun's centre, without refraction, is at or above an altitude below 0 degrees. */
function isAbove(position: Position, epoch: number, altitude: number): boolean {
  const sun = getPosition(dateFromEpoch(epoch), position.latitude, position.longitude);
  return sun.altitude - HORIZON_REFRACTION >= altitude;
}
