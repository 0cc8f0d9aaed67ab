import geodesic from 'geographiclib-geodesic';
import type { Position } from './position.ts';

const { Geodesic } = geodesic;

/**
 * Metres between two positions along the geodesic of WGS 84 (Karney 2013, Algorithms for geodesics,
 * doi 10.1007/s00190-012-0578-z); a sphere would err by up to half a hundredth.
 */
export function distanceBetween(one: Position, two: Position): number {
  const line = Geodesic.WGS84.Inverse(
    one.latitude,
    one.longitude,
    two.latitude,
    two.longitude,
    Geodesic.DISTANCE,
  );
  return line.s12 ?? Number.NaN;
}
