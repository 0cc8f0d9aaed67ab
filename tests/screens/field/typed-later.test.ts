import { describe, expect, test } from 'vitest';
import { fieldFrame } from '../../../src/screens/field/frame.ts';
import { updateField } from '../../../src/screens/field/update.ts';
import { rowText } from '../../../src/screens/paint.ts';
import { keysOf, session } from './drive.ts';

const HOUR = 3_600_000;
/** Five hours behind the start, at 12:40. */
const NOON = session().now + 5 * HOUR;

function typed(keys: string) {
  return keysOf(keys).reduce(
    (at, key, number) => {
      const id = `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`;
      return updateField(at, { kind: 'key', key, now: NOON, id }).session;
    },
    { ...session(), now: NOON },
  );
}
const clocks = (times: { time: string }[]) => times.map(({ time }) => time.slice(11, 16));

describe('what is typed later', () => {
  test.each(['@07:55<enter>', '<escape>t07:55<enter>', '/time 07:55<enter>'])(
    'was seen when %s says, and is written down now',
    (keys) => {
      const { visit } = typed(`${keys}tuf 12<enter>wren<enter>`);
      expect(clocks(visit.entries)).toEqual(['07:55', '07:55']);
      expect(clocks(visit.changes)).toEqual(['12:40', '12:40']);
    },
  );

  test('goes by the clock again after @now', () => {
    const { visit } = typed('@07:55<enter>tuf<enter>@now<enter>wren<enter>');
    expect(clocks(visit.entries)).toEqual(['07:55', '12:40']);
  });

  test('ends the visit when it was said to have ended', () => {
    const { visit } = typed('@08:40<enter><escape>e<enter><enter>');
    expect(visit.end?.slice(11, 16)).toBe('08:40');
  });

  test('is counted on the Board at its time', () => {
    const { visit } = typed('@07:55<enter><escape>baa');
    expect(clocks(visit.entries)).toEqual(['07:55']);
    expect(visit.entries[0]?.count).toEqual({ kind: 'exact', value: 2 });
  });

  test('is told at the top of the screen', () => {
    const frame = fieldFrame(typed('@07:55<enter>'), { columns: 80, rows: 24 });
    expect(rowText(frame.rows[0] ?? [])).toMatch(/07:55.*TYPED LATER/);
  });

  test.each(['@06:00', '@23:00', '@noon', '@25:00'])('%s is told and logs nothing', (line) => {
    const at = typed(`${line}<enter>`);
    expect(at.visit.entries).toEqual([]);
    expect(at.message?.kind).toBe('problem');
    expect(at.moment).toBeNull();
  });
});
