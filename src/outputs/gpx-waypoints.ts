import { Temporal } from 'temporal-polyfill';
import { isAbsence, taxonName } from '../visit/entry.ts';
import { dateOf, epochOf, type Stamp } from '../visit/time.ts';
import { countWords } from './count-words.ts';
import { joined } from './entries-table.ts';
import type { GivenEntry } from './given-entry.ts';
import type { GivenSpot } from './given-place.ts';
import type { GivenVisit } from './given-visit.ts';
import { textElement } from './xml.ts';

/**
 * Waypoints of visits, and of entries that have a position of their own, as GPX 1.1 (its schema,
 * http://www.topografix.com/GPX/1/1/gpx.xsd). A visit without a position that may be given has none.
 */
export async function* gpxWaypoints(visits: AsyncIterable<GivenVisit>): AsyncGenerator<string> {
  yield [
    '<?xml version="1.0" encoding="UTF-8"?>\n',
    '<gpx version="1.1" creator="Tussock" xmlns="http://www.topografix.com/GPX/1/1">\n',
  ].join('');
  for await (const visit of visits) yield waypointsOf(visit);
  yield '</gpx>\n';
}

function waypointsOf(visit: GivenVisit): string {
  const place = visit.locality === '' ? '' : ` ${visit.locality}`;
  const notes = joined(visit.description, visit.informationWithheld, visit.dataGeneralizations);
  const whole = waypoint(visit.spot, visit.start, `${dateOf(visit.start)}${place}`, notes);
  const own = visit.entries.filter(({ spot }) => spot !== visit.spot);
  return [whole, ...own.map(entryWaypoint)].join('');
}

function entryWaypoint(entry: GivenEntry): string {
  const name = entry.taxon === null ? entry.words : taxonName(entry.taxon);
  const count = isAbsence(entry) ? 'none' : String(countWords(entry.count));
  const description = joined(count, entry.description, entry.informationWithheld);
  return waypoint(entry.spot, entry.time, entry.uncertain ? `${name}?` : name, description);
}

function waypoint(spot: GivenSpot | null, time: Stamp, name: string, description: string): string {
  if (spot === null) return '';
  const around =
    spot.uncertainty === null ? '' : `within ${spot.uncertainty} m of these coordinates`;
  return [
    `  <wpt lat="${degrees(spot.latitude)}" lon="${degrees(westOf180(spot.longitude))}">\n`,
    textElement('time', utc(time), '    '),
    textElement('name', name, '    '),
    textElement('desc', joined(description, around), '    '),
    '  </wpt>\n',
  ].join('');
}

/** The schema's longitudes end below 180, which is the same meridian as -180. */
function westOf180(longitude: number): number {
  return longitude === 180 ? -180 : longitude;
}

/** A decimal without an exponent, which the schema's type does not take. */
function degrees(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(12) : text;
}

function utc(time: Stamp): string {
  return Temporal.Instant.fromEpochMilliseconds(epochOf(time)).toString();
}
