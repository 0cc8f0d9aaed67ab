import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countText } from '../../src/visit/count.ts';
import { countOf, readEntryLine, stepLine } from '../../src/visit/entry-line.ts';

function taken(text: string) {
  const { words, count, parts, description, uncertain } = readEntryLine(text);
  return {
    words,
    count: count === null ? null : `${count.kind} ${countText(count)}`,
    parts: parts.map((part) => `${part.value}${part.letter}`).join(' '),
    description,
    uncertain,
  };
}
const nothing = { words: '', count: null, parts: '', description: null, uncertain: false };

describe('an entry line', () => {
  test.each([
    ['tuf', { words: 'tuf' }],
    ['12 tuf', { words: 'tuf', count: 'exact 12' }],
    ['tuf 12', { words: 'tuf', count: 'exact 12' }],
    ['tuf12', { words: 'tuf', count: 'exact 12' }],
    ['tuf 12+', { words: 'tuf', count: 'at least 12+' }],
    ['tuf ~12', { words: 'tuf', count: 'about ~12' }],
    ['~ 12 tuf', { words: 'tuf', count: 'about ~12' }],
    ['tuf ~ \t12', { words: 'tuf', count: 'about ~12' }],
    ['tuf 10-15', { words: 'tuf', count: 'range 10-15' }],
    ['tuf 15–10', { words: 'tuf', count: 'range 10-15' }],
    ['tuf 10-10', { words: 'tuf', count: 'exact 10' }],
    ['tuf 0', { words: 'tuf', count: 'exact 0' }],
    ['tuf 5 3m 2f', { words: 'tuf', count: 'exact 5', parts: '3m 2f' }],
    ['2j', { parts: '2j' }],
    ['tuf 3m2F1j', { words: 'tuf', parts: '3m 2f 1j' }],
    ['3m tuf 5', { words: 'tuf', count: 'exact 5', parts: '3m' }],
    [
      'tuf 12: asleep by the raft',
      { words: 'tuf', count: 'exact 12', description: 'asleep by the raft' },
    ],
    ['tuf: 2 of them: odd', { words: 'tuf', description: '2 of them: odd' }],
    ['tuf:', { words: 'tuf' }],
    [': small and brown', { description: 'small and brown' }],
    ['tuf?', { words: 'tuf', uncertain: true }],
    ['tuf? 12', { words: 'tuf', count: 'exact 12', uncertain: true }],
    [
      'tuf 12 ?: far off',
      { words: 'tuf', count: 'exact 12', uncertain: true, description: 'far off' },
    ],
    ['what? bird', { words: 'what? bird' }],
    ['7-spot ladybird', { words: '7-spot ladybird' }],
    ['2nd winter gull 3', { words: '2nd winter gull', count: 'exact 3' }],
    ['bird on post 14 gate', { words: 'bird on post 14 gate' }],
    ['post14 gate 2', { words: 'post14 gate', count: 'exact 2' }],
    ['3 blue tit', { words: 'blue tit', count: 'exact 3' }],
    ['', {}],
    ['   ', {}],
  ])('%j is taken apart', (text, want) => {
    expect(taken(text)).toEqual({ ...nothing, ...want });
  });

  test.each([
    ['5 tuf 12', 'Two counts, 5 and 12: keep one.', 8],
    ['tuf 5 4m 3f', 'The parts add up to 7, more than the count of 5.', 11],
    ['tuf 123456789', 'A count goes up to 9999999.', 13],
    ['tuf ~  123456789', 'A count goes up to 9999999.', 16],
    ['tuf 9999999m 1f', 'The parts add up to 10000000. A count goes up to 9999999.', 15],
  ])('%j says what to mend and where', (text, words, at) => {
    expect(readEntryLine(text).problem).toEqual({ words, at });
  });

  test('parts above an open-ended or rough count are no problem', () => {
    expect(readEntryLine('tuf 5+ 4m 3f').problem).toBeNull();
    expect(readEntryLine('tuf ~5 4m 3f').problem).toBeNull();
  });

  test('without a count it stands for its parts, for one, or for present', () => {
    expect(countOf(readEntryLine('tuf 3m 2f'), true)).toEqual({ kind: 'exact', value: 5 });
    expect(countOf(readEntryLine('tuf'), true)).toEqual({ kind: 'exact', value: 1 });
    expect(countOf(readEntryLine('oak'), false)).toEqual({ kind: 'present' });
  });
});

describe('stepping the group size', () => {
  test.each([
    ['tuf', 1, 'tuf 2'],
    ['tuf 2', 1, 'tuf 5'],
    ['tuf 12', 1, 'tuf 20'],
    ['tuf 12', -1, 'tuf 10'],
    ['12 tuf', 1, '20 tuf'],
    ['tuf12', 1, 'tuf20'],
    ['tuf 12+', 1, 'tuf 20+'],
    ['tuf ~12', -1, 'tuf ~10'],
    ['tuf 10-15', 1, 'tuf 20'],
    ['tuf?: far', 1, 'tuf 2?: far'],
    ['tuf 100', 1, 'tuf 100'],
    ['tuf 1', -1, 'tuf 1'],
    [': asleep', 1, '2 : asleep'],
    ['~', 1, '~'],
    ['~ 10-15', 1, '~ 10-15'],
  ] as const)('%j by %i gives %j', (text, direction, want) => {
    expect(stepLine(text, direction, true)).toBe(want);
  });

  test('goes from present to one', () => {
    expect(stepLine('oak', 1, false)).toBe('oak 1');
    expect(stepLine('oak', -1, false)).toBe('oak');
  });
});

const typed = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc
    .array(
      fc.constantFrom(
        'tuf',
        '12',
        '12+',
        '~',
        '3m',
        '2f',
        ':',
        '?',
        '-',
        '10-15',
        ' ',
        '  ',
        'é',
        '7-spot',
      ),
      {
        maxLength: 12,
      },
    )
    .map((words) => words.join('')),
);

describe('any text at all', () => {
  test('is accounted for to the last character, and nothing throws', () => {
    fc.assert(
      fc.property(typed, (text) => {
        const { pieces } = readEntryLine(text);
        expect(pieces.map((piece) => text.slice(piece.start, piece.end)).join('')).toBe(text);
        expect(pieces.every((piece) => piece.end > piece.start)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test('takes nothing but white space for a gap', () => {
    fc.assert(
      fc.property(typed, (text) => {
        for (const piece of readEntryLine(text).pieces) {
          const held = text.slice(piece.start, piece.end);
          expect(held.trim() === '').toBe(
            piece.role === 'space' || (piece.role === 'description' && held.trim() === ''),
          );
        }
      }),
    );
  });

  test('stays a line with the same name words when the group size is stepped', () => {
    fc.assert(
      fc.property(typed, fc.constantFrom(1 as const, -1 as const), (text, direction) => {
        const before = readEntryLine(text);
        fc.pre(before.problem === null);
        const after = readEntryLine(stepLine(text, direction, true));
        expect(after.words).toBe(before.words);
        expect(after.description).toBe(before.description);
        expect(after.uncertain).toBe(before.uncertain);
      }),
      { numRuns: 1000 },
    );
  });
});
