import { describe, expect, test } from 'vitest';
import { readWeather, VISIBILITY } from '../../src/visit/weather.ts';
import { VISIBILITY_FROM } from '../../src/visit/weather-air.ts';
import { weatherCaution } from '../../src/visit/weather-caution.ts';
import { BEAUFORT } from '../../src/visit/weather-wind.ts';

// WMO-No. 8, Guide to Instruments and Methods of Observation, code table 1100 (from memory).
const FORCES = [
  'calm',
  'light air',
  'light breeze',
  'gentle breeze',
  'moderate breeze',
  'fresh breeze',
  'strong breeze',
  'near gale',
  'gale',
  'strong gale',
  'storm',
  'violent storm',
  'hurricane force',
];

describe('the Beaufort scale', () => {
  test('names the forces 0 to 12 as code table 1100 does', () => {
    expect(BEAUFORT.map(({ name }) => name)).toEqual(FORCES);
  });

  test('has these forces and no others', () => {
    const read = (text: string) => {
      const weather = readWeather(text);
      return 'reading' in weather ? weather.reading.windForce : null;
    };
    expect(FORCES.map((_, force) => read(`f${force}`))).toEqual(FORCES.map((_, force) => force));
    expect(read(`f${FORCES.length}`)).toBeNull();
  });
});

// WMO-No. 8, code table 1100: each force from its lowest to its highest speed; m/s, km/h and knots as
// in a secondary copy, miles per hour from memory. The last force has no end.
const SPEEDS: [unit: string, step: number, lowest: number[]][] = [
  ['m/s', 0.1, [0, 0.3, 1.6, 3.4, 5.5, 8, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7]],
  ['km/h', 1, [0, 1, 6, 12, 20, 29, 39, 50, 62, 75, 89, 103, 118]],
  ['kn', 1, [0, 1, 4, 7, 11, 17, 22, 28, 34, 41, 48, 56, 64]],
  ['mph', 1, [0, 1, 4, 8, 13, 19, 25, 32, 39, 47, 55, 64, 73]],
];

describe('a measured wind', () => {
  const forceOf = (text: string) => {
    const weather = readWeather(text);
    if ('problem' in weather) throw new Error(weather.problem);
    return weather.reading.windForce;
  };

  test.each(SPEEDS)('in %s has the force of its row of the table', (unit, step, lowest) => {
    lowest.forEach((from, force) => {
      const next = lowest[force + 1];
      const highest = next === undefined ? from + 20 * step : next - step;
      expect(forceOf(`${from} ${unit}`)).toBe(force);
      expect(forceOf(`${Number(highest.toFixed(1))}${unit}`)).toBe(force);
    });
  });

  // The columns disagree at these edges: the unit given decides.
  test.each([
    ['12 km/h', 3, '3.3 m/s', 2],
    ['16 kn', 4, '8.2 m/s', 5],
    ['21 kn', 5, '10.8 m/s', 6],
    ['27 kn', 6, '13.9 m/s', 7],
  ])('of %s is force %d, though %s are %d', (text, force, same, other) => {
    expect(forceOf(text)).toBe(force);
    expect(forceOf(same)).toBe(other);
  });

  test('is kept in metres a second by the exact factors of NIST SP 811, Appendix B (from memory)', () => {
    const speedOf = (text: string) => {
      const weather = readWeather(text);
      return 'reading' in weather ? weather.reading.windSpeed : null;
    };
    expect(speedOf('4 m/s')).toBe(4);
    expect(speedOf('18 km/h')).toBe(5);
    expect(speedOf('10 mph')).toBe(4.4704);
    expect(speedOf('8 kn')).toBe(4.1156);
    expect(speedOf('8 kt')).toBe(4.1156);
    expect(speedOf('f3')).toBeNull();
  });
});

describe('a bearing of the wind', () => {
  // The compass of 32 points halved: each of 16 points is 22.5 degrees; common practice, no source.
  test.each([
    ['000°', 'N'],
    ['360°', 'N'],
    ['011°', 'N'],
    ['012°', 'NNE'],
    ['045°', 'NE'],
    ['090°', 'E'],
    ['240°', 'WSW'],
    ['236°', 'SW'],
    ['348°', 'NNW'],
    ['349°', 'N'],
    ['240deg', 'WSW'],
  ])('of %s is %s', (text, point) => {
    const weather = readWeather(text);
    expect('reading' in weather && weather.reading.windFrom).toBe(point);
  });
});

describe('visibility', () => {
  // Forecast terms of the UK Met Office (from memory): very poor < 1 km, poor 1-4, moderate 4-10,
  // good 10-20, very good 20-40, excellent > 40 km; very poor is told as poor here, very good as good.
  test('has the limits of the forecasts', () => {
    expect(VISIBILITY_FROM).toEqual({ poor: 0, moderate: 4000, good: 10_000, excellent: 40_000 });
    expect(Object.keys(VISIBILITY_FROM)).toEqual([...VISIBILITY]);
  });

  test.each([
    ['vis 800 m', 'poor'],
    ['vis 2 km', 'poor'],
    ['vis 4km', 'moderate'],
    ['visibility 9.9 km', 'moderate'],
    ['vis 10 km', 'good'],
    ['vis 20 mi', 'good'],
    ['vis 45 km', 'excellent'],
  ])('of %j is %s', (text, word) => {
    const weather = readWeather(text);
    expect('reading' in weather && weather.reading.visibility).toBe(word);
  });
});

// USGS roadside survey training: no counting in wind above 19 km/h (Beaufort 3; on prairie 4), nor in
// fog; light drizzle is tolerated. Gregory, Gibbons & Donald (2004) ask for good conditions as well.
describe('USGS roadside survey training', () => {
  const cautionOf = (text: string) => {
    const weather = readWeather(text);
    if ('problem' in weather) throw new Error(weather.problem);
    return weatherCaution(weather.reading);
  };

  test.each(['19 km/h', 'f3', 'f0', 'drizzle', 'light drizzle', 'dry', 'vis good', '7c sw 8/8'])(
    'takes counts in %j',
    (text) => {
      expect(cautionOf(text)).toBeNull();
    },
  );

  test.each([
    ['20 km/h', 'Wind F4: small birds'],
    ['f4', 'on prairie 4'],
    ['f5', 'above Beaufort 3; USGS'],
    ['rain', 'Rain: '],
    ['light rain', 'Rain: '],
    ['heavy drizzle', 'Heavy drizzle: '],
    ['snow', 'Snow: '],
    ['fog', 'Fog: '],
    ['vis 2 km', 'Poor visibility: '],
    ['f5 rain fog', 'Wind F5, rain, fog: '],
  ])('is against counts in %j', (text, words) => {
    expect(cautionOf(text)).toContain(words);
    expect(cautionOf(text)).toContain('USGS roadside survey training');
  });
});

describe('degrees Fahrenheit', () => {
  // NIST SP 811 (2008), Appendix B: t/°C = (t/°F - 32)/1.8, exact (from memory); kept to a tenth.
  test.each([
    ['32f', 0],
    ['50F', 10],
    ['14f', -10],
    ['98.6f', 37],
    ['-40f', -40],
    ['5°f', -15],
    ['45f', 7.2],
    ['31.99f', 0],
  ])('%s are %d degrees Celsius', (text, celsius) => {
    const weather = readWeather(text);
    expect('reading' in weather && weather.reading.temperature).toBe(celsius);
  });
});

describe('cloud', () => {
  // WMO-No. 306, Manual on Codes, code table 2700: 0 to 8 oktas, 9 for a sky that is hidden (from memory).
  test('is read in oktas from 0 to 9', () => {
    for (let oktas = 0; oktas <= 9; oktas += 1) {
      const weather = readWeather(`${oktas}/8`);
      expect('reading' in weather && weather.reading.cloud).toBe(oktas);
    }
    expect(readWeather('10/8')).toHaveProperty('problem');
  });
});
