import { type First, firstOf, type Known, knownFrom } from '../taxa/known.ts';
import type { Entry } from '../visit/entry.ts';
import type { Visit } from '../visit/visit.ts';
import { hidingOf } from './hiding.ts';

/** Tells firsts while visits come by in the order of time; it keeps taxa and places, never visits. */
export interface Firsts {
  /** Of an entry, by the visits that were learned before. */
  of(visit: Visit, entry: Entry): First | null;
  learn(visit: Visit): void;
}

/**
 * Firsts for what is given out. A visit whose place is hidden has no `first here` and gives none to
 * another: the firsts that it lacks or takes away would tell which place it was. `exact` counts all.
 */
export function firstsInOrder(exact: boolean): Firsts {
  const known = knownFrom([]);
  const shown = (visit: Visit): Visit =>
    exact || hidingOf(visit) === null ? visit : { ...visit, place: null };
  return {
    of: (visit, entry) => firstOf(known, shown(visit), entry),
    learn: (visit) => join(known, knownFrom([shown(visit)])),
  };
}

function join(known: Known, more: Known): void {
  for (const [key, seen] of more.taxa) {
    const taxon = known.taxa.get(key);
    if (!taxon) known.taxa.set(key, seen);
    else {
      for (const year of seen.years) taxon.years.add(year);
      for (const [place, here] of seen.here) taxon.here.set(place, here);
    }
  }
}
