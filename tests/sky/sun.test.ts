import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { type SunDay, sunDay } from '../../src/sky/sun.ts';
import { sunWords } from '../../src/sky/words.ts';

const HOUR = 3_600_000;

const at = (iso: string) => Temporal.Instant.from(iso).epochMilliseconds;
const localDate = (epoch: number, zone: string) =>
  Temporal.Instant.fromEpochMilliseconds(epoch).toZonedDateTimeISO(zone).toPlainDate().toString();

/** The time zone of ships at sea: whole hours, the nearest to the sun. */
function nauticalZone(longitude: number): string {
  const hours = Math.round(longitude / 15);
  return `${hours < 0 ? '-' : '+'}${String(Math.abs(hours)).padStart(2, '0')}:00`;
}

const longitudes = fc.double({ min: -180, max: 180, noNaN: true });
const latitudesUpTo = (limit: number) => fc.double({ min: -limit, max: limit, noNaN: true });
const dates = fc
  .integer({ min: 0, max: 150 * 365 })
  .map((days) => Temporal.PlainDate.from('1900-01-01').add({ days }).toString());

describe('sunDay', () => {
  test('keeps sunrise before noon before sunset within the date, up to 60 degrees', () => {
    fc.assert(
      fc.property(latitudesUpTo(60), longitudes, dates, (latitude, longitude, date) => {
        const zone = nauticalZone(longitude);
        const day = sunDay({ latitude, longitude }, date, zone);
        if (day.kind !== 'rises' || day.sunrise === null || day.sunset === null) return false;
        expect(day.sunrise).toBeLessThan(day.noon);
        expect(day.noon).toBeLessThan(day.sunset);
        expect(day.dawn ?? day.sunrise - 1).toBeLessThan(day.sunrise);
        expect(day.dusk ?? day.sunset + 1).toBeGreaterThan(day.sunset);
        expect([localDate(day.sunrise, zone), localDate(day.sunset, zone)]).toEqual([date, date]);
        const hours = (day.sunset - day.sunrise) / HOUR;
        expect(hours).toBeGreaterThan(5);
        expect(hours).toBeLessThan(19);
        return true;
      }),
    );
  });

  test('takes the solar day of the local date where the UTC date has turned already', () => {
    const day = sunDay({ latitude: 29, longitude: -81 }, '2019-06-21', 'America/New_York');
    if (day.kind !== 'rises') throw new Error(day.kind);
    expect(localDate(day.sunset ?? 0, 'America/New_York')).toBe('2019-06-21');
    expect(localDate(day.sunset ?? 0, 'Etc/UTC')).toBe('2019-06-22');
  });

  test('keeps a sunset after 24:00 with the daylight it ends', () => {
    const day = sunDay({ latitude: 64.15, longitude: -21.94 }, '2025-06-21', 'Atlantic/Reykjavik');
    if (day.kind !== 'rises') throw new Error(day.kind);
    expect(localDate(day.sunrise ?? 0, 'Atlantic/Reykjavik')).toBe('2025-06-21');
    expect(localDate(day.sunset ?? 0, 'Atlantic/Reykjavik')).toBe('2025-06-22');
    expect([day.dawn, day.dusk]).toEqual([null, null]);
  });

  test('takes one solar day after the other across a change of the clock', () => {
    const noons = ['2025-03-29', '2025-03-30', '2025-03-31'].map((date) => {
      const day = sunDay({ latitude: 52, longitude: 0 }, date, 'Europe/London');
      if (day.kind !== 'rises') throw new Error(day.kind);
      return Math.round(day.noon / HOUR);
    });
    expect(noons).toEqual([0, 24, 48].map((hours) => hours + at('2025-03-29T12:00Z') / HOUR));
  });

  test('refuses a date or a zone that does not exist', () => {
    const position = { latitude: 52, longitude: 0 };
    expect(() => sunDay(position, '2025-02-30', 'Europe/London')).toThrow(RangeError);
    expect(() => sunDay(position, '2025-02-20', 'Europe/Sallow')).toThrow(RangeError);
  });
});

const winter: SunDay = {
  kind: 'rises',
  noon: at('2025-11-20T11:48Z'),
  dawn: at('2025-11-20T06:46Z'),
  sunrise: at('2025-11-20T07:21:40Z'),
  sunset: at('2025-11-20T16:14:20Z'),
  dusk: at('2025-11-20T16:50Z'),
};
const brightNight: SunDay = {
  kind: 'rises',
  noon: at('2025-06-21T13:30Z'),
  dawn: null,
  sunrise: at('2025-06-21T02:55Z'),
  sunset: at('2025-06-22T00:03Z'),
  dusk: null,
};
const onlyRises: SunDay = { ...brightNight, sunset: null };
const onlySets: SunDay = { ...brightNight, sunrise: null };
const polarDay: SunDay = { kind: 'polar-day' };
const twilitNight: SunDay = {
  kind: 'polar-night',
  dawn: at('2025-12-21T08:31Z'),
  dusk: at('2025-12-21T12:53Z'),
};
const darkNight: SunDay = { kind: 'polar-night', dawn: null, dusk: null };

const noon = '2025-12-21T12:00Z';
const rising = 'sunrise 07:22, sunset 16:14';
const bright = 'sunrise 02:55, sunset 00:03 next day';
const night = 'polar night: the sun stays down today';

// The wording is the project's own; that the minutes are those between the clock times shown is
// common practice, no source.
describe('sunWords', () => {
  test.each([
    [winter, '2025-11-20T05:00Z', `${rising}, 2 h 22 min before sunrise`, 'rise-2h22'],
    [winter, '2025-11-20T05:22Z', `${rising}, 2 h 00 min before sunrise`, 'rise-2h00'],
    [winter, '2025-11-20T05:23Z', `${rising}, 119 min before sunrise`, 'rise-1h59'],
    [winter, '2025-11-20T07:21:59Z', `${rising}, 1 min before sunrise`, 'rise-1min'],
    [winter, '2025-11-20T07:22Z', `${rising}, 0 min after sunrise`, 'rise+0min'],
    [winter, '2025-11-20T08:12:59Z', `${rising}, 50 min after sunrise`, 'rise+50min'],
    [winter, '2025-11-20T09:27Z', `${rising}, 2 h 05 min after sunrise`, 'rise+2h05'],
    [winter, '2025-11-20T09:01Z', `${rising}, 99 min after sunrise`, 'rise+99min'],
    [winter, '2025-11-20T09:02Z', `${rising}, 100 min after sunrise`, 'rise+1h40'],
    [winter, '2025-11-20T11:47:59Z', `${rising}, 4 h 25 min after sunrise`, 'rise+4h25'],
    [
      winter,
      '2025-11-20T11:48Z',
      `${rising}, 4 h 26 min after sunrise, 4 h 26 min before sunset`,
      'rise+4h26 set-4h26',
    ],
    [
      winter,
      '2025-11-20T16:13Z',
      `${rising}, 8 h 51 min after sunrise, 1 min before sunset`,
      'rise+8h51 set-1min',
    ],
    [
      winter,
      '2025-11-20T16:14Z',
      `${rising}, 8 h 52 min after sunrise, 0 min after sunset`,
      'rise+8h52 set+0min',
    ],
    [
      winter,
      '2025-11-20T23:00Z',
      `${rising}, 15 h 38 min after sunrise, 6 h 46 min after sunset`,
      'rise+15h38 set+6h46',
    ],
  ])('tells minutes from sunrise, and from noon on those of sunset (%#)', (day, now, long, end) => {
    expect(sunWords(day, at(now), 'Europe/London', 'long')).toBe(long);
    expect(sunWords(day, at(now), 'Europe/London', 'short')).toBe(`sun 07:22-16:14 ${end}`);
  });

  test.each([
    [
      brightNight,
      '2025-06-21T23:00Z',
      `${bright}, 20 h 05 min after sunrise, 63 min before sunset`,
      'sun 02:55-00:03 rise+20h05 set-63min',
    ],
    [
      brightNight,
      '2025-06-21T22:04Z',
      `${bright}, 19 h 09 min after sunrise, 119 min before sunset`,
      'sun 02:55-00:03 rise+19h09 set-1h59',
    ],
    [
      onlyRises,
      '2025-06-21T02:45Z',
      'sunrise 02:55, then up past midnight, 10 min before sunrise',
      'sun up from 02:55 rise-10min',
    ],
    [
      onlyRises,
      '2025-06-21T23:00Z',
      'sunrise 02:55, then up past midnight, 20 h 05 min after sunrise',
      'sun up from 02:55 rise+20h05',
    ],
    [
      onlySets,
      '2025-06-21T10:00Z',
      'up since the day before, sunset 00:03 next day, 14 h 03 min before sunset',
      'sun up until 00:03 set-14h03',
    ],
    [
      onlySets,
      '2025-06-22T00:13Z',
      'up since the day before, sunset 00:03 next day, 10 min after sunset',
      'sun up until 00:03 set+10min',
    ],
    [polarDay, noon, 'polar day: the sun stays up today', 'polar day, sun up all day'],
    [
      twilitNight,
      noon,
      `${night}, civil twilight 08:31 to 12:53`,
      'polar night, twilight 08:31-12:53',
    ],
    [darkNight, noon, night, 'polar night, sun down all day'],
  ])('says bright nights, single events and polar days in words (%#)', (day, now, long, short) => {
    expect(sunWords(day, at(now), 'Etc/UTC', 'long')).toBe(long);
    expect(sunWords(day, at(now), 'Etc/UTC', 'short')).toBe(short);
  });

  test('shows clock times of the zone asked for, and says when one is of the day before', () => {
    expect(sunWords(winter, at('2025-11-20T08:22Z'), 'Asia/Shanghai', 'long')).toBe(
      'sunrise 15:22, sunset 00:14 next day, 60 min after sunrise',
    );
    expect(sunWords(winter, at('2025-11-20T08:22Z'), 'America/Los_Angeles', 'long')).toBe(
      'sunrise 23:22 the day before, sunset 08:14, 60 min after sunrise',
    );
  });

  test('keeps the short words within 36 ASCII columns and minutes in the long ones', () => {
    const hoursFromNoon = fc.double({ min: -72, max: 72, noNaN: true });
    fc.assert(
      fc.property(
        latitudesUpTo(90),
        longitudes,
        dates,
        hoursFromNoon,
        (latitude, longitude, date, hours) => {
          const zone = nauticalZone(longitude);
          const day = sunDay({ latitude, longitude }, date, zone);
          const now = at(`${date}T12:00${zone}`) + hours * HOUR;
          expect(sunWords(day, now, zone, 'short')).toMatch(/^[\x20-\x7e]{1,36}$/);
          if (day.kind !== 'rises' || day.sunrise === null) return;
          expect(sunWords(day, now, zone, 'long')).toMatch(/\d min (before|after) sunrise/);
        },
      ),
      { numRuns: 500 },
    );
  });
});
