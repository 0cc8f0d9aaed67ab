import { type EntryTaxon, isAbsence, isSpecies, taxonKey } from '../visit/entry.ts';
import type { GivenVisit } from './given-visit.ts';
import { groupOf, type ListFacts } from './list-facts.ts';
import { type About, type Occurrence, sharedCells, taxonCells, timeOf } from './occurrences.ts';

/** Species that visits have, by `taxonKey`. */
export type SpeciesMet = Map<string, EntryTaxon>;

/** Notes the species that a visit has for certain. */
export function meetSpecies(met: SpeciesMet, { entries }: GivenVisit): void {
  for (const { taxon, uncertain, ...entry } of entries)
    if (taxon !== null && !uncertain && !isAbsence(entry) && isSpecies(taxon))
      met.set(taxonKey(taxon), taxon);
}

/** Says in the metadata how absences were come by. */
export const ABSENCES_STATED =
  'Absences are derived: a species is absent from a visit that its observer says is complete for the group of the species, where other visits of this data set have it and nothing in this visit can have been it. They were not each noted in the field.';

/**
 * Species that were not in a visit, as far as it says that: it is complete for their groups, and it
 * has no entry that may have been them (of no name, or of a genus, family or pair that holds them).
 * `met` are the species of all visits that are given out.
 */
export function absentFrom(visit: GivenVisit, met: SpeciesMet, facts: ListFacts): EntryTaxon[] {
  const { complete, groups } = visit.effort;
  const groupsOfVisit = new Set(groups?.map((group) => group.toLowerCase()) ?? []);
  if (complete !== true || groupsOfVisit.size === 0) return [];
  const taxa = visit.entries.map(({ taxon }) => taxon);
  if (taxa.includes(null)) return [];
  const named = taxa.filter((taxon) => taxon !== null);
  const keys = new Set(named.map(taxonKey));
  const open = named.filter((taxon) => !isSpecies(taxon));
  return [...met.values()].filter(
    (species) =>
      groupsOfVisit.has(groupOf(facts, species) ?? '') &&
      !keys.has(taxonKey(species)) &&
      !named.some((taxon) => isPartOf(taxon, species)) &&
      !open.some((taxon) => mayHold(taxon, species, facts)),
  );
}

/** Absences as occurrences, with identifiers that are the same in every export. */
export function absenceOccurrences(
  visit: GivenVisit,
  absent: readonly EntryTaxon[],
  about: About,
): Occurrence[] {
  return absent.map((taxon) => ({
    ...sharedCells(visit, visit.spot, about),
    ...taxonCells(taxon, about.facts),
    occurrenceID: `urn:uuid:${visit.id}#absent-${encodeURIComponent(taxonKey(taxon))}`,
    eventDate: intervalOf(visit),
    eventTime: timeOf(visit.start),
    verbatimIdentification: '',
    identificationQualifier: taxon.identificationQualifier ?? '',
    previousIdentifications: '',
    individualCount: 0,
    organismQuantity: '',
    organismQuantityType: '',
    sex: '',
    lifeStage: '',
    occurrenceStatus: 'absent',
    occurrenceRemarks: 'derived from a complete visit',
    informationWithheld: visit.informationWithheld,
    dynamicProperties: '',
  }));
}

/** The time of a visit as ISO 8601-1 writes an interval; its start alone while it has no end. */
export function intervalOf({ start, end }: Pick<GivenVisit, 'start' | 'end'>): string {
  return end === null ? start : `${start}/${end}`;
}

/** A subspecies, or an aggregate, of the species: the same two first words. */
function isPartOf(taxon: EntryTaxon, species: EntryTaxon): boolean {
  return binomial(taxon) === binomial(species);
}

function binomial({ scientificName }: EntryTaxon): string {
  return scientificName.split(' ').slice(0, 2).join(' ');
}

/**
 * May the species be what was only named to a genus, a family or a pair? Where a list does not tell the
 * ranks above, it may.
 */
function mayHold(open: EntryTaxon, species: EntryTaxon, facts: ListFacts): boolean {
  if (open.taxonRank === 'genus')
    return species.scientificName.split(' ')[0] === open.scientificName;
  const [one, two] = [open, species].map((taxon) => facts.higher.get(taxonKey(taxon)));
  const ranks = ['kingdom', 'class', 'order', 'family'] as const;
  return ranks.every((rank) => !one?.[rank] || !two?.[rank] || one[rank] === two[rank]);
}
