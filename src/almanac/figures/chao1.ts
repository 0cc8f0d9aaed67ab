import { type Abundances, type Numbers, numbersOf } from './abundance.ts';
import { type Figure, noting } from './figure.ts';

/** Half of a 95 % interval in standard errors of the normal distribution. */
const NORMAL_95 = 1.96;

/** A richness that was estimated, its standard error, and its 95 % interval where there is one. */
export interface Estimated {
  species: number;
  standardError: number;
  interval: readonly [low: number, high: number] | null;
}

/** What the unseen species come to by one formula, with how that changes with the species met once and twice. */
interface Unseen {
  species: number;
  byOnce: number;
  byTwice: number;
}

/**
 * Chao1, the least number of species there: those seen and, by those met once (f1) and twice (f2),
 * those unseen. Bias-corrected: f1 (f1 - 1) / (2 (f2 + 1)) (Chao 2005); classic: f1² / (2 f2) (Chao
 * 1984), null where no species was met twice. The standard error is by the delta method with
 * multinomial covariances, as in Chao 1987, whose closed form for the classic one it equals; the
 * interval is her log-normal one and never goes below what was seen.
 */
export function chao1(
  abundances: Abundances,
): Figure<{ biasCorrected: Estimated; classic: Estimated | null }> {
  const read = numbersOf(abundances);
  if ('refused' in read) return read;
  const seen = read.numbers.length;
  const [once, twice] = [metTimes(read, 1), metTimes(read, 2)];
  const corrected = {
    species: (once * (once - 1)) / (2 * (twice + 1)),
    byOnce: (2 * once - 1) / (2 * (twice + 1)),
    byTwice: (-once * (once - 1)) / (2 * (twice + 1) ** 2),
  };
  const ratio = once / twice;
  const classic = { species: once ** 2 / (2 * twice), byOnce: ratio, byTwice: -(ratio ** 2) / 2 };
  return {
    biasCorrected: estimated(seen, once, twice, corrected),
    classic: twice === 0 ? null : estimated(seen, once, twice, classic),
    notes: noting(
      read.notes,
      once === 0 ? 'No species was met once only: nothing says that more are there.' : null,
    ),
  };
}

/** Good's coverage C = 1 - f1 / n (Good 1953): the share of individuals there whose species was seen. */
export function coverage(abundances: Abundances): Figure<{ coverage: number }> {
  const read = numbersOf(abundances);
  if ('refused' in read) return read;
  return { coverage: 1 - metTimes(read, 1) / read.total, notes: read.notes };
}

function metTimes({ numbers }: Numbers, times: number): number {
  return numbers.filter((number) => number === times).length;
}

function estimated(seen: number, once: number, twice: number, unseen: Unseen): Estimated {
  const { species, byOnce, byTwice } = unseen;
  const all = seen + species;
  const slope = byOnce * once + byTwice * twice;
  // The gradient is 1 for every species seen, and more or less for those met once or twice.
  const squares = seen + 2 * slope + byOnce ** 2 * once + byTwice ** 2 * twice;
  const variance = Math.max(0, squares - (seen + slope) ** 2 / all);
  return {
    species: all,
    standardError: Math.sqrt(variance),
    interval: species > 0 ? logNormal(seen, species, variance) : null,
  };
}

/** Chao 1987, equation for the 95 % interval: seen + unseen / K to seen + unseen K. */
function logNormal(seen: number, unseen: number, variance: number): [number, number] {
  const spread = Math.exp(NORMAL_95 * Math.sqrt(Math.log1p(variance / unseen ** 2)));
  return [seen + unseen / spread, seen + unseen * spread];
}
