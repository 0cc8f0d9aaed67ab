import type { Position } from './position.ts';
import type { Segment } from './track.ts';

/** Milliseconds between two points over which a position between them is still told. */
export const LONGEST_GAP = 5 * 60_000;
/** Decimals of a degree that are kept: a tenth of a metre, less than any receiver knows. */
const DECIMALS = 6;

interface Fix {
  time: number;
  position: Position;
}

/**
 * Tells where the observer was at a moment (epoch milliseconds), in a straight line between the points
 * before and after it; null before the first and after the last, and in a gap of more than
 * `LONGEST_GAP`.
 */
export function positionsOf(segments: readonly Segment[]): (time: number) => Position | null {
  const fixes = segments
    .flat()
    .flatMap(({ time, position }): Fix[] => (time === null ? [] : [{ time, position }]))
    .sort((one, two) => one.time - two.time);
  return (time) => {
    const at = firstFrom(fixes, time);
    const [before, after] = [fixes[at - 1], fixes[at]];
    if (after?.time === time) return rounded(after.position);
    if (!before || !after || after.time - before.time > LONGEST_GAP) return null;
    return between(before, after, (time - before.time) / (after.time - before.time));
  };
}

/** Place of the first fix that is not before a moment, by halving. */
function firstFrom(fixes: readonly Fix[], time: number): number {
  let [from, to] = [0, fixes.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((fixes[middle]?.time ?? 0) < time) from = middle + 1;
    else to = middle;
  }
  return from;
}

function between({ position: one }: Fix, { position: two }: Fix, share: number): Position {
  // The short way round, also over the date line.
  const east = ((((two.longitude - one.longitude + 180) % 360) + 360) % 360) - 180;
  const longitude = one.longitude + east * share;
  return rounded({
    latitude: one.latitude + (two.latitude - one.latitude) * share,
    longitude: longitude > 180 ? longitude - 360 : longitude < -180 ? longitude + 360 : longitude,
  });
}

function rounded({ latitude, longitude }: Position): Position {
  const whole = (degrees: number) => Number(degrees.toFixed(DECIMALS)) + 0;
  return { latitude: whole(latitude), longitude: whole(longitude) };
}
