import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { generalised, precisionUncertainty } from '../../src/ground/generalise.ts';

// Chapman & Wieczorek 2020, Georeferencing Best Practices, doi 10.15468/doc-gg7h-s853: metres of
// uncertainty from the precision of decimal degrees, WGS 84, at 0, 30, 60 and 85 degrees of latitude.
// The table rounds to the metre, now to the nearest and now up.
const TABLE: [precision: number, metres: [number, number, number, number]][] = [
  [1, [156_904, 146_962, 124_605, 112_109]],
  [0.1, [15_691, 14_697, 12_461, 11_211]],
  [0.01, [1570, 1470, 1246, 1121]],
  [0.001, [157, 147, 125, 112]],
];
const rows = TABLE.flatMap(([precision, metres]) =>
  metres.map((want, at) => [precision, [0, 30, 60, 85][at] ?? 0, want] as const),
);

describe('the uncertainty that comes with a precision', () => {
  test.each(rows)('%d degrees at latitude %d are %d m', (precision, latitude, want) => {
    expect(Math.abs(precisionUncertainty(latitude, precision) - want)).toBeLessThanOrEqual(1);
    expect(precisionUncertainty(-latitude, precision)).toBe(
      precisionUncertainty(latitude, precision),
    );
  });

  test('the worked example, latitude 10.27 to 0.01 degrees, is 1556.8 m', () => {
    expect(precisionUncertainty(10.27, 0.01).toFixed(1)).toBe('1556.8');
  });
});

describe('a generalised position', () => {
  // Chapman 2020, Current Best Practices for Generalizing Sensitive Species Occurrence Data,
  // doi 10.15468/doc-5jp4-5g10, table 5: 0.1, 0.01 and 0.001 degrees for high, medium, low sensitivity.
  // Metres: computed apart from this program, by differences of geocentric coordinates, rounded up.
  test.each([
    [1, '51.1', '-2.9', 13_147],
    [2, '51.12', '-2.85', 1315],
    [3, '51.123', '-2.854', 132],
  ] as const)(
    'to %d decimals is rounded and covers its cell',
    (decimals, latitude, longitude, metres) => {
      const given = generalised({ latitude: 51.12345, longitude: -2.85432 }, decimals);
      expect({ latitude: given.latitude, longitude: given.longitude }).toEqual({
        latitude,
        longitude,
      });
      expect(given.uncertainty).toBe(metres);
    },
  );

  // Traps of binary fractions: (1.005).toFixed(2) is 1.00 and (-0.04).toFixed(1) is -0.0.
  test.each([
    [1.005, 2, '1.01'],
    [-1.005, 2, '-1.01'],
    [8.575, 2, '8.58'],
    [0.05, 1, '0.1'],
    [-0.05, 1, '-0.1'],
    [-0.04, 1, '0.0'],
    [-0.0004, 3, '0.000'],
    [0, 1, '0.0'],
    [-0, 2, '0.00'],
    [1.0049, 2, '1.00'],
    [89.96, 1, '90.0'],
    [1e-7, 3, '0.000'],
  ] as const)('%d to %d decimals is %s', (degrees, decimals, want) => {
    expect(generalised({ latitude: degrees, longitude: 0 }, decimals).latitude).toBe(want);
    expect(generalised({ latitude: 0, longitude: degrees }, decimals).longitude).toBe(want);
  });

  test.each([
    [179.96, '180.0'],
    [-179.96, '-180.0'],
    [180, '180.0'],
  ])('longitude %d stays within the globe: %s', (longitude, want) => {
    expect(generalised({ latitude: 0, longitude }, 1).longitude).toBe(want);
  });

  test('is within half a step of the true one, written with all its decimals, and the same each time', () => {
    const degrees = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
    const level = fc.constantFrom(1 as const, 2 as const, 3 as const);
    fc.assert(
      fc.property(degrees(90), degrees(180), level, (latitude, longitude, decimals) => {
        const given = generalised({ latitude, longitude }, decimals);
        const half = 10 ** -decimals / 2 + 1e-9;
        expect(Math.abs(Number(given.latitude) - latitude)).toBeLessThanOrEqual(half);
        expect(Math.abs(Number(given.longitude) - longitude)).toBeLessThanOrEqual(half);
        for (const text of [given.latitude, given.longitude]) {
          expect(text).toMatch(new RegExp(String.raw`^-?\d{1,3}\.\d{${decimals}}$`));
          expect(text).not.toMatch(/^-0\.0+$/);
        }
        const again = { latitude: Number(given.latitude), longitude: Number(given.longitude) };
        expect(generalised(again, decimals)).toEqual(given);
      }),
    );
  });
});
