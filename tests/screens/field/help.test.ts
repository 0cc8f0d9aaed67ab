import { describe, expect, test } from 'vitest';
import { choicesOf } from '../../../src/screens/field/choices.ts';
import { EXAMPLES, helpRows } from '../../../src/screens/field/help.ts';
import { KEYMAP, keyWords, MENU } from '../../../src/screens/field/keymap.ts';
import { rowText } from '../../../src/screens/paint.ts';
import { press, session } from './drive.ts';

describe('the help page', () => {
  test('has every key of the table that dispatches, with its words', () => {
    const page = helpRows(80).map(rowText);
    for (const { key, words } of KEYMAP)
      expect(page.some((row) => row.trim().startsWith(keyWords(key)) && row.includes(words))).toBe(
        true,
      );
  });

  test.each(EXAMPLES)('%s can be typed as the page says', (line) => {
    for (const typed of line.split(', ')) {
      const at = press(session(), typed).session;
      const named = choicesOf(at).some(
        (choice) => choice.kind === 'taxon' && choice.hit.how === 'named',
      );
      expect(named).toBe(typed !== 'small brown bird');
      expect(press(at, '<enter>').session.visit.entries).toHaveLength(1);
    }
  });
});

describe('the menu', () => {
  test('has one letter for each action', () => {
    const letters = MENU.map((binding) => keyWords(binding.key));
    expect(new Set(letters).size).toBe(letters.length);
    for (const letter of letters) expect(letter).toMatch(/^[a-z]$/);
  });

  test('leaves the keys alone that terminals take for themselves', () => {
    const taken = ['ctrl-s', 'ctrl-q', 'ctrl-w', 'ctrl-a', 'ctrl-b'];
    for (const { key } of KEYMAP) expect(taken).not.toContain(key);
  });
});
