import proj4 from 'proj4';
import { describe, expect, test } from 'vitest';
import { distanceBetween } from '../../src/ground/distance.ts';
import { gridPosition, NATIONAL_GRIDS } from '../../src/ground/grid-position.ts';
import type { Position } from '../../src/ground/position.ts';
import { readPosition } from '../../src/ground/read-position.ts';

const dms = (degrees: number, minutes: number, seconds: number) =>
  Math.sign(degrees) * (Math.abs(degrees) + minutes / 60 + seconds / 3600);

function read(text: string) {
  const found = readPosition(text, gridPosition);
  if ('problem' in found) throw new Error(found.problem);
  return found;
}

function away(text: string, latitude: number, longitude: number): number {
  return distanceBetween(read(text).position, { latitude, longitude });
}

/** Metres east and north on a grid without leaving its own datum, in degrees. */
function ownDegrees(grid: 'British' | 'Irish', east: number, north: number): Position {
  const { projection, datum } = NATIONAL_GRIDS[grid];
  const [ellipsoid] = datum.split(' ');
  const [longitude, latitude] = proj4(
    `${projection} ${ellipsoid} +units=m`,
    `+proj=longlat ${ellipsoid}`,
    [east, north],
  ) as [number, number];
  return { latitude, longitude };
}

describe('the British grid', () => {
  // Ordnance Survey, A guide to coordinate systems in Great Britain, annexe C, worked example:
  // E 651409.903 N 313177.270 is 52°39'27.2531"N 1°43'4.5177"E on OSGB36 (not WGS 84).
  test('is on its own datum as in the worked example, to a hundred-thousandth of a second', () => {
    const { latitude, longitude } = ownDegrees('British', 651_409.903, 313_177.27);
    expect(latitude).toBeCloseTo(dms(52, 39, 27.2531), 8);
    expect(longitude).toBeCloseTo(dms(1, 43, 4.5177), 7);
  });

  // The same guide, ETRS89 position of the water tower at Caister (from memory). The seven-parameter
  // shift is good to about 5 m; half a metre more for the square.
  test('comes to WGS 84 within the 5 m of its shift of datum', () => {
    expect(away('TG 51409 13177', dms(52, 39, 28.8282), dms(1, 42, 57.8663))).toBeLessThan(5.5);
    expect(read('TG 51409 13177').uncertainty).toBe(6);
  });

  // Ordnance Survey, A guide to coordinate systems in Great Britain: the grid begins in SV; TG is
  // 600 km east and 300 km north of there, and TG 514 131 is the square of 100 m of the example.
  test('has the square of 100 m around the same point', () => {
    const { latitude, longitude } = read('TG 51409 13177').position;
    expect(away('TG 514 131', latitude, longitude)).toBeLessThan(71 + 1);
    expect(away('TG 514 131', latitude, longitude)).toBeGreaterThan(20);
  });

  // Half the diagonal of a square: Chapman & Wieczorek 2020, Georeferencing Best Practices,
  // doi 10.15468/doc-gg7h-s853.
  test.each([
    ['TG 5 1', 7072],
    ['TG 51 13', 708],
    ['TG 514 131', 71],
    ['TG 5140 1317', 9],
  ])('%j leaves open %d m', (text, metres) => {
    expect(read(text).uncertainty).toBe(metres);
  });
});

describe('the Irish grid', () => {
  // EPSG:29903: the true origin, 53°30'N 8°W, is E 200000 N 250000 (from memory).
  test('has its true origin where EPSG says', () => {
    const { latitude, longitude } = ownDegrees('Irish', 200_000, 250_000);
    expect(latitude).toBeCloseTo(53.5, 9);
    expect(longitude).toBeCloseTo(-8, 9);
  });

  // Dublin's Spire stands at O 15915 34679 (from memory), 53°20'59"N 6°15'37"W (from memory):
  // whole seconds are 31 m, the shift of datum 5 m.
  test('comes to WGS 84 near a point known on both', () => {
    expect(away('O 15915 34679', dms(53, 20, 59), dms(-6, 15, 37))).toBeLessThan(60);
  });
});

describe('MGRS', () => {
  // Examples of NGA and USGS (from memory): a square of 10 m by Honolulu, 21.309444 N 157.916861 W, and
  // the stone of the Jefferson Pier, 38°53'23.3"N 77°2'11.6"W. A tenth of a second is 3 m.
  test.each([
    ['4Q FJ 1234 5678', 21.309444, -157.916861, 8],
    ['18S UJ 23371 06519', dms(38, 53, 23.3), dms(-77, 2, 11.6), 1],
  ])('%j is where its agency says', (text, latitude, longitude, uncertainty) => {
    expect(away(text, latitude, longitude)).toBeLessThan(8);
    expect(read(text).uncertainty).toBe(uncertainty);
  });
});

describe('UTM', () => {
  // NGA.SIG.0012: a zone's middle has the easting 500000, the equator the northing 0 or 10000000.
  test.each([
    ['31N 500000 0', 0, 3],
    ['30 north 500000 0', 0, -3],
    ['31 south 500000 10000000', 0, 3],
  ])('%j lies on the equator and the middle of its zone', (text, latitude, longitude) => {
    expect(read(text).position).toEqual({ latitude, longitude });
  });

  test('agrees with MGRS, which is cut from it', () => {
    const { latitude, longitude } = read('30U VC 10000 63000').position;
    expect(away('30U 410000.5 5763000.5', latitude, longitude)).toBeLessThan(0.5);
  });
});

describe('a geo: URI, by the examples of RFC 5870', () => {
  test.each([
    // Section 1.
    ['geo:13.4125,103.8667', 13.4125, 103.8667, null],
    // Section 6.1 and 6.2.
    ['geo:48.2010,16.3695,183', 48.201, 16.3695, null],
    ['geo:48.198634,16.371648;crs=wgs84;u=40', 48.198634, 16.371648, 40],
    // Section 6.4: a pole has one position, whatever its longitude.
    ['geo:90,-22.43;crs=WGS84', 90, 0, null],
    ['geo:90,46', 90, 0, null],
    ['geo:22.300,-118.44', 22.3, -118.44, null],
    ['geo:22.3,-118.4400', 22.3, -118.44, null],
    ['geo:66,30;u=6.500;FOo=this%2dthat', 66, 30, 6.5],
    ['geo:66.0,30;u=6.5;foo=this-that', 66, 30, 6.5],
    ['geo:47,11;foo=blue;bar=white', 47, 11, null],
  ])('%j is read', (text, latitude, longitude, uncertainty) => {
    expect(read(text)).toEqual({ position: { latitude, longitude }, uncertainty });
  });
});
