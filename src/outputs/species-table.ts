import { isThreatened } from '../taxa/red-list.ts';
import { isAbsence } from '../visit/entry.ts';
import { dateOf } from '../visit/time.ts';
import { partsWords, sumWords } from './count-words.ts';
import { type Cell, type Column, cellsOf } from './csv-rows.ts';
import type { GivenTotal, GivenVisit } from './given-visit.ts';
import { inListOrder, type ListFacts } from './list-facts.ts';
import {
  EFFORT_COLUMNS,
  effortCells,
  PLACE_COLUMNS,
  placeCells,
  visitUrn,
} from './visit-columns.ts';

/** Columns of the table of species. */
export const SPECIES_COLUMNS = [
  { name: 'eventID', sentence: 'Identifier of the visit, the same in every export.' },
  { name: 'eventDate', sentence: 'Local date on which the visit began, YYYY-MM-DD.' },
  ...PLACE_COLUMNS,
  { name: 'vernacularName', sentence: 'English name.' },
  { name: 'scientificName', sentence: 'Scientific name without author.' },
  { name: 'taxonRank', sentence: 'Rank of that name.' },
  { name: 'identificationQualifier', sentence: 'What the name leaves open.' },
  {
    name: 'uncertain',
    sentence: 'A question mark where the observer was not sure of the name in one entry or more.',
  },
  { name: 'count', sentence: 'What the entries of the taxon come to, in words.' },
  { name: 'individualCount', sentence: 'The sum where it is exact, else empty.' },
  {
    name: 'summedBy',
    sentence: 'adds up for different individuals, highest for the same ones seen again.',
  },
  { name: 'occurrenceStatus', sentence: 'present, or absent where none was counted.' },
  { name: 'sex', sentence: 'How many of the counted were told to be male or female.' },
  { name: 'lifeStage', sentence: 'How many of the counted were told to be juvenile or adult.' },
  { name: 'entries', sentence: 'How many entries were summed.' },
  { name: 'redListCategory', sentence: 'Global IUCN category of the list in use on the day.' },
  { name: 'threatened', sentence: 'threatened for CR, EN and VU, else empty.' },
  ...EFFORT_COLUMNS,
  { name: 'informationWithheld', sentence: 'What is not given out, and why.' },
  { name: 'dataGeneralizations', sentence: 'What is given coarser than it is held.' },
] as const satisfies readonly Column[];

/** The table of species of a visit: one row a taxon, in the order of the lists, summed by the visit's rule. */
export function speciesRows(visit: GivenVisit, facts: ListFacts): Cell[][] {
  const shared = {
    eventID: visitUrn(visit),
    eventDate: dateOf(visit.start),
    ...placeCells(visit, visit.spot),
    ...effortCells(visit),
    informationWithheld: visit.informationWithheld,
    dataGeneralizations: visit.dataGeneralizations,
  };
  return visit.totals
    .toSorted((one, two) => inListOrder(facts, one.key, two.key))
    .map((total) => cellsOf(SPECIES_COLUMNS, { ...shared, ...totalCells(total) }));
}

function totalCells(total: GivenTotal) {
  const { taxon, count } = total;
  return {
    vernacularName: taxon.vernacularName ?? '',
    scientificName: taxon.scientificName,
    taxonRank: taxon.taxonRank,
    identificationQualifier: taxon.identificationQualifier ?? '',
    uncertain: total.uncertain ? '?' : '',
    count: sumWords(total),
    individualCount: count.kind === 'exact' ? count.value : '',
    summedBy: total.rule,
    occurrenceStatus: isAbsence(total) ? 'absent' : 'present',
    sex: partsWords(total.parts, 'sex'),
    lifeStage: partsWords(total.parts, 'lifeStage'),
    entries: total.entries.length,
    redListCategory: taxon.redListCategory,
    threatened: isThreatened(taxon.redListCategory) ? 'threatened' : '',
  };
}
