import { describe, expect, test } from 'vitest';
import { randomFrom } from '../../demo-data/model/random.ts';
import type { VisitDigest } from '../../src/almanac/asking/digest.ts';
import { rate } from '../../src/almanac/figures/rate.ts';
import { dayFrom, digests, MALLARD, outing, PRESENT } from './made.ts';

const BIRDS = { key: MALLARD.scientificName, group: 'birds' };

/** Visits of two hours and three kilometres with these numbers of Mallards. */
function counting(...numbers: number[]): VisitDigest[] {
  return digests(
    ...numbers.map((number, at) =>
      outing(dayFrom(at), number === 0 ? [] : [[MALLARD, number]], {
        distance: 3000,
      }),
    ),
  );
}

function rated(visits: VisitDigest[], per: 'hour' | 'kilometre' = 'hour', seed = 1) {
  const figure = rate(visits, BIRDS, per, randomFrom(seed).next);
  if ('refused' in figure) throw new Error(figure.refused);
  return figure;
}

describe('An encounter rate', () => {
  test('is all individuals through all the effort, visits without it too.', () => {
    const visits = counting(4, 0, 6, 10, 0);
    expect(rated(visits)).toMatchObject({ rate: 2, individuals: 20, effort: 10, visits: 5 });
    expect(rated(visits, 'kilometre')).toMatchObject({ rate: 20 / 15, effort: 15 });
  });

  test('has no spread where all visits are alike.', () => {
    expect(rated(counting(4, 4, 4, 4, 4, 4)).interval).toEqual([2, 2]);
  });

  test('has the same interval for the same seed, and nearly the same for another.', () => {
    const visits = counting(...Array.from({ length: 60 }, (_, at) => (at * 7) % 11));
    expect(rated(visits)).toEqual(rated(visits));
    const [one, two] = [rated(visits).interval, rated(visits, 'hour', 2).interval];
    expect(Math.abs(one[0] - two[0])).toBeLessThan(0.1);
    expect(Math.abs(one[1] - two[1])).toBeLessThan(0.1);
  });

  // Cochran 1977, Sampling Techniques, section 6.4: the standard error of a ratio of sums; of equal
  // efforts it is that of the mean, s / sqrt(n). For sixty visits the bootstrap comes near to 1.96 of it.
  test('has an interval near the one of the ratio estimator for many visits.', () => {
    const numbers = Array.from({ length: 60 }, (_, at) => (at * 7) % 11);
    const mean = numbers.reduce((sum, number) => sum + number, 0) / 60;
    const squares = numbers.reduce((sum, number) => sum + (number - mean) ** 2, 0);
    const error = Math.sqrt(squares / 59 / 60) / 2;
    const { rate: middle, interval } = rated(counting(...numbers));
    expect(middle).toBeCloseTo(mean / 2, 12);
    expect((interval[1] - interval[0]) / (2 * 1.96 * error)).toBeGreaterThan(0.9);
    expect((interval[1] - interval[0]) / (2 * 1.96 * error)).toBeLessThan(1.1);
  });

  // Four Mallards in eight visits, drawn anew: binomial with n = 8 and p = 1/2, of which 1 and 7 are the
  // 2.5 and 97.5 % quantiles (P(X <= 0) = 1/256, P(X <= 1) = 9/256 = 0.035); each visit has two hours.
  test('has the interval of the binomial distribution where a visit has one or none.', () => {
    expect(rated(counting(1, 0, 1, 0, 1, 0, 1, 0)).interval).toEqual([1 / 16, 7 / 16]);
  });

  test('is refused where too few visits are complete, with the number there are.', () => {
    expect(rate(counting(4, 0, 6, 10), BIRDS, 'hour', () => 0)).toEqual({
      refused: '4 visits complete for birds with an end: 5 are needed for a rate.',
    });
  });

  test('is refused where it was seen and not counted, with the date.', () => {
    const uncounted = outing('2025-06-01', [[MALLARD, PRESENT]]);
    const visits = [...counting(1, 2, 3, 4, 5), ...digests(uncounted)];
    expect(rate(visits, BIRDS, 'hour', () => 0)).toEqual({
      refused:
        'Seen and not counted on 2025-06-01: give a count there, or ask for the share of visits.',
    });
  });

  test('leaves out visits that go on, and those complete for other groups only, and says so.', () => {
    const others = digests(
      outing('2025-06-01', [[MALLARD, 100]], { hours: null }),
      outing('2025-06-02', [[MALLARD, 100]], { groups: ['butterflies'] }),
      outing('2025-06-03', [[MALLARD, 100]], { complete: null }),
    );
    const figure = rated([...counting(4, 0, 6, 10, 0), ...others]);
    expect(figure.rate).toBe(2);
    expect(figure.notes).toEqual(['3 visits without the effort or not complete, left out.']);
  });
});
