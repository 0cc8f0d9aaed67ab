import { type Abundances, numbersOf } from './abundance.ts';
import { chanceOfNone } from './drawing.ts';
import { type Figure, many } from './figure.ts';

/** Species to expect among so many individuals, with the standard deviation over all such draws. */
export interface Rarefied {
  individuals: number;
  species: number;
  sd: number;
}

/**
 * The species to expect among `individuals` drawn at random from those counted: the sum of
 * 1 - C(N - Ni, n) / C(N, n) (Hurlbert 1971), with the variance of Heck, van Belle & Simberloff
 * (1975). At n = N it is the number of species, at 1 it is 1.
 */
export function rarefied(abundances: Abundances, individuals: number): Figure<Rarefied> {
  const read = numbersOf(abundances);
  if ('refused' in read) return read;
  if (!Number.isInteger(individuals) || individuals < 1)
    return { refused: `"${individuals}" can't be drawn: give a whole number from 1 on.` };
  if (individuals > read.total)
    return {
      refused: `${individuals} can't be drawn from ${many(read.total, 'counted individual')}: give at most ${read.total}.`,
    };
  // Species of the same number are alike, and there are few different numbers.
  const byNumber = new Map<number, number>();
  for (const number of read.numbers) byNumber.set(number, (byNumber.get(number) ?? 0) + 1);
  const none = new Map(
    [...byNumber.keys()].map((number) => [number, chanceOfNone(read.total, number, individuals)]),
  );
  const missing = (number: number) => none.get(number) ?? 0;
  let [species, variance] = [0, 0];
  for (const [one, ones] of byNumber) {
    species += ones * (1 - missing(one));
    variance += ones * missing(one) * (1 - missing(one));
    for (const [two, twos] of byNumber) {
      const pairs = ones * (one === two ? ones - 1 : twos);
      const both = chanceOfNone(read.total, one + two, individuals);
      variance += pairs * (both - missing(one) * missing(two));
    }
  }
  return { individuals, species, sd: Math.sqrt(Math.max(0, variance)), notes: read.notes };
}

/** Several samples, each rarefied to the number of individuals of the smallest, so that they compare. */
export function rarefiedAlike(
  samples: readonly Abundances[],
): { individuals: number; samples: Figure<Rarefied>[] } | { refused: string } {
  const totals = samples.flatMap((sample) => {
    const read = numbersOf(sample);
    return 'refused' in read ? [] : read.total;
  });
  if (totals.length < 2)
    return { refused: 'At least two samples with counts are needed to compare them.' };
  const individuals = Math.min(...totals);
  return { individuals, samples: samples.map((sample) => rarefied(sample, individuals)) };
}
