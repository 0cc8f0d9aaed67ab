import { describe, expect, test } from 'vitest';
import { leavingWords, unsavedWords } from '../../src/commands/leaving.ts';
import { press, session, tell } from '../screens/field/drive.ts';

const saved = { kind: 'saved', file: '/notebook/walk.json' } as const;

describe('what stands in the terminal after the screen', () => {
  test('is the visit in one line, with its file', () => {
    const at = tell(press(session(), 'tuf 12<enter>wren<enter>').session, { ...saved, changes: 2 });
    expect(leavingWords(at)).toBe(
      'Sallow Mere: 2 entries, 2 species, watched 0:00, still open for 12 hours. /notebook/walk.json\n',
    );
    expect(unsavedWords(at)).toBeNull();
  });

  test('is also what was typed and not entered, without what could steer the terminal', () => {
    const at = tell(press(session(), 'wren<enter>tuf 12\u001b[2J').session, {
      ...saved,
      changes: 1,
    });
    expect(leavingWords(at).split('\n')[1]).toBe('Typed and not entered: tuf 12·[2J');
  });

  test('is every entry that is not on disk, with the reason', () => {
    const at = tell(
      press(session(), 'wren<enter>tuf 12: asleep<enter>').session,
      { ...saved, changes: 1 },
      { kind: 'save failed', why: 'no space left on device' },
    );
    const words = unsavedWords(at)?.split('\n') ?? [];
    expect(words[0]).toContain('NOT SAVED: no space left on device');
    expect(words.filter((line) => line.startsWith('  '))).toEqual([
      expect.stringMatching(/^ {2}2 2026-11-14T07:40:\d\d\+00:00 12 Tufted Duck: asleep$/),
    ]);
  });
});
