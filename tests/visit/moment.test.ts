import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readMoment } from '../../src/visit/moment.ts';
import { epochOf, stamp } from '../../src/visit/time.ts';

const timeZone = 'Europe/London';
const now = epochOf('2026-11-15T20:10:00+00:00');
const read = (text: string, day = now) => {
  const found = readMoment(text, { now, day, timeZone });
  return 'moment' in found ? stamp(found.moment, timeZone) : found.problem;
};

describe('when something was', () => {
  test.each([
    ['07:40', '2026-11-15T07:40:00+00:00'],
    ['7.40', '2026-11-15T07:40:00+00:00'],
    ['today 07:40', '2026-11-15T07:40:00+00:00'],
    ['Yesterday  07:40', '2026-11-14T07:40:00+00:00'],
    ['2026-06-01 23:59', '2026-06-01T23:59:00+01:00'],
  ])('%j is %s', (text, want) => {
    expect(read(text)).toBe(want);
  });

  test('is on the day that is being typed where no date is said', () => {
    expect(read('09:15', epochOf('2026-03-02T08:00:00+00:00'))).toBe('2026-03-02T09:15:00+00:00');
  });

  // Summer time in the United Kingdom: Summer Time Order 2002, the last Sundays of March and October at 01:00 UTC.
  test('is refused where the clocks leapt over it, and the first of two where they went back', () => {
    expect(read('2026-03-29 01:30')).toMatch(/leapt over 01:30/);
    expect(read('2026-10-25 01:30')).toBe('2026-10-25T01:30:00+01:00');
  });

  test.each([
    '',
    'noon',
    '24:00',
    '7:60',
    '2026-02-30 07:00',
    '14/11 07:40',
    '07:40 yesterday',
    '23:00',
  ])('%j is refused in a sentence', (text) => {
    expect(read(text)).toMatch(/^["T].*[.]$/);
  });

  test('never throws, and never gives what is still to come', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^\d{4}-\d\d-\d\d \d\d:\d\d$/)),
        (text) => {
          const found = readMoment(text, { now, day: now, timeZone });
          if ('moment' in found) expect(found.moment).toBeLessThanOrEqual(now);
        },
      ),
    );
  });
});
