import { clockOf, dateOf, offsetOf, type Stamp } from '../visit/time.ts';
import type { Cell, Column } from './csv-rows.ts';
import type { GivenSpot } from './given-place.ts';
import type { GivenVisit, GivenWeather } from './given-visit.ts';

/** Where a row was; Darwin Core's terms. */
export const PLACE_COLUMNS = [
  { name: 'locality', sentence: 'Name of the place, or withheld.' },
  { name: 'habitat', sentence: 'What grows or lies there, in the words of the observer.' },
  { name: 'decimalLatitude', sentence: 'Degrees north in WGS 84, negative in the south.' },
  { name: 'decimalLongitude', sentence: 'Degrees east in WGS 84, negative in the west.' },
  {
    name: 'coordinateUncertaintyInMeters',
    sentence: 'Metres around the coordinates in which it surely was; empty where nobody knows.',
  },
] as const satisfies readonly Column[];

/** The weather that held, by the last reading before. */
export const WEATHER_COLUMNS = [
  { name: 'temperature', sentence: 'Degrees Celsius, by the last reading before.' },
  { name: 'windForce', sentence: 'Beaufort force, 0 to 12.' },
  { name: 'windSpeed', sentence: 'Metres a second, where a speed was given.' },
  { name: 'windFrom', sentence: 'Point of the compass from which it blew.' },
  { name: 'cloud', sentence: 'Oktas, 0 to 8; 9 is a sky that can not be seen.' },
  { name: 'precipitation', sentence: 'One word: dry, drizzle, rain, showers, snow and so on.' },
  { name: 'visibility', sentence: 'One word: poor, moderate, good or excellent.' },
  { name: 'weatherRemarks', sentence: 'What else was said of the weather.' },
] as const satisfies readonly Column[];

/** What went into the visit. */
export const EFFORT_COLUMNS = [
  { name: 'visitStart', sentence: 'When the visit began, with the offset from UTC.' },
  { name: 'visitEnd', sentence: 'When it ended; empty while it has not.' },
  { name: 'minutes', sentence: 'Minutes watched, from start to end less the pauses.' },
  { name: 'distance', sentence: 'Metres walked.' },
  { name: 'observers', sentence: 'How many people looked.' },
  { name: 'samplingProtocol', sentence: 'How it was counted, such as point count.' },
  { name: 'complete', sentence: 'Was everything noticed logged: yes, no, or empty if unsaid.' },
  { name: 'completeFor', sentence: 'The groups for which that holds.' },
  { name: 'visitDescription', sentence: 'What the observer says of the visit.' },
] as const satisfies readonly Column[];

type Named<Columns extends readonly Column[]> = Record<Columns[number]['name'], Cell>;

export function placeCells(
  { locality, habitat }: Pick<GivenVisit, 'locality' | 'habitat'>,
  spot: GivenSpot | null,
): Named<typeof PLACE_COLUMNS> {
  return {
    locality,
    habitat,
    decimalLatitude: spot?.latitude ?? '',
    decimalLongitude: spot?.longitude ?? '',
    coordinateUncertaintyInMeters: spot?.uncertainty ?? '',
  };
}

export function weatherCells(weather: GivenWeather | null): Named<typeof WEATHER_COLUMNS> {
  return {
    temperature: weather?.temperature ?? '',
    windForce: weather?.windForce ?? '',
    windSpeed: weather?.windSpeed ?? '',
    windFrom: weather?.windFrom ?? '',
    cloud: weather?.cloud ?? '',
    precipitation: weather?.precipitation ?? '',
    visibility: weather?.visibility ?? '',
    weatherRemarks: weather?.remarks ?? '',
  };
}

export function effortCells(visit: GivenVisit): Named<typeof EFFORT_COLUMNS> {
  const { minutes, distance, observers, method, complete, groups } = visit.effort;
  return {
    visitStart: visit.start,
    visitEnd: visit.end ?? '',
    minutes: minutes ?? '',
    distance: distance ?? '',
    observers: observers ?? '',
    samplingProtocol: method,
    complete: complete === null ? '' : complete ? 'yes' : 'no',
    completeFor: groups?.join(' | ') ?? '',
    visitDescription: visit.description,
  };
}

/** The identifier of a visit, the same for ever (RFC 9562). */
export function visitUrn({ id }: { id: string }): string {
  return `urn:uuid:${id}`;
}

/** Clock time with its offset, as ISO 8601-1 writes it: `07:41+00:00`. */
export function clockWithOffset(time: Stamp): string {
  return `${clockOf(time)}${offsetOf(time)}`;
}

/** A visit in the head of a column: `2026-11-14 07:40 Sallow Mere`. */
export function visitHeading({ start, locality }: GivenVisit): string {
  return `${dateOf(start)} ${clockOf(start)} ${locality}`.trim();
}
