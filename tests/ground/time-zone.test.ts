import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { timeZoneAt } from '../../src/ground/time-zone.ts';
import { isTimeZone } from '../../src/visit/time.ts';

describe('the time zone of a position', () => {
  // The IANA time zone database; positions to a tenth of a degree, from memory.
  test.each([
    [51.5, -0.1, 'Europe/London'],
    [53.3, -6.3, 'Europe/Dublin'],
    [22.6, 88.4, 'Asia/Kolkata'],
    [27.7, 85.3, 'Asia/Kathmandu'],
    [-33.9, 151.2, 'Australia/Sydney'],
    [40.7, -74.0, 'America/New_York'],
  ])('%d, %d is %s', (latitude, longitude, zone) => {
    expect(timeZoneAt({ latitude, longitude })).toBe(zone);
  });

  test('is one that this machine knows, anywhere on Earth, poles and date line too', () => {
    const degrees = (most: number) =>
      fc.oneof(fc.double({ min: -most, max: most, noNaN: true }), fc.constantFrom(-most, 0, most));
    fc.assert(
      fc.property(degrees(90), degrees(180), (latitude, longitude) => {
        expect(isTimeZone(timeZoneAt({ latitude, longitude }))).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
