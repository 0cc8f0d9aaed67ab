import fc from 'fast-check';
import mgrs from 'mgrs';
import proj4 from 'proj4';
import { describe, expect, test } from 'vitest';
import { distanceBetween } from '../../src/ground/distance.ts';
import { NATIONAL_GRIDS } from '../../src/ground/grid-position.ts';
import { readGridReference } from '../../src/ground/grid-reference.ts';
import { needsGrids, readPosition } from '../../src/ground/read-position.ts';
import { problem, read } from './reading.ts';

describe('a grid reference', () => {
  test.each([
    ['st401285', 'ST 401 285'],
    ['ST 4010028500', 'ST 40100 28500'],
    ['h123456', 'H 123 456'],
    ['30uvc123678', '30U VC 123 678'],
    ['30u 510000mE 5663000mN', '30U 510000 5663000'],
    ['30U 510000, 5663000', '30 north 510000 5663000'],
  ])('%j is the same as %j', (one, two) => {
    expect(readGridReference(one)).toEqual(readGridReference(two));
    expect(read(one)).toEqual(read(two));
  });

  test.each([
    ['ST 4012 85', 'as many figures east as north'],
    ['ST 40128', 'as many figures east as north'],
    ['ST 401285 401285', 'as many figures east as north'],
    ['IT 401 285', 'grids have no letter I'],
    ['I 123 456', 'grids have no letter I'],
    ['AB 123 456', 'AB is no square of the British grid'],
    ['OC 123 456', 'OC is no square of the British grid'],
    ['30U IO 123 456', 'never I or O'],
    ['30O VC 123 456', 'a band that no grid has'],
    ['30A VC 123 456', 'lies at a pole'],
    ['61U VC 123 456', 'Zone 61'],
    ['30U ZZ 1234 5678', 'There is no square 30UZZ'],
    ['31X CA 11 22', 'There is no square 31XCA'],
    ['30U VC 123 45', 'as many figures east as north'],
    ['30N 510000 5663000', 'does not lie in band N'],
    ['30S 510000 4000000', 'the band S, north of the equator, or the southern half'],
    ['30 north 510000 15663000', 'is past 10000000'],
  ])('%j is told to be mended', (text, sentence) => {
    expect(problem(text)).toContain(sentence);
  });

  test('of any British or Irish square leads back to its middle, and leaves open half its diagonal', () => {
    const digits = fc
      .integer({ min: 1, max: 5 })
      .chain((many) =>
        fc.tuple(...['E', 'N'].map(() => fc.stringMatching(RegExp(`^\\d{${many}}$`)))),
      );
    const squares = fc.constantFrom('ST', 'TG', 'SV', 'HP', 'NC', 'H', 'O', 'V', 'B');
    fc.assert(
      fc.property(squares, digits, (letters, parts) => {
        const text = `${letters} ${parts.join(' ')}`;
        const reference = readGridReference(text);
        if (reference === null || 'problem' in reference || !('side' in reference))
          throw new Error(text);
        if (reference.grid === 'MGRS') throw new Error(text);
        const { latitude, longitude } = read(text).position;
        const { projection, datum } = NATIONAL_GRIDS[reference.grid];
        const [easting = 0, northing = 0] = proj4(`${projection} ${datum} +units=m`).forward([
          longitude,
          latitude,
        ]);
        // A sixth decimal of a degree is 0.1 m; proj4's shift there and back agrees to centimetres.
        expect(Math.hypot(easting - reference.easting, northing - reference.northing)).toBeLessThan(
          0.2,
        );
        const open = Math.hypot(reference.side / Math.SQRT2, 5);
        expect(read(text).uncertainty).toBe(Math.ceil(open));
      }),
    );
  });

  test('of MGRS, cut from any position, leads back to it', () => {
    const latitudes = fc.double({ min: -79.9, max: 83.9, noNaN: true });
    const longitudes = fc.double({ min: -180, max: 179.999, noNaN: true });
    fc.assert(
      fc.property(
        latitudes,
        longitudes,
        fc.integer({ min: 1, max: 5 }),
        (latitude, longitude, digits) => {
          const { position, uncertainty } = read(mgrs.forward([longitude, latitude], digits));
          const metres = distanceBetween(position, { latitude, longitude });
          // The library's series agrees with itself to about a metre; a square is cut, never rounded.
          expect(metres).toBeLessThan((uncertainty ?? 0) + 2);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('is asked for again while the grids are not loaded, and only that', () => {
    const found = readPosition('ST 401 285', null);
    expect('problem' in found && found.problem).toContain('press Enter again');
    expect(needsGrids('Sallow Mere ST 401 285')).toBe(true);
    expect(needsGrids('Sallow Mere 51.12, -2.85')).toBe(false);
    expect(needsGrids('Sallow Mere')).toBe(false);
  });
});
