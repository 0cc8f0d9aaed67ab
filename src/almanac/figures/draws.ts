import type { NextDraw } from './rate.ts';

const MODULUS = 2_147_483_647;
const MULTIPLIER = 48_271n;

/**
 * Draws from 0 up to, not including, 1 that the same seed (1 to 2 147 483 646) always gives in the same
 * order, so that a figure that draws does not change while its visits stay as they are: x becomes
 * 48271 x mod 2^31 - 1 (Park, Miller & Stockmeyer 1993; `minstd_rand` of ISO/IEC 14882, [rand.predef]).
 */
export function drawsFrom(seed: number): NextDraw {
  let state = BigInt(seed);
  return () => {
    state = (state * MULTIPLIER) % BigInt(MODULUS);
    return Number(state) / MODULUS;
  };
}
