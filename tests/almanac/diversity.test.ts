import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chao1, coverage } from '../../src/almanac/figures/chao1.ts';
import { hill, pielou, richness, shannon, simpson } from '../../src/almanac/figures/diversity.ts';
import { chanceOfNone } from '../../src/almanac/figures/drawing.ts';
import { rarefied, rarefiedAlike } from '../../src/almanac/figures/rarefaction.ts';
import { abundances } from './made.ts';

const numbers = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 2, maxLength: 12 });

function given<Values extends object>(figure: Values | { refused: string }): Values {
  if ('refused' in figure) throw new Error(figure.refused);
  return figure;
}

describe('Worked by hand, from the definitions:', () => {
  test('Four species of five each are as diverse and as even as four species can be.', () => {
    const four = abundances(5, 5, 5, 5);
    expect(given(shannon(four)).entropy).toBeCloseTo(Math.log(4), 12);
    expect(given(simpson(four)).oneLess).toBeCloseTo(3 / 4, 12);
    expect(given(simpson(four)).inverse).toBeCloseTo(4, 12);
    expect(given(pielou(four)).evenness).toBeCloseTo(1, 12);
    const { order0, order1, order2 } = given(hill(four));
    expect([order0, order1, order2].map((order) => order.toFixed(9))).toEqual(
      Array.from({ length: 3 }, () => '4.000000000'),
    );
  });

  test('Of 3, 1 and 1 the Chao1 is 3 + 2 x 1 / 2 and the coverage three in five.', () => {
    const { biasCorrected, classic } = given(chao1(abundances(3, 1, 1)));
    expect(biasCorrected.species).toBe(4);
    expect(classic).toBeNull();
    expect(given(coverage(abundances(3, 1, 1))).coverage).toBeCloseTo(3 / 5, 12);
  });

  test('Two drawn from 2 and 1 are one species once in three draws: 5 / 3 species, variance 2 / 9.', () => {
    const two = given(rarefied(abundances(2, 1), 2));
    expect(two.species).toBeCloseTo(5 / 3, 12);
    expect(two.sd).toBeCloseTo(Math.sqrt(2 / 9), 12);
  });

  test('With ten million individuals no digits are lost: the chance of none is (N - m) / N for one drawn.', () => {
    const all = 1e9;
    expect(chanceOfNone(all, 25e7, 1)).toBeCloseTo(0.75, 12);
    expect(chanceOfNone(all, 1, 25e7)).toBeCloseTo(0.75, 12);
    expect(chanceOfNone(all, 2, 5e8) / ((0.5 * (5e8 - 1)) / (all - 1))).toBeCloseTo(1, 12);
    expect(chanceOfNone(all, 1e7, 1e7)).toBe(0);
    expect(chanceOfNone(10, 4, 7)).toBe(0);
    expect(chanceOfNone(10, 0, 7)).toBe(1);
  });
});

describe('A figure that can not be had says why:', () => {
  test('Without any species.', () => {
    for (const figure of [richness, shannon, simpson, pielou, hill, chao1, coverage])
      expect(figure(abundances())).toEqual({
        refused: 'No species is on record: log some, or ask for more visits.',
      });
  });

  test('Without any count; the richness is had all the same.', () => {
    const uncounted = abundances(null, null);
    expect(given(richness(uncounted)).species).toBe(2);
    for (const figure of [shannon, simpson, pielou, hill, chao1, coverage])
      expect(figure(uncounted)).toEqual({
        refused:
          'No species has a count (species 0, species 1): count individuals to get this figure.',
      });
  });

  test('One species alone has no evenness.', () => {
    expect(pielou(abundances(5))).toHaveProperty('refused');
    expect(Object.is(given(shannon(abundances(5))).entropy, 0)).toBe(true);
  });

  test.each([0, 2.5, 12, Number.NaN])('%d individuals can not be drawn from 11.', (individuals) => {
    expect(rarefied(abundances(10, 1), individuals)).toHaveProperty('refused');
  });

  test('One sample alone compares with none.', () => {
    expect(rarefiedAlike([abundances(4, 2), abundances(null)])).toHaveProperty('refused');
  });

  test('A species that was not counted is left out and named, never taken for 1.', () => {
    const with1 = given(shannon(abundances(4, 2, null)));
    expect(with1.entropy).toBe(given(shannon(abundances(4, 2))).entropy);
    expect(with1.notes).toEqual(['Seen and not counted, left out: species 2.']);
  });
});

describe('Whatever the counts,', () => {
  test('their order makes no difference.', () => {
    fc.assert(
      fc.property(numbers, (counts) => {
        const [one, two] = [abundances(...counts), abundances(...counts.toReversed())];
        expect(given(shannon(one)).entropy).toBeCloseTo(given(shannon(two)).entropy, 10);
        expect(given(simpson(one)).oneLess).toBeCloseTo(given(simpson(two)).oneLess, 10);
        expect(given(chao1(one))).toEqual(given(chao1(two)));
        expect(given(rarefied(one, 2)).species).toBeCloseTo(given(rarefied(two, 2)).species, 10);
      }),
    );
  });

  test('a hundred times as many individuals leave shares, and so the diversity, as they are.', () => {
    fc.assert(
      fc.property(numbers, (counts) => {
        const [one, many] = [abundances(...counts), abundances(...counts.map((n) => n * 100))];
        expect(given(shannon(one)).entropy).toBeCloseTo(given(shannon(many)).entropy, 10);
        expect(given(simpson(one)).inverse).toBeCloseTo(given(simpson(many)).inverse, 9);
        expect(given(pielou(one)).evenness).toBeCloseTo(given(pielou(many)).evenness, 10);
      }),
    );
  });

  test('Hill numbers fall with their order and lie between 1 and the species.', () => {
    fc.assert(
      fc.property(numbers, (counts) => {
        const { order0, order1, order2 } = given(hill(abundances(...counts)));
        expect(order0).toBe(counts.length);
        expect(order1).toBeLessThanOrEqual(order0 + 1e-9);
        expect(order2).toBeLessThanOrEqual(order1 + 1e-9);
        expect(order2).toBeGreaterThanOrEqual(1 - 1e-9);
      }),
    );
  });

  test('H′ lies between 0 and ln S, 1 - D between 0 and 1 - 1 / S, J between 0 and 1.', () => {
    fc.assert(
      fc.property(numbers, (counts) => {
        const all = abundances(...counts);
        const within = (value: number, most: number) => {
          expect(value).toBeGreaterThanOrEqual(0);
          expect(value).toBeLessThanOrEqual(most + 1e-9);
        };
        within(given(shannon(all)).entropy, Math.log(counts.length));
        within(given(simpson(all)).oneLess, 1 - 1 / counts.length);
        within(given(pielou(all)).evenness, 1);
        within(given(coverage(all)).coverage, 1);
      }),
    );
  });

  test('Chao1 is never below the species seen, and its interval holds it.', () => {
    fc.assert(
      fc.property(numbers, (counts) => {
        const { biasCorrected, classic } = given(chao1(abundances(...counts)));
        for (const { species, interval } of [biasCorrected, ...(classic ? [classic] : [])]) {
          expect(species).toBeGreaterThanOrEqual(counts.length);
          if (interval === null) continue;
          expect(interval[0]).toBeGreaterThanOrEqual(counts.length);
          expect(interval[0]).toBeLessThanOrEqual(species);
          expect(interval[1]).toBeGreaterThanOrEqual(species);
        }
      }),
    );
  });

  test('rarefied species are 1 among one, grow with the number drawn, and are all at the end.', () => {
    fc.assert(
      fc.property(numbers, (counts) => {
        const all = abundances(...counts);
        const total = counts.reduce((sum, count) => sum + count, 0);
        const species = [1, 2, Math.ceil(total / 2), total].map(
          (individuals) => given(rarefied(all, individuals)).species,
        );
        expect(species[0]).toBeCloseTo(1, 10);
        expect(species.at(-1)).toBeCloseTo(counts.length, 10);
        expect(species).toEqual(species.toSorted((one, two) => one - two));
      }),
    );
  });
});
