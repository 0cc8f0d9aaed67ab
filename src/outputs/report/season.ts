import type { GroupOf } from '../../almanac/asking/complete.ts';
import type { VisitDigest } from '../../almanac/asking/digest.ts';
import { type TaxonSeen, taxaSeen } from '../../almanac/asking/taxa-seen.ts';
import type { First } from '../../taxa/known.ts';
import { isSpecies, taxonName } from '../../visit/entry.ts';
import type { GivenVisit } from '../given-visit.ts';
import { groupOf as groupIn, inListOrder, type ListFacts } from '../list-facts.ts';
import { givenDigest } from './given-digest.ts';

/** Of a list that is gone: its name was written by hand, and is not given out. */
const NO_GROUP = 'other';

/** What was asked for, and what the visits can't tell. */
export interface Asked {
  /** Local dates, both inclusive; null where the choice is open. */
  from: string | null;
  to: string | null;
  /** As typed; the report writes it as the visits do. */
  place: string | null;
  group: string | null;
  /** Who logged: persons or a club. */
  by: readonly string[];
  exact: boolean;
  /** Local date of the day on which the report is made. */
  made: string;
}

/** A record that is the first of its species in the notebook, at its place or in its year. */
export interface FirstGiven {
  first: First;
  name: string;
  date: string;
  /** Null where it is withheld or was not given. */
  place: string | null;
  hidden: boolean;
}

/** A visit as it may be given out, with which of its entries are firsts. */
export interface VisitOfSeason {
  visit: GivenVisit;
  firstOf(number: number): First | null;
}

/** The species of a group in the order of its list, and what is on record but not to the species. */
export interface GroupSeen {
  group: string;
  species: readonly TaxonSeen[];
  coarser: readonly TaxonSeen[];
}

/** All that a report is made of. It holds nothing that may not be given out. */
export interface Season {
  asked: Asked;
  /** In the order of time. */
  visits: readonly VisitDigest[];
  groups: readonly GroupSeen[];
  firsts: readonly FirstGiven[];
  /** How many visits have a place that is withheld. */
  hidden: number;
  groupOf: GroupOf;
}

/** Gathers a season from visits in the order of time. */
export function seasonOf(chosen: readonly VisitOfSeason[], asked: Asked, facts: ListFacts): Season {
  const visits = chosen.map(({ visit }) => givenDigest(visit));
  const groupOf: GroupOf = (list) => groupIn(facts, { list }) ?? NO_GROUP;
  return {
    ...{ asked, visits, groupOf },
    groups: groupsSeen(visits, groupOf, facts),
    firsts: chosen.flatMap(firstsGiven),
    hidden: chosen.filter(({ visit }) => visit.hiding !== null).length,
  };
}

function groupsSeen(
  visits: readonly VisitDigest[],
  groupOf: GroupOf,
  facts: ListFacts,
): GroupSeen[] {
  const taxa = taxaSeen(visits).sort((one, two) => inListOrder(facts, one.key, two.key));
  const byGroup = new Map<string, TaxonSeen[]>();
  for (const each of taxa) {
    const group = groupOf(each.taxon.list);
    byGroup.set(group, [...(byGroup.get(group) ?? []), each]);
  }
  return [...byGroup]
    .map(([group, all]) => ({
      group,
      species: all.filter(({ taxon }) => isSpecies(taxon)),
      coarser: all.filter(({ taxon }) => !isSpecies(taxon)),
    }))
    .sort(
      (one, two) => two.species.length - one.species.length || (one.group < two.group ? -1 : 1),
    );
}

function firstsGiven({ visit, firstOf }: VisitOfSeason): FirstGiven[] {
  const { date, place } = givenDigest({ ...visit, entries: [], totals: [] });
  return visit.entries.flatMap(({ number, taxon }) => {
    const first = firstOf(number);
    if (first === null || taxon === null) return [];
    const hidden = visit.hiding !== null;
    return [{ first, name: taxonName(taxon), date, place: place?.name ?? null, hidden }];
  });
}
