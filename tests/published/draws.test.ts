import { expect, test } from 'vitest';
import { drawsFrom } from '../../src/almanac/figures/draws.ts';

// ISO/IEC 14882:2020, [rand.predef]: the 10,000th invocation of a default-constructed (seed 1)
// minstd_rand gives 399268537 (from memory).
test('Draws are those of minstd_rand, whose 10,000th number the C++ standard gives.', () => {
  const next = drawsFrom(1);
  for (let at = 1; at < 10_000; at += 1) next();
  expect(Math.round(next() * 2_147_483_647)).toBe(399_268_537);
});
