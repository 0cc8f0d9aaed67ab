import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clearHit, search } from '../../src/taxa/search.ts';
import type { Taxon } from '../../src/taxa/taxon.ts';
import { isSpecies } from '../../src/visit/entry.ts';
import { birdIndex, birds, hitsFor } from './birds.ts';

const names = birds.taxa.flatMap((taxon) =>
  [
    taxon.vernacularName ?? taxon.scientificName,
    // Of a genus, several rows may say what was seen: a group, pairs and hybrids.
    ...(isSpecies(taxon)
      ? [taxon.scientificName, ...taxon.otherEnglishNames, ...taxon.olderScientificNames]
      : []),
  ].map((name) => ({ name, taxon })),
);

describe('any words at all', () => {
  const words = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.string({ unit: 'grapheme', maxLength: 60 }),
    fc
      .array(
        fc.constantFrom(
          'g',
          'heorn',
          'sparow',
          'finch',
          'tit',
          "'",
          '-',
          'é',
          'gull',
          '7',
          'a'.repeat(99),
        ),
        {
          maxLength: 12,
        },
      )
      .map((all) => all.join(' ')),
  );

  const uneven = (taxon: Taxon) => (taxon.scientificName.length % 2) * 20;

  test('throw nothing, and give hits in order, none twice and none past the limit', () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 1, max: 12 }), (text, limit) => {
        const hits = search(birdIndex, text, uneven, limit);
        expect(hits.length).toBeLessThanOrEqual(limit);
        expect(new Set(hits.map(({ taxon }) => taxon)).size).toBe(hits.length);
        const ranks = hits.map(({ rank }) => rank);
        expect(ranks).toEqual(ranks.toSorted((one, two) => two - one));
        for (const hit of hits) expect(hit.fit).toBeGreaterThan(0);
        clearHit(hits);
      }),
      { numRuns: 300 },
    );
  });

  test('are found by their start letter by letter: a name never drops out while it is typed', () => {
    for (const { vernacularName } of birds.taxa) {
      const name = vernacularName ?? '';
      for (let typed = 1; typed <= name.length; typed += 1) {
        const all = search(birdIndex, name.slice(0, typed), () => 0, 400);
        expect(all.map(({ taxon }) => taxon.vernacularName)).toContain(name);
      }
    }
  });
});

describe('a name that is typed in full', () => {
  test('finds its own taxon first and without doubt, whatever is expected here', () => {
    const misled = (taxon: Taxon) => (other: Taxon) => (other === taxon ? 0 : 20);
    const wrong = names.filter(({ name, taxon }) => {
      const hits = search(birdIndex, name, misled(taxon));
      return hits[0]?.taxon !== taxon || clearHit(hits)?.taxon !== taxon;
    });
    expect(wrong.map(({ name }) => name)).toEqual([]);
    expect(names.length).toBeGreaterThan(1000);
  });

  test('finds it in capitals, without spaces and hyphens, and with words turned round', () => {
    for (const { name, taxon } of names) {
      for (const written of [
        name.toUpperCase(),
        name.replace(/[ '-]/g, ''),
        name.replaceAll('-', ' '),
      ])
        expect(hitsFor(written)[0]?.taxon).toBe(taxon);
      const turned = hitsFor(name.split(' ').reverse().join(' '));
      expect(turned.slice(0, 3).map((hit) => hit.taxon)).toContain(taxon);
    }
  });
});

/** Every way to spoil one word of five letters or more behind its first letter. */
function spoilt(name: string, way: (word: string, at: number) => string): string[] {
  return [...name.matchAll(/\p{L}{5,}/gu)].flatMap(({ 0: word, index }) =>
    Array.from({ length: word.length - 1 }, (_, at) => way(word, at + 1))
      .filter((other) => other !== word)
      .map((other) => name.slice(0, index) + other + name.slice(index + word.length)),
  );
}

const SLIPS: Record<string, (word: string, at: number) => string> = {
  'a letter left out': (word, at) => word.slice(0, at) + word.slice(at + 1),
  'a letter doubled': (word, at) => word.slice(0, at + 1) + word.slice(at),
  'two neighbours swapped': (word, at) =>
    word.slice(0, at) + (word[at + 1] ?? '') + (word[at] ?? '') + word.slice(at + 2),
};

describe('a name with one slip', () => {
  // Measured on every such spelling of every name of the list, some 33,000: all but one of them are
  // among the first three, and 99.5 in a hundred stand first. A fifth of the names is tried here.
  test.each(Object.keys(SLIPS))('with %s is among the first three in 99 of 100 cases', (slip) => {
    const way = SLIPS[slip] ?? ((word: string) => word);
    const tried = names
      .filter((_, at) => at % 5 === 0)
      .flatMap(({ name, taxon }) => spoilt(name, way).map((typed) => ({ typed, taxon })));
    const found = tried.filter(({ typed, taxon }) =>
      hitsFor(typed)
        .slice(0, 3)
        .some((hit) => hit.taxon === taxon),
    );
    expect(tried.length).toBeGreaterThan(1500);
    expect(found.length / tried.length).toBeGreaterThanOrEqual(0.99);
  });
});
