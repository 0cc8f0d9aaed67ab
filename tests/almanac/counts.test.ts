import { describe, expect, test } from 'vitest';
import { abundancesOf, numbersOf } from '../../src/almanac/figures/abundance.ts';
import { richness } from '../../src/almanac/figures/diversity.ts';
import {
  ARCTIC_TERN,
  BRIMSTONE,
  COMMON_TERN,
  digests,
  GULL,
  MALLARD,
  outing,
  POCHARD,
  PRESENT,
} from './made.ts';

describe('Counts enter figures by one rule:', () => {
  const visits = digests(
    outing('2025-05-01', [
      [MALLARD, { kind: 'about', value: 40 }],
      [POCHARD, { kind: 'at least', value: 12 }],
      [COMMON_TERN, { kind: 'range', low: 10, high: 15 }],
      [ARCTIC_TERN, PRESENT],
      [BRIMSTONE, 3],
      [GULL, 9],
    ]),
  );

  test('about as its number, at least as its number, a range by its low end, present not at all.', () => {
    const { species } = abundancesOf(visits);
    expect(species.map(({ name, number }) => [name, number])).toEqual([
      ['Mallard', 40],
      ['Pochard', 12],
      ['Common Tern', 10],
      ['Arctic Tern', null],
      ['Brimstone', 3],
    ]);
  });

  test('and each that is not exact is told.', () => {
    const read = numbersOf(abundancesOf(visits));
    expect('numbers' in read && read.notes).toEqual([
      'Estimates, by their number: Mallard.',
      'At least so many, by that lower bound: Pochard.',
      'Ranges, by their low end: Common Tern.',
      'Not to the species and left out: gull.',
      'Counts of different groups do not compare: ashwick-birds, ashwick-butterflies.',
      'Seen and not counted, left out: Arctic Tern.',
    ]);
  });

  test('A species counted at one visit and only seen at another is a lower bound.', () => {
    const two = abundancesOf(
      digests(outing('2025-05-01', [[MALLARD, 4]]), outing('2025-05-02', [[MALLARD, PRESENT]])),
    );
    expect(two.species).toEqual([{ key: MALLARD.scientificName, name: 'Mallard', number: 4 }]);
    expect(two.notes).toEqual([
      'Not counted at some visit, so that the number is a lower bound: Mallard.',
      'Counts of 2 visits are added: some individuals may be in it twice.',
    ]);
  });

  test('An estimate with more that nobody counted is told as both.', () => {
    const seen = outing('2025-05-01', [
      [MALLARD, { kind: 'about', value: 5 }],
      [MALLARD, PRESENT],
    ]);
    expect(abundancesOf(digests(seen)).notes).toEqual([
      'Estimates, by their number: Mallard.',
      'At least so many, by that lower bound: Mallard.',
    ]);
  });

  test('The same birds seen again in a visit count once where the visit says so.', () => {
    const seen: [typeof MALLARD, number][] = [
      [MALLARD, 5],
      [MALLARD, 8],
    ];
    const numberIn = (highest: string[]) =>
      abundancesOf(digests(outing('2025-05-01', seen, { highest }))).species[0]?.number;
    expect(numberIn([])).toBe(13);
    expect(numberIn([MALLARD.scientificName])).toBe(8);
  });

  test('Uncertain names, struck entries and zeros make no species.', () => {
    const visit = outing('2025-05-01', [
      { taxon: POCHARD, uncertain: true },
      [MALLARD, 0],
      [BRIMSTONE, 2],
    ]);
    const struck = {
      ...visit,
      entries: visit.entries.map((each) =>
        each.number === 3 ? { ...each, struck: each.time } : each,
      ),
    };
    expect(richness(abundancesOf(digests(visit)))).toMatchObject({ species: 1 });
    expect(richness(abundancesOf(digests(struck)))).toHaveProperty('refused');
  });
});
