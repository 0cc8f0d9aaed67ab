import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { observationOf } from '../../src/taxa/observation.ts';
import { entryText, nameOf, Observation } from '../../src/visit/entry.ts';
import { readEntryLine } from '../../src/visit/entry-line.ts';
import { observed, POCHARD, taxonOf } from './made.ts';

describe('an entry as a line', () => {
  test.each<[string, Partial<Observation>]>([
    ['3 Mallard', {}],
    ['3 Mallard?', { uncertain: true }],
    ['3 Mallard: asleep', { description: 'asleep' }],
    [
      '5 Mallard 3m 2f?: asleep',
      {
        count: { kind: 'exact', value: 5 },
        parts: [
          { letter: 'm', value: 3 },
          { letter: 'f', value: 2 },
        ],
        uncertain: true,
        description: 'asleep',
      },
    ],
    ['120+ Pochard', { taxon: POCHARD, count: { kind: 'at least', value: 120 } }],
    [
      '10-15 small brown',
      { taxon: null, words: 'small brown', count: { kind: 'range', low: 10, high: 15 } },
    ],
    ['small brown', { taxon: null, words: 'small brown', count: { kind: 'present' } }],
    ['3: by the sluice', { taxon: null, words: '', description: 'by the sluice' }],
  ])('is %j', (line, over) => {
    expect(entryText(observed(over))).toBe(line);
  });

  test('has the English name, else the scientific, else the words of the observer', () => {
    expect(nameOf(observed())).toBe('Mallard');
    expect(nameOf(observed({ taxon: taxonOf({ vernacularName: null }) }))).toBe(
      'Anas platyrhynchos',
    );
    expect(nameOf(observed({ taxon: null, words: 'small brown' }))).toBe('small brown');
    expect(nameOf(observed({ taxon: null, words: '' }))).toBe('(no words)');
  });
});

const bits = fc.constantFrom(
  ...['tuf', 'post14', '7-spot', '12', '12+', '~', '~5', '10-15', '3m', '2f1j', '9999999m'],
  ...['?', ':', '-', ' ', '  ', '\t', '\u00a0', 'é', '1234567890'],
);
const typed = fc.oneof(
  fc.array(bits, { maxLength: 9 }).map((all) => all.join('')),
  fc.string({ unit: 'binary', maxLength: 16 }),
);

describe('any line that can be logged', () => {
  test('gives an observation that a file can hold', () => {
    fc.assert(
      fc.property(typed, (text) => {
        const line = readEntryLine(text);
        if (line.problem !== null) return;
        const observation = observationOf(text, line, null);
        expect(Observation.parse(JSON.parse(JSON.stringify(observation)))).toEqual(observation);
      }),
      { numRuns: 2000 },
    );
  });

  test('opened again and kept says the same', () => {
    fc.assert(
      fc.property(typed, (text) => {
        const line = readEntryLine(text);
        if (line.problem !== null || (line.words === '' && line.description === null)) return;
        const kept = observationOf(text, line, null);
        const again = readEntryLine(entryText(kept));
        expect(again.problem).toBeNull();
        expect(observationOf(text, again, null)).toEqual(kept);
      }),
      { numRuns: 2000 },
    );
  });
});
