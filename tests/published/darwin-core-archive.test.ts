import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { absentFrom, meetSpecies, type SpeciesMet } from '../../src/outputs/absences.ts';
import { ARCHIVE_TABLES, type ArchiveTableName, metaXml } from '../../src/outputs/archive-meta.ts';
import { archiveHead, archiveRows } from '../../src/outputs/archive-rows.ts';
import { SIMPLE_COLUMNS } from '../../src/outputs/occurrence-columns.ts';
import { fullVisit, hiddenVisit } from '../outputs/full.ts';
import { ABOUT, at, FACTS, given } from '../outputs/given.ts';
import { describedTables } from '../outputs/meta-structure.ts';
import { idOf, POCHARD, placeOf } from '../visit/made.ts';

// TDWG, Darwin Core List of Terms, http://rs.tdwg.org/dwc/doc/list/ (2026-05-26): the terms that the archive uses,
// all of them older than that list.
const DWC = [
  ...['eventID', 'parentEventID', 'eventType', 'eventDate', 'eventTime', 'habitat', 'eventRemarks'],
  ...['samplingProtocol', 'sampleSizeValue', 'sampleSizeUnit', 'samplingEffort', 'locality'],
  ...['decimalLatitude', 'decimalLongitude', 'geodeticDatum', 'coordinateUncertaintyInMeters'],
  ...['coordinatePrecision', 'informationWithheld', 'dataGeneralizations', 'occurrenceID'],
  ...['basisOfRecord', 'recordedBy', 'scientificName', 'vernacularName', 'taxonRank', 'kingdom'],
  ...['class', 'order', 'family', 'verbatimIdentification', 'identificationQualifier'],
  ...['previousIdentifications', 'individualCount', 'organismQuantity', 'organismQuantityType'],
  ...['sex', 'lifeStage', 'establishmentMeans', 'occurrenceStatus', 'occurrenceRemarks'],
  ...['dynamicProperties', 'measurementID', 'measurementType', 'measurementValue'],
  ...['measurementUnit', 'measurementMethod'],
];
// TDWG, Humboldt Extension for Ecological Inventories, http://rs.tdwg.org/eco/doc/list/ (2025-07-10).
const ECO = [
  ...['inventoryTypes', 'targetTaxonomicScope', 'isTaxonomicScopeFullyReported', 'absentTaxa'],
  ...['isAbsenceReported', 'isAbundanceReported', 'eventDurationValue', 'eventDurationUnit'],
  ...['isLeastSpecificTargetCategoryQuantityInclusive', 'samplingEffortValue'],
  ...['samplingEffortUnit', 'reportedWeather'],
];
const TERMS = new Set([
  ...DWC.map((term) => `http://rs.tdwg.org/dwc/terms/${term}`),
  ...ECO.map((term) => `http://rs.tdwg.org/eco/terms/${term}`),
]);

const logged = at(placeOf(), { taxon: POCHARD });
const third = {
  ...logged,
  id: idOf(3),
  entries: logged.entries.map((entry) => ({ ...entry, id: idOf(300) })),
};
const visits = [fullVisit(), hiddenVisit(), third].map((visit) => given(visit));
const met: SpeciesMet = new Map();
for (const visit of visits) meetSpecies(met, visit);
const files = new Map<string, string>();
for (const [name, table] of Object.entries(ARCHIVE_TABLES)) {
  const rows = visits.map(
    (visit) => archiveRows(visit, absentFrom(visit, met, FACTS), ABOUT)[name as ArchiveTableName],
  );
  files.set(table.file, archiveHead(table) + rows.join(''));
}
const tables = describedTables(metaXml());

/** The rows of a table as its description says to read them. */
function rowsOf(file: string): Record<string, string>[] {
  const terms = tables.find((table) => table.file === file)?.terms ?? [];
  const [, ...rows]: string[][] = parse(files.get(file) ?? '', { record_delimiter: '\r\n' });
  return rows.map((row) =>
    Object.fromEntries(terms.map((term, at) => [term.split('/').at(-1), row[at] ?? ''])),
  );
}
const events = rowsOf('event.csv');
const occurrences = rowsOf('occurrence.csv');

describe('the archive, by the Darwin Core Text Guide', () => {
  test('has an event core with occurrences, measurements and the Humboldt Extension', () => {
    expect(tables.map(({ element, rowType, file }) => [element, rowType, file])).toEqual([
      ['core', 'http://rs.tdwg.org/dwc/terms/Event', 'event.csv'],
      ['extension', 'http://rs.tdwg.org/dwc/terms/Occurrence', 'occurrence.csv'],
      ['extension', 'http://rs.tdwg.org/dwc/terms/MeasurementOrFact', 'measurementorfact.csv'],
      ['extension', 'http://rs.tdwg.org/eco/terms/Event', 'humboldt.csv'],
    ]);
  });

  test('uses current terms and no others', () => {
    for (const { terms } of tables) for (const term of terms) expect(TERMS).toContain(term);
    for (const { name } of SIMPLE_COLUMNS) expect(DWC).toContain(name);
  });

  test.each(Object.values(ARCHIVE_TABLES))('$file has the columns that are described', (table) => {
    const described = tables.find(({ file }) => file === table.file);
    const rows: string[][] = parse(files.get(table.file) ?? '', { record_delimiter: '\r\n' });
    expect(rows[0]).toEqual(described?.terms.map((term) => term.split('/').at(-1)));
    expect(rows.length).toBeGreaterThan(1);
    expect(files.get(table.file)).not.toMatch(/^\ufeff/);
  });

  test('every row of an extension belongs to an event of the core, and no identifier comes twice', () => {
    const ids = events.map((row) => row.eventID);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { file, id } of tables) {
      expect(id).toBe(0);
      for (const row of rowsOf(file)) expect(ids).toContain(row.eventID);
    }
    for (const row of events) expect(['', ...ids]).toContain(row.parentEventID);
    const own = occurrences.map((row) => row.occurrenceID);
    expect(new Set(own).size).toBe(own.length);
    const measurements = rowsOf('measurementorfact.csv');
    expect(new Set(measurements.map((row) => row.measurementID)).size).toBe(measurements.length);
    for (const row of measurements) expect(['', ...own]).toContain(row.occurrenceID);
  });
});

describe('the cells of the archive, by the comments on the terms', () => {
  test('have sizes with units and quantities with types, and only so', () => {
    for (const row of events) expect(row.sampleSizeValue === '').toBe(row.sampleSizeUnit === '');
    for (const row of occurrences)
      expect(row.organismQuantity === '').toBe(row.organismQuantityType === '');
    for (const row of rowsOf('humboldt.csv')) {
      expect(row.eventDurationValue === '').toBe(row.eventDurationUnit === '');
      expect(row.samplingEffortValue === '').toBe(row.samplingEffortUnit === '');
    }
  });

  test('have dates and intervals of ISO 8601-1, offsets with a colon', () => {
    const moment = String.raw`\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d`;
    for (const row of [...events, ...occurrences])
      expect(row.eventDate).toMatch(new RegExp(`^${moment}(?:/${moment})?$`));
  });

  test('have whole numbers for counts, no uncertainty of 0, and a datum with coordinates', () => {
    for (const row of [...events, ...occurrences]) {
      expect(row.individualCount ?? '').toMatch(/^\d*$/);
      expect(row.coordinateUncertaintyInMeters).not.toBe('0');
      expect(row.geodeticDatum).toBe(row.decimalLatitude === '' ? '' : 'EPSG:4326');
    }
  });

  test('have each record present or absent, of a human observation', () => {
    for (const row of occurrences) {
      expect(row.basisOfRecord).toBe('HumanObservation');
      expect(['present', 'absent']).toContain(row.occurrenceStatus);
      expect(row.scientificName).not.toBe('');
    }
  });

  test('tell each kind of count as honestly as it was made', () => {
    const told = occurrences
      .slice(0, 6)
      .map((row) => [row.individualCount, row.organismQuantity, row.organismQuantityType, row.sex]);
    expect(told).toEqual([
      ['5', '', '', 'male | female'],
      ['', '120', 'individuals (at least)', ''],
      ['', '10-15', 'individuals (range)', ''],
      ['', '40', 'individuals (about)', ''],
      ['', '', '', ''],
      ['0', '', '', ''],
    ]);
    expect(JSON.parse(occurrences[2]?.dynamicProperties ?? '')).toEqual({
      verbatimCount: '10-15',
      redListCategory: 'LC',
    });
  });

  test('put readings of the weather and birds in passing into events within the visit', () => {
    const [visit, ...parts] = events.filter((row) =>
      row.eventID?.startsWith(events[0]?.eventID ?? '-'),
    );
    expect(visit).toMatchObject({
      eventDate: '2026-11-14T07:40:00+00:00/2026-11-14T09:15:00+00:00',
      sampleSizeValue: '90',
      sampleSizeUnit: 'minute',
      samplingEffort: '3 observer-hours | 3.21 km',
      samplingProtocol: 'line transect',
    });
    expect(parts.map((row) => [row.parentEventID, row.eventDate])).toEqual([
      [visit?.eventID, '2026-11-14T07:40:00+00:00'],
      [visit?.eventID, '2026-11-14T08:10:00+00:00'],
      [visit?.eventID, '2026-11-14T07:40:00+00:00/2026-11-14T08:00:00+00:00'],
    ]);
    expect(occurrences[1]?.eventID).toBe(parts[2]?.eventID);
  });

  test('tell effort and completeness by the Humboldt Extension', () => {
    expect(rowsOf('humboldt.csv')[0]).toMatchObject({
      inventoryTypes: 'restrictedSearch',
      targetTaxonomicScope: 'birds',
      isTaxonomicScopeFullyReported: 'true',
      isAbsenceReported: 'true',
      absentTaxa: 'Aythya ferina',
      isAbundanceReported: 'false',
      eventDurationValue: '90',
      eventDurationUnit: 'minutes',
      samplingEffortValue: '3',
      samplingEffortUnit: 'observer-hours',
    });
  });

  test('give back a remark with quotes, commas and a line break as it was', () => {
    expect(occurrences[0]?.occurrenceRemarks).toBe('asleep, "all" of them\nby the raft');
  });
});
