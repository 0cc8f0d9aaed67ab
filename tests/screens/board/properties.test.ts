import fc from 'fast-check';
import { expect, test } from 'vitest';
import { letterOf } from '../../../src/screens/board/board.ts';
import type { Session } from '../../../src/screens/field/session.ts';
import { totals } from '../../../src/visit/sums.ts';
import { press } from '../field/drive.ts';
import { type Expected, opened, PaperTally } from './model.ts';

const KEYS = [
  ...['a', 's', 'd', 'a', 's', 'A', 'S', 'D', 'b', 'B'],
  ...['1', '3', '7', ' ', '<backspace>', '<backspace>', '<escape>r'],
  ...[',a', ',s', '~', '+'],
];
const START = opened();
/** No species is laid on `b`: a new notebook has fewer than letters. */
const LAID = 'asdf';
const LINES = fc.array(fc.constantFrom(...KEYS), { maxLength: 60 });

function counted(at: Session): Record<string, Expected> {
  const taxa = at.board?.taxa ?? {};
  return Object.fromEntries(
    totals(at.visit).map(({ key, count, entries }) => {
      if (!('value' in count)) throw new Error('no number');
      return [letterOf(taxa, key) ?? key, { ...count, flocks: entries.length }];
    }),
  );
}

test('any keys come to the totals that a tally on paper comes to', () => {
  fc.assert(
    fc.property(LINES, (pressed) => {
      const paper = new PaperTally(LAID);
      let at = START;
      for (const key of pressed) {
        at = press(at, key).session;
        paper.press(key, at.now);
      }
      const wanted = [...LAID].flatMap((letter) => {
        const total = paper.total(letter);
        return total ? [[letter, total] as const] : [];
      });
      expect(counted(at)).toEqual(Object.fromEntries(wanted));
    }),
    { numRuns: 400 },
  );
});

test('undoing any number of strokes and doing them again leaves every entry as it was', () => {
  fc.assert(
    fc.property(LINES, fc.nat({ max: 70 }), (pressed, most) => {
      const before = press(START, pressed.join('')).session;
      let at = before;
      let undone = 0;
      while (undone < most) {
        const next = press(at, '<backspace>').session;
        if (next.visit === at.visit) break;
        undone += 1;
        at = next;
      }
      at = press(at, '<escape>r'.repeat(undone)).session;
      expect(at.visit.entries).toEqual(before.visit.entries);
      expect(at.visit.highest).toEqual(before.visit.highest);
    }),
    { numRuns: 200 },
  );
});

test('undo reaches the empty visit, and says so there', () => {
  fc.assert(
    fc.property(LINES, (pressed) => {
      let at = press(START, pressed.join('')).session;
      for (let left = at.visit.changes.length; left >= 0; left -= 1)
        at = press(at, '<backspace>').session;
      expect(at.visit.entries.every(({ struck }) => struck !== null)).toBe(true);
      expect(at.visit.highest).toEqual([]);
      expect(at.message?.words).toBe('There is nothing to undo.');
    }),
    { numRuns: 100 },
  );
});

test('taking back never goes below none, whatever the step', () => {
  const some = fc.array(fc.constantFrom('a', 'A', 'A', '1', '2', '5', '7', '~', '+'));
  fc.assert(
    fc.property(some, (pressed) => {
      const { entries } = press(START, pressed.join('')).session.visit;
      for (const { count } of entries) expect('value' in count && count.value).toBeGreaterThan(0);
    }),
  );
});

test('no two letters ever hold one species, and no letter two', () => {
  const piece = fc.constantFrom(
    ...['.acoot<enter>', '.bcoot 3<enter>', '.zwigeon<enter>', '.s<enter>', '.0'],
    ...['<enter>teal<enter>', '<enter>coot 2<enter>', 'a', 'B', '<escape>b<escape>b', '.a<escape>'],
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
      const at = press(START, pieces.join('')).session;
      const now = Object.entries(at.board?.taxa ?? {});
      const names = now.map(([, taxon]) => taxon.scientificName);
      expect(new Set(names).size).toBe(names.length);
      expect(now.every(([letter]) => /^[a-z]$/.test(letter))).toBe(true);
      expect(now.length).toBeGreaterThan(10);
    }),
    { numRuns: 100 },
  );
});
