import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clockOf,
  dateOf,
  durationWords,
  epochOf,
  isTimeZone,
  offsetOf,
  Stamp,
  stamp,
} from '../../src/visit/time.ts';

const zones = [
  'Europe/London',
  'Asia/Kolkata',
  'Asia/Kathmandu',
  'America/St_Johns',
  'Pacific/Kiritimati',
  'Pacific/Niue',
  'Etc/UTC',
];

describe('the stamp of a moment', () => {
  // Offsets: IANA time zone database; the instants are those of the Unix epoch (POSIX).
  test.each([
    ['1970-01-01T00:00:00Z', 'Etc/UTC', '1970-01-01T00:00:00+00:00'],
    ['2026-11-14T07:41:05Z', 'Europe/London', '2026-11-14T07:41:05+00:00'],
    ['2026-07-14T07:41:05Z', 'Europe/London', '2026-07-14T08:41:05+01:00'],
    ['2026-11-14T07:41:05Z', 'Asia/Kolkata', '2026-11-14T13:11:05+05:30'],
    ['2026-11-14T07:41:05Z', 'Asia/Kathmandu', '2026-11-14T13:26:05+05:45'],
    ['2026-07-14T02:00:00Z', 'America/St_Johns', '2026-07-13T23:30:00-02:30'],
    ['2026-12-31T18:30:00Z', 'Asia/Kolkata', '2027-01-01T00:00:00+05:30'],
    ['2026-12-31T18:29:59Z', 'Asia/Kolkata', '2026-12-31T23:59:59+05:30'],
    ['2026-12-31T10:00:00Z', 'Pacific/Kiritimati', '2027-01-01T00:00:00+14:00'],
    ['2028-02-29T12:00:00Z', 'Europe/London', '2028-02-29T12:00:00+00:00'],
  ])('%s in %s is %s', (utc, zone, want) => {
    expect(stamp(Date.parse(utc), zone)).toBe(want);
  });

  // Clocks went forward on 29 March and go back on 25 October 2026 in Europe/London (tz database).
  test('leaves out the hour that the clocks skip in spring', () => {
    const before = Date.parse('2026-03-29T00:59:59Z');
    expect(stamp(before, 'Europe/London')).toBe('2026-03-29T00:59:59+00:00');
    expect(stamp(before + 1000, 'Europe/London')).toBe('2026-03-29T02:00:00+01:00');
  });

  test('tells the two hours apart that the clocks show twice in autumn', () => {
    const first = stamp(Date.parse('2026-10-25T00:30:00Z'), 'Europe/London');
    const second = stamp(Date.parse('2026-10-25T01:30:00Z'), 'Europe/London');
    expect([first, second]).toEqual(['2026-10-25T01:30:00+01:00', '2026-10-25T01:30:00+00:00']);
    expect(clockOf(first)).toBe(clockOf(second));
    expect(epochOf(second) - epochOf(first)).toBe(3_600_000);
  });

  test('cuts to the second and never rounds into the next day', () => {
    expect(stamp(Date.parse('2026-11-14T23:59:59.999Z'), 'Europe/London')).toBe(
      '2026-11-14T23:59:59+00:00',
    );
  });

  test('is the same moment again, passes the schema and falls into its three parts', () => {
    const seconds = fc.integer({ min: 0, max: 4_000_000_000 });
    fc.assert(
      fc.property(seconds, fc.constantFrom(...zones), (epoch, zone) => {
        const made = stamp(epoch * 1000, zone);
        expect(epochOf(made)).toBe(epoch * 1000);
        expect(Stamp.safeParse(made).success).toBe(true);
        expect(`${dateOf(made)}T${clockOf(made)}:${made.slice(17, 19)}${offsetOf(made)}`).toBe(
          made,
        );
      }),
    );
  });
});

describe('what is no stamp', () => {
  test.each([
    '2026-11-14',
    '2026-11-14T07:41:05',
    '2026-11-14T07:41:05Z',
    '2026-11-14T07:41+00:00',
    '2026-11-14T07:41:05.5+00:00',
    '2026-02-29T07:41:05+00:00',
    '2026-13-01T07:41:05+00:00',
    '2026-11-14T24:00:00+00:00',
    '2026-11-14T07:61:05+00:00',
    '2026-11-14T07:41:05+25:00',
    '14.11.2026 07:41',
    '',
  ])('%j is refused', (text) => {
    expect(Stamp.safeParse(text).success).toBe(false);
  });
});

describe('a time zone', () => {
  test.each(zones)('%s is known', (zone) => {
    expect(isTimeZone(zone)).toBe(true);
  });
  test.each(['', 'Mars/Olympus', 'Europe/Sallow', '../etc', 'Europe/London\n'])(
    '%j is not',
    (zone) => {
      expect(isTimeZone(zone)).toBe(false);
    },
  );
});

describe('a duration in words', () => {
  test.each([
    [0, '0:00'],
    [-5, '0:00'],
    [59_999, '0:00'],
    [60_000, '0:01'],
    [32 * 60_000, '0:32'],
    [125 * 60_000, '2:05'],
    [25 * 3_600_000, '25:00'],
  ])('%d milliseconds are %s', (milliseconds, words) => {
    expect(durationWords(milliseconds)).toBe(words);
  });
});
