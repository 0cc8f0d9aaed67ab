import type { Position } from '../../src/ground/position.ts';

/** astronomy-engine counts days from 2000-01-01T12:00Z. */
export const toEngine = (epoch: number) => epoch / 86_400_000 - 10_957.5;
export const fromEngine = (days: number) => (days + 10_957.5) * 86_400_000;

export const secondsApart = (one: number, two: number) => Math.abs(one - two) / 1000;

interface Case {
  position: Position;
  epoch: number;
  where: string;
}

/**
 * Places up to 60 degrees of latitude and moments from 1950 to 2050, always the same ones: the
 * generator of Park and Miller (1988) from a fixed start.
 */
export function randomPlaces(count: number): Case[] {
  let state = 20_261_114;
  const random = () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return Array.from({ length: count }, () => {
    const position = { latitude: 120 * random() - 60, longitude: 360 * random() - 180 };
    const epoch = Math.round(fromEngine((100 * random() - 50) * 365.25));
    const { latitude, longitude } = position;
    const where = `${new Date(epoch).toISOString()} at ${latitude.toFixed(3)}, ${longitude.toFixed(3)}`;
    return { position, epoch, where };
  });
}

/**
 * The largest of some differences with the five largest in words, for the message of a failing test;
 * with SKY_DIFFERENCES=1 in the environment they are printed in any case.
 */
export function largest(differences: readonly { where: string; by: number }[]): {
  by: number;
  words: string;
} {
  const sorted = differences.toSorted((one, two) => two.by - one.by);
  const words = sorted
    .slice(0, 5)
    .map(({ where, by }) => `${by.toFixed(3)}  ${where}`)
    .join('\n');
  if (process.env.SKY_DIFFERENCES) console.log(`largest differences\n${words}`);
  return { by: sorted[0]?.by ?? Number.POSITIVE_INFINITY, words: `largest differences\n${words}` };
}
