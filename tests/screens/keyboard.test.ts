import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutKeys, type Key, waitFor } from '../../src/screens/keyboard.ts';

/** Keys as words: text as it is, named keys in angle brackets. */
const words = (keys: Key[]) =>
  keys.map((key) => (key.name === 'text' ? key.text : `<${key.name}>`));

/** What several reads come to, with a wait after the last. */
function keysFrom(...reads: string[]): string[] {
  const keys: Key[] = [];
  let rest = '';
  for (const read of reads) {
    const cut = cutKeys(rest + read, false);
    keys.push(...cut.keys);
    rest = cut.rest;
  }
  return words([...keys, ...cutKeys(rest, true).keys]);
}

describe('text from a terminal', () => {
  test('in one read is cut into all its keys', () => {
    expect(keysFrom('mal\r')).toEqual(['m', 'a', 'l', '<enter>']);
    expect(keysFrom('a'.repeat(500))).toHaveLength(500);
  });

  test.each([
    ['\u001b[A', ['<up>']],
    ['\u001bOB', ['<down>']],
    ['\u001b[1;5C\u001b[D', ['<right>', '<left>']],
    ['\u001b[5~\u001b[6~\u001b[3~', ['<page up>', '<page down>', '<delete>']],
    ['\u001b[H\u001b[4~', ['<home>', '<end>']],
    ['\u007f\b', ['<backspace>', '<backspace>']],
    ['\r\n\t', ['<enter>', '<enter>', '<tab>']],
    ['\u0003\u001a\f\u0015', ['<ctrl-c>', '<ctrl-z>', '<ctrl-l>', '<ctrl-u>']],
    ['\u001bu', ['<escape>', 'u']],
    ['\u001bU', ['<escape>', 'U']],
    ['\u001b\r', ['<escape>', '<enter>']],
    ['\u001b\u0003', ['<escape>', '<ctrl-c>']],
    ['\u001b\u001bq', ['<escape>', '<escape>', 'q']],
    ['\u001b\u001b\u001b', ['<escape>', '<escape>', '<escape>']],
    ['\u001b\u001b[A', ['<escape>', '<up>']],
    ['\u001b[', ['<escape>', '[']],
    ['\u001bOM', ['<enter>']],
    ['\u001b[<0;10;10M\u001b[<0;10;10m', []],
    ['\u001b[15~\u001b[?62;c', []],
    ['\u0001\u0007', []],
    ['é🐦', ['é', '🐦']],
  ])('%j is the keys %j', (text, keys) => {
    expect(keysFrom(text)).toEqual(keys);
  });

  test('waits for the rest of a sequence, and longer for that of a paste', () => {
    expect(cutKeys('a\u001b', false)).toEqual({
      keys: [{ name: 'text', text: 'a' }],
      rest: '\u001b',
    });
    expect(cutKeys('\u001b[', false).rest).toBe('\u001b[');
    expect(waitFor('\u001b[200~x')).toBeGreaterThan(waitFor('\u001b'));
  });

  test('a paste is one text, and its line ends do not enter', () => {
    const pasted = 'a\u001b[200~tuf 12\r\nmal 3\r\u001b[201~b';
    expect(keysFrom(pasted)).toEqual(['a', 'tuf 12 mal 3 ', 'b']);
  });

  test('a paste that never ends is taken as far as it came, and later keys are keys again', () => {
    const { keys } = cutKeys('\u001b[200~abc\u001b[200~d', true);
    expect(words([...keys, ...cutKeys('\u0003', false).keys])).toEqual(['abcd', '<ctrl-c>']);
  });

  test('cut anywhere gives the same keys', () => {
    const piece = fc.constantFrom(
      'a',
      'é',
      '🐦',
      '\r',
      '\u001b[A',
      '\u001bOC',
      '\u001b[3~',
      '\u001bu',
      '\u007f',
      '\u001b[200~x\ny\u001b[201~',
    );
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 8 }),
        fc.array(fc.nat(40), { maxLength: 5 }),
        (pieces, cuts) => {
          // A terminal's bytes are decoded before they are cut: no cut is within a character.
          const characters = [...pieces.join('')];
          const at = [0, ...cuts, characters.length]
            .map((cut) => Math.min(cut, characters.length))
            .sort((one, two) => one - two);
          const reads = at.slice(1).map((end, index) => characters.slice(at[index], end).join(''));
          expect(keysFrom(...reads)).toEqual(keysFrom(characters.join('')));
        },
      ),
    );
  });

  test('whatever it is, every character of text comes through and nothing throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        fc.pre(!/\p{Cc}/u.test(text));
        expect(keysFrom(text).join('')).toBe(text);
      }),
    );
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => void keysFrom(text)));
  });
});
