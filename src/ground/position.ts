import * as z from 'zod';

/** A position in WGS 84 decimal degrees (EPSG:4326), north and east positive. */
export const Position = z.looseObject({
  latitude: z.number().min(-90).max(90),
  longitude: z.number().min(-180).max(180),
});

export interface Position {
  latitude: number;
  longitude: number;
}

/** A position as it was read, with the metres around it that its form leaves open; null where it says nothing. */
interface PositionRead {
  position: Position;
  uncertainty: number | null;
}

/** What text in one of the forms comes to: a position, or a sentence that says what to mend. */
export type PositionOrProblem = PositionRead | { problem: string };

/** Degrees of one direction, north or east positive. Returns a sentence where they are past the end. */
export function degreesProblem(axis: 'latitude' | 'longitude', degrees: number): string | null {
  if (axis === 'latitude')
    return Math.abs(degrees) > 90
      ? `Latitude ${degrees} is past 90: latitude comes first, then longitude.`
      : null;
  return Math.abs(degrees) > 180 ? `Longitude ${degrees} is past 180.` : null;
}
