import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  COMPASS,
  PRECIPITATION,
  readWeather,
  VISIBILITY,
  Weather,
  weatherWords,
} from '../../src/visit/weather.ts';
import { weatherCaution } from '../../src/visit/weather-caution.ts';
import { weatherText } from '../../src/visit/weather-text.ts';
import { forceOf } from '../../src/visit/weather-wind.ts';
import { START } from './made.ts';

function reading(text: string) {
  const read = readWeather(text);
  if ('problem' in read) throw new Error(read.problem);
  return read.reading;
}
const nothing = {
  temperature: null,
  windForce: null,
  windSpeed: null,
  windFrom: null,
  visibility: null,
  cloud: null,
  precipitation: null,
  remarks: null,
};

describe('a line of weather', () => {
  test.each([
    [
      '7c f3 sw 6/8 drizzle',
      { temperature: 7, windForce: 3, windFrom: 'SW', cloud: 6, precipitation: 'drizzle' },
    ],
    [
      'drizzle 6/8 sw f3 7c',
      { temperature: 7, windForce: 3, windFrom: 'SW', cloud: 6, precipitation: 'drizzle' },
    ],
    ['-3.5C', { temperature: -3.5 }],
    ['7,5c', { temperature: 7.5 }],
    ['7c, f3, NNE, fog', { temperature: 7, windForce: 3, windFrom: 'NNE', precipitation: 'fog' }],
    ['12°c', { temperature: 12 }],
    ['f12', { windForce: 12 }],
    ['0/8', { cloud: 0 }],
    ['9/8', { cloud: 9 }],
    ['light rain after frost', { precipitation: 'rain', remarks: 'light after frost' }],
    ['rain mist', { precipitation: 'rain', remarks: 'mist' }],
    ['rain rain', { precipitation: 'rain' }],
    ['7c 7c', { temperature: 7 }],
    ['still, bright', { remarks: 'still, bright' }],
    ['swell', { remarks: 'swell' }],
    ['7', { remarks: '7' }],
    ['7 c', { temperature: 7 }],
    ['7 °C, 4 m/s', { temperature: 7, windForce: 3, windSpeed: 4 }],
    ['15 km/h sw', { windForce: 3, windSpeed: 4.1667, windFrom: 'SW' }],
    ['4,5m/s', { windForce: 3, windSpeed: 4.5 }],
    ['wind 10 mph 240°', { windForce: 3, windSpeed: 4.4704, windFrom: 'WSW' }],
    ['f4 15 km/h', { windForce: 4, windSpeed: 4.1667 }],
    ['15 km/h f4', { windForce: 4, windSpeed: 4.1667 }],
    ['f3 gusts f6', { windForce: 3, remarks: 'gusts f6' }],
    ['f3 gusting to 40 km/h', { windForce: 3, remarks: 'gusting to 40 km/h' }],
    ['gusts', { remarks: 'gusts' }],
    ['good vis', { visibility: 'good' }],
    ['vis 2 km rain', { visibility: 'poor', precipitation: 'rain' }],
    ['moderate rain', { precipitation: 'rain', remarks: 'moderate' }],
    ['vis hazy', { remarks: 'vis hazy' }],
    ['no rain', { remarks: 'no rain' }],
    ['after rain dry', { precipitation: 'dry', remarks: 'after rain' }],
    ['wind dropping', { remarks: 'wind dropping' }],
    ['6/9', { remarks: '6/9' }],
  ])('%j is understood', (text, want) => {
    expect(reading(text)).toEqual({ ...nothing, verbatim: text, ...want });
  });

  test('keeps what was typed word for word, but for spaces', () => {
    expect(reading('  7c \t F3   Sw ').verbatim).toBe('7c F3 Sw');
  });

  test.each([
    ['', 'Type the weather'],
    ['   ', 'Type the weather'],
    ['f13', 'Beaufort force goes from f0 to f12'],
    ['10/8', 'cloud goes from 0/8 to 8/8'],
    ['99c', 'no air has been that hot'],
    ['-99c', 'no air has been that cold'],
    ['200f', 'no air has been that hot'],
    ['7c 9c', '"9c": the temperature was given before'],
    ['f3 f4', '"f4": the wind force was given before'],
    ['15 km/h 4 m/s', '"4 m/s": the wind speed was given before'],
    ['f1 15 m/s', 'Force f1 and a speed of force f7 are far apart'],
    ['500 km/h', 'no wind near the ground has been that strong'],
    ['f3-4', '"f3-4": give one force, for example f4'],
    ['15-20 km/h', '"15-20 km/h": give one speed'],
    ['5-7c', '"5-7c": give one temperature, for example 7c'],
    ['5-7/8', '"5-7/8": give one cloud cover, for example 7/8'],
    ['gusts f14', '"f14": Beaufort force goes from f0 to f12'],
    ['7°', '"7°": for a temperature write 7c, for a wind direction 007°'],
    ['-5°', '"-5°": for a temperature write -5c.'],
    ['400°', 'a wind direction goes from 000° to 360°'],
    ['vis good vis poor', '"vis poor": the visibility was given before'],
    ['n s', '"s": the wind direction was given before'],
    ['1/8 2/8', '"2/8": the cloud was given before'],
  ])('%j is told to be mended', (text, sentence) => {
    const read = readWeather(text);
    expect('problem' in read && read.problem).toContain(sentence);
  });

  test('knows the sixteen points of the compass, clockwise, each once', () => {
    expect(new Set(COMPASS).size).toBe(16);
    for (const point of COMPASS) expect(reading(point.toLowerCase()).windFrom).toBe(point);
    expect(COMPASS.filter((_, at) => at % 4 === 0)).toEqual(['N', 'E', 'S', 'W']);
  });

  test('of any text gives a reading that a file can hold as it is, or a sentence', () => {
    const words = fc.constantFrom(
      '7c',
      '31.9f',
      '32f',
      '-0c',
      '-0.04c',
      '27 kn',
      'km/h',
      '12',
      'vis',
      'gusts',
      'wind',
      '240°',
      'f3',
      'sw',
      '8/8',
      'rain',
      ',',
      '°',
      'x',
    );
    const line = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(words).map((all) => all.join(' ')),
    );
    fc.assert(
      fc.property(line, (text) => {
        const read = readWeather(text);
        if ('problem' in read) {
          expect(read.problem).toMatch(/[.]$/);
          return;
        }
        const weather = { time: START, ...read.reading };
        expect(Weather.parse(JSON.parse(JSON.stringify(weather)))).toEqual(weather);
        expect(weatherWords(weather)).not.toContain('null');
      }),
      { numRuns: 500 },
    );
  });
});

describe('the weather in words', () => {
  test.each([
    ['7c f3 sw 6/8 drizzle', '7 °C, F3 SW, 6/8, drizzle'],
    ['sw', 'SW'],
    ['f0', 'F0'],
    ['0c 0/8', '0 °C, 0/8'],
    ['light rain', 'light rain'],
    ['15 km/h sw', 'F3 4.2 m/s SW'],
    ['7c vis good', '7 °C, vis good'],
    ['bright', 'bright'],
  ])('%j is %j', (text, words) => {
    expect(weatherWords({ time: START, ...reading(text) })).toBe(words);
  });
});

describe('the weather to be mended', () => {
  const words = fc.constantFrom(
    ...['7c', '45 f', 'f3', '15 km/h', '27 kn', '240°', 'sw', '6/8', 'rain', 'fog', 'no', 'after'],
    ...['vis', 'good', '2', 'km', 'km/h', '10', 'wind', 'gusts', 'to', 'light', 'f', '9/8,'],
  );

  test('is the line as it was typed, which reads back as it was', () => {
    fc.assert(
      fc.property(fc.array(words, { minLength: 1, maxLength: 8 }), (typed) => {
        const read = readWeather(typed.join(' '));
        if ('problem' in read) return;
        expect(weatherText(read.reading)).toBe(read.reading.verbatim);
        expect(reading(weatherText(read.reading))).toEqual(read.reading);
      }),
      { numRuns: 1000 },
    );
  });

  test('is made of the fields where they were changed, and reads back as those', () => {
    const orNull = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });
    const tenths = fc.integer({ min: -900, max: 600 }).map((each) => each / 10);
    const speeds = fc.integer({ min: 0, max: 1_150_000 }).map((each) => each / 10_000);
    const wind = fc.oneof(
      orNull(fc.integer({ min: 0, max: 12 })).map((windForce) => ({ windForce, windSpeed: null })),
      // The force is that of the speed, or beside it where another unit was typed.
      fc.tuple(speeds, fc.constantFrom(-1, 0, 1)).map(([windSpeed, beside]) => ({
        windForce: Math.min(12, Math.max(0, forceOf(windSpeed, 'm/s') + beside)),
        windSpeed,
      })),
    );
    const fields = fc.record({
      temperature: orNull(tenths),
      windFrom: orNull(fc.constantFrom(...COMPASS)),
      cloud: orNull(fc.integer({ min: 0, max: 9 })),
      precipitation: orNull(fc.constantFrom(...PRECIPITATION)),
      visibility: orNull(fc.constantFrom(...VISIBILITY)),
      remarks: orNull(fc.constantFrom('light', 'gusts f9', 'after frost', 'no wind, bright')),
    });
    fc.assert(
      fc.property(fields, wind, (others, windy) => {
        const changed = { verbatim: 'swell', ...others, ...windy };
        const text = weatherText(changed);
        if (text === '') return;
        expect(reading(text)).toEqual({ ...changed, verbatim: text });
      }),
      { numRuns: 1000 },
    );
  });
});

describe('a caution about the weather', () => {
  test.each([
    ['drizzle fog', 'Fog: '],
    ['dry mist', 'Mist: '],
    ['f6 vis poor', 'Wind F6, poor visibility: '],
  ])('for %j begins with %j', (text, words) => {
    expect(weatherCaution(reading(text))?.startsWith(words)).toBe(true);
  });

  test.each(['dry after fog', 'no fog', 'f3 gusts f6', 'heavy cloud'])(
    'is not given for %j',
    (text) => {
      expect(weatherCaution(reading(text))).toBeNull();
    },
  );
});
