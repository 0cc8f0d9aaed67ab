import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gridPosition } from '../../src/ground/grid-position.ts';
import { Place, placeKey, readPlace } from '../../src/visit/place.ts';

function place(text: string) {
  const read = readPlace(text, gridPosition);
  if ('problem' in read) throw new Error(read.problem);
  return read.place;
}

describe('a place as typed', () => {
  test.each([
    ['Sallow Mere 51.12, -2.85', 'Sallow Mere', 51.12, -2.85, '51.12, -2.85'],
    ['Sallow Mere 51.12N 2.85W', 'Sallow Mere', 51.12, -2.85, '51.12N 2.85W'],
    ['Sallow Mere 51.12° n, 2.85° w', 'Sallow Mere', 51.12, -2.85, '51.12° n, 2.85° w'],
    ['Sallow Mere @51.12,-2.85', 'Sallow Mere', 51.12, -2.85, '51.12,-2.85'],
    ['  Sallow   Mere,  51.12   2.85 ', 'Sallow Mere', 51.12, 2.85, '51.12 2.85'],
    ['Cold Point 33.5S 18.25E', 'Cold Point', -33.5, 18.25, '33.5S 18.25E'],
    ['Hide 3 51.12 -2.85', 'Hide 3', 51.12, -2.85, '51.12 -2.85'],
    ['Hide 3, 51.12, -2.85', 'Hide 3', 51.12, -2.85, '51.12, -2.85'],
    ['Sallow Mere 51.12 -3', 'Sallow Mere', 51.12, -3, '51.12 -3'],
    ['Sallow Mere 51N 3W', 'Sallow Mere', 51, -3, '51N 3W'],
    ['Sallow Mere 51.12, −2.85', 'Sallow Mere', 51.12, -2.85, '51.12, −2.85'],
    ['Null Buoy 0.0, -0.0', 'Null Buoy', 0, 0, '0.0, -0.0'],
    ['North Pole 90.0, 180.0', 'North Pole', 90, 180, '90.0, 180.0'],
    ['Sallow Mere N51.12 W2.85', 'Sallow Mere', 51.12, -2.85, 'N51.12 W2.85'],
    [`Hide 3 51°07'12"N 2°51'0"W`, 'Hide 3', 51.12, -2.85, `51°07'12"N 2°51'0"W`],
    ['Hide 3 51 7.2 N 2 51.0 W', 'Hide 3', 51.12, -2.85, '51 7.2 N 2 51.0 W'],
    ['Hide 3 geo:51.12,-2.85', 'Hide 3', 51.12, -2.85, 'geo:51.12,-2.85'],
    ['Sallow Mere ST 401 285', 'Sallow Mere', 51.053161, -2.855267, 'ST 401 285'],
    ['Field 12, ST4028', 'Field 12', 51.052748, -2.850266, 'ST4028'],
    ['Lough End H 123 456', 'Lough End', 54.359393, -7.810781, 'H 123 456'],
    ['Sallow Mere 30U 510000 5663000', 'Sallow Mere', 51.118389, -2.857124, '30U 510000 5663000'],
  ])('%j has a name and a position', (text, name, latitude, longitude, verbatimCoordinates) => {
    expect(place(text)).toMatchObject({
      name,
      position: { latitude, longitude },
      verbatimCoordinates,
      timeZone: null,
    });
  });

  test.each([
    'Sallow Mere',
    'Field 12 14',
    'Field 12',
    'Plot 3 5E',
    'Hide 2 51.12',
    'Gate 5 W',
    'Mere 51.12',
    "Hunter's 5's",
    'Route 1234.5 6789.5',
    'Étang 2',
    'Levels 2.85x',
    'Gate SE 12',
    'Field B 1234',
    'Mill St 401 285',
    'Levels, B2',
    'Plot AB 1234',
  ])('%j is a name alone', (text) => {
    expect(place(text)).toMatchObject({
      name: text,
      position: null,
      verbatimCoordinates: null,
      timeZone: null,
    });
  });

  test.each([
    ['', 'A place needs a name'],
    [' \t ', 'A place needs a name'],
    ['51.12, -2.85', 'Put a name before 51.12, -2.85'],
    ['Mere 91.2, 2.85', 'Latitude 91.2 is past 90'],
    ['Mere -90.1, 2.85', 'Latitude -90.1 is past 90'],
    ['Mere 51.2, 180.1', 'Longitude 180.1 is past 180'],
    ['Mere -51.2S 2.8W', 'both a sign and a letter'],
    ['Mere 51.2 -2.8W', 'both a sign and a letter'],
    ['Mere 51,12N 2,85W', 'write decimal degrees with a point'],
    ['Mere 51,12 -2,85', 'write decimal degrees with a point'],
    ['Mere 51° 7, 2° 51', 'write minutes with their mark'],
    [`Mere 51°67'N 2°51'W`, 'Minutes 67 in'],
    ['Mere geo:51.12', 'is no whole geo: URI'],
    ['Mere ST 4012 85', 'as many figures east as north'],
    ['Mere AB 123 456', 'AB is no square of the British grid'],
    ['ST 401 285', 'Put a name before ST 401 285'],
    ['Mere 95, 3', 'write decimal degrees with a point'],
    ['Mere 51, -3', 'write decimal degrees with a point'],
  ])('%j is told to be mended', (text, sentence) => {
    const read = readPlace(text, gridPosition);
    expect('problem' in read && read.problem).toContain(sentence);
  });

  test('keeps the metres that its form leaves open', () => {
    expect(place('Sallow Mere geo:51.12,-2.85;u=35').uncertainty).toBe(35);
    expect(place('Sallow Mere ST 401 285').uncertainty).toBe(71);
    expect(place('Sallow Mere 51.12, -2.85').uncertainty).toBeNull();
  });

  test('with a grid reference is asked for again while the grids are not loaded', () => {
    const read = readPlace('Sallow Mere ST 401 285', null);
    expect('problem' in read && read.problem).toContain('press Enter again');
  });

  test('gives back any position that is written behind a name, and never -0', () => {
    const degrees = (most: number) => fc.integer({ min: -most * 10_000, max: most * 10_000 });
    const name = fc.constantFrom(
      'Sallow Mere',
      'Hide 3',
      'Ashwick Levels, east',
      "St. Bride's",
      'Mere -',
    );
    fc.assert(
      fc.property(name, degrees(90), degrees(180), fc.boolean(), (words, north, east, comma) => {
        const written = [north, east].map((each) => (each / 10_000).toFixed(4));
        const { position } = place(`${words} ${written.join(comma ? ', ' : ' ')}`);
        expect(position).toEqual({ latitude: north / 10_000 + 0, longitude: east / 10_000 + 0 });
      }),
    );
  });

  test('never throws, and what it gives passes the schema', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary' }),
        fc.constantFrom('', ' 51.1, -2.8', ' 9N 8'),
        (text, tail) => {
          const read = readPlace(text + tail, gridPosition);
          if ('place' in read) expect(Place.safeParse(read.place).success).toBe(true);
          else expect(read.problem).toMatch(/\.$/);
        },
      ),
    );
  });
});

describe('the key of a place', () => {
  test('is the same however the name is spaced, capitalised or composed', () => {
    const key = placeKey('Sallow Mére');
    for (const name of [' sallow  MÉRE ', 'Sallow\tMe\u0301re', 'SALLOW ME\u0301RE'])
      expect(placeKey(name)).toBe(key);
    expect(placeKey('Sallow Mere')).not.toBe(key);
  });
});
