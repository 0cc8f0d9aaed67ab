import { expect, test } from 'vitest';
import { coarseBox, growingBox } from '../../src/outputs/bounding-box.ts';

function boxOf(...spots: [latitude: number, longitude: number][]) {
  const box = growingBox();
  for (const [latitude, longitude] of spots) box.add({ latitude, longitude });
  return box.box();
}

test('a box of one position is that position, and of none there is no box', () => {
  expect(boxOf([51.12, -2.85])).toEqual({ west: -2.85, east: -2.85, south: 51.12, north: 51.12 });
  expect(boxOf()).toBeNull();
});

test('the narrower way round the globe is taken', () => {
  expect(boxOf([0, 170], [10, -170])).toMatchObject({ west: 170, east: -170 });
  expect(boxOf([0, -10], [10, 20])).toMatchObject({ west: -10, east: 20 });
  expect(boxOf([0, 180], [0, 179])).toMatchObject({ west: 179, east: 180 });
});

test('a coarse box holds the whole cells of its corners and stays on the globe', () => {
  const cell = { west: -2.9, east: -2.9, south: 51.1, north: 51.1 };
  expect(coarseBox(cell)).toEqual({ west: -3, east: -2.8, south: 51, north: 51.2 });
  const globe = { west: -180, east: 180, south: -90, north: 90 };
  expect(coarseBox(globe)).toEqual(globe);
  expect(coarseBox({ west: -2.85432, east: -2.85432, south: 51.12345, north: 51.12345 })).toEqual({
    ...{ west: -3, east: -2.8, south: 51, north: 51.2 },
  });
});
