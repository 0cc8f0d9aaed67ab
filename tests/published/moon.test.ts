import { MoonPhase as phaseAngle, SearchMoonPhase } from 'astronomy-engine';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { MOON_PHASES, moonAt } from '../../src/sky/moon.ts';
import { fromEngine, toEngine } from './sky-reference.ts';

const DAY = 86_400_000;
const at = (iso: string) => Temporal.Instant.from(iso).epochMilliseconds;

describe('Meeus, Astronomical Algorithms, example 48.a', () => {
  // From memory: 1992-04-12, 0h TD, illuminated fraction 0.6786. TD was then 59 s ahead of UTC.
  test('has 0.6786 of the moon illuminated, waxing gibbous', () => {
    const moon = moonAt(at('1992-04-12T00:00Z') - 59_000);
    expect(moon.illuminated).toBeCloseTo(0.6786, 3);
    expect(moon).toMatchObject({ phase: 'waxing gibbous', waxing: true });
  });
});

describe('astronomy-engine, reference library, every phase of 2000 to 2040', () => {
  // The moments within a quarter of an hour: 0.49 of a day on either side bears the phase's name,
  // 0.51 the name of the days beside it.
  test.each([
    [0, 'new moon'],
    [90, 'first quarter'],
    [180, 'full moon'],
    [270, 'last quarter'],
  ] as const)('at %d degrees is called %s for half a day before and after', (degrees, name) => {
    const index = MOON_PHASES.indexOf(name);
    let from = toEngine(at('2000-01-01T00:00Z'));
    for (let count = 0; count < 495; count += 1) {
      const moment = SearchMoonPhase(degrees, from, 40);
      if (!moment) throw new Error(`no ${name} after ${from}`);
      const exact = fromEngine(moment.ut);
      const named = (days: number) => moonAt(exact + days * DAY).phase;
      expect([-0.49, 0, 0.49].map(named)).toEqual([name, name, name]);
      expect(named(-0.51)).toBe(MOON_PHASES[(index + 7) % 8]);
      expect(named(0.51)).toBe(MOON_PHASES[index + 1]);
      from = moment.ut + 20;
    }
  });

  test('the moon waxes on the same moments but for a quarter of an hour', () => {
    for (let epoch = at('2000-01-01T00:00Z'); epoch < at('2002-01-01T00:00Z'); epoch += DAY / 4) {
      const angle = phaseAngle(toEngine(epoch));
      if (Math.abs(Math.sin((angle * Math.PI) / 180)) < 0.003) continue;
      expect(moonAt(epoch).waxing).toBe(angle < 180);
    }
  });
});
