import { describe, expect, test } from 'vitest';
import type { Abundances } from '../../src/almanac/figures/abundance.ts';
import { accumulation } from '../../src/almanac/figures/accumulation.ts';
import { chao1, coverage } from '../../src/almanac/figures/chao1.ts';
import { hill, pielou, richness, shannon, simpson } from '../../src/almanac/figures/diversity.ts';
import { rarefied, rarefiedAlike } from '../../src/almanac/figures/rarefaction.ts';

/** `31 x 1` is 31 species of one individual each. */
type Alike = readonly [number: number, species: number];

function counted(...rows: readonly Alike[]): Abundances {
  const numbers = rows.flatMap(([number, species]) =>
    Array.from({ length: species }, () => number),
  );
  const species = numbers.map((number, at) => ({ key: `${at}`, name: `species ${at}`, number }));
  return { species, notes: [] };
}

/** The figure without its notes; a refusal fails the test. */
function given<Values extends object>(figure: Values | { refused: string }): Values {
  if ('refused' in figure) throw new Error(figure.refused);
  return figure;
}

// Tree counts of one hectare each on Barro Colorado Island: plots 1, 2, 25 and 50 of Condit et al. 2002,
// Science 295: 666-669; row 1 of the dune meadow data (Jongman, ter Braak & van Tongeren 1987). Figures:
// R vegan 2.6-4 (Oksanen et al.), functions diversity, estimateR and rarefy, run on these rows.
// biome-ignore format: a plot is one row
const PLOTS = [
  { name: 'BCI 1', counts: counted([25,1],[24,1],[22,1],[21,1],[18,1],[17,1],[15,1],[14,2],[13,2],[12,2],[11,2],[10,1],[9,1],[8,1],[7,1],[6,4],[5,6],[4,6],[3,9],[2,18],[1,31]),
    species: 93, total: 448, entropy: 4.01841166223236, even: 0.886557850148109, oneLess: 0.974629304846939, inverse: 39.41555380989788, order1: 55.6127038813710, chao: 117.473684210526, error: 11.583784848658707, rarefied: { 10: 9.0446852684956, 100: 48.2535173315675, 400: 89.464554211842 }, spread: { individuals: 100, sd: 3.29172459646811 }, coverage: 0.930803571428571 },
  { name: 'BCI 2', counts: counted([36,1],[27,1],[26,1],[22,1],[21,1],[16,2],[14,2],[12,4],[10,1],[9,1],[8,1],[7,3],[6,3],[5,7],[4,4],[3,7],[2,13],[1,31]),
    species: 84, total: 435, entropy: 3.84847116819842, even: 0.868569237437909, oneLess: 0.968339278636544, inverse: 31.58487731597396, order1: 46.9212736331505, chao: 117.214285714286, error: 15.918952639089962, rarefied: { 10: 8.8260808295828, 100: 44.3165929068755, 400: 81.420280669836 }, spread: { individuals: 100, sd: 3.16372736191583 }, coverage: 0.928735632183908 },
  { name: 'BCI 25', counts: counted([35,1],[26,2],[22,1],[20,1],[14,2],[13,1],[12,1],[10,3],[9,1],[7,3],[6,6],[5,4],[4,7],[3,12],[2,20],[1,40]),
    species: 105, total: 442, entropy: 4.07471810327544, even: 0.875537777870737, oneLess: 0.972615220818575, inverse: 36.51663551401869, order1: 58.8338931687099, chao: 142.142857142857, error: 15.529860399170939, rarefied: { 10: 8.9923574829277, 100: 50.7079278843501, 400: 101.012244073975 }, spread: { individuals: 100, sd: 3.46491851894243 }, coverage: 0.909502262443439 },
  { name: 'BCI 50', counts: counted([43,1],[27,1],[23,1],[18,1],[17,1],[16,1],[14,3],[12,2],[11,2],[10,1],[9,2],[8,2],[7,3],[5,2],[4,8],[3,6],[2,19],[1,37]),
    species: 93, total: 432, entropy: 3.90661620707035, even: 0.861893095335582, oneLess: 0.967978395061728, inverse: 31.22891566265061, order1: 49.7303896034386, chao: 126.3, error: 14.462098311423535, rarefied: { 10: 8.8318887582483, 100: 46.0712069315827, 400: 90.155595839149 }, spread: { individuals: 100, sd: 3.32705464092913 }, coverage: 0.914351851851852 },
  { name: 'dune 1', counts: counted([7,1],[4,2],[2,1],[1,1]),
    species: 5, total: 18, entropy: 1.44048174159249, even: 0.895021628646683, oneLess: 0.734567901234568, inverse: 3.76744186046512, order1: 4.2227295915584, chao: 5, error: 0.223606797749979, rarefied: { 1: 1, 5: 3.24673202614379, 10: 4.32654600301659 }, spread: { individuals: 10, sd: 0.624048874769298 }, coverage: 0.944444444444444 },
] as const;
const NINE_DIGITS = 9;

describe.each(PLOTS)('R vegan and this program agree to nine decimals about $name:', (plot) => {
  const { counts } = plot;

  test('The richness is as published.', () => {
    expect(given(richness(counts)).species).toBe(plot.species);
  });

  test('Shannon, Simpson and Pielou are as vegan has them.', () => {
    expect(given(shannon(counts)).entropy).toBeCloseTo(plot.entropy, NINE_DIGITS);
    expect(given(simpson(counts)).oneLess).toBeCloseTo(plot.oneLess, NINE_DIGITS);
    expect(given(simpson(counts)).inverse).toBeCloseTo(plot.inverse, NINE_DIGITS);
    expect(given(pielou(counts)).evenness).toBeCloseTo(plot.even, NINE_DIGITS);
  });

  test('The Hill numbers of order 0, 1 and 2 are as vegan has them.', () => {
    const { order0, order1, order2 } = given(hill(counts));
    expect(order0).toBe(plot.species);
    expect(order1).toBeCloseTo(plot.order1, NINE_DIGITS);
    expect(order2).toBeCloseTo(plot.inverse, NINE_DIGITS);
  });

  test('Chao1 and its standard error are as vegan has them.', () => {
    const { biasCorrected } = given(chao1(counts));
    expect(biasCorrected.species).toBeCloseTo(plot.chao, NINE_DIGITS);
    expect(biasCorrected.standardError).toBeCloseTo(plot.error, NINE_DIGITS);
  });

  test("Good's coverage is one less the share of singletons.", () => {
    expect(given(coverage(counts)).coverage).toBeCloseTo(plot.coverage, NINE_DIGITS);
  });

  test('Rarefied to fewer individuals, the species are as vegan has them.', () => {
    for (const [individuals, species] of Object.entries(plot.rarefied))
      expect(given(rarefied(counts, Number(individuals))).species).toBeCloseTo(
        species,
        NINE_DIGITS,
      );
  });

  test('Rarefied to all individuals, all species are there and nothing is left to chance.', () => {
    const all = given(rarefied(counts, plot.total));
    expect(all.species).toBeCloseTo(plot.species, NINE_DIGITS);
    expect(all.sd).toBeCloseTo(0, NINE_DIGITS);
  });

  test('The spread of a rarefied number is as vegan has it.', () => {
    const { individuals, sd } = plot.spread;
    expect(given(rarefied(counts, individuals)).sd).toBeCloseTo(sd, NINE_DIGITS);
  });
});

describe('Chao1', () => {
  // Chao 1987, Biometrics 43: 783-791: the variance f2 (r^4 / 4 + r^3 + r^2 / 2), r = f1 / f2, and the
  // interval seen + T / K to seen + T K, K = exp(1.96 sqrt(ln(1 + var / T^2))); worked for plot 1 of BCI.
  test('The classic estimate, its error and its interval follow the closed form of 1987.', () => {
    const { classic } = given(chao1(PLOTS[0].counts));
    const [once, twice] = [31, 18];
    const r = once / twice;
    const unseen = once ** 2 / (2 * twice);
    const variance = twice * (r ** 4 / 4 + r ** 3 + r ** 2 / 2);
    const spread = Math.exp(1.96 * Math.sqrt(Math.log(1 + variance / unseen ** 2)));
    expect(classic?.species).toBeCloseTo(93 + unseen, NINE_DIGITS);
    expect(classic?.standardError).toBeCloseTo(Math.sqrt(variance), NINE_DIGITS);
    expect(classic?.interval?.[0]).toBeCloseTo(93 + unseen / spread, NINE_DIGITS);
    expect(classic?.interval?.[1]).toBeCloseTo(93 + unseen * spread, NINE_DIGITS);
  });

  // R vegan 2.6-4, estimateR, run on these counts.
  test.each([
    ['with doubletons', counted([4, 1], [2, 2], [1, 3]), 7, 1.79062815971078],
    ['without doubletons', counted([4, 1], [3, 2], [1, 3]), 9, 4.41588043316392],
  ])('A handful of species %s is estimated as by vegan.', (_, counts, species, error) => {
    const { biasCorrected } = given(chao1(counts));
    expect(biasCorrected.species).toBeCloseTo(species, NINE_DIGITS);
    expect(biasCorrected.standardError).toBeCloseTo(error, NINE_DIGITS);
  });
});

describe("Magurran's worked examples (1988, Ecological Diversity and Its Measurement; from memory)", () => {
  // biome-ignore format: a list of counts
  const oakwood = counted([35,1],[26,1],[25,1],[21,1],[16,1],[11,1],[6,1],[5,1],[3,5],[2,3],[1,4]);
  const trap = counted([9, 1], [4, 1], [3, 1], [2, 1], [1, 5]);

  test('The birds of an oakwood have 20 species, 170 individuals and H′ 2.408.', () => {
    expect(given(richness(oakwood)).species).toBe(20);
    expect(given(rarefied(oakwood, 170)).species).toBeCloseTo(20, NINE_DIGITS);
    expect(given(shannon(oakwood)).entropy).toBeCloseTo(2.408, 3);
  });

  test('A moth trap with 23 moths is rarefied to 6.557 species among 13.', () => {
    const { individuals, samples } = given(rarefiedAlike([trap, counted([13, 1])]));
    const [first] = samples;
    expect(individuals).toBe(13);
    // 6.557 is printed rounded from 6.5567 (R vegan: 6.556735363169605, standard error 1.02019090673951).
    expect(first && given(first).species).toBeCloseTo(6.556735363169605, NINE_DIGITS);
    expect(first && given(first).sd).toBeCloseTo(1.02019090673951, NINE_DIGITS);
  });
});

describe('Species accumulation', () => {
  // How many of the 225 tree species are in 1, 2, ... 50 of the 50 plots of BCI (Condit et al. 2002), and
  // the exact accumulation of R vegan 2.6-4 (specaccum, method exact) over them.
  // biome-ignore format: a list of numbers
  const IN_PLOTS = [21,19,10,5,6,3,5,7,6,5,3,6,4,4,2,5,4,8,5,2,3,3,4,1,2,3,4,4,0,3,5,4,2,2,4,2,3,2,3,2,2,1,3,3,4,4,3,7,5,7];
  // biome-ignore format: a list of pairs
  const EXPECTED: readonly (readonly [plots: number, species: number])[] = [[1,90.78],[2,121.609795918368],[3,139.045867346939],[5,159.236344371236],[10,182.560444122007],[25,208.169590428944],[40,220.035497167129],[49,224.58],[50,225]];
  const plots = Array.from({ length: 50 }, () => new Set<string>());
  for (const [at, species] of IN_PLOTS.entries())
    for (let one = 0; one < species; one += 1)
      for (const plot of plots.slice(0, at + 1)) plot.add(`${at} ${one}`);

  test('Over the 50 plots of BCI it is the exact one of vegan.', () => {
    const steps = accumulation(plots);
    for (const [number, species] of EXPECTED)
      expect(steps[number - 1]?.species).toBeCloseTo(species, NINE_DIGITS);
  });

  // The 154 species of plots 1, 2, 25 and 50, by the plots that each is in.
  // biome-ignore format: a list of pairs
  const PATTERNS: Record<string, number> = { '1111':45, '0010':17, '0001':14, '1000':10, '0011':10, '1110':8, '0110':8, '1001':7, '1010':7, '1100':6, '1011':5, '1101':5, '0111':5, '0100':5, '0101':2 };
  const four = [0, 1, 2, 3].map(
    (plot) =>
      new Set(
        Object.entries(PATTERNS).flatMap(([pattern, species]) =>
          pattern[plot] === '1'
            ? Array.from({ length: species }, (_, one) => `${pattern} ${one}`)
            : [],
        ),
      ),
  );

  test('Over four plots the species and the spread by correlations are those of vegan.', () => {
    const steps = accumulation(four);
    const species = [93.75, 124.333333333333, 142.5, 154];
    const spread = [7.46240577829965, 7.40136737109043, 4.5, 0];
    for (const [at, step] of steps.entries()) {
      expect(step.species).toBeCloseTo(species[at] ?? Number.NaN, NINE_DIGITS);
      expect(step.correlationSd).toBeCloseTo(spread[at] ?? Number.NaN, NINE_DIGITS);
    }
  });

  test('The spread itself is that of every choice of plots, gone through one by one.', () => {
    for (const { visits, species, sd } of accumulation(four)) {
      const choices = Array.from({ length: 2 ** 4 }, (_, bits) =>
        four.filter((_, at) => (bits >> at) & 1),
      ).filter(({ length }) => length === visits);
      const numbers = choices.map((chosen) => new Set(chosen.flatMap((set) => [...set])).size);
      const mean = numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
      const squares = numbers.reduce((sum, number) => sum + (number - mean) ** 2, 0);
      expect(species).toBeCloseTo(mean, NINE_DIGITS);
      expect(sd).toBeCloseTo(Math.sqrt(squares / numbers.length), NINE_DIGITS);
    }
  });
});
