import { describe, expect, test } from 'vitest';
import type { GivenVisit } from '../../src/outputs/given-visit.ts';
import { gpxWaypoints } from '../../src/outputs/gpx-waypoints.ts';
import { fullVisit, hiddenVisit } from '../outputs/full.ts';
import { at, given } from '../outputs/given.ts';
import { type Element, xmlTree } from '../outputs/meta-structure.ts';
import { placeOf, taxonOf } from '../visit/made.ts';

async function waypoints(...visits: GivenVisit[]): Promise<{ gpx: Element; points: Element[] }> {
  async function* all() {
    yield* visits;
  }
  let text = '';
  for await (const piece of gpxWaypoints(all())) text += piece;
  const gpx = xmlTree(text);
  return { gpx, points: gpx.children };
}

const textOf = (element: Element | undefined, name: string) =>
  element?.children.find((child) => child.name === name)?.text;

// GPX 1.1, http://www.topografix.com/GPX/1/1/gpx.xsd: gpxType, wptType, longitudeType.
describe('waypoints, by the schema of GPX 1.1', () => {
  test('stand in a gpx element with version, creator and namespace', async () => {
    const { gpx, points } = await waypoints(given(fullVisit()), given(hiddenVisit()));
    expect(gpx.attributes).toEqual({
      version: '1.1',
      creator: 'Tussock',
      xmlns: 'http://www.topografix.com/GPX/1/1',
    });
    expect(points).toHaveLength(3);
    for (const point of points) {
      expect(point.name).toBe('wpt');
      expect(Object.keys(point.attributes)).toEqual(['lat', 'lon']);
      expect(point.children.map(({ name }) => name)).toEqual(['time', 'name', 'desc']);
      expect(textOf(point, 'time')).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
    }
  });

  test('are of visits, and of entries that have a position of their own', async () => {
    const { points } = await waypoints(given(fullVisit()));
    expect(points.map((point) => [point.attributes.lat, textOf(point, 'name')])).toEqual([
      ['51.12345', '2026-11-14 Sallow Mere'],
      ['51.13', 'Mallard'],
    ]);
    expect(textOf(points[0], 'desc')).toBe('a cold morning | within 50 m of these coordinates');
  });

  test('have a longitude below 180, as the schema asks, and no exponent', async () => {
    const east = placeOf({ position: { latitude: 1e-7, longitude: 180 } });
    const { points } = await waypoints(given(at(east)));
    expect(points[0]?.attributes).toEqual({ lat: '0.000000100000', lon: '-180' });
  });

  test('of a hidden visit are one, on its coarse position, and of an extremely sensitive one none', async () => {
    const { points } = await waypoints(given(hiddenVisit()));
    expect(points.map((point) => point.attributes)).toEqual([{ lat: '51.1', lon: '-2.9' }]);
    const extreme = at(placeOf(), { taxon: taxonOf({ sensitivity: 'extreme' }) });
    expect((await waypoints(given(extreme))).points).toEqual([]);
  });

  test('hold any text that was written', async () => {
    const name = 'A < B & "C" \u0007\ud800';
    const { points } = await waypoints(given(at(placeOf({ name }))));
    expect(textOf(points[0], 'name')).toBe('2026-11-14 A < B & "C" \ufffd\ufffd');
  });
});
