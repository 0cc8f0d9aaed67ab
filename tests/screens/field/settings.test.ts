import { describe, expect, test } from 'vitest';
import { fieldFrame } from '../../../src/screens/field/frame.ts';
import { helpRows } from '../../../src/screens/field/help.ts';
import { keymapOf } from '../../../src/screens/field/keymap.ts';
import { type FieldEvent, type Session, typedLine } from '../../../src/screens/field/session.ts';
import { rowText } from '../../../src/screens/paint.ts';
import { USUAL_UNITS } from '../../../src/visit/units-shown.ts';
import { press, session, tell } from './drive.ts';

const SETTINGS = {
  kind: 'settings',
  groupSizes: [5, 25, 400],
  units: { temperature: 'F', distance: 'mi', wind: 'kn' },
  observers: 3,
} as const satisfies FieldEvent;

function shown(at: Session): string {
  const { rows } = fieldFrame(at, { columns: 120, rows: 30 });
  return rows.map(rowText).join(' ').replace(/\s+/g, ' ');
}

describe('group sizes of the settings', () => {
  const at = tell(session(), SETTINGS);

  test('are the steps of the entry line', () => {
    const typed = (keys: string) => typedLine(press(at, `mallard${keys}`).session).text;
    expect(typed('<right>')).toBe('mallard 5');
    expect(typed('<right><right><right><right>')).toBe('mallard 400');
    expect(typed(' 30<left>')).toBe('mallard 25');
  });

  test('have the digits of the Board, which begins with the first', () => {
    const board = press(at, '<escape>b').session;
    expect(board.board?.step).toBe(5);
    expect(shown(board)).toContain('counts by [5] 25 400');
    const stepped = press(board, '3').session;
    expect(stepped.board?.step).toBe(400);
    const letter = Object.keys(stepped.board?.taxa ?? {})[0] ?? '';
    const counted = press(stepped, letter).session;
    expect(counted.visit.entries[0]?.count).toEqual({ kind: 'exact', value: 400 });
    for (const digit of ['4', '9', '0'])
      expect(press(stepped, digit).session.board?.step).toBe(400);
  });

  test('stand on the help page and in the hint line', () => {
    const page = helpRows(80, keymapOf(SETTINGS.groupSizes)).map(rowText).join('\n');
    expect(page).toMatch(/1\D{1,4}3 .*5 25 400$/m);
    expect(page).not.toContain('20 50 100');
    expect(shown(press(at, '<escape>b').session)).toMatch(/1\D{1,4}3 step/);
    const help = press(at, '<escape>h<page down><page down>').session;
    expect(shown(help)).not.toContain('20 50 100');
  });
});

describe('units of the settings', () => {
  test('are those of the head line and of what the answer says', () => {
    const at = tell(press(session(), '<escape>w7c 15 km/h sw<enter>').session, SETTINGS);
    expect(shown(at)).toContain('45 °F, 8.1 kn SW');
    const answered = press(at, '<escape>w50f 10 kn w<enter>').session;
    expect(answered.message?.words).toBe('Weather: 50 °F, 10 kn W.');
    expect(answered.visit.weather.at(-1)).toMatchObject({ temperature: 10, windSpeed: 5.1444 });
  });

  test('are those of the questions, and files keep metres', () => {
    const asked = press(tell(session(), SETTINGS), '<escape>e').session;
    expect(shown(asked)).toContain('As in 2 mi 2 people');
    const walked = press(asked, `${'<backspace>'.repeat(12)}2 mi<enter><escape>`).session;
    expect(walked.visit.effort.distance).toBe(3218.688);
    expect(typedLine(walked).text).toBe('2 mi');
    expect(shown(walked)).toContain('Watched for 0:00, 2 mi.');
    expect(shown(press(tell(session(), SETTINGS), '<escape>w').session)).toContain(
      'As in 45f f3 sw 6/8 drizzle: temperature, Beaufort (or 8 kn)',
    );
  });
});

describe('the usual number of observers', () => {
  test('stands in a new visit, without a change that undo could take back', () => {
    const at = tell(session(), SETTINGS);
    expect(at.visit.effort.observers).toBe(3);
    expect(at.visit.changes).toEqual([]);
    expect(typedLine(press(at, '<escape>e').session).text).toBe('3 people');
  });

  test('is not put into a visit that goes on or that has a number', () => {
    const first = session();
    const goesOn: Session = { ...first, saved: { ...first.saved, file: 'x.json' } };
    expect(tell(goesOn, SETTINGS).visit).toBe(goesOn.visit);
    const logged = press(first, 'mallard<enter>').session;
    expect(tell(logged, SETTINGS).visit).toBe(logged.visit);
    const none = { ...SETTINGS, units: USUAL_UNITS, observers: null };
    expect(tell(first, none).visit).toBe(first.visit);
  });
});
