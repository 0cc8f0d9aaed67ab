import type { Position } from './position.ts';

/** A position on a coarser grid, as decimal text, with the distance in metres that covers its cell. */
export interface GeneralPosition {
  latitude: string;
  longitude: string;
  uncertainty: number;
}

/** WGS 84: equatorial radius in metres and first eccentricity squared. */
const RADIUS = 6_378_137;
const ECCENTRICITY_2 = 0.00669437999014;

/**
 * A position rounded to a grid of 0.1, 0.01 or 0.001 degrees (`decimals` 1, 2 or 3), never
 * randomised (Chapman 2020, Current Best Practices for Generalizing Sensitive Species Occurrence
 * Data, doi 10.15468/doc-5jp4-5g10).
 */
export function generalised(
  { latitude, longitude }: Position,
  decimals: 1 | 2 | 3,
): GeneralPosition {
  const north = rounded(latitude, decimals);
  return {
    latitude: north,
    longitude: rounded(longitude, decimals),
    uncertainty: Math.ceil(precisionUncertainty(Number(north), 10 ** -decimals)),
  };
}

/** Halves go away from zero, as in the decimal digits that were typed; never `-0.0`. */
function rounded(degrees: number, decimals: number): string {
  const scale = 10 ** decimals;
  // 1.005 × 100 is 100.49999999999999: beyond the eighth digit of a step there is only such noise.
  const steps = Math.round(Number((Math.abs(degrees) * scale).toFixed(8)));
  return ((Math.sign(degrees) * steps) / scale).toFixed(decimals);
}

/**
 * Metres of uncertainty that a precision in degrees brings at a latitude (Chapman & Wieczorek 2020,
 * Georeferencing Best Practices, doi 10.15468/doc-gg7h-s853).
 */
export function precisionUncertainty(latitude: number, precision: number): number {
  const phi = (latitude * Math.PI) / 180;
  const flattened = 1 - ECCENTRICITY_2 * Math.sin(phi) ** 2;
  const meridian = (RADIUS * (1 - ECCENTRICITY_2)) / flattened ** 1.5;
  const parallel = (RADIUS * Math.cos(phi)) / Math.sqrt(flattened);
  return Math.hypot((Math.PI * meridian * precision) / 180, (Math.PI * parallel * precision) / 180);
}
