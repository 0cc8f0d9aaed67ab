import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { MOON_PHASES, moonAt, moonCourse, moonWords } from '../../src/sky/moon.ts';

const HOUR = 3_600_000;
const at = (iso: string) => Temporal.Instant.from(iso).epochMilliseconds;
const SALLOW_MERE = { position: { latitude: 51.12, longitude: -2.85 }, timeZone: 'Europe/London' };

describe('the phases of the moon', () => {
  test('follow one another, each once in a month, and the moments last a day', () => {
    let now = at('2026-01-01T00:00Z');
    const runs: { phase: string; hours: number }[] = [];
    for (const end = now + 360 * 24 * HOUR; now < end; now += HOUR) {
      const { phase } = moonAt(now);
      const last = runs.at(-1);
      if (last?.phase === phase) last.hours += 1;
      else runs.push({ phase, hours: 1 });
    }
    const first = MOON_PHASES.indexOf(runs[0]?.phase as never);
    const whole = runs.slice(1, -1);
    expect(whole.length).toBeGreaterThan(90);
    whole.forEach(({ phase, hours }, place) => {
      expect(phase).toBe(MOON_PHASES[(first + place + 1) % 8]);
      if (/new|full|quarter/.test(phase)) expect(Math.abs(hours - 24)).toBeLessThanOrEqual(1);
      else expect(hours).toBeGreaterThan(4 * 24);
    });
  });
});

describe('the course of the moon', () => {
  const latitudes = fc.double({ min: -60, max: 60, noNaN: true });
  const longitudes = fc.double({ min: -180, max: 180, noNaN: true });
  const moments = fc.integer({ min: at('1950-01-01T00:00Z'), max: at('2050-01-01T00:00Z') });

  test('alternates: after it rises it sets within a day, and after that it rises', () => {
    fc.assert(
      fc.property(latitudes, longitudes, moments, (latitude, longitude, now) => {
        const one = moonCourse({ latitude, longitude }, now);
        if (!('at' in one)) throw new Error(one.next);
        const two = moonCourse({ latitude, longitude }, one.at + 60_000);
        if (!('at' in two)) throw new Error(two.next);
        expect(one.at).toBeGreaterThan(now);
        expect(two.at - one.at).toBeLessThan(24 * HOUR);
        expect([one.next, two.next].toSorted()).toEqual(['rises', 'sets']);
      }),
      { numRuns: 300 },
    );
  });

  test('says that it stays up or down for days near a pole', () => {
    const high = { latitude: 85, longitude: 0 };
    const days = Array.from(
      { length: 28 },
      (_, day) => moonCourse(high, at('2026-01-01T00:00Z') + day * 24 * HOUR).next,
    );
    expect(days).toContain('stays up');
    expect(days).toContain('stays down');
    expect(moonWords(at('2026-01-01T00:00Z'), { ...SALLOW_MERE, position: high })).toMatch(
      /^moon \d+ %, waxing, (stays (up|down)|(rises|sets) \d\d:\d\d)$/,
    );
  });
});

// Moments by astronomy-engine 2.1.19, to the minute; the wording is the project's own.
describe('the moon in words', () => {
  test.each([
    ['2026-11-14T07:42Z', 'moon 22 %, waxing', ', rises 12:25'],
    ['2026-11-24T14:53Z', 'moon 100 %, full', ', rises 15:31'],
    ['2026-11-09T07:02Z', 'moon 0 %, new', ', rises 07:50'],
    ['2026-12-01T06:09Z', 'moon 50 %, waning', ', sets 12:49'],
  ])('at %s is %j, and %j where the place is known', (iso, words, course) => {
    expect(moonWords(at(iso), null)).toBe(words);
    expect(moonWords(at(iso), SALLOW_MERE)).toContain(words + course);
  });
});
