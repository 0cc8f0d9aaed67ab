import { describe, expect, test } from 'vitest';
import { BEAUFORT, readWeather } from '../../src/visit/weather.ts';

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
    expect(BEAUFORT).toEqual(FORCES);
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
