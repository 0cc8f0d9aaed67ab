import { isSpecies, taxonName } from '../../visit/entry.ts';
import { plus, type Sum } from '../../visit/sums.ts';
import type { VisitDigest } from '../asking/digest.ts';
import { many, named } from './figure.ts';
import { type Entering, numberOf } from './number.ts';

/** A species on record, with the number of individuals; null where nobody counted. */
interface Abundance {
  key: string;
  name: string;
  number: number | null;
}

/** The species of one or more visits, and what must be said of every figure that is made of them. */
export interface Abundances {
  species: readonly Abundance[];
  notes: readonly string[];
}

/** Counts of species that are numbered, each at least 1, with what must be said of them. */
export interface Numbers {
  numbers: readonly number[];
  total: number;
  notes: readonly string[];
}

interface Summed {
  name: string;
  total: Sum;
  how: Set<Entering['how']>;
}

/**
 * The species of visits with the sum of their visit totals. Only what is named to the species counts:
 * a genus, a pair or a hybrid is told in the notes, as is which numbers are not exact. Narrow the visits
 * to one group first: individuals of birds and of flowers do not compare.
 */
export function abundancesOf(visits: readonly VisitDigest[]): Abundances {
  const summed = new Map<string, Summed>();
  const coarser = new Set<string>();
  const lists = new Set<string>();
  for (const { key, taxon, total } of visits.flatMap(({ seen }) => seen)) {
    if (!isSpecies(taxon)) {
      coarser.add(taxonName(taxon));
      continue;
    }
    lists.add(taxon.list);
    const { how } = numberOf(total);
    const before = summed.get(key);
    summed.set(key, {
      name: taxonName(taxon),
      total: before ? plus(before.total, total) : total,
      how: (before?.how ?? new Set()).add(how).add(total.rounded ? 'estimate' : how),
    });
  }
  const all = [...summed.values()];
  const which = (how: Entering['how']) => all.filter((each) => each.how.has(how));
  return {
    species: [...summed].map(([key, { name, total }]) => ({
      key,
      name,
      number: numberOf(total).number,
    })),
    notes: [
      ...noteOf('Estimates, by their number', which('estimate')),
      ...noteOf('At least so many, by that lower bound', which('lower bound')),
      ...noteOf('Ranges, by their low end', which('low end')),
      ...noteOf(
        'Not counted at some visit, so that the number is a lower bound',
        which('not counted').filter(({ total }) => numberOf(total).number !== null),
      ),
      ...(coarser.size > 0 ? [`Not to the species and left out: ${named([...coarser])}.`] : []),
      ...(lists.size > 1
        ? [`Counts of different groups do not compare: ${named([...lists])}.`]
        : []),
      ...(visits.length > 1
        ? [
            `Counts of ${many(visits.length, 'visit')} are added: some individuals may be in it twice.`,
          ]
        : []),
    ],
  };
}

function noteOf(words: string, which: readonly Summed[]): string[] {
  return which.length === 0 ? [] : [`${words}: ${named(which.map(({ name }) => name))}.`];
}

/** The numbers of the species that have one, or why there are none; those left out are told. */
export function numbersOf({ species, notes }: Abundances): Numbers | { refused: string } {
  const counted = species.flatMap(({ number }) => (number === null ? [] : number));
  const uncounted = species.filter(({ number }) => number === null).map(({ name }) => name);
  if (species.length === 0)
    return { refused: 'No species is on record: log some, or ask for more visits.' };
  if (counted.length === 0)
    return {
      refused: `No species has a count (${named(uncounted)}): count individuals to get this figure.`,
    };
  return {
    numbers: counted,
    total: counted.reduce((sum, number) => sum + number, 0),
    notes:
      uncounted.length === 0
        ? notes
        : [...notes, `Seen and not counted, left out: ${named(uncounted)}.`],
  };
}
