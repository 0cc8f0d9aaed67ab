import { type Abundances, numbersOf } from './abundance.ts';
import type { Figure } from './figure.ts';

/** How many species are on record. */
export function richness({ species, notes }: Abundances): Figure<{ species: number }> {
  if (species.length === 0)
    return { refused: 'No species is on record: log some, or ask for more visits.' };
  return { species: species.length, notes };
}

/** Shannon's H′ = -sum p ln p, in nats (Shannon 1948; Magurran 2004, Measuring Biological Diversity). */
export function shannon(abundances: Abundances): Figure<{ entropy: number }> {
  return fromShares(abundances, (shares) => ({ entropy: entropyOf(shares) }));
}

/** Simpson's index as 1 - D and as 1 / D, with D = sum p² (Simpson 1949; Magurran 2004). */
export function simpson(abundances: Abundances): Figure<{ oneLess: number; inverse: number }> {
  return fromShares(abundances, (shares) => {
    const concentration = concentrationOf(shares);
    return { oneLess: 1 - concentration, inverse: 1 / concentration };
  });
}

/** Pielou's evenness J = H′ / ln S (Pielou 1966): 1 where all species are equally many. */
export function pielou(abundances: Abundances): Figure<{ evenness: number }> {
  const read = numbersOf(abundances);
  if ('numbers' in read && read.numbers.length === 1)
    return {
      refused: 'One species alone is neither even nor uneven: two counted ones are needed.',
    };
  return fromShares(abundances, (shares) => ({
    evenness: entropyOf(shares) / Math.log(shares.length),
  }));
}

/** Hill numbers of order 0, 1 and 2: S, e^H′ and 1 / D (Hill 1973), all of the counted species. */
export function hill(
  abundances: Abundances,
): Figure<{ order0: number; order1: number; order2: number }> {
  return fromShares(abundances, (shares) => ({
    order0: shares.length,
    order1: Math.exp(entropyOf(shares)),
    order2: 1 / concentrationOf(shares),
  }));
}

function fromShares<Values>(
  abundances: Abundances,
  values: (shares: readonly number[]) => Values,
): Figure<Values> {
  const read = numbersOf(abundances);
  if ('refused' in read) return read;
  return { ...values(read.numbers.map((number) => number / read.total)), notes: read.notes };
}

function entropyOf(shares: readonly number[]): number {
  // One species alone would give minus zero.
  return Math.max(
    0,
    shares.reduce((sum, share) => sum - share * Math.log(share), 0),
  );
}

function concentrationOf(shares: readonly number[]): number {
  return shares.reduce((sum, share) => sum + share ** 2, 0);
}
