import * as z from 'zod';
import { Position } from '../ground/position.ts';
import { type Grids, positionBehind } from '../ground/read-position.ts';
import type { Declared } from './declared.ts';
import { isTimeZone } from './time.ts';

/** A named place; coordinates are WGS 84 decimal degrees (EPSG:4326) and may be unknown. */
export const Place = z.looseObject({
  name: z.string().min(1),
  position: Position.nullable(),
  /** Coordinates word for word as they were typed. */
  verbatimCoordinates: z.string().nullable(),
  /** Metres around the position in which the place surely lies; null where nobody said. */
  uncertainty: z.number().positive().nullable(),
  /** What grows or lies there, in the observer's words. */
  habitat: z.string().nullable(),
  /** Protected, or private ground; null for neither. Its name is then withheld in what is given out. */
  protection: z.enum(['protected', 'private']).nullable(),
  /** IANA zone found from the position; null while the position is unknown. */
  timeZone: z.string().refine(isTimeZone, 'a time zone that this machine knows').nullable(),
});
export type Place = Declared<z.infer<typeof Place>>;

/** The name by which visits to one place find each other: case and spacing do not matter. */
export function placeKey(name: string): string {
  return name.normalize('NFC').trim().replace(/\s+/g, ' ').toLocaleLowerCase('en');
}

/**
 * Reads a place as typed: a name, with its position behind it if that is known, in any form that
 * `readPosition` reads: `Sallow Mere 51.12, -2.85`, `Sallow Mere ST 401 285`. A whole number without
 * point, sign, letter or degree sign is part of the name (`Field 12`, `Plot 3 5E`). Returns the place
 * without its zone, or a sentence that says what to mend.
 */
export function readPlace(
  text: string,
  grids: Grids | null,
): { place: Place } | { problem: string } {
  const typed = text.trim().replace(/\s+/g, ' ');
  if (typed === '')
    return {
      problem: 'A place needs a name: type one, with decimal degrees behind it if you know them.',
    };
  const behind = positionBehind(typed, grids);
  if (behind === null) return { place: placeNamed(typed) };
  const { name, verbatim, read } = behind;
  if ('problem' in read) return read;
  if (name === '')
    return { problem: `Put a name before ${verbatim}, so that you find the place again.` };
  return { place: { ...placeNamed(name), ...read, verbatimCoordinates: verbatim } };
}

/** A place of which nothing but its name is known. */
export function placeNamed(name: string): Place {
  return {
    name,
    position: null,
    verbatimCoordinates: null,
    uncertainty: null,
    habitat: null,
    protection: null,
    timeZone: null,
  };
}
