import { clockOf, epochOf, offsetOf, type Stamp, stamp } from '../visit/time.ts';
import { intervalOf } from './absences.ts';
import type { Cell } from './csv-rows.ts';
import type { GivenEntry } from './given-entry.ts';
import type { GivenVisit, GivenWeather } from './given-visit.ts';
import { spotCells, timeOf, visitCells } from './occurrences.ts';
import { visitUrn } from './visit-columns.ts';

/** Terms of an event in the archive's core; the first is its identifier. */
export const EVENT_TERMS = [
  'eventID',
  'parentEventID',
  'eventType',
  'eventDate',
  'eventTime',
  'habitat',
  'samplingProtocol',
  'sampleSizeValue',
  'sampleSizeUnit',
  'samplingEffort',
  'eventRemarks',
  'locality',
  'decimalLatitude',
  'decimalLongitude',
  'geodeticDatum',
  'coordinateUncertaintyInMeters',
  'coordinatePrecision',
  'informationWithheld',
  'dataGeneralizations',
] as const;
export type ArchiveEvent = Record<(typeof EVENT_TERMS)[number], Cell>;

/**
 * The events of a visit: the visit itself, then, as its children, an event for each reading of the
 * weather and for each clock hour in which birds were counted in passing.
 */
export function eventsOf(visit: GivenVisit): ArchiveEvent[] {
  const shared = {
    locality: visit.locality,
    ...spotCells(visit.spot),
    informationWithheld: visit.informationWithheld,
    dataGeneralizations: visit.dataGeneralizations,
  };
  const parent: ArchiveEvent = {
    ...shared,
    ...visitCells(visit),
    eventID: visitUrn(visit),
    parentEventID: '',
    // Of the words that Darwin Core recommends for the term (from memory).
    eventType: 'Site Visit',
    eventDate: intervalOf(visit),
    eventTime: timeOf(visit.start),
    eventRemarks: visit.description,
  };
  const child = { ...parent, parentEventID: visitUrn(visit), eventType: 'Observation' };
  const unsaid = { sampleSizeValue: '', sampleSizeUnit: '', samplingEffort: '' };
  const weather = visit.weather.map((reading, at) => ({
    ...{ ...child, ...unsaid, samplingProtocol: '', habitat: '' },
    eventID: weatherEventId(visit, at),
    eventDate: reading.time,
    eventTime: timeOf(reading.time),
    eventRemarks: reading.remarks ?? '',
  }));
  const passing = passingHours(visit).map(({ id, start, end }) => ({
    ...{ ...child, ...unsaid },
    eventID: id,
    eventDate: `${start}/${end}`,
    eventTime: `${timeOf(start)}/${timeOf(end)}`,
    eventRemarks: 'birds counted in passing',
  }));
  return [parent, ...weather, ...passing];
}

/** Part of a visit by its name (RFC 8141, f-component), told by its time; a second one of a time by its number too. */
export function weatherEventId(visit: GivenVisit, at: number): string {
  const time = (visit.weather[at] as GivenWeather).time;
  const before = visit.weather.slice(0, at).filter((reading) => reading.time === time).length;
  return `${visitUrn(visit)}#weather-${time}${before === 0 ? '' : `-${before + 1}`}`;
}

/** The event to which an occurrence belongs: the hour in which it passed, else the visit. */
export function eventOfEntry(visit: GivenVisit, entry: GivenEntry): string {
  return entry.heading === null ? visitUrn(visit) : passingId(visit, entry.time);
}

const HOUR = 3_600_000;

/**
 * The clock hours in which birds passed, as far as they lie in the visit. The intervals of a count in
 * passing divide the hour and begin with it, so that none of them lies in two.
 */
function passingHours(visit: GivenVisit): { id: string; start: Stamp; end: Stamp }[] {
  const hours = new Map<string, { id: string; start: Stamp; end: Stamp }>();
  for (const { heading, time } of visit.entries) {
    const id = passingId(visit, time);
    if (heading === null || hours.has(id)) continue;
    const into = Number(clockOf(time).slice(3)) * 60_000 + Number(time.slice(17, 19)) * 1000;
    const begun = epochOf(time) - into;
    const from = Math.max(begun, Math.min(epochOf(visit.start), epochOf(time)));
    const last = visit.end === null ? begun + HOUR : Math.max(epochOf(visit.end), epochOf(time));
    const to = Math.min(begun + HOUR, last);
    hours.set(id, { id, start: stampLike(from, time), end: stampLike(to, time) });
  }
  return [...hours.values()];
}

function passingId(visit: GivenVisit, time: Stamp): string {
  return `${visitUrn(visit)}#passing-${time.slice(0, 13)}${offsetOf(time)}`;
}

/** A stamp of a moment with the offset of another. */
function stampLike(moment: number, like: Stamp): Stamp {
  return stamp(moment, offsetOf(like));
}
