import type { Count, CountPart } from '../visit/count.ts';
import { type Entry, type EntryTaxon, taxonKey } from '../visit/entry.ts';
import { sumOf } from '../visit/sums.ts';
import type { Stamp } from '../visit/time.ts';
import { standingChanges } from '../visit/update.ts';
import type { Visit } from '../visit/visit.ts';
import { type GivenSpot, givenText, spotOfEntry } from './given-place.ts';
import { decimalsOf, type Hiding } from './hiding.ts';

/** An entry as it may be given out: its texts are withheld where the place is. */
export interface GivenEntry {
  id: string;
  number: number;
  time: Stamp;
  taxon: EntryTaxon | null;
  uncertain: boolean;
  count: Count;
  parts: CountPart[];
  heading: Entry['heading'];
  words: string;
  description: string;
  /** Names under which it stood before, the oldest first. */
  previous: string[];
  spot: GivenSpot | null;
  /** What more than the place is withheld of it. */
  informationWithheld: string;
}

/** Gives out the standing entries of a visit. `exact` gives also what would tell a sensitive species. */
export function givenEntries(
  visit: Visit,
  spot: GivenSpot | null,
  hiding: Hiding | null,
  exact: boolean,
): GivenEntry[] {
  const earlier = earlierEntries(visit);
  return visit.entries
    .filter(({ struck }) => struck === null)
    .map((entry): GivenEntry => {
      const { id, number, time, taxon, uncertain, count, heading } = entry;
      // A part that was typed twice is one.
      const { parts } = sumOf([entry], 'adds up');
      const before = (earlier.get(number) ?? []).filter((each) => keyOf(each) !== keyOf(entry));
      const told = before.filter((each) => exact || decimalsOf(each.taxon) === null);
      return {
        ...{ id, number, time, taxon, uncertain, count, parts, heading },
        words: givenText(entry.words, hiding),
        description: givenText(entry.description, hiding),
        previous: namesOf(told, hiding),
        spot: spotOfEntry(entry, spot, hiding),
        informationWithheld:
          told.length < before.length ? 'an earlier identification is withheld' : '',
      };
    });
}

/** Entries as they stood before each change that still holds, by number; a slip taken back is none. */
function earlierEntries(visit: Visit): Map<number, Entry[]> {
  const earlier = new Map<number, Entry[]>();
  for (const at of standingChanges(visit).done) {
    const change = visit.changes[at];
    if (change?.part !== 'entry' || change.before === null) continue;
    earlier.set(change.number, [...(earlier.get(change.number) ?? []), change.before]);
  }
  return earlier;
}

function keyOf({ taxon, words }: Entry): string {
  return taxon === null ? `"${words}"` : taxonKey(taxon);
}

function namesOf(entries: readonly Entry[], hiding: Hiding | null): string[] {
  const names = entries.map((entry) =>
    entry.taxon === null ? givenText(entry.words, hiding) : taxonKey(entry.taxon),
  );
  // A bar separates the names in Darwin Core's list.
  const apart = names.map((name) => name.replace(/\s*\|\s*/g, ' / '));
  return [...new Set(apart)].filter((name) => name !== '');
}
