import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthOf, faultAt, parsedJson } from '../../src/notebook/json-text.ts';

const texts = fc.tuple(fc.jsonValue(), fc.constantFrom(0, 2)).map(([value, indent]) => {
  return JSON.stringify(value, null, indent);
});

/** JSON texts with a stretch taken out and another put in. */
const harmed = fc
  .tuple(texts, fc.nat(), fc.nat(3), fc.string({ unit: 'grapheme-ascii', maxLength: 2 }))
  .map(([text, at, length, put]) => {
    const from = at % (text.length + 1);
    return text.slice(0, from) + put + text.slice(from + length);
  });

function engineTakes(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe('the fault in a JSON text', () => {
  test('is found exactly where the engine refuses the text', () => {
    fc.assert(
      fc.property(fc.oneof(texts, harmed), (text) => {
        expect(faultAt(text) === null, text).toBe(engineTakes(text));
      }),
      { numRuns: 2000 },
    );
  });

  test('of a text that is cut off lies at its end or at the word that is cut', () => {
    fc.assert(
      fc.property(texts, fc.nat(), (text, at) => {
        const cut = text.slice(0, at % text.length);
        const fault = faultAt(cut);
        if (fault !== null) expect(cut.slice(fault)).toMatch(/^[-+.\w\\]*$/);
      }),
    );
  });

  // RFC 8259: sections 5 (no comma behind the last), 7 (no control characters), 6 (no leading zeros).
  test.each([
    ['[1,\n 2,\n]', 'line 3, column 1'],
    ['{"a": "b\tc"}', 'line 1, column 9'],
    ['{"a": 01}', 'line 1, column 8'],
    ["{\n  'a': 1\n}", 'line 2, column 3'],
    ['{} {}', 'line 1, column 4'],
    ['\0\0\0\0', 'line 1, column 1'],
  ])('is told by its line and column: %j', (text, where) => {
    expect(parsedJson(text)).toEqual({
      problem: `it is not whole JSON: ${where} is not understood`,
    });
  });

  test.each(['{\n"a": [1, 2', '{\n"a": "half', '{\n"a": tr', '{\n"a":'])(
    'is told as a break where the text ends: %j',
    (text) => {
      expect(parsedJson(text)).toEqual({
        problem: 'it is not whole JSON: it breaks off in line 2',
      });
    },
  );
});

describe('the depth of a JSON text', () => {
  test('is that of the value in it, whatever brackets its strings hold', () => {
    const depth = (value: unknown): number =>
      typeof value === 'object' && value !== null
        ? 1 + Math.max(0, ...Object.values(value).map(depth))
        : 0;
    fc.assert(
      fc.property(texts, (text) => {
        expect(depthOf(text)).toBe(depth(JSON.parse(text)));
      }),
    );
  });

  test('beyond two hundred levels is refused before anything is built', () => {
    const nested = (levels: number) => '['.repeat(levels) + ']'.repeat(levels);
    expect(parsedJson(nested(200))).toHaveProperty('data');
    expect(parsedJson(nested(201))).toEqual({
      problem: expect.stringContaining('nested more than 200 levels deep'),
    });
    expect(parsedJson('['.repeat(5_000_000))).toHaveProperty('problem');
  });
});
