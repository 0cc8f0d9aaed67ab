import { stringify } from 'csv-stringify/sync';
import { generalised } from '../ground/generalise.ts';
import { type First, firstOf, type Known } from '../taxa/known.ts';
import { isThreatened } from '../taxa/red-list.ts';
import { type Count, PART_LETTERS } from '../visit/count.ts';
import { type Entry, isAbsence } from '../visit/entry.ts';
import type { Place } from '../visit/place.ts';
import { clockOf, dateOf, offsetOf } from '../visit/time.ts';
import { standing, type Visit } from '../visit/visit.ts';
import { type Decimals, decimalsFor, decimalsForAll, tellsPlace } from './hiding.ts';

/** Columns of the visit table; Darwin Core's terms where it has one. */
export const COLUMNS = [
  'entryNumber',
  'eventDate',
  'eventTime',
  'locality',
  'decimalLatitude',
  'decimalLongitude',
  'coordinateUncertaintyInMeters',
  'vernacularName',
  'scientificName',
  'taxonRank',
  'verbatimIdentification',
  'identificationQualifier',
  'count',
  'individualCount',
  'occurrenceStatus',
  'sex',
  'lifeStage',
  'redListCategory',
  'threatened',
  'first',
  'occurrenceRemarks',
  'informationWithheld',
  'dataGeneralizations',
] as const;
type Cells = Record<(typeof COLUMNS)[number], string | number>;

export interface VisitTable {
  csv: string;
  /** Entries for whose sake the place was made coarser in every row. */
  hidden: number;
}

/**
 * The table of a visit as CSV (RFC 4180: CRLF, quotes where needed), one row a standing entry. Text
 * that a spreadsheet would run as a formula gets an apostrophe before it (OWASP, CSV injection);
 * numbers stay numbers. Unless `exact` is asked for, places of threatened and sensitive species are
 * withheld; since a visit has one place, that holds for all its rows.
 */
export function visitTable(visit: Visit, before: Known, exact: boolean): VisitTable {
  const entries = standing(visit);
  const isHidden = (entry: Entry) => !exact && decimalsFor(entry) !== null;
  const hidden = entries.filter(isHidden).length;
  const place = placeCells(visit, exact ? null : decimalsForAll(entries));
  const rows = entries.map((entry): Cells => {
    const cells = { ...place, ...entryCells(entry, firstOf(before, visit, entry)) };
    return hidden === 0 ? cells : withoutTelling(cells, visit.place, isHidden(entry));
  });
  const csv = stringify(rows, {
    header: true,
    columns: [...COLUMNS],
    record_delimiter: 'windows',
    // A line break alone is quoted too: readers take any of the three for the end of a record.
    quote_record_delimiter: true,
    escape_formulas: true,
  });
  return { csv, hidden };
}

const WITHHELD = 'withheld';

/**
 * The cells of a visit with a hidden place, without the remarks on a hidden species and without any
 * of the observer's words that tell the place. Wording stands instead (Chapman 2020): a blank would
 * say that there was nothing.
 */
function withoutTelling(cells: Cells, place: Place | null, isHidden: boolean): Cells {
  const tells = (text: string | number) => place !== null && tellsPlace(String(text), place);
  const { occurrenceRemarks, verbatimIdentification, informationWithheld } = cells;
  const remarks = occurrenceRemarks !== '' && (isHidden || tells(occurrenceRemarks));
  const identification = tells(verbatimIdentification);
  const reasons = [
    informationWithheld,
    remarks ? 'remarks withheld' : '',
    identification ? 'verbatim identification withheld: it tells the place' : '',
  ];
  return {
    ...cells,
    occurrenceRemarks: remarks ? WITHHELD : occurrenceRemarks,
    verbatimIdentification: identification ? WITHHELD : verbatimIdentification,
    informationWithheld: reasons.filter((reason) => reason !== '').join(' | '),
  };
}

type PlaceCells = Pick<
  Cells,
  | 'locality'
  | 'decimalLatitude'
  | 'decimalLongitude'
  | 'coordinateUncertaintyInMeters'
  | 'informationWithheld'
  | 'dataGeneralizations'
>;

function placeCells(visit: Visit, decimals: Decimals | 0): PlaceCells {
  const position = visit.place?.position ?? null;
  const open: PlaceCells = {
    locality: visit.place?.name ?? '',
    decimalLatitude: position?.latitude ?? '',
    decimalLongitude: position?.longitude ?? '',
    // Nobody has said how exact the typed position is: Darwin Core leaves the term empty then.
    coordinateUncertaintyInMeters: '',
    informationWithheld: '',
    dataGeneralizations: '',
  };
  if (decimals === null || visit.place === null) return open;
  const coarse = position === null || decimals === 0 ? null : generalised(position, decimals);
  return {
    locality: WITHHELD,
    decimalLatitude: coarse ? Number(coarse.latitude) : '',
    decimalLongitude: coarse ? Number(coarse.longitude) : '',
    coordinateUncertaintyInMeters: coarse?.uncertainty ?? '',
    informationWithheld:
      'place name and exact coordinates withheld: a threatened or sensitive species is in this visit',
    dataGeneralizations: coarse ? `coordinates rounded to ${10 ** -Number(decimals)} degrees` : '',
  };
}

function entryCells(entry: Entry, first: First | null): Omit<Cells, keyof PlaceCells> {
  const { taxon, count } = entry;
  return {
    entryNumber: entry.number,
    eventDate: dateOf(entry.time),
    eventTime: `${clockOf(entry.time)}${offsetOf(entry.time)}`,
    vernacularName: taxon?.vernacularName ?? '',
    scientificName: taxon?.scientificName ?? '',
    taxonRank: taxon?.taxonRank ?? '',
    verbatimIdentification: entry.words,
    identificationQualifier: qualifierOf(entry),
    count: countWords(count),
    individualCount: count.kind === 'exact' ? count.value : '',
    occurrenceStatus: isAbsence(entry) ? 'absent' : 'present',
    sex: partsWords(entry, 'sex'),
    lifeStage: partsWords(entry, 'lifeStage'),
    redListCategory: taxon?.redListCategory ?? '',
    threatened: taxon && isThreatened(taxon.redListCategory) ? 'threatened' : '',
    first: first ?? '',
    occurrenceRemarks: entry.description ?? '',
  };
}

/** What the name leaves open, and `?` where the observer is not sure of it. */
function qualifierOf({ taxon, uncertain }: Entry): string {
  const open = taxon?.identificationQualifier ?? '';
  return uncertain ? `${open} ?`.trim() : open;
}

/** A count in words: `10-15` would be read as a date by a spreadsheet. */
function countWords(count: Count): string | number {
  switch (count.kind) {
    case 'exact':
      return count.value;
    case 'at least':
    case 'about':
      return `${count.kind} ${count.value}`;
    case 'range':
      return `${count.low} to ${count.high}`;
    case 'present':
      return 'present';
  }
}

/** Parts as Darwin Core separates a list: `3 male | 2 female`. */
function partsWords(entry: Entry, term: 'sex' | 'lifeStage'): string {
  return entry.parts
    .filter((part) => PART_LETTERS[part.letter].term === term)
    .map((part) => `${part.value} ${PART_LETTERS[part.letter].word}`)
    .join(' | ');
}
