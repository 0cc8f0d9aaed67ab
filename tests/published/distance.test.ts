import { describe, expect, test } from 'vitest';
import { distanceBetween } from '../../src/ground/distance.ts';

const dms = (degrees: number, minutes: number, seconds: number) =>
  Math.sign(degrees) * (Math.abs(degrees) + minutes / 60 + seconds / 3600);

const FLINDERS_PEAK = {
  latitude: dms(-37, 57, 3.7203),
  longitude: dms(144, 25, 29.5244),
};
const BUNINYONG = {
  latitude: dms(-37, 39, 10.1561),
  longitude: dms(143, 55, 35.3839),
};

describe('the length of a geodesic on WGS 84', () => {
  // Geoscience Australia, GDA technical manual, Vincenty's formulae, worked example (on GRS 80).
  test('is 54,972.271 m from Flinders Peak to Buninyong', () => {
    expect(distanceBetween(FLINDERS_PEAK, BUNINYONG)).toBeCloseTo(54_972.271, 3);
  });

  // GeographicLib documentation, first example of the inverse problem.
  test('is 19,959,679.267 m from Wellington to Salamanca', () => {
    const wellington = { latitude: -41.32, longitude: 174.81 };
    const salamanca = { latitude: 40.96, longitude: -5.5 };
    expect(distanceBetween(wellington, salamanca)).toBeCloseTo(19_959_679.267, 3);
  });

  // Karney 2013, Algorithms for geodesics, doi 10.1007/s00190-012-0578-z, short-line example (from memory).
  test('is 4.944208 m over a hundred-thousandth of a degree', () => {
    const one = { latitude: -30.12345, longitude: 0 };
    const two = { latitude: -30.12344, longitude: 0.00005 };
    expect(distanceBetween(one, two)).toBeCloseTo(4.944208, 6);
  });

  test('is the same there and back, and nothing on the spot', () => {
    expect(distanceBetween(BUNINYONG, FLINDERS_PEAK)).toBe(
      distanceBetween(FLINDERS_PEAK, BUNINYONG),
    );
    expect(distanceBetween(BUNINYONG, BUNINYONG)).toBe(0);
  });
});
