import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clearHit, search } from '../../src/taxa/search.ts';
import type { Taxon } from '../../src/taxa/taxon.ts';
import { indexTaxa } from '../../src/taxa/taxon-index.ts';
import { bird, birdIndex, birds, hitsFor, newNotebook } from './birds.ts';

describe('words of other living things', () => {
  // Without a list for them, a bird must not be taken for them unseen.
  test.each([
    ...['otter', 'deer', 'newt', 'worm', 'wasp', 'heather', 'holly', 'toad', 'seal', 'carp'],
    ...['comma', 'moss', 'tiger', 'lobster', 'bramble', 'clover', 'mouse', 'thistle', 'hornet'],
  ])('%j is no bird that is taken unseen', (words) => {
    expect(clearHit(hitsFor(words))).toBeNull();
  });

  test.each([
    'otter',
    'deer',
    'newt',
    'seal',
    'toad',
    'wasp',
    'heather',
    'clover',
    'mouse',
    'hornet',
    'comma',
  ])('%j is at most a guess', (words) => {
    expect(hitsFor(words).every((hit) => hit.how === 'loose')).toBe(true);
  });
});

describe('a hit that is taken without a look', () => {
  test.each([
    ['mallard', 'Mallard'],
    ['tuf', 'Tufted Duck'],
    ['tudu', 'Tufted Duck'],
    ['swallow', 'Swallow'],
    ['gbbg', 'Great Black-backed Gull'],
    ['bh gull', 'Black-headed Gull'],
    ['fuligula', 'Tufted Duck'],
    ['malard', 'Mallard'],
    ['pocahrd', 'Pochard'],
    ['mallards', 'Mallard'],
  ])('%j is %s', (words, name) => {
    expect(clearHit(hitsFor(words))?.taxon.vernacularName).toBe(name);
  });

  test.each(['great', 'gull', 'tit', 'heron', 'sparow', 'gold', 'wood', 'small brown bird', ''])(
    '%j is none: it fits several, or is a guess',
    (words) => {
      expect(clearHit(hitsFor(words))).toBeNull();
    },
  );

  test('is none where two fit, though one of them is too rare to stand among the first', () => {
    const named = (vernacularName: string, frequency: number) => {
      const scientificName = `Tyto ${vernacularName.toLowerCase()}`;
      return {
        ...bird('Barn Owl'),
        scientificName,
        vernacularName,
        otherEnglishNames: [],
        frequency,
      };
    };
    const others = Array.from('abcdefghijkl', (letter) => named(`Marsh Baow${letter}er`, 1));
    const taxa = [named('Barn Owl', 1), named('Barred Owl', 4), ...others];
    const expected = ({ frequency }: Pick<Taxon, 'frequency'>) => (frequency === 1 ? 20 : 0);
    const hits = search(indexTaxa(taxa), 'baow', expected);
    expect(clearHit(hits)).toBeNull();
    expect(hits.map(({ taxon }) => taxon.vernacularName)).toContain('Barred Owl');
    expect(clearHit(search(indexTaxa(taxa), 'barn', expected))?.taxon).toBe(taxa[0]);
  });

  test('is the same whatever is expected here', () => {
    const expectant = fc
      .constantFrom(...birds.taxa)
      .chain((taxon) =>
        fc
          .constantFrom('gre', 'tudu', 'mal', 'baow', 'wood', 'pocahrd', 'carduelis')
          .map((words) => ({ taxon, words })),
      );
    fc.assert(
      fc.property(expectant, ({ taxon, words }) => {
        const hits = search(birdIndex, words, (other) =>
          other === taxon ? 20 : newNotebook(other),
        );
        expect(clearHit(hits)?.taxon).toBe(clearHit(hitsFor(words))?.taxon);
      }),
    );
  });
});
