import { describe, expect, test } from 'vitest';
import { choicesOf } from '../../../src/screens/field/choices.ts';
import { EXAMPLES, helpRows, WEATHER_EXAMPLES } from '../../../src/screens/field/help.ts';
import { KEYMAP, keyWords, MENU } from '../../../src/screens/field/keymap.ts';
import { rowText } from '../../../src/screens/paint.ts';
import { PRECIPITATION, readWeather, VISIBILITY } from '../../../src/visit/weather.ts';
import { BEAUFORT } from '../../../src/visit/weather-wind.ts';
import { press, session } from './drive.ts';

describe('the help page', () => {
  test('has every key of the table that dispatches, with its words', () => {
    // Wide enough for every explanation to stand on one row.
    const page = helpRows(160).map((row) => rowText(row).trim());
    const lacking = KEYMAP.filter(
      ({ key, words }) => !page.some((row) => row.startsWith(keyWords(key)) && row.includes(words)),
    );
    expect(lacking).toEqual([]);
  });

  test.each(EXAMPLES)('%s can be typed as the page says', (line) => {
    for (const typed of line.split(', ')) {
      const at = press(session(), typed).session;
      if (typed.startsWith('@')) {
        const minute = 60_000;
        expect(press(at, '<enter>').session.moment).toBe(Math.floor(at.now / minute) * minute);
        continue;
      }
      const named = choicesOf(at).some(
        (choice) => choice.kind === 'taxon' && choice.hit.how === 'named',
      );
      expect(named).toBe(typed !== 'small brown bird');
      expect(press(at, '<enter>').session.visit.entries).toHaveLength(1);
    }
  });
});

describe('the weather on the help page', () => {
  test.each(WEATHER_EXAMPLES)('%s is understood as typed', (examples) => {
    for (const typed of examples.split(', ')) {
      const read = readWeather(typed);
      if ('problem' in read) throw new Error(read.problem);
      const { verbatim: _typed, remarks, ...fields } = read.reading;
      expect(remarks).toBeNull();
      expect(Object.values(fields).some((value) => value !== null)).toBe(true);
    }
  });

  test('has every word for precipitation and visibility', () => {
    const page = helpRows(80).map(rowText).join(' ');
    for (const word of [...PRECIPITATION, ...VISIBILITY]) expect(page).toContain(word);
  });

  // The forces at which somebody might still be counting: WMO-No. 8, code table 1100 (from memory).
  test.each([50, 80, 120])('has the land signs of forces 0 to 8 at %d columns', (width) => {
    const page = helpRows(width).map(rowText).join(' ').replace(/\s+/g, ' ');
    const at = BEAUFORT.slice(0, 9).map(({ name, landSign }, force) =>
      page.indexOf(`f${force} ${name} ${landSign}`),
    );
    expect(at).not.toContain(-1);
    expect(page).not.toContain('f9 ');
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
