import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  Effort,
  effortText,
  METHODS,
  paused,
  readEffort,
  toldAnew,
  watchedTime,
} from '../../src/visit/effort.ts';
import { epochOf } from '../../src/visit/time.ts';
import { minutesIn, START, visitAt } from './made.ts';

const none = visitAt().effort;
const nothing = { distance: null, observers: null, method: null };

function effort(text: string) {
  const read = readEffort(text);
  if ('problem' in read) throw new Error(read.problem);
  return read.effort;
}

describe('a line of effort', () => {
  test.each([
    ['', {}],
    ['3.2 km 2 people on foot', { distance: 3200, observers: 2, method: 'on foot' }],
    ['on foot 2 people 3,2km', { distance: 3200, observers: 2, method: 'on foot' }],
    ['500 M', { distance: 500 }],
    ['0 km from the hide', { distance: 0, method: 'from the hide' }],
    ['1 person', { observers: 1 }],
    ['3 of us by boat', { observers: 3, method: 'by boat' }],
    ['12 observers', { observers: 12 }],
    ['with the Ashwick Levels naturalists', { method: 'with the Ashwick Levels naturalists' }],
    ['transect B', { method: 'transect B' }],
    ['2 km transect', { distance: 2000, method: 'line transect' }],
    ['Line', { method: 'line transect' }],
    ['point', { method: 'point count' }],
    ['timed', { method: 'timed count' }],
    ['whole site', { method: 'whole-site count' }],
    ['site count', { method: 'whole-site count' }],
    ['cas', { method: 'casual' }],
    ['count', { method: 'count' }],
    ['po', { method: 'po' }],
  ])('%j is read', (text, want) => {
    expect(effort(text)).toEqual({ ...nothing, ...want });
  });

  test.each(METHODS)(
    '%j is read as the method of that name, from its third letter on',
    (method) => {
      for (let length = 3; length <= method.length; length += 1)
        expect(effort(method.slice(0, length).toUpperCase()).method).toBe(method);
    },
  );

  // Exact: NIST SP 811, Appendix B (from memory).
  test.each([
    ['1 mi', 1609.344],
    ['3 miles', 4828.032],
    ['1 mile', 1609.344],
    ['1 yd', 0.9144],
    ['1 nmi', 1852],
    ['0.1 km', 100],
  ])('%j is %d metres exactly', (text, metres) => {
    expect(effort(text).distance).toBe(metres);
  });

  test.each([
    ['5', '"5" has no unit: write 5 km'],
    ['on foot 3.5', '"3.5" has no unit'],
    ['45 min', '"45 min": leave it out. The time comes from the visit itself'],
    ['on foot 1 h 20', '"1 h 20": leave it out'],
    ['1h20min', '"1h20min": leave it out'],
    ['2.5 hours', '"2.5 hours": leave it out'],
    ['3 hides', '"3" has no unit'],
    ['1:20 on foot', '"1:20": leave it out'],
    ['5 km/h', '"5" has no unit'],
    ['2 km 3 km', 'Two distances, 2 km and 3 km: keep one.'],
    ['1,200 m', 'write 1200 m or 1.200 m'],
    ['3-4 km', `"3-4" can't be read`],
    ['-3 km', `"-3" can't be read`],
    ['~3 km', `"~3" can't be read`],
    ['3.2.1 km', `"3.2.1" can't be read`],
    ['0 people', 'At least one person was there'],
    ['2.5 people', 'write a whole number of people'],
    ['99999999 km', 'more than once round the Earth'],
  ])('%j is told to be mended', (text, sentence) => {
    const read = readEffort(text);
    expect('problem' in read && read.problem).toContain(sentence);
  });

  test('that is read and shown again stays the same to the last metre', () => {
    const digits = fc
      .tuple(fc.nat(40_000), fc.nat(9999))
      .map(([whole, part]) => `${whole}.${String(part).padStart(4, '0')}`);
    const unit = fc.constantFrom('m', 'km', 'mi', 'yd', 'nmi', 'miles');
    const line = fc
      .tuple(
        digits,
        unit,
        fc.integer({ min: 1, max: 99 }),
        fc.constantFrom('', ' on foot', ' from hide B'),
      )
      .map(([number, name, people, method]) => `${number} ${name} ${people} people${method}`);
    fc.assert(
      fc.property(line, (text) => {
        const read = readEffort(text);
        if ('problem' in read) return;
        expect(effort(effortText({ ...none, ...read.effort }))).toEqual(read.effort);
      }),
    );
  });

  test('is never one that a file could not hold, whatever is typed', () => {
    const bits = fc.array(
      fc.constantFrom(
        '3',
        '.',
        ',',
        ' ',
        'km',
        'people',
        'mi',
        '-',
        '9999999999',
        '0',
        'x',
        '400 m',
      ),
    );
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      bits.map((all) => all.join('')),
    );
    fc.assert(
      fc.property(text, (typed) => {
        const read = readEffort(typed);
        if ('problem' in read) return;
        const kept = { ...none, ...read.effort };
        expect(Effort.parse(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('effort told anew', () => {
  const track = {
    file: 'walk.gpx',
    start: START,
    end: minutesIn(60),
    movingTime: 1_800_000,
    climb: null,
  };
  const walked = { ...none, distance: 3200, track };

  test('keeps the track whose distance stands', () => {
    const anew = toldAnew(walked, effort('3.2 km 2 people'));
    expect(anew).toEqual({ ...walked, observers: 2 });
  });

  test.each(['3.3 km', ''])('has no track where another distance is given by hand: %j', (line) => {
    expect(toldAnew(walked, effort(line)).track).toBeNull();
  });
});

describe('the time watched', () => {
  const start = epochOf(START);
  const minutes = (count: number) => start + count * 60_000;
  const pause = (from: number, to: number | null) => ({
    start: minutesIn(from),
    end: to === null ? null : minutesIn(to),
  });

  test.each([
    ['no pause', [], 60],
    ['one pause', [pause(10, 25)], 45],
    ['two pauses', [pause(10, 25), pause(30, 31)], 44],
    ['a pause that goes on', [pause(10, 25), pause(50, null)], 35],
    ['a pause from the start on', [pause(0, null)], 0],
    ['a clock set back within a pause', [pause(10, 5)], 60],
  ])('with %s', (_, pauses, watched) => {
    expect(watchedTime({ ...none, pauses }, start, minutes(60))).toBe(watched * 60_000);
  });

  test('is never below nothing, also before the start', () => {
    expect(watchedTime(none, start, minutes(-5))).toBe(0);
    expect(watchedTime({ ...none, pauses: [pause(0, 90)] }, start, minutes(60))).toBe(0);
  });

  test('counts a pause over a change of the clocks by true time', () => {
    const pauses = [{ start: '2026-10-25T01:30:00+01:00', end: '2026-10-25T01:30:00+00:00' }];
    const from = epochOf('2026-10-25T00:30:00+01:00');
    const until = epochOf('2026-10-25T02:30:00+00:00');
    expect(watchedTime({ ...none, pauses }, from, until)).toBe(2 * 3_600_000);
  });

  test('stands still while paused', () => {
    expect(paused(none)).toBe(false);
    expect(paused({ ...none, pauses: [pause(1, 2)] })).toBe(false);
    const away = { ...none, pauses: [pause(1, 2), pause(5, null)] };
    expect(paused(away)).toBe(true);
    expect(watchedTime(away, start, minutes(90))).toBe(watchedTime(away, start, minutes(7)));
  });
});
