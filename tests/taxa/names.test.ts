import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fourLetterCode, initialsOf, lettersOf, plainWords } from '../../src/taxa/names.ts';
import { birds } from './birds.ts';

describe('the plain words of a name', () => {
  test.each([
    ['Tufted Duck', ['tufted', 'duck']],
    ['Great Black-backed Gull', ['great', 'black', 'backed', 'gull']],
    ["Cetti's Warbler", ['cettis', 'warbler']],
    ['Cetti’s Warbler', ['cettis', 'warbler']],
    ['Cettiʼs Warbler', ['cettis', 'warbler']],
    ['Cetti´s Warbler', ['cettis', 'warbler']],
    ['Rüppell’s Wärbler', ['ruppells', 'warbler']],
    ['Ru\u0308ppell', ['ruppell']],
    ['ÉTOURNEAU', ['etourneau']],
    ['St. Kilda  Wren', ['st', 'kilda', 'wren']],
    ['7-spot ladybird', ['7', 'spot', 'ladybird']],
    ['Common/Arctic Tern', ['common', 'arctic', 'tern']],
    ['Домовый воробей', ['домовыи', 'воробеи']],
    ['', []],
    [" -'. ", []],
  ])('%j are %j', (name, words) => {
    expect(plainWords(name)).toEqual(words);
  });

  test('are the same again when they are taken once more', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const words = plainWords(text);
        expect(plainWords(words.join(' '))).toEqual(words);
      }),
    );
  });
});

describe('the letters of a text', () => {
  test('are the same in any order, and those of a part are among those of the whole', () => {
    const word = fc.string({ unit: fc.constantFrom(...'abcxyzéß7д'), maxLength: 12 });
    fc.assert(
      fc.property(word, word, (one, two) => {
        expect(lettersOf([...one].reverse().join(''))).toBe(lettersOf(one));
        expect(lettersOf(one) & ~lettersOf(two + one)).toBe(0);
      }),
    );
  });

  test('tell any two of the alphabet apart', () => {
    const letters = [...'abcdefghijklmnopqrstuvwxyz'].map(lettersOf);
    expect(new Set(letters).size).toBe(26);
    expect(lettersOf('')).toBe(0);
  });
});

describe('abbreviations', () => {
  test('initials are the first letter of each word', () => {
    expect(initialsOf(plainWords('Great Black-backed Gull'))).toBe('gbbg');
    expect(initialsOf([])).toBe('');
  });

  test('codes are four capitals for every English name of the list that has four letters to give', () => {
    for (const { vernacularName } of birds.taxa) {
      const name = vernacularName ?? '';
      const short = plainWords(name).length === 1 && name.length < 4;
      expect(fourLetterCode(name)).toMatch(short ? /^[A-Z]{3}$/ : /^[A-Z]{4}$/);
    }
  });

  test('a code of any text throws nothing and is at most four letters long', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect([...fourLetterCode(text)].length).toBeLessThanOrEqual(8);
      }),
    );
  });
});
