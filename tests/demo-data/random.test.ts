import { expect, test } from 'vitest';
import { randomFrom } from '../../demo-data/model/random.ts';

// The first draws of mulberry32 with the seed 0, from memory.
test('The generator gives the known first draws of mulberry32.', () => {
  const random = randomFrom(0);
  expect(random.next()).toBeCloseTo(0.266_429_208_684_712_65, 12);
  expect(random.next()).toBeCloseTo(0.000_329_745_700_582_861_9, 12);
  expect(random.next()).toBeCloseTo(0.223_272_027_447_819_7, 12);
});

test('Draws are spread evenly enough: mean and variance of a uniform draw (1/2, 1/12).', () => {
  const random = randomFrom(7);
  const draws = Array.from({ length: 20_000 }, random.next);
  const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
  const variance = draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0) / draws.length;
  expect(mean).toBeCloseTo(1 / 2, 1);
  expect(variance).toBeCloseTo(1 / 12, 2);
});

test('A whole draw reaches both ends and nothing past them.', () => {
  const random = randomFrom(3);
  const draws = Array.from({ length: 200 }, () => random.whole(2, 5));
  expect(new Set(draws)).toEqual(new Set([2, 3, 4, 5]));
});
