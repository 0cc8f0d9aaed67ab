import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { NamedKey } from '../../src/screens/keyboard.ts';
import { EMPTY_LINE, editLine, type Line, lineOf } from '../../src/screens/line.ts';

function edit(line: Line, ...keys: (NamedKey | { text: string })[]): Line {
  return keys.reduce<Line>(
    (at, key) => editLine(at, typeof key === 'string' ? { name: key } : { name: 'text', ...key }),
    line,
  );
}

describe('editing a line', () => {
  test('puts text where the cursor stands', () => {
    expect(edit(lineOf('tf'), 'left', { text: 'u' })).toEqual({ text: 'tuf', cursor: 2 });
    expect(edit(lineOf('uf'), 'home', { text: 't' }, 'end', { text: ' ' })).toEqual({
      text: 'tuf ',
      cursor: 4,
    });
  });

  test('takes a letter with its accent, and an emoji whole', () => {
    expect(edit(lineOf('ne\u0301'), 'backspace').text).toBe('n');
    expect(edit(lineOf('a👨‍👩‍👧'), 'backspace').text).toBe('a');
    expect(edit(lineOf('👨‍👩‍👧a'), 'home', 'delete').text).toBe('a');
    expect(edit(lineOf('a👨‍👩‍👧'), 'left').cursor).toBe(1);
  });

  test('does nothing past either end', () => {
    expect(edit(EMPTY_LINE, 'backspace', 'delete', 'left', 'right')).toEqual(EMPTY_LINE);
  });

  test('keeps the cursor within the text, whatever is pressed', () => {
    const key = fc.oneof(
      fc.constantFrom<NamedKey[]>(
        'left',
        'right',
        'home',
        'end',
        'backspace',
        'delete',
        'ctrl-u',
        'up',
        'tab',
      ),
      fc.string({ unit: 'grapheme', minLength: 1, maxLength: 3 }).map((text) => ({ text })),
    );
    fc.assert(
      fc.property(fc.array(key, { maxLength: 30 }), (keys) => {
        const { text, cursor } = edit(EMPTY_LINE, ...keys);
        expect(cursor).toBeGreaterThanOrEqual(0);
        expect(cursor).toBeLessThanOrEqual(text.length);
      }),
    );
  });
});
