import { describe, expect, test } from 'vitest';
import { passingRows } from '../../../src/screens/board/passing.ts';
import type { Session } from '../../../src/screens/field/session.ts';
import { rowText } from '../../../src/screens/paint.ts';
import { countShown } from '../../../src/visit/count.ts';
import { epochOf } from '../../../src/visit/time.ts';
import { newVisit } from '../../../src/visit/visit.ts';
import { press, SALLOW_MERE, session } from '../field/drive.ts';
import { opened } from './model.ts';

/** Sallow Mere with a visit that begins when the clock shows `start`. */
function begun(start: string, timeZone = 'Europe/London'): Session {
  const place = { ...SALLOW_MERE, timeZone };
  const visit = newVisit({ id: session().visit.id, timeZone, start, place });
  return opened({ ...session(), visit, now: epochOf(start) });
}
/** Keys pressed from a moment on, a second apart. */
const from = (at: Session, moment: string, typed: string) =>
  press({ ...at, now: epochOf(moment) }, typed).session;
const told = ({ visit }: Session) =>
  visit.entries.map((e) => `${e.time.slice(11, 16)} ${e.heading ?? '-'} ${countShown(e.count)}`);
const rows = (at: Session, width = 80) => passingRows(at, width, 4).map(rowText);

describe('birds that pass', () => {
  const start = begun('2026-10-03T06:50:00+01:00');
  const passing = press(start, '<escape>fsw 15<enter>').session;

  test('are counted by interval and heading, a line for each', () => {
    let at = from(passing, '2026-10-03T06:55:00+01:00', 'jj3j');
    at = from(at, '2026-10-03T06:59:57+01:00', 'jjjj');
    at = from(at, '2026-10-03T07:14:50+01:00', 'j');
    expect(told(at)).toEqual(['06:55 SW 17', '07:00 SW 15']);
    const other = press(at, '<escape>fne 15<enter>j').session;
    expect(told(other).at(-1)).toBe('07:15 NE 5');
  });

  test('are apart from those that stay', () => {
    const at = press(passing, 'j<escape>f<enter>j').session;
    expect(told(at)).toEqual(['06:50 SW 1', '06:50 - 1']);
  });

  test('have a rate an hour, with bars on one scale that begin below each other', () => {
    let at = from(passing, '2026-10-03T06:46:00+01:00', '6j');
    at = from(at, '2026-10-03T07:01:00+01:00', '7j');
    at = from(at, '2026-10-03T07:20:00+01:00', '6j');
    const shown = rows(at);
    expect(shown.map((row) => row.replace(/ +/g, ' ').replace(/#+/, '#'))).toEqual([
      '06:45 SW 50 200 an hour #',
      '07:00 SW 100 400 an hour #',
      '07:15 SW 50 so far 200 an hour #',
    ]);
    const [half = 0, full = 0, again] = shown.map((row) => row.split('#').length - 1);
    expect(full).toBe(80 - (shown[1] ?? '').indexOf('#') - 1);
    expect([Math.abs(2 * half - full) <= 1, again]).toEqual([true, half]);
    expect(new Set(shown.map((row) => row.indexOf('#'))).size).toBe(1);
  });

  test.each([50, 60, 120])('have rows that fit %d columns', (width) => {
    const at = from(passing, '2026-10-03T07:01:00+01:00', '7j'.repeat(9));
    for (const row of rows(at, width)) expect(row.length).toBeLessThanOrEqual(width);
  });

  test('count on past midnight', () => {
    let at = press(begun('2026-10-03T23:40:00+01:00'), '<escape>fs 60<enter>').session;
    at = from(at, '2026-10-03T23:59:57+01:00', 'jjjj');
    expect(told(at)).toEqual(['23:59 S 2', '00:00 S 2']);
    expect(rows(at).map((row) => row.slice(0, 5))).toEqual(['23:00', '00:00']);
  });

  // Summer time ends at 01:00 UTC on the last Sunday of October: Directive 2000/84/EC, from memory.
  test('of the hour that comes twice are told as two hours, each by its own clock', () => {
    let at = press(begun('2026-10-25T00:30:00+01:00'), '<escape>fs 60<enter>').session;
    at = from(at, '2026-10-25T00:40:00+01:00', 'j');
    at = from(at, '2026-10-25T01:40:00+01:00', 'jj');
    at = from(at, '2026-10-25T01:40:00+00:00', 'jjj');
    expect(told(at)).toEqual(['00:40 S 1', '01:40 S 2', '01:40 S 3']);
    expect(rows(at).map((row) => row.slice(0, 5))).toEqual(['00:00', '01:00', '01:00']);
  });

  // India is at +05:30: the IANA database, from memory.
  test('have intervals from the full hour where clocks are half an hour off', () => {
    let at = press(
      begun('2026-10-03T06:20:00+05:30', 'Asia/Kolkata'),
      '<escape>fs 60<enter>',
    ).session;
    at = from(at, '2026-10-03T06:59:50+05:30', 'j');
    at = from(at, '2026-10-03T07:00:00+05:30', 'j');
    expect(told(at)).toEqual(['06:59 S 1', '07:00 S 1']);
    expect(rows(at).map((row) => row.slice(0, 5))).toEqual(['06:00', '07:00']);
  });

  test.each([
    ['sideways', '"SIDEWAYS" is no point of the compass: write sw or nne.'],
    ['sw 7', '"7" is no interval: write 5, 10, 15, 60 minutes.'],
  ])('%s as a heading is told to be none, and stays in the line', (typed, words) => {
    const at = press(start, `<escape>f${typed}<enter>`).session;
    expect(at.message?.words).toBe(words);
    expect(at.drafts.passing?.text).toBe(typed);
  });

  test('have intervals of a quarter of an hour where nothing else is said', () => {
    expect(press(start, '<escape>fnnw<enter>').session.board?.passing).toEqual({
      heading: 'NNW',
      minutes: 15,
    });
  });
});
