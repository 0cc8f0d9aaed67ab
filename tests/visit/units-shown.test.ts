import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { effortText, readEffort } from '../../src/visit/effort.ts';
import {
  distanceShown,
  temperatureShown,
  UNITS_SHOWN,
  windShown,
} from '../../src/visit/units-shown.ts';
import { type Reading, readWeather, weatherWords } from '../../src/visit/weather.ts';
import { START, visitAt } from './made.ts';

function reading(text: string): Reading {
  const read = readWeather(text);
  if ('problem' in read) throw new Error(read.problem);
  return read.reading;
}

function weatherIn(text: string, units: Partial<Parameters<typeof weatherWords>[1]>): string {
  const all = { temperature: 'C', distance: 'km', wind: 'Beaufort', ...units } as const;
  return weatherWords({ time: START, ...reading(text) }, all);
}

describe('a temperature as it is shown', () => {
  // The fixed points of water and the value at which the scales meet: NIST SP 811 (2008), B.8 (from memory).
  test.each([
    [0, '32 °F'],
    [100, '212 °F'],
    [-40, '-40 °F'],
    [7.2, '45 °F'],
  ])('%d °C are %s', (celsius, words) => {
    expect(temperatureShown(celsius, 'F')).toBe(words);
    expect(temperatureShown(celsius, 'C')).toBe(`${celsius} °C`);
  });

  test('is the whole number of degrees Fahrenheit that was typed', () => {
    fc.assert(
      fc.property(fc.integer({ min: -40, max: 120 }), (typed) => {
        expect(weatherIn(`${typed}f`, { temperature: 'F' })).toBe(`${typed} °F`);
      }),
    );
  });
});

describe('a wind as it is shown', () => {
  test.each([
    ['15 km/h sw', 'Beaufort', 'F3 4.2 m/s SW'],
    ['15 km/h sw', 'm/s', '4.2 m/s SW'],
    ['15 km/h sw', 'km/h', '15 km/h SW'],
    ['f3 sw', 'kn', 'F3 SW'],
    ['sw', 'kn', 'SW'],
    ['f3', 'mph', 'F3'],
  ] as const)('typed as %s, with %s wanted, is %s', (text, wind, words) => {
    expect(weatherIn(text, { wind })).toBe(words);
  });

  // Ten of each in metres a second: NIST SP 811 (2008), Appendix B (from memory).
  test.each([
    ['km/h', 2.7778],
    ['mph', 4.4704],
    ['kn', 5.1444],
  ] as const)('of ten %s comes from that many metres a second', (unit, speed) => {
    expect(windShown(null, speed, unit)).toBe(`10 ${unit}`);
  });

  test('is the speed that was typed, to a tenth, in the unit in which it was typed', () => {
    const unit = fc.constantFrom(...UNITS_SHOWN.wind.filter((each) => each !== 'Beaufort'));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1000 }), unit, (tenths, wind) => {
        expect(weatherIn(`${tenths / 10} ${wind}`, { wind })).toBe(`${tenths / 10} ${wind}`);
      }),
    );
  });
});

describe('a distance as it is shown', () => {
  test.each([
    [0, '0 m'],
    [999.4, '999 m'],
    [1000, '1 km'],
    [3200, '3.2 km'],
    [4828.032, '4.83 km'],
    [12_345, '12.35 km'],
  ])('%d metres are %s', (metres, words) => {
    expect(distanceShown(metres)).toBe(words);
  });

  // 1 mi is 1609.344 m and 1 yd 0.9144 m: NIST SP 811 (2008), Appendix B (from memory).
  test.each([
    [0, '0 yd'],
    [91.44, '100 yd'],
    [1609.344, '1 mi'],
    [3218.688, '2 mi'],
    [3200, '1.99 mi'],
  ])('%d metres are %s in miles', (metres, words) => {
    expect(distanceShown(metres, 'mi')).toBe(words);
  });

  test('that can be edited reads back to the tenth of a millimetre, whichever unit is wanted', () => {
    const unit = fc.constantFrom(...UNITS_SHOWN.distance);
    const metres = fc.integer({ min: 0, max: 400_000_000 }).map((each) => each / 10);
    fc.assert(
      fc.property(metres, unit, (distance, wanted) => {
        const text = effortText({ ...visitAt().effort, distance }, wanted);
        expect(readEffort(text)).toMatchObject({ effort: { distance } });
      }),
    );
    const walked = { ...visitAt().effort, distance: 3218.688, observers: 2 };
    expect(effortText(walked, 'mi')).toBe('2 mi 2 people');
    expect(effortText({ ...walked, distance: 3200 }, 'mi')).toBe('3.2 km 2 people');
  });
});
