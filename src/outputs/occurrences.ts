import { type Count, countText, PART_LETTERS } from '../visit/count.ts';
import { isAbsence, taxonKey } from '../visit/entry.ts';
import { offsetOf, type Stamp } from '../visit/time.ts';
import { qualifierOf } from './count-words.ts';
import type { Cell } from './csv-rows.ts';
import { joined } from './entries-table.ts';
import type { GivenEntry } from './given-entry.ts';
import type { GivenSpot } from './given-place.ts';
import type { GivenVisit } from './given-visit.ts';
import type { ListFacts } from './list-facts.ts';
import type { OccurrenceTerm, VisitTerm } from './occurrence-columns.ts';
import { visitUrn } from './visit-columns.ts';

/** A record of Darwin Core by its terms. */
export type Occurrence = Record<OccurrenceTerm, Cell>;

/** What an export is told beside the visits. */
export interface About {
  facts: ListFacts;
  /** Who logged; people and clubs. */
  by: readonly string[];
}

/**
 * The occurrences of a visit: its named entries. An entry without a name gives none, since it has no
 * scientific name to tell. Counts are as honest as they were made: only an exact one is an
 * individualCount.
 */
export function occurrencesOf(visit: GivenVisit, about: About): Occurrence[] {
  return visit.entries.flatMap((entry) => {
    if (entry.taxon === null) return [];
    const count = countCells(entry.count);
    return {
      ...sharedCells(visit, entry.spot, about),
      ...taxonCells(entry.taxon, about.facts),
      ...count,
      occurrenceID: `urn:uuid:${entry.id}`,
      eventDate: entry.time,
      eventTime: timeOf(entry.time),
      verbatimIdentification: entry.words,
      identificationQualifier: qualifierOf(entry),
      previousIdentifications: entry.previous.join(' | '),
      sex: toldOfAll(entry, 'sex'),
      lifeStage: toldOfAll(entry, 'lifeStage'),
      occurrenceStatus: isAbsence(entry) ? 'absent' : 'present',
      occurrenceRemarks: entry.description,
      informationWithheld: joined(visit.informationWithheld, entry.informationWithheld),
      dynamicProperties: propertiesOf(entry),
    };
  });
}

/** What every record of a visit shares. */
export function sharedCells(visit: GivenVisit, spot: GivenSpot | null, { by }: About) {
  return {
    eventID: visitUrn(visit),
    basisOfRecord: 'HumanObservation',
    recordedBy: by.join(' | '),
    locality: visit.locality,
    ...spotCells(spot),
    dataGeneralizations: visit.dataGeneralizations,
  };
}

export function spotCells(spot: GivenSpot | null) {
  return {
    decimalLatitude: spot?.latitude ?? '',
    decimalLongitude: spot?.longitude ?? '',
    geodeticDatum: spot === null ? '' : 'EPSG:4326',
    coordinateUncertaintyInMeters: spot?.uncertainty ?? '',
    coordinatePrecision: spot?.precision ?? '',
  };
}

export function taxonCells(taxon: NonNullable<GivenEntry['taxon']>, facts: ListFacts) {
  const higher = facts.higher.get(taxonKey(taxon));
  return {
    scientificName: taxon.scientificName,
    vernacularName: taxon.vernacularName ?? '',
    taxonRank: taxon.taxonRank,
    kingdom: higher?.kingdom ?? '',
    class: higher?.class ?? '',
    order: higher?.order ?? '',
    family: higher?.family ?? '',
    establishmentMeans: taxon.establishmentMeans ?? '',
  };
}

/** What tells of the visit in a table that has no events. A size and its unit stand only together. */
export function visitCells({ habitat, effort }: GivenVisit): Record<VisitTerm, Cell> {
  const { minutes, distance, observers, method } = effort;
  const watched = minutes !== null && minutes > 0;
  const hours = watched && observers !== null ? (observers * minutes) / 60 : null;
  return {
    habitat,
    samplingProtocol: method,
    sampleSizeValue: watched ? minutes : '',
    sampleSizeUnit: watched ? 'minute' : '',
    samplingEffort: joined(
      hours === null ? '' : `${Number(hours.toFixed(2))} observer-hours`,
      distance === null ? '' : `${Number((distance / 1000).toFixed(2))} km`,
    ),
  };
}

/** `07:41:05+00:00` */
export function timeOf(time: Stamp): string {
  return `${time.slice(11, 19)}${offsetOf(time)}`;
}

function countCells(
  count: Count,
): Pick<Occurrence, 'individualCount' | 'organismQuantity' | 'organismQuantityType'> {
  if (count.kind === 'exact')
    return { individualCount: count.value, organismQuantity: '', organismQuantityType: '' };
  if (count.kind === 'present')
    return { individualCount: '', organismQuantity: '', organismQuantityType: '' };
  return {
    individualCount: '',
    organismQuantity: count.kind === 'range' ? `${count.low}-${count.high}` : count.value,
    organismQuantityType: `individuals (${count.kind})`,
  };
}

/** The sex or age, where each of the counted was told; of three males among five it would be false. */
function toldOfAll({ count, parts }: GivenEntry, term: 'sex' | 'lifeStage'): string {
  const told = parts.filter(({ letter, value }) => PART_LETTERS[letter].term === term && value > 0);
  const sum = told.reduce((all, { value }) => all + value, 0);
  if (count.kind !== 'exact' || count.value !== sum) return '';
  return [...new Set(told.map(({ letter }) => PART_LETTERS[letter].word))].join(' | ');
}

function propertiesOf({ count, parts, heading, taxon }: GivenEntry): string {
  const told = parts.map(({ letter, value }) => [PART_LETTERS[letter].word, value] as const);
  return JSON.stringify({
    ...(count.kind === 'present' ? {} : { verbatimCount: countText(count) }),
    ...Object.fromEntries(told),
    ...(heading === null ? {} : { heading }),
    ...(taxon === null ? {} : { redListCategory: taxon.redListCategory }),
  });
}
