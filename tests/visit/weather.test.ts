import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COMPASS, readWeather, Weather, weatherWords } from '../../src/visit/weather.ts';
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
    ['bright', 'bright'],
  ])('%j is %j', (text, words) => {
    expect(weatherWords({ time: START, ...reading(text) })).toBe(words);
  });
});
