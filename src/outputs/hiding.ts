import { sensitivityOf } from '../taxa/sensitivity.ts';
import { type Entry, type EntryTaxon, isAbsence } from '../visit/entry.ts';
import { standing, type Visit } from '../visit/visit.ts';

/** How many decimals of a degree may be given out; 0 for no coordinates at all. */
export type Decimals = 0 | 1 | 2 | 3;

/** Decimals of a degree by the levels of sensitivity of Chapman 2020 (table 5). */
const DECIMALS = { extreme: 0, high: 1, medium: 2, low: 3 } as const;

/** The project's own choice for ground that is private or protected: the grid of a medium sensitivity. */
const PROTECTED_DECIMALS = 2;

/** What stands in place of a text that is not given out: a blank would say that there was nothing. */
export const WITHHELD = 'withheld';

/** Why the place of a visit is hidden, and how coarse it is given. */
export interface Hiding {
  decimals: Decimals;
  reason: string;
}

/** How exactly the place of a taxon may be given; null: as held. */
export function decimalsOf(taxon: EntryTaxon | null): Decimals | null {
  const level = taxon === null ? null : sensitivityOf(taxon);
  return level === null ? null : DECIMALS[level];
}

/** How exactly a place may be given beside an entry; null: as held, as where there was none. */
function decimalsFor(entry: Entry): Decimals | null {
  return isAbsence(entry) ? null : decimalsOf(entry.taxon);
}

/**
 * How the place of a visit is hidden, by its most sensitive entry and by the protection of the place;
 * null where it may be given as held. One answer holds for the whole visit and for every choice of its
 * entries: an exact row of the visit, in this file or in another, would give a hidden one away.
 */
export function hidingOf(visit: Visit): Hiding | null {
  const levels = standing(visit)
    .map(decimalsFor)
    .filter((decimals) => decimals !== null);
  const protection = visit.place?.protection ?? null;
  if (levels.length === 0 && protection === null) return null;
  const limits = protection === null ? levels : [...levels, PROTECTED_DECIMALS];
  const reasons = [
    levels.length > 0 ? 'a threatened or sensitive species is in this visit' : '',
    protection === null ? '' : `the place is ${protection}`,
  ];
  return {
    decimals: Math.min(...limits) as Decimals,
    reason: reasons.filter((reason) => reason !== '').join(', '),
  };
}
