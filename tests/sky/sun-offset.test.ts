import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { sunDay } from '../../src/sky/sun.ts';
import { sunOffset } from '../../src/sky/sun-offset.ts';

const at = (iso: string) => Temporal.Instant.from(iso).epochMilliseconds;
const GREENWICH_60N = { latitude: 60, longitude: 0 };
const TROMSO = { latitude: 69.65, longitude: 18.96 };

describe('the offset from sunrise or sunset', () => {
  // US Naval Observatory, rise and set table for 2019: at 60 N, 0 E on 20 March rise 06:03, set
  // 18:14 UT; on 21 June 02:36 and 21:28.
  test.each([
    ['2019-03-20T06:38:30Z', 35, '35 min after sunrise'],
    ['2019-03-20T05:43:00Z', -20, '20 min before sunrise'],
    ['2019-03-20T06:03:59Z', 0, '0 min after sunrise'],
    ['2019-03-20T12:00:00Z', 357, '357 min after sunrise'],
    ['2019-03-20T12:30:00Z', -344, '344 min before sunset'],
    ['2019-03-20T18:24:00Z', 10, '10 min after sunset'],
    ['2019-06-21T21:58:00Z', 30, '30 min after sunset'],
  ])('at %s is %d', (iso, minutes, words) => {
    const event = words.split(' ').at(-1);
    expect(sunOffset(at(iso), GREENWICH_60N, 'Etc/UTC')).toEqual({ event, minutes, words });
  });

  test('goes by the evening before, after midnight', () => {
    const offset = sunOffset(at('2019-06-21T23:30:00Z'), GREENWICH_60N, 'Europe/London');
    expect(offset).toEqual({ event: 'sunset', minutes: 122, words: '122 min after sunset' });
    expect(sunOffset(at('2019-06-22T00:01:00Z'), GREENWICH_60N, 'Etc/UTC')?.event).toBe('sunset');
  });

  test('is null on polar days and in polar nights', () => {
    expect(sunOffset(at('2025-06-21T10:00Z'), TROMSO, 'Europe/Oslo')).toBeNull();
    expect(sunOffset(at('2025-12-21T10:00Z'), TROMSO, 'Europe/Oslo')).toBeNull();
  });

  test('is never farther than the nearest event of the same day, and never past half a day', () => {
    const place = fc.record({
      latitude: fc.double({ min: -60, max: 60, noNaN: true }),
      longitude: fc.double({ min: -180, max: 180, noNaN: true }),
    });
    const moment = fc.integer({ min: at('1950-01-01T00:00Z'), max: at('2050-01-01T00:00Z') });
    fc.assert(
      fc.property(place, moment, (position, now) => {
        const offset = sunOffset(now, position, 'Etc/UTC');
        if (!offset) throw new Error('polar day');
        expect(Number.isInteger(offset.minutes)).toBe(true);
        const size = Math.abs(offset.minutes);
        expect(size).toBeLessThanOrEqual(12 * 60);
        expect(offset.words).toContain(offset.minutes < 0 ? 'before' : 'after');
        const date = Temporal.Instant.fromEpochMilliseconds(now)
          .toZonedDateTimeISO('Etc/UTC')
          .toPlainDate();
        const day = sunDay(position, date.toString(), 'Etc/UTC');
        if (day.kind !== 'rises') throw new Error(day.kind);
        // The moment is cut to the minute and the event rounded: a minute and a half at the most.
        for (const event of [day.sunrise, day.sunset])
          if (event !== null) expect(size).toBeLessThan(Math.abs(now - event) / 60_000 + 1.5);
      }),
      { numRuns: 300 },
    );
  });
});
