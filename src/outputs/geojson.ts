import { isAbsence } from '../visit/entry.ts';
import { intervalOf } from './absences.ts';
import { type Box, growingBox } from './bounding-box.ts';
import { countWords, qualifierOf } from './count-words.ts';
import type { Cell } from './csv-rows.ts';
import { joined } from './entries-table.ts';
import type { GivenEntry } from './given-entry.ts';
import type { GivenSpot } from './given-place.ts';
import type { GivenVisit } from './given-visit.ts';
import { spotCells, visitCells } from './occurrences.ts';
import { visitUrn } from './visit-columns.ts';

/** A feature of RFC 7946; a place of which nobody knows the position has no geometry. */
export interface Feature {
  type: 'Feature';
  id: string;
  geometry: { type: 'Point'; coordinates: [longitude: number, latitude: number] } | null;
  properties: Record<string, Cell>;
}

/**
 * Visits and their entries as GeoJSON (RFC 7946): WGS 84, longitude before latitude, a `bbox` that may
 * lie over the antimeridian. The text comes in pieces, a visit each, with the box behind the features,
 * since nothing is known of it before.
 */
export async function* geoJson(visits: AsyncIterable<GivenVisit>): AsyncGenerator<string> {
  const box = growingBox();
  let between = '\n';
  yield '{"type":"FeatureCollection","features":[';
  for await (const visit of visits) {
    const features = featuresOf(visit);
    for (const { geometry } of features) {
      const [longitude, latitude] = geometry?.coordinates ?? [];
      if (latitude !== undefined && longitude !== undefined) box.add({ latitude, longitude });
    }
    yield features
      .map((feature) => {
        const text = `${between}${JSON.stringify(feature)}`;
        between = ',\n';
        return text;
      })
      .join('');
  }
  const whole = box.box();
  yield `\n]${whole === null ? '' : `,"bbox":${JSON.stringify(boxList(whole))}`}}\n`;
}

/** West, south, east, north (RFC 7946, section 5). */
function boxList({ west, south, east, north }: Box): number[] {
  return [west, south, east, north];
}

/** The visit and each of its entries. */
function featuresOf(visit: GivenVisit): Feature[] {
  const shared = {
    eventID: visitUrn(visit),
    locality: visit.locality,
    dataGeneralizations: visit.dataGeneralizations,
  };
  return [
    feature(visitUrn(visit), visit.spot, {
      ...shared,
      ...visitCells(visit),
      eventDate: intervalOf(visit),
      eventRemarks: visit.description,
      informationWithheld: visit.informationWithheld,
    }),
    ...visit.entries.map((entry) =>
      feature(`urn:uuid:${entry.id}`, entry.spot, {
        ...shared,
        ...entryProperties(entry),
        informationWithheld: joined(visit.informationWithheld, entry.informationWithheld),
      }),
    ),
  ];
}

function entryProperties(entry: GivenEntry): Record<string, Cell> {
  return {
    entryNumber: entry.number,
    eventDate: entry.time,
    vernacularName: entry.taxon?.vernacularName ?? '',
    scientificName: entry.taxon?.scientificName ?? '',
    taxonRank: entry.taxon?.taxonRank ?? '',
    verbatimIdentification: entry.words,
    identificationQualifier: qualifierOf(entry),
    count: countWords(entry.count),
    occurrenceStatus: isAbsence(entry) ? 'absent' : 'present',
    heading: entry.heading ?? '',
    redListCategory: entry.taxon?.redListCategory ?? '',
    occurrenceRemarks: entry.description,
  };
}

function feature(id: string, spot: GivenSpot | null, properties: Record<string, Cell>): Feature {
  const { coordinateUncertaintyInMeters, coordinatePrecision } = spotCells(spot);
  const all = { ...properties, coordinateUncertaintyInMeters, coordinatePrecision };
  return {
    type: 'Feature',
    id,
    geometry: spot && { type: 'Point', coordinates: [spot.longitude, spot.latitude] },
    // A member that says nothing is left out.
    properties: Object.fromEntries(Object.entries(all).filter(([, value]) => value !== '')),
  };
}
