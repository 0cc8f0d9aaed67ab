import { describe, expect, test } from 'vitest';
import { fieldFrame } from '../../../src/screens/field/frame.ts';
import { keyWords, MENU } from '../../../src/screens/field/keymap.ts';
import type { Session } from '../../../src/screens/field/session.ts';
import { rowText } from '../../../src/screens/paint.ts';
import { press, session, tell } from './drive.ts';

const WHY = 'This visit is open in another program.';

function reading(): Session {
  return { ...press(session(), 'tuf 12<enter>wren<enter>').session, readOnly: WHY, message: null };
}

function shown(at: Session): string {
  return fieldFrame(at, { columns: 80, rows: 24 }).rows.map(rowText).join('\n');
}

describe('a visit that can only be read', () => {
  test('takes no line, says why, and keeps what was typed', () => {
    const { session: at, effects } = press(reading(), 'mal 3<enter>');
    expect(effects).toEqual([]);
    expect(at.visit.entries).toHaveLength(2);
    expect(at.message).toEqual({ kind: 'problem', words: WHY });
    expect(shown(at)).toContain('log> mal 3');
  });

  test.each(MENU.map(({ key, action }) => [action, keyWords(key)] as const))(
    'is not changed by %s',
    (action, letter) => {
      const from = reading();
      for (const keys of [
        `<escape>${letter}`,
        `/${action}<enter>`,
        `<escape>${letter}1<enter>y<enter>`,
      ]) {
        const { session: at, effects } = press(from, keys);
        expect(at.visit).toBe(from.visit);
        expect(effects.filter(({ kind }) => kind === 'save')).toEqual([]);
      }
      const { session: at } = press(from, `<escape>${letter}`);
      if (!['help', 'quit', 'elsewhere', 'board', 'passing'].includes(action))
        expect(at.message).toEqual({ kind: 'problem', words: WHY });
    },
  );

  test('is left by Esc q, and says on the screen that it is only read', () => {
    expect(press(reading(), '<escape>q').effects).toEqual([{ kind: 'leave', code: 0 }]);
    expect(shown(reading())).toContain('2 entries, read only');
  });
});

describe('saving elsewhere', () => {
  const failing = () =>
    tell(press(session(), 'tuf 12<enter>').session, {
      kind: 'save failed',
      why: 'the disk is full',
    });

  test('is offered while a save fails, and only then', () => {
    expect(shown(failing())).toMatch(/Esc o\s+saves elsewhere/);
    expect(shown(press(failing(), '<escape>').session)).toContain('o save elsewhere');
    expect(shown(press(session(), '<escape>').session)).not.toContain('elsewhere');
    const { session: at } = press(session(), '<escape>o');
    expect(at.message?.words).toBe('All is saved where it belongs.');
  });

  test('asks for a folder, hands the whole visit over, and goes on failing in its place', () => {
    const { session: at, effects } = press(failing(), '<escape>o/media/stick<enter>');
    expect(effects).toEqual([{ kind: 'save elsewhere', visit: at.visit, folder: '/media/stick' }]);
    const said = tell(at, { kind: 'notice', words: 'It is also in /media/stick.', done: true });
    expect(shown(said)).toContain('NOT SAVED: the disk is full');
    expect(shown(said)).toContain('It is also in /media/stick.');
  });

  test('asks again where no folder was typed', () => {
    const { session: at, effects } = press(failing(), '<escape>o<enter>');
    expect(effects).toEqual([]);
    expect(at.message?.words).toContain('In which folder?');
  });
});
