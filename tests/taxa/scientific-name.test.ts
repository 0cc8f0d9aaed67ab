import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rankOf, withoutAuthor } from '../../src/taxa/scientific-name.ts';

describe('a scientific name', () => {
  // Names with authors as the International Code of Zoological Nomenclature (4th edition, article 51)
  // and the Shenzhen Code (2018, articles 46 to 50) have them written; the examples are from memory.
  test.each([
    ['Parus major Linnaeus, 1758', 'Parus major'],
    ['Larus canus Linnaeus', 'Larus canus'],
    ['Corvus corone cornix Linnaeus, 1758', 'Corvus corone cornix'],
    ['Ranunculus acris L.', 'Ranunculus acris'],
    ['Curruca communis (Latham, 1787)', 'Curruca communis'],
    ['Larus (Larus) canus Linnaeus, 1758', 'Larus canus'],
    ['Salix × fragilis L.', 'Salix × fragilis L.'],
    ['Anas platyrhynchos', 'Anas platyrhynchos'],
    ['Quercus', 'Quercus'],
    ['Carex otrubae Podp.', 'Carex otrubae'],
    ['Columba livia f. domestica', 'Columba livia'],
    ['Polygonum aviculare de Vries', 'Polygonum aviculare'],
  ])('%s is kept as %s', (written, kept) => {
    expect(withoutAuthor(written)).toBe(kept);
  });

  test('without its author is the same when asked again', () => {
    const words = fc.constantFrom(
      'Larus',
      '(Larus)',
      '(Linnaeus,',
      '1758)',
      'canus',
      'subsp.',
      'var.',
      'f.',
      '×',
      'x',
      'X',
      'de',
      'ex',
      'L.',
      '&',
      'sensu',
      'agg.',
      'sp.',
      '\u00a0',
      '',
      '(L.)',
      'É',
    );
    const names = fc.oneof(
      fc.array(words, { maxLength: 8 }).map((all) => all.join(' ')),
      fc.string({ unit: 'grapheme' }),
    );
    fc.assert(
      fc.property(names, (name) => {
        const once = withoutAuthor(name);
        expect(withoutAuthor(once)).toBe(once);
        expect(once === '').toBe(name.trim() === '');
      }),
      { numRuns: 1000 },
    );
  });

  // ICZN article 29.2 (-idae) and ICN article 18.1 (-aceae).
  test.each([
    ['Laridae', 'family'],
    ['Orchidaceae', 'family'],
    ['Larus', 'genus'],
    ['Larus canus', 'species'],
    ['Tilia × europaea', 'species'],
    ['Corvus corone cornix', 'subspecies'],
  ])('%s is a %s', (name, rank) => {
    expect(rankOf(name)).toBe(rank);
  });
});
