import type { EntryTaxon } from '../visit/entry.ts';
import { absenceOccurrences } from './absences.ts';
import { eventOfEntry, eventsOf } from './archive-events.ts';
import { inventoryOf } from './archive-inventory.ts';
import { measurementsOf } from './archive-measurements.ts';
import { ARCHIVE_TABLES, type ArchiveTable, type ArchiveTableName } from './archive-meta.ts';
import { type Cell, csvRows, PLAIN_FORM } from './csv-rows.ts';
import type { GivenVisit } from './given-visit.ts';
import { type About, occurrencesOf } from './occurrences.ts';

/** The head line of a table of the archive. */
export function archiveHead({ terms }: ArchiveTable): string {
  return csvRows([terms], PLAIN_FORM);
}

/** What a visit adds to each table of the archive, as CSV text. `absent`: species that were not there. */
export function archiveRows(
  visit: GivenVisit,
  absent: readonly EntryTaxon[],
  about: About,
): Record<ArchiveTableName, string> {
  const entries = new Map(visit.entries.map((entry) => [`urn:uuid:${entry.id}`, entry]));
  const occurrences = occurrencesOf(visit, about).map((occurrence) => {
    const entry = entries.get(occurrence.occurrenceID as string);
    return entry ? { ...occurrence, eventID: eventOfEntry(visit, entry) } : occurrence;
  });
  const { events, measurements, inventories } = ARCHIVE_TABLES;
  return {
    events: written(events, eventsOf(visit)),
    occurrences: written(ARCHIVE_TABLES.occurrences, [
      ...occurrences,
      ...absenceOccurrences(visit, absent, about),
    ]),
    measurements: written(measurements, measurementsOf(visit)),
    inventories: written(inventories, [inventoryOf(visit, absent)]),
  };
}

function written<Term extends string>(
  { terms }: ArchiveTable<Term>,
  records: readonly Record<Term, Cell>[],
): string {
  const rows = records.map((record) => terms.map((term) => record[term]));
  return csvRows(rows, PLAIN_FORM);
}
