/** The two halves of the figures of a grid square, and how many digits each has. */
interface Halves {
  east: number;
  north: number;
  digits: number;
}

const MOST_DIGITS = 5;

/**
 * Halves the figures behind the letters of a grid square, written in one or in two groups: 2 to 10
 * of them. Null where they can't be halved.
 */
export function halves(one: string, two: string | undefined): Halves | null {
  const digits = two === undefined ? one.length / 2 : one.length;
  if (!Number.isInteger(digits) || digits < 1 || digits > MOST_DIGITS) return null;
  if (two !== undefined && two.length !== digits) return null;
  const figures = one + (two ?? '');
  return { east: Number(figures.slice(0, digits)), north: Number(figures.slice(digits)), digits };
}

/** Says what is wrong with figures that can't be halved. */
export function uneven(typed: string, example: string): string {
  return `"${typed}": a grid square has as many figures east as north, 2 to ${2 * MOST_DIGITS} in all: write for example ${example}.`;
}
