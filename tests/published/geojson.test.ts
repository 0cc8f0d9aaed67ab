import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Feature, geoJson } from '../../src/outputs/geojson.ts';
import type { GivenVisit } from '../../src/outputs/given-visit.ts';
import { fullVisit, hiddenVisit } from '../outputs/full.ts';
import { at, given } from '../outputs/given.ts';
import { placeOf } from '../visit/made.ts';

interface Collection {
  type: string;
  features: Feature[];
  bbox?: number[];
}

async function collected(visits: GivenVisit[]): Promise<Collection> {
  async function* all() {
    yield* visits;
  }
  let text = '';
  for await (const piece of geoJson(all())) text += piece;
  return JSON.parse(text);
}

function atPoint(latitude: number, longitude: number): GivenVisit {
  return given(at(placeOf({ position: { latitude, longitude } })));
}

// RFC 7946 (2016), The GeoJSON Format.
describe('visits as GeoJSON, by RFC 7946', () => {
  test('are features of one collection, with identifiers and no crs (sections 3 and 4)', async () => {
    const whole = await collected([given(fullVisit()), given(hiddenVisit())]);
    expect(Object.keys(whole).sort()).toEqual(['bbox', 'features', 'type']);
    expect(whole.features).toHaveLength(2 + 7 + 8);
    for (const feature of whole.features) {
      expect(Object.keys(feature).sort()).toEqual(['geometry', 'id', 'properties', 'type']);
      expect(feature.type).toBe('Feature');
      expect(feature.id).toMatch(/^urn:uuid:/);
    }
    expect(new Set(whole.features.map(({ id }) => id)).size).toBe(17);
  });

  test('have longitude before latitude (section 3.1.1)', async () => {
    const { features } = await collected([given(fullVisit())]);
    expect(features[0]?.geometry).toEqual({ type: 'Point', coordinates: [-2.85432, 51.12345] });
    expect(features[4]?.geometry?.coordinates).toEqual([-2.86, 51.13]);
  });

  test('of no position have a null geometry and no bbox (section 3.2)', async () => {
    const whole = await collected([given(at(placeOf({ position: null }), {}))]);
    expect(whole.bbox).toBeUndefined();
    for (const { geometry } of whole.features) expect(geometry).toBeNull();
  });

  test('on both sides of the antimeridian have a narrow bbox, west greater than east (section 5.2)', async () => {
    const { bbox } = await collected([atPoint(-18, 177), atPoint(-16, -178)]);
    expect(bbox).toEqual([177, -18, -178, -16]);
  });

  test('of none are an empty collection', async () => {
    expect(await collected([])).toEqual({ type: 'FeatureCollection', features: [] });
  });

  test('come back with the very coordinates and words that may be given, inside the bbox', async () => {
    const position = fc.record({
      latitude: fc.double({ min: -90, max: 90, noNaN: true }).map((value) => value + 0),
      longitude: fc.double({ min: -180, max: 180, noNaN: true }).map((value) => value + 0),
    });
    const text = fc.string({ unit: 'grapheme', minLength: 1 });
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(position, text), { maxLength: 5 }), async (places) => {
        const visits = places.map(([where, name]) => given(at(placeOf({ name, position: where }))));
        const { features, bbox } = await collected(visits);
        expect(features.map(({ geometry, properties }) => [geometry, properties.locality])).toEqual(
          places.map(([{ latitude, longitude }, name]) => [
            { type: 'Point', coordinates: [longitude, latitude] },
            name,
          ]),
        );
        expect(bbox === undefined).toBe(places.length === 0);
        const [west = 0, south = 0, east = 0, north = 0] = bbox ?? [];
        for (const [{ latitude, longitude }] of places) {
          expect(latitude).toBeGreaterThanOrEqual(south);
          expect(latitude).toBeLessThanOrEqual(north);
          const slack = 1e-8;
          const inside =
            west <= east
              ? longitude >= west - slack && longitude <= east + slack
              : longitude >= west - slack || longitude <= east + slack;
          expect(inside).toBe(true);
        }
      }),
    );
  });
});
