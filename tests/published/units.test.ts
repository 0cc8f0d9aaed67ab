import { describe, expect, test } from 'vitest';
import {
  celsiusOf,
  LENGTH,
  MASS,
  metresASecond,
  SPEED,
  TEMPERATURE,
} from '../../src/visit/units.ts';

// NIST SP 811 (2008), Appendix B, factors printed bold, that is exact (from memory).
describe('NIST SP 811, Appendix B', () => {
  test.each<[keyof typeof LENGTH, number]>([
    ['in', 2.54e-2],
    ['ft', 3.048e-1],
    ['yd', 9.144e-1],
    ['mi', 1.609344e3],
    ['nmi', 1.852e3],
  ])('gives the %s as %d m', (unit, metres) => {
    expect(LENGTH[unit]).toBe(metres);
  });

  test.each<[keyof typeof MASS, number]>([
    ['lb', 4.5359237e-1],
    ['oz', 2.8349523125e-2],
  ])('gives the %s as %d kg', (unit, kilograms) => {
    expect(MASS[unit] / MASS.kg).toBe(kilograms);
  });

  test('gives the mile per hour as 0.44704 m/s, the knot as 1852 m in an hour', () => {
    expect(SPEED.mph).toBe(4.4704e-1);
    expect(SPEED.kn * 3600).toBeCloseTo(1852, 9);
    expect(SPEED['km/h'] * 3600).toBeCloseTo(1000, 9);
  });

  test('gives degrees Celsius as (t/°F - 32)/1.8', () => {
    expect(TEMPERATURE).toEqual({ c: { zero: 0, size: 1 }, f: { zero: 32, size: 1.8 } });
  });

  test.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [98.6, 37],
  ])('gives %d degrees Fahrenheit as %d degrees Celsius', (fahrenheit, celsius) => {
    expect(celsiusOf(fahrenheit, 'f')).toBeCloseTo(celsius, 12);
    expect(celsiusOf(celsius, 'c')).toBe(celsius);
  });
});

describe('the factors agree with one another', () => {
  // International yard and pound agreement of 1959 (from memory): 12 in a foot, 3 ft a yard, 1760 yd
  // a mile, 16 oz a pound.
  test('as the units are built', () => {
    expect(LENGTH.in * 12).toBeCloseTo(LENGTH.ft, 12);
    expect(LENGTH.ft * 3).toBeCloseTo(LENGTH.yd, 12);
    expect(LENGTH.yd * 1760).toBeCloseTo(LENGTH.mi, 9);
    expect(MASS.oz * 16).toBeCloseTo(MASS.lb, 9);
    expect(LENGTH.mi / 3600).toBeCloseTo(SPEED.mph, 12);
  });

  test('speeds keep their last digit', () => {
    expect(metresASecond(10, 'mph')).toBe(4.4704);
    expect(metresASecond(36, 'km/h')).toBe(10);
    expect(metresASecond(3600, 'kn')).toBe(1852);
    expect(metresASecond(0.3, 'm/s')).toBe(0.3);
  });
});
