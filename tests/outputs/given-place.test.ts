import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceBetween } from '../../src/ground/distance.ts';
import { placeOf } from '../visit/made.ts';
import { at, given, OTTER } from './given.ts';

describe('the uncertainty of a place that is given coarser', () => {
  // 13,147 m: tests/published/generalise.test.ts.
  test('covers the cell and what was uncertain before', () => {
    expect(given(at(placeOf(), { taxon: OTTER })).spot?.uncertainty).toBe(13_147);
    const uncertain = at(placeOf({ uncertainty: 250 }), { taxon: OTTER });
    expect(given(uncertain).spot?.uncertainty).toBe(13_397);
  });

  test('covers every entry, and all share one cell, so that no border between cells is told', () => {
    const latitude = fc.double({ min: -80, max: 80, noNaN: true });
    const longitude = fc.double({ min: -179, max: 179, noNaN: true });
    const away = fc.double({ min: -0.2, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(latitude, longitude, fc.array(away, { maxLength: 4 }), (north, east, steps) => {
        const own = steps.map((step) => ({ latitude: north + step, longitude: east - step }));
        const place = placeOf({ position: { latitude: north, longitude: east } });
        const visit = at(place, { taxon: OTTER }, ...own.map((position) => ({ position })));
        const { spot, entries } = given(visit);
        if (!spot) throw new Error('no coordinates');
        for (const position of [{ latitude: north, longitude: east }, ...own])
          expect(distanceBetween(spot, position)).toBeLessThanOrEqual(spot.uncertainty ?? 0);
        expect(new Set(entries.map((entry) => entry.spot))).toEqual(new Set([spot]));
      }),
    );
  });

  test('is that of the place where it is not hidden, and unknown where nobody said', () => {
    expect(given(at(placeOf({ uncertainty: 30 }), {})).spot?.uncertainty).toBe(30);
    expect(given(at(placeOf(), {})).spot?.uncertainty).toBeNull();
  });

  test('is found for a visit whose entries alone have positions', () => {
    const position = { latitude: 51.12345, longitude: -2.85432 };
    const visit = at(placeOf({ position: null }), { taxon: OTTER, position });
    expect(given(visit).spot).toMatchObject({ latitude: 51.1, longitude: -2.9 });
  });
});
