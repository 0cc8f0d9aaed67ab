import type { Column } from './csv-rows.ts';

/**
 * Columns of an occurrence: terms of Darwin Core (TDWG, List of Terms, http://rs.tdwg.org/dwc/doc/list/),
 * none of those that are new in the list of 2026-05-26, which few readers know yet.
 */
export const OCCURRENCE_COLUMNS = [
  { name: 'occurrenceID', sentence: 'Identifier of the entry, the same in every export.' },
  { name: 'eventID', sentence: 'Identifier of the visit, or of the part of it.' },
  { name: 'basisOfRecord', sentence: 'HumanObservation.' },
  { name: 'eventDate', sentence: 'Date and time with offset; for an absence those of the visit.' },
  { name: 'eventTime', sentence: 'Local time with its offset from UTC.' },
  { name: 'recordedBy', sentence: 'Who logged, as given with --by.' },
  { name: 'scientificName', sentence: 'Scientific name without author.' },
  { name: 'vernacularName', sentence: 'English name.' },
  { name: 'taxonRank', sentence: 'Rank of the scientific name.' },
  { name: 'kingdom', sentence: 'Kingdom, where a list tells it.' },
  { name: 'class', sentence: 'Class, where a list tells it.' },
  { name: 'order', sentence: 'Order, where a list tells it.' },
  { name: 'family', sentence: 'Family, where a list tells it.' },
  { name: 'verbatimIdentification', sentence: 'The name as it was typed.' },
  { name: 'identificationQualifier', sentence: 'What the name leaves open; ? for not sure.' },
  { name: 'previousIdentifications', sentence: 'Names under which the entry stood before.' },
  { name: 'individualCount', sentence: 'The count, where it is exact.' },
  { name: 'organismQuantity', sentence: 'The count, where it is not exact.' },
  {
    name: 'organismQuantityType',
    sentence: 'What that is: individuals (at least), (about), (range).',
  },
  { name: 'sex', sentence: 'Where it was told of every one of the counted.' },
  { name: 'lifeStage', sentence: 'Where it was told of every one of the counted.' },
  { name: 'establishmentMeans', sentence: 'Such as native or introduced, by the list.' },
  { name: 'occurrenceStatus', sentence: 'present or absent.' },
  { name: 'occurrenceRemarks', sentence: 'What the observer says of the entry.' },
  { name: 'locality', sentence: 'Name of the place, or withheld.' },
  { name: 'decimalLatitude', sentence: 'Degrees north.' },
  { name: 'decimalLongitude', sentence: 'Degrees east.' },
  { name: 'geodeticDatum', sentence: 'EPSG:4326, which is WGS 84.' },
  { name: 'coordinateUncertaintyInMeters', sentence: 'Metres; empty where nobody knows.' },
  { name: 'coordinatePrecision', sentence: 'Degrees to which coordinates were rounded.' },
  { name: 'informationWithheld', sentence: 'What is not given out, and why.' },
  { name: 'dataGeneralizations', sentence: 'What is given coarser than it is held.' },
  {
    name: 'dynamicProperties',
    sentence: 'JSON: the count as typed, parts by sex and age, heading, Red List category.',
  },
] as const satisfies readonly Column[];
export type OccurrenceTerm = (typeof OCCURRENCE_COLUMNS)[number]['name'];

/** Terms of the visit that stand beside an occurrence where it has no event of its own to refer to. */
const VISIT_COLUMNS = [
  { name: 'habitat', sentence: 'What grows or lies there, in the words of the observer.' },
  { name: 'samplingProtocol', sentence: 'How it was counted.' },
  { name: 'sampleSizeValue', sentence: 'How long somebody watched.' },
  { name: 'sampleSizeUnit', sentence: 'minute.' },
  { name: 'samplingEffort', sentence: 'Such as 3 observer-hours | 2.4 km.' },
] as const satisfies readonly Column[];
export type VisitTerm = (typeof VISIT_COLUMNS)[number]['name'];

/** Columns of the occurrence table that stands by itself. */
export const SIMPLE_COLUMNS = [...OCCURRENCE_COLUMNS, ...VISIT_COLUMNS] as const;
