import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridPosition } from '../../src/ground/grid-position.ts';
import { readPosition } from '../../src/ground/read-position.ts';
import { problem, read } from './reading.ts';

describe('a position in degrees', () => {
  test.each([
    '51.12, -2.85',
    '51.12 -2.85',
    '51.12N 2.85W',
    '51.12° n; 2.85° w',
    'N51.12 W2.85',
    'N 51.12, W 2.85',
    '2.85W 51.12N',
    'W2.85, N51.12',
    '51°07.2′N 2°51′W',
    '51º 7.2’ N, 2º 51’ W',
    `51° 07' 12" N 2° 51' 0" W`,
    '51°07′12″N2°51′0″W',
    `51°7'12'' N 2°51' W`,
    'N51°07′12″ W2°51′00″',
    '51 07 12 N 2 51 00 W',
    '51 7.2 n 2 51.0 w',
    '51d07m12s, -2d51m0s',
    `+51°7.2', −2°51'`,
    `51°7.2', -2.85°`,
  ])('%j is one and the same', (text) => {
    const { position, uncertainty } = read(text);
    expect(position.latitude).toBeCloseTo(51.12, 9);
    expect(position.longitude).toBeCloseTo(-2.85, 9);
    expect(uncertainty).toBeNull();
  });

  test('with a small s behind is south, unless the other marks are letters', () => {
    expect(read('33.5s 18.25e').position).toEqual({ latitude: -33.5, longitude: 18.25 });
    expect(read('33d30m0s S 18d15m0s E').position).toEqual({ latitude: -33.5, longitude: 18.25 });
    expect(read('33d30m0s, 18d15m0s').position).toEqual({ latitude: 33.5, longitude: 18.25 });
  });

  test.each([
    ['91.5, 2.5', 'Latitude 91.5 is past 90'],
    ['51.5, 180.5', 'Longitude 180.5 is past 180'],
    [`90°0'1"N 2°0'0"W`, 'is past 90'],
    [`51°60'N 2°51'W`, 'Minutes 60 in'],
    [`51°7'60"N 2°51'0"W`, 'Seconds 60 in'],
    [`51.5°7'N 2°51'W`, '51.5 is followed by another'],
    [`51°7.5'12"N 2°51'0"W`, '7.5 is followed by another'],
    ['-51.12S 2.85W', 'both a sign and a letter'],
    ['51.12N 2.85S', 'one direction twice'],
    ['51.12E, 2.85W', 'one direction twice'],
    ['51° 7, 2° 51', 'write minutes with their mark'],
    ['51,12 -2,85', 'write decimal degrees with a point'],
    ['51, -3', 'write decimal degrees with a point'],
    ['Sallow Mere', 'is no position. Write decimal degrees'],
    ['', 'is no position'],
    ['51.12', 'is no position'],
  ])('%j is told to be mended', (text, sentence) => {
    expect(problem(text)).toContain(sentence);
  });

  test('reads back as written in degrees, minutes and seconds, to a ten-thousandth of a second', () => {
    const angle = (most: number) =>
      fc.record({
        degrees: fc.integer({ min: 0, max: most - 1 }),
        minutes: fc.integer({ min: 0, max: 59 }),
        seconds: fc.integer({ min: 0, max: 599_999 }).map((number) => number / 10_000),
        behind: fc.boolean(),
      });
    type Written = { degrees: number; minutes: number; seconds: number; behind: boolean };
    const inDegrees = ({ degrees, minutes, seconds }: Written) =>
      degrees + minutes / 60 + seconds / 3600;
    const marks = fc.constantFrom(
      ['°', '′', '″'],
      ['° ', "' ", '"'],
      [' ', ' ', ''],
      ['d', 'm', 's'],
    );
    fc.assert(
      fc.property(angle(90), angle(180), fc.boolean(), marks, (north, east, west, [d, m, s]) => {
        const body = ({ degrees, minutes, seconds }: Written) =>
          `${degrees}${d}${minutes}${m}${seconds.toFixed(4)}${s}`;
        const letter = west ? 'W' : 'E';
        const text = north.behind
          ? `${body(north)} N, ${body(east)} ${letter}`
          : `S${body(north)} ${letter}${body(east)}`;
        const { latitude, longitude } = read(text).position;
        expect(latitude).toBeCloseTo(inDegrees(north) * (north.behind ? 1 : -1), 9);
        expect(longitude).toBeCloseTo(inDegrees(east) * (west ? -1 : 1), 9);
      }),
    );
  });
});

describe('a geo: URI', () => {
  test.each([
    ['geo:51.12', 'is no whole geo: URI'],
    ['geo:51.12, -2.85', 'without spaces'],
    ['geo:95,2', 'Latitude 95 is past 90'],
    ['geo:51,181', 'Longitude 181 is past 180'],
    ['geo:51,2;crs=nad27', 'goes by nad27: only wgs84 is read'],
    ['geo:51,2;u=-5', 'no number of metres'],
    ['geo:51,2;u', 'no number of metres'],
  ])('%j is told to be mended', (text, sentence) => {
    expect(problem(text)).toContain(sentence);
  });

  test('that claims no uncertainty at all has none that is known', () => {
    expect(read('GEO:51.12,-2.85;u=0').uncertainty).toBeNull();
  });
});

test('Whatever is typed comes to a position on the globe or to a sentence', () => {
  const bits = fc.constantFrom(
    '51',
    '.12',
    '°',
    "'",
    '"',
    'N',
    'S',
    'W',
    ' ',
    ',',
    '-',
    'ST',
    '30U',
    'VC',
    '123',
    'geo:',
    ';u=',
    'd',
    'm',
  );
  const text = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.array(bits, { maxLength: 12 }).map((all) => all.join('')),
  );
  fc.assert(
    fc.property(text, (typed) => {
      const found = readPosition(typed, gridPosition);
      if ('problem' in found) expect(found.problem).toMatch(/\.$/);
      else {
        expect(Math.abs(found.position.latitude)).toBeLessThanOrEqual(90);
        expect(Math.abs(found.position.longitude)).toBeLessThanOrEqual(180);
        expect(found.uncertainty ?? 1).toBeGreaterThan(0);
      }
    }),
    { numRuns: 2000 },
  );
});
