import { describe, expect, test } from 'vitest';
import type { Session } from '../../../src/screens/field/session.ts';
import { updateField } from '../../../src/screens/field/update.ts';
import { countShown } from '../../../src/visit/count.ts';
import { totals } from '../../../src/visit/sums.ts';
import { press, session, tell } from '../field/drive.ts';
import { opened } from './model.ts';

/** Entries as letters would tell them: name, count, whether struck out. */
const lines = (at: Session) =>
  at.visit.entries.map((entry) =>
    `${entry.words} ${countShown(entry.count)} ${entry.struck ? 'struck' : ''}`.trim(),
  );
const keyed = (typed: string, from = opened()) => press(from, typed).session;
const words = (typed: string, from = opened()) => keyed(typed, from).message?.words ?? null;

describe('a letter', () => {
  test('adds the step to its species, and the digits set the step', () => {
    expect(lines(keyed('qq'))).toEqual(['Coot 2']);
    expect(lines(keyed('1q2q3q4q5q6q7q'))).toEqual(['Coot 188']);
    expect(keyed('7').board?.step).toBe(100);
  });

  test('saves each stroke by itself', () => {
    const saves = press(opened(), 'qq3q').effects.filter(({ kind }) => kind === 'save');
    expect(saves).toHaveLength(3);
  });

  test('that has no species says how it gets one', () => {
    expect(words('b')).toBe('No species stands on b. A point and b put one there.');
    expect(keyed('bB').visit.changes).toEqual([]);
  });

  test('with Shift takes the step back, and says so, since Caps Lock does the same', () => {
    expect(lines(keyed('5qQ2Q'))).toEqual(['Coot 20 struck']);
    expect(lines(keyed('5q2Q'))).toEqual(['Coot 18']);
    expect(words('5q2Q')).toBe('Coot, fewer: 20 to 18.');
    expect(words('q2Q')).toBe('Coot, fewer: 1 to none.');
    expect(words('Q')).toMatch(/^No Coot in this flock to take back\./);
    expect(words('q Q')).toMatch(/^No Coot in this flock to take back\./);
  });

  test('cautions once about a threatened species', () => {
    const pochard = keyed('.ppochard<enter>');
    expect(words('p', pochard)).toMatch(/^Pochard, VU, vulnerable: keep your distance\./);
    expect(words('pp', pochard)).toBeNull();
    expect(words('p p', pochard)).toBeNull();
  });

  test('is one stroke each in a burst of five hundred', () => {
    expect(lines(keyed('q'.repeat(500)))).toEqual(['Coot 500']);
    expect(keyed('q'.repeat(500)).visit.changes).toHaveLength(500);
  });
});

describe('Backspace', () => {
  test('takes one stroke back, tells the count and shows that species large', () => {
    const at = keyed('5qqa<backspace><backspace>');
    expect(lines(at)).toEqual(['Coot 20', 'Mute Swan 20 struck']);
    expect(at.message?.words).toBe('Taken back: Coot 40 to 20.');
    expect(at.board?.last).toBe('q');
    expect(words('<escape>r', at)).toBe('Done again: Coot 20 to 40.');
  });

  test('is the same as Esc u', () => {
    expect(lines(keyed('qq<escape>u'))).toEqual(lines(keyed('qq<backspace>')));
  });

  test('with nothing to take back says so', () => {
    expect(words('<backspace>')).toBe('There is nothing to undo.');
  });

  test('goes on after a restart, stroke by stroke', () => {
    const { visit } = keyed('3qq q');
    const again = opened({ ...session(), visit: structuredClone(visit) });
    const at = keyed('<backspace><backspace>', again);
    expect(lines(at)).toEqual(['Coot 5', 'Coot 5 struck']);
  });
});

describe('Space', () => {
  test('begins a flock whose line has a time of its own, and the totals add up', () => {
    const at = keyed('3qq 4q');
    expect(lines(at)).toEqual(['Coot 10', 'Coot 10']);
    expect(totals(at.visit)).toMatchObject([{ count: { kind: 'exact', value: 20 } }]);
    expect(new Set(at.visit.entries.map(({ time }) => time)).size).toBe(2);
  });
});

describe('the sum', () => {
  test('turns to the highest flock and back, by a comma and the letter, and can be undone', () => {
    const at = keyed('3qq q,q');
    expect(totals(at.visit)).toMatchObject([{ count: { value: 10 }, rule: 'highest' }]);
    expect(at.message?.words).toBe('Coot: the same birds seen again, the highest flock counts.');
    expect(totals(keyed(',q', at).visit)).toMatchObject([{ count: { value: 15 } }]);
    expect(totals(keyed('<backspace>', at).visit)).toMatchObject([{ count: { value: 15 } }]);
  });

  test('is asked for a letter, and Esc leaves that', () => {
    expect(keyed(',').mode).toEqual({ at: 'letter', to: 'turn' });
    expect(keyed(',<escape>').mode.at).toBe('board');
    expect(words(',b')).toMatch(/^No species stands on b/);
    expect(keyed(',5q').mode.at).toBe('board');
  });
});

describe('the signs', () => {
  test('make the last flock about or at least, and once more exact', () => {
    expect(lines(keyed('5q~'))).toEqual(['Coot ~20']);
    expect(lines(keyed('5q~q'))).toEqual(['Coot ~40']);
    expect(lines(keyed('5q+'))).toEqual(['Coot 20+']);
    expect(lines(keyed('5q~+'))).toEqual(['Coot 20+']);
    expect(lines(keyed('5q~~'))).toEqual(['Coot 20']);
  });

  test('are carried into the total', () => {
    const [about] = totals(keyed('5q~ q').visit);
    expect(about).toMatchObject({ count: { kind: 'about', value: 40 } });
    const [atLeast] = totals(keyed('5q+ q~').visit);
    expect(atLeast).toMatchObject({ count: { kind: 'at least', value: 40 }, rounded: true });
  });

  test('say what they need', () => {
    expect(words('~')).toMatch(/^Count something first/);
    expect(words('q +')).toBe('No Coot in this flock yet.');
    expect(words('<enter>coot 10-15<enter>~')).toMatch(/has no single number: Esc c/);
  });
});

describe('a paste', () => {
  const pasted = (text: string, from = opened()) =>
    updateField(from, { kind: 'key', key: { name: 'text', text }, now: from.now, id: 'x' }).session;

  test('of letters counts nothing and says so: it must never run as strokes', () => {
    const at = pasted('qqqq qqqq');
    expect(at.visit.changes).toEqual([]);
    expect(at.message?.words).toBe('Pasted text does nothing here: keys are typed one by one.');
    expect(keyed('q', at).visit.changes).toHaveLength(1);
  });

  test('on the line of a species is its name', () => {
    expect(lines(keyed('<enter>', pasted('coot 7', keyed('<enter>'))))).toEqual(['coot 7']);
  });
});

describe('a visit that can only be read', () => {
  const reading = () => {
    const logged = keyed('3qq q').visit;
    return opened({ ...session(), visit: logged, readOnly: 'It can only be read.' });
  };

  test('is shown, and no key of the Board changes it', () => {
    const before = reading();
    for (const typed of [
      'q',
      'Q',
      '<backspace>',
      ',q',
      '~',
      '+',
      '<enter>coot 3<enter>',
      '<escape>f',
    ]) {
      const { session: at, effects } = press(before, typed);
      expect(at.visit).toBe(before.visit);
      expect(at.message?.words).toBe('It can only be read.');
      expect(effects.filter(({ kind }) => kind === 'save')).toEqual([]);
    }
  });
});

test('Enter, a point and Esc never lose what was typed', () => {
  const at = keyed('<enter>smew 3<escape>');
  expect(at.mode.at).toBe('board');
  expect(keyed('<enter>', at).drafts.put?.text).toBe('smew 3');
});

test('the Board is left by Esc b, and notices do not close it', () => {
  expect(keyed('<escape>b').mode.at).toBe('line');
  const at = tell(keyed('q'), { kind: 'notice', words: 'The disk is nearly full.' });
  expect(lines(keyed('q', at))).toEqual(['Coot 2']);
});
