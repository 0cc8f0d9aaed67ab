import type { Position } from '../ground/position.ts';
import type { First } from '../taxa/known.ts';
import { isThreatened } from '../taxa/red-list.ts';
import { isAbsence } from '../visit/entry.ts';
import { dateOf, epochOf } from '../visit/time.ts';
import { countWords, partsWords, qualifierOf } from './count-words.ts';
import { type Cell, type Column, cellsOf } from './csv-rows.ts';
import type { GivenEntry } from './given-entry.ts';
import { type GivenVisit, weatherAt } from './given-visit.ts';
import {
  clockWithOffset,
  EFFORT_COLUMNS,
  effortCells,
  PLACE_COLUMNS,
  placeCells,
  visitUrn,
  WEATHER_COLUMNS,
  weatherCells,
} from './visit-columns.ts';

/** Columns of the table of entries; Darwin Core's terms where it has one. */
export const ENTRY_COLUMNS = [
  { name: 'entryNumber', sentence: 'Number of the entry in its visit.' },
  { name: 'eventID', sentence: 'Identifier of the visit, the same in every export.' },
  { name: 'eventDate', sentence: 'Local date, YYYY-MM-DD.' },
  { name: 'eventTime', sentence: 'Local time with its offset from UTC.' },
  {
    name: 'timeFromSun',
    sentence:
      'How long before or after the nearest sunrise or sunset at the coordinates of the row.',
  },
  ...PLACE_COLUMNS,
  { name: 'vernacularName', sentence: 'English name.' },
  { name: 'scientificName', sentence: 'Scientific name without author.' },
  { name: 'taxonRank', sentence: 'Rank of that name.' },
  { name: 'verbatimIdentification', sentence: 'The name as it was typed.' },
  {
    name: 'identificationQualifier',
    sentence: 'What the name leaves open; a question mark where the observer is not sure.',
  },
  { name: 'count', sentence: 'The count in words: 12, at least 12, about 12, 10 to 15, present.' },
  { name: 'individualCount', sentence: 'The count where it is exact, else empty.' },
  { name: 'occurrenceStatus', sentence: 'present, or absent where none was counted.' },
  { name: 'sex', sentence: 'How many of the counted were told to be male or female.' },
  { name: 'lifeStage', sentence: 'How many of the counted were told to be juvenile or adult.' },
  { name: 'heading', sentence: 'Where passing birds were heading.' },
  { name: 'redListCategory', sentence: 'Global IUCN category of the list in use on the day.' },
  { name: 'threatened', sentence: 'threatened for CR, EN and VU, else empty.' },
  {
    name: 'first',
    sentence:
      'first in this notebook, first here (among visits whose place is given) or first this year.',
  },
  { name: 'occurrenceRemarks', sentence: 'What the observer says of the entry.' },
  ...WEATHER_COLUMNS,
  ...EFFORT_COLUMNS,
  { name: 'informationWithheld', sentence: 'What is not given out, and why.' },
  { name: 'dataGeneralizations', sentence: 'What is given coarser than it is held.' },
] as const satisfies readonly Column[];

type Cells = Record<(typeof ENTRY_COLUMNS)[number]['name'], Cell>;

/** Words for how far a moment (epoch milliseconds) is from sunrise or sunset; null if there is none. */
export type SunWords = (moment: number, position: Position, zone: string) => string | null;

/** The table of entries of a visit: one row an entry, in the order of its numbers. */
export function entryRows(
  visit: GivenVisit,
  firstOf: (number: number) => First | null,
  sun: SunWords,
): Cell[][] {
  return visit.entries.map((entry) => {
    const record: Cells = {
      ...namedCells(entry),
      entryNumber: entry.number,
      eventID: visitUrn(visit),
      eventDate: dateOf(entry.time),
      eventTime: clockWithOffset(entry.time),
      timeFromSun: sunCell(visit, entry, sun),
      ...placeCells(visit, entry.spot),
      first: firstOf(entry.number) ?? '',
      ...weatherCells(weatherAt(visit, entry.time)),
      ...effortCells(visit),
      informationWithheld: joined(visit.informationWithheld, entry.informationWithheld),
      dataGeneralizations: visit.dataGeneralizations,
    };
    return cellsOf(ENTRY_COLUMNS, record);
  });
}

/** Reckoned from the coordinates that are given out, so that it tells no more than they do. */
function sunCell({ zone }: GivenVisit, { time, spot }: GivenEntry, sun: SunWords): string {
  const words = spot && sun(epochOf(time), spot, zone);
  if (words === null) return '';
  return spot?.precision == null ? words : `about ${words}`;
}

function namedCells(entry: GivenEntry) {
  const { taxon, count } = entry;
  return {
    vernacularName: taxon?.vernacularName ?? '',
    scientificName: taxon?.scientificName ?? '',
    taxonRank: taxon?.taxonRank ?? '',
    verbatimIdentification: entry.words,
    identificationQualifier: qualifierOf(entry),
    count: countWords(count),
    individualCount: count.kind === 'exact' ? count.value : '',
    occurrenceStatus: isAbsence(entry) ? 'absent' : 'present',
    sex: partsWords(entry.parts, 'sex'),
    lifeStage: partsWords(entry.parts, 'lifeStage'),
    heading: entry.heading ?? '',
    redListCategory: taxon?.redListCategory ?? '',
    threatened: taxon && isThreatened(taxon.redListCategory) ? 'threatened' : '',
    occurrenceRemarks: entry.description,
  };
}

/** A list as Darwin Core separates it, without what is empty. */
export function joined(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' | ');
}
