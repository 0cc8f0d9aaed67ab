import { setImmediate as turn, setTimeout as wait } from 'node:timers/promises';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Key, keyboard } from '../../src/screens/keyboard.ts';

/** Keys as words: text as it is, named keys in angle brackets. */
async function keysFrom(...writes: (string | Buffer)[]): Promise<string[]> {
  const keys: Key[] = [];
  const write = keyboard((key) => keys.push(key));
  for (const bytes of writes) {
    write(bytes);
    await turn();
  }
  return keys.map((key) => (key.name === 'text' ? key.text : `<${key.name}>`));
}

describe('bytes from a terminal', () => {
  test('in one read are cut into all their keys', async () => {
    expect(await keysFrom('mal\r')).toEqual(['m', 'a', 'l', '<enter>']);
    expect(await keysFrom('a'.repeat(500))).toHaveLength(500);
  });

  test.each([
    ['\u001b[A', ['<up>']],
    ['\u001bOB', ['<down>']],
    ['\u001b[C\u001b[D', ['<right>', '<left>']],
    ['\u001b[5~\u001b[6~', ['<page up>', '<page down>']],
    ['\u007f\b', ['<backspace>', '<backspace>']],
    ['\r\n', ['<enter>', '<enter>']],
    ['\u0003\u001a\f\u0015', ['<ctrl-c>', '<ctrl-z>', '<ctrl-l>', '<ctrl-u>']],
    ['\u001bu', ['<escape>', 'u']],
    ['\u001bU', ['<escape>', 'U']],
    ['\u001b\r', ['<escape>', '<enter>']],
    ['\u0001\u0007', []],
    ['é🐦', ['é', '🐦']],
  ])('%j are the keys %j', async (bytes, keys) => {
    expect(await keysFrom(bytes)).toEqual(keys);
  });

  test('a lone Esc is one key, once its wait is over', async () => {
    const keys: Key[] = [];
    const write = keyboard((key) => keys.push(key));
    write('\u001b');
    await wait(80);
    expect(keys).toEqual([{ name: 'escape' }]);
  });

  test('a paste is one text, and its line ends do not enter', async () => {
    expect(await keysFrom('a\u001b[200~tuf 12\r\nmal 3\r\u001b[201~b')).toEqual([
      'a',
      'tuf 12 mal 3 ',
      'b',
    ]);
  });

  test('cut anywhere give the same keys', async () => {
    const sequences = [
      'a',
      'é',
      '🐦',
      '\r',
      '\u001b[A',
      '\u001b[3~',
      '\u007f',
      '\u001b[200~x y\u001b[201~',
      '1',
    ];
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.constantFrom(...sequences), { minLength: 1, maxLength: 8 }),
        fc.array(fc.nat(40), { maxLength: 5 }),
        async (parts, cuts) => {
          const bytes = Buffer.from(parts.join(''));
          const at = [0, ...cuts.map((cut) => Math.min(cut, bytes.length)), bytes.length].sort(
            (one, two) => one - two,
          );
          const pieces = at.slice(1).map((end, index) => bytes.subarray(at[index] ?? 0, end));
          expect(await keysFrom(...pieces)).toEqual(await keysFrom(bytes));
        },
      ),
    );
  });
});
