import type { GivenSpot } from './given-place.ts';

/** The least box that holds positions; `west` is greater than `east` where it lies over the antimeridian. */
export interface Box {
  west: number;
  south: number;
  east: number;
  north: number;
}

/** A box that grows with each position; it keeps none of them. */
export interface GrowingBox {
  add(spot: Pick<GivenSpot, 'latitude' | 'longitude'>): void;
  /** Null where nothing was added. */
  box(): Box | null;
}

interface Span {
  least: number;
  most: number;
}

/**
 * Of the box that is counted from 180° west and the one that is counted from the meridian of Greenwich
 * the narrower is taken, so that two sides of the antimeridian do not span the globe (RFC 7946, 5.2).
 */
export function growingBox(): GrowingBox {
  const latitude = emptySpan();
  const fromWest = emptySpan();
  const fromGreenwich = emptySpan();
  return {
    add(spot) {
      widen(latitude, spot.latitude);
      widen(fromWest, spot.longitude);
      widen(fromGreenwich, spot.longitude < 0 ? spot.longitude + 360 : spot.longitude);
    },
    box() {
      if (latitude.least > latitude.most) return null;
      const over = width(fromGreenwich) < width(fromWest);
      const { least, most } = over ? fromGreenwich : fromWest;
      return {
        west: within(least),
        south: latitude.least,
        east: within(most),
        north: latitude.most,
      };
    },
  };
}

function emptySpan(): Span {
  return { least: Number.POSITIVE_INFINITY, most: Number.NEGATIVE_INFINITY };
}

function widen(span: Span, value: number): void {
  span.least = Math.min(span.least, value);
  span.most = Math.max(span.most, value);
}

function width({ least, most }: Span): number {
  return most - least;
}

/** Degrees beyond 180 from the other side; sums of halves are cut to the digits that were there. */
function within(degrees: number): number {
  return degrees > 180 ? Number((degrees - 360).toFixed(9)) : degrees;
}

/** The box on a grid of a tenth of a degree, outwards, so that its corners tell no place. */
export function coarseBox({ west, south, east, north }: Box): Box {
  const down = (degrees: number, least: number) =>
    Math.max(least, Math.floor(degrees * 10 - 0.5) / 10);
  const up = (degrees: number, most: number) => Math.min(most, Math.ceil(degrees * 10 + 0.5) / 10);
  return {
    west: down(west, -180),
    south: down(south, -90),
    east: up(east, 180),
    north: up(north, 90),
  };
}
