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
