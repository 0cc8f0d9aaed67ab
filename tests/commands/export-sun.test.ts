import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sunWords } from '../../src/commands/export-sun.ts';
import { sunOffset } from '../../src/sky/sun-offset.ts';

test('words for many moments are those of each by itself, also near the poles and at midnight', () => {
  const words = sunWords();
  const zones = ['UTC', 'Europe/London', 'Asia/Kolkata', 'Pacific/Auckland'];
  const moment = fc.integer({ min: 1_700_000_000_000, max: 1_760_000_000_000 });
  const latitude = fc.double({ min: -80, max: 80, noNaN: true });
  const longitude = fc.double({ min: -180, max: 180, noNaN: true });
  fc.assert(
    fc.property(moment, latitude, longitude, fc.constantFrom(...zones), (at, north, east, zone) => {
      const position = { latitude: north, longitude: east };
      expect(words(at, position, zone)).toBe(sunOffset(at, position, zone)?.words ?? null);
    }),
    { numRuns: 200 },
  );
});
