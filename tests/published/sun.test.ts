import {
  Body,
  Equator,
  Horizon,
  MakeTime,
  Observer,
  SearchAltitude,
  SearchRiseSet,
} from 'astronomy-engine';
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { sunDay } from '../../src/sky/sun.ts';
import { fromEngine, secondsApart, toEngine } from './sky-reference.ts';

const HOUR = 3_600_000;
const HALF_DAY = 12 * HOUR;

const instant = (iso: string) => Temporal.Instant.from(iso).epochMilliseconds;

function risingDay(latitude: number, longitude: number, date: string, zone: string) {
  const day = sunDay({ latitude, longitude }, date, zone);
  if (day.kind !== 'rises') throw new Error(`${date} ${latitude} ${longitude}: ${day.kind}`);
  return day;
}

// Source: US Naval Observatory, Sun or moon rise/set table for one year, 2019, universal time,
// rounded to the minute, so that up to 30 s of any difference are the table's. 120 s is the stated
// acceptance; 60 s is asked for and met (the largest difference measured is 29 s).
const TABLE_TOLERANCE_SECONDS = 60;
const navalObservatory2019: [string, number, number, string, string[]][] = [
  // place, latitude, longitude, zone, rows of 'date rise set'; each time falls in that UT date
  [
    '60N 0E',
    60,
    0,
    'Etc/UTC',
    ['03-20 06:03 18:14', '06-21 02:36 21:28', '09-23 05:46 17:58', '12-22 09:02 14:55'],
  ],
  [
    '29N 81W',
    29,
    -81,
    'America/New_York',
    ['03-20 11:28 23:35', '06-21 10:26 00:26', '09-23 11:13 23:20', '12-22 12:14 22:31'],
  ],
  [
    '60S 150W',
    -60,
    -150,
    'Etc/GMT+10',
    ['03-20 16:00 04:16', '06-21 19:06 00:58', '09-23 15:45 03:59', '12-22 12:32 07:24'],
  ],
];
const tableRows = navalObservatory2019.flatMap(([place, latitude, longitude, zone, rows]) =>
  rows.map((row) => ({ place, latitude, longitude, zone, row })),
);

describe('US Naval Observatory, sun rise and set table for one year, 2019', () => {
  test.each(tableRows)('gives $place, $row', ({ latitude, longitude, zone, row }) => {
    const [date, rise, set] = row.split(' ');
    const localDay = (epoch: number) =>
      risingDay(
        latitude,
        longitude,
        Temporal.Instant.fromEpochMilliseconds(epoch)
          .toZonedDateTimeISO(zone)
          .toPlainDate()
          .toString(),
        zone,
      );
    const listedRise = instant(`2019-${date}T${rise}Z`);
    const listedSet = instant(`2019-${date}T${set}Z`);
    const { sunrise } = localDay(listedRise);
    const { sunset } = localDay(listedSet);
    expect(secondsApart(sunrise ?? 0, listedRise)).toBeLessThanOrEqual(TABLE_TOLERANCE_SECONDS);
    expect(secondsApart(sunset ?? 0, listedSet)).toBeLessThanOrEqual(TABLE_TOLERANCE_SECONDS);
  });
});

// Coordinates to a hundredth of a degree, from memory. The states of both solstices: computed with
// astronomy-engine 2.1.19 and searched anew in each test.
const arctic: [string, number, number, string][] = [
  ['Tromsø', 69.65, 18.96, 'Europe/Oslo'],
  ['Utqiaġvik', 71.29, -156.79, 'America/Anchorage'],
  ['Longyearbyen', 78.22, 15.65, 'Arctic/Longyearbyen'],
];
const rovaniemi: [string, number, number, string] = ['Rovaniemi', 66.5, 25.73, 'Europe/Helsinki'];
const mcMurdo: [string, number, number, string] = ['McMurdo', -77.85, 166.67, 'Antarctica/McMurdo'];

function engineFindsAnEvent(latitude: number, longitude: number, date: string, zone: string) {
  const start = Temporal.PlainDate.from(date).toZonedDateTime(zone).epochMilliseconds;
  const observer = new Observer(latitude, longitude, 0);
  return [+1, -1].some((way) => SearchRiseSet(Body.Sun, observer, way, toEngine(start), 1));
}

describe('The solstices beyond the polar circles, with astronomy-engine as reference', () => {
  test.each([
    ...[rovaniemi, ...arctic].map((place) => [...place, '2025-06-21'] as const),
    [...mcMurdo, '2025-12-21'] as const,
  ])('%s (%d, %d, %s) has polar day on %s', (_name, latitude, longitude, zone, date) => {
    expect(sunDay({ latitude, longitude }, date, zone)).toEqual({ kind: 'polar-day' });
    expect(engineFindsAnEvent(latitude, longitude, date, zone)).toBe(false);
  });

  test.each([
    ...arctic.map((place) => [...place, '2025-12-21'] as const),
    [...mcMurdo, '2025-06-21'] as const,
  ])('%s (%d, %d, %s) has polar night on %s', (_name, latitude, longitude, zone, date) => {
    expect(sunDay({ latitude, longitude }, date, zone).kind).toBe('polar-night');
    expect(engineFindsAnEvent(latitude, longitude, date, zone)).toBe(false);
  });

  test('Rovaniemi, just beyond the circle, still sees the sun at the winter solstice', () => {
    const [, latitude, longitude, zone] = rovaniemi;
    expect(sunDay({ latitude, longitude }, '2025-12-21', zone).kind).toBe('rises');
  });

  test('Tromsø has civil twilight in its polar night, 08:31 to 12:53 UT', () => {
    // Source: astronomy-engine 2.1.19, to the minute.
    const day = sunDay({ latitude: 69.65, longitude: 18.96 }, '2025-12-21', 'Europe/Oslo');
    if (day.kind !== 'polar-night') throw new Error(day.kind);
    expect(secondsApart(day.dawn ?? 0, instant('2025-12-21T08:31Z'))).toBeLessThanOrEqual(60);
    expect(secondsApart(day.dusk ?? 0, instant('2025-12-21T12:53Z'))).toBeLessThanOrEqual(60);
  });

  test('Longyearbyen has no civil twilight in the middle of its polar night', () => {
    const day = sunDay({ latitude: 78.22, longitude: 15.65 }, '2025-12-21', 'Arctic/Longyearbyen');
    expect(day).toEqual({ kind: 'polar-night', dawn: null, dusk: null });
  });

  test('Tromsø rises and sets, only rises or only sets on the same days of a year', () => {
    // The sun grazes the horizon beside polar day and night, where a second of arc is seconds of
    // time: hence 120 s here and 60 s below.
    const observer = new Observer(69.65, 18.96, 0);
    const oneEventDays: string[] = [];
    for (let date = Temporal.PlainDate.from('2025-01-01'); date.year === 2025; ) {
      const day = sunDay({ latitude: 69.65, longitude: 18.96 }, date.toString(), 'Europe/Oslo');
      const noon =
        day.kind === 'rises' ? day.noon : instant(`${date}T12:00Z`) - (18.96 / 15) * HOUR;
      const rise = SearchRiseSet(Body.Sun, observer, +1, toEngine(noon - HALF_DAY), 0.5);
      const set = SearchRiseSet(Body.Sun, observer, -1, toEngine(noon), 0.5);
      const { sunrise, sunset } = day.kind === 'rises' ? day : { sunrise: null, sunset: null };
      expect([`${date}`, sunrise === null, sunset === null]).toEqual([`${date}`, !rise, !set]);
      if (rise) expect(secondsApart(sunrise ?? 0, fromEngine(rise.ut))).toBeLessThan(120);
      if (set) expect(secondsApart(sunset ?? 0, fromEngine(set.ut))).toBeLessThan(120);
      if (day.kind === 'rises' && (!rise || !set)) oneEventDays.push(date.toString());
      date = date.add({ days: 1 });
    }
    expect(oneEventDays).toEqual(['2025-05-17', '2025-07-25']);
  });
});

describe('astronomy-engine, reference library, up to 60 degrees of latitude', () => {
  const places: [string, number, number, string][] = [
    ['Singapore', 1.35, 103.82, 'Asia/Singapore'],
    ['Quito', -0.18, -78.47, 'America/Guayaquil'],
    ['Kiritimati, 14 hours before UTC', 1.87, -157.4, 'Pacific/Kiritimati'],
    ['Kashgar, three hours from its zone', 39.47, 75.99, 'Asia/Shanghai'],
    ['London', 51.51, -0.13, 'Europe/London'],
    ['Stanley', -51.7, -57.85, 'Atlantic/Stanley'],
    ['Apia', -13.83, -171.76, 'Pacific/Apia'],
    ['Helsinki', 60, 24.94, 'Europe/Helsinki'],
  ];
  const dates = [
    '1950-02-10',
    '2019-03-20',
    '2025-06-21',
    '2025-09-22',
    '2025-12-21',
    '2040-05-01',
  ];
  const cases = places.flatMap((place) => dates.map((date) => [...place, date] as const));

  test.each(cases)('%s (%d, %d, %s) on %s within 60 s', (_n, latitude, longitude, zone, date) => {
    const day = risingDay(latitude, longitude, date, zone);
    const observer = new Observer(latitude, longitude, 0);
    const start = Temporal.PlainDate.from(date).toZonedDateTime(zone).epochMilliseconds;
    const rise = SearchRiseSet(Body.Sun, observer, +1, toEngine(start), 1);
    const set = SearchRiseSet(Body.Sun, observer, -1, rise ?? 0, 1);
    const dawn = SearchAltitude(Body.Sun, observer, +1, toEngine(day.noon - HALF_DAY), 1, -6);
    const dusk = SearchAltitude(Body.Sun, observer, -1, toEngine(day.noon), 1, -6);
    const pairs = [
      [day.sunrise, rise],
      [day.sunset, set],
      [day.dawn, dawn],
      [day.dusk, dusk],
    ] as const;
    for (const [ours, theirs] of pairs) {
      expect(secondsApart(ours ?? 0, fromEngine(theirs?.ut ?? 0))).toBeLessThanOrEqual(60);
    }
  });
});

/** Degrees of the sun's centre above the horizon, without refraction, by astronomy-engine. */
function engineAltitude(latitude: number, longitude: number, epoch: number): number {
  const observer = new Observer(latitude, longitude, 0);
  const time = MakeTime(toEngine(epoch));
  const { ra, dec } = Equator(Body.Sun, time, observer, true, true);
  return Horizon(time, observer, ra, dec).altitude;
}

const latitudes = fc.double({ min: -88, max: 88, noNaN: true });
const longitudes = fc.double({ min: -165, max: 165, noNaN: true });
const dates = fc
  .integer({ min: 0, max: 150 * 365 })
  .map((days) => Temporal.PlainDate.from('1900-01-01').add({ days }).toString());

describe('astronomy-engine, reference library, at any latitude but the last two degrees', () => {
  test('the sun stands where it should at each event, and all through polar day and night', () => {
    // 0.02 degrees cover the sun's parallax and the brevity of suncalc's series.
    const near = 0.02;
    fc.assert(
      fc.property(latitudes, longitudes, dates, (latitude, longitude, date) => {
        const altitude = (epoch: number) => engineAltitude(latitude, longitude, epoch);
        const day = sunDay({ latitude, longitude }, date, 'Etc/UTC');
        if (day.kind === 'rises') {
          for (const event of [day.sunrise, day.sunset]) {
            if (event !== null) expect(Math.abs(altitude(event) + 0.833)).toBeLessThan(near);
          }
          if (day.sunset === null) {
            expect(altitude(day.noon + HALF_DAY)).toBeGreaterThan(-0.833 - near);
          }
          if (day.sunrise === null) {
            expect(altitude(day.noon - HALF_DAY)).toBeGreaterThan(-0.833 - near);
          }
          expect(altitude(day.noon)).toBeGreaterThan(-0.833 - near);
          expect(day.sunrise ?? Number.NEGATIVE_INFINITY).toBeLessThan(day.noon);
          expect(day.sunset ?? Number.POSITIVE_INFINITY).toBeGreaterThan(day.noon);
          return;
        }
        const meanNoon = instant(`${date}T12:00Z`) - (longitude / 15) * HOUR;
        for (let hour = -11; hour <= 11; hour += 1) {
          const height = altitude(meanNoon + hour * HOUR);
          if (day.kind === 'polar-day') expect(height).toBeGreaterThan(-0.833 - near);
          else expect(height).toBeLessThan(-0.833 + near);
        }
        for (const event of day.kind === 'polar-night' ? [day.dawn, day.dusk] : []) {
          if (event !== null) expect(Math.abs(altitude(event) + 6)).toBeLessThan(near);
        }
      }),
      { numRuns: 300 },
    );
  });
});
