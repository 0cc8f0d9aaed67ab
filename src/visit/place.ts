import * as z from 'zod';
import { Position } from '../ground/position.ts';
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

const NUMBER = String.raw`[+−-]?\d{1,3}(?:\.\d+)?`;
const DEGREES = new RegExp(
  String.raw`^(.*?)[\s,@]*(?<![\d.])(${NUMBER})\s*(°?)\s*([NS])?\s*[,\s]\s*(${NUMBER})\s*(°?)\s*([EW])?$`,
  'iu',
);
/** Degrees and minutes, letters in front, a comma for the point, no point at all: taken for a name they would be lost. */
const OTHER_FORM = new RegExp(
  [
    String.raw`\d\s*°\s*\d`,
    String.raw`\b[NS]\s?\d{1,2}\.\d+[\s,]+[EW]\s?\d{1,3}\.\d+$`,
    String.raw`(?:^|\s)[+−-]?\d{1,3}\s*,\s*[+−-]?\d{1,3}$`,
    String.raw`\d,\d+\s*°?\s*[NS]?[\s,]+[+−-]?\d{1,3},\d+\s*°?\s*[EW]?$`,
  ].join('|'),
  'iu',
);

/**
 * Reads a place as typed: a name, with decimal degrees behind it if they are known,
 * `Sallow Mere 51.12, -2.85` or `Sallow Mere 51.12N 2.85W`. Latitude comes first. A whole number
 * without point, sign, letter or degree sign is part of the name (`Field 12`, `Plot 3 5E`).
 * Returns the place without its zone, or a sentence that says what to mend.
 */
export function readPlace(text: string): { place: Place } | { problem: string } {
  const typed = text.trim().replace(/\s+/g, ' ');
  if (typed === '')
    return {
      problem: 'A place needs a name: type one, with decimal degrees behind it if you know them.',
    };
  if (OTHER_FORM.test(typed))
    return {
      problem: `"${typed}": write decimal degrees with a point behind the name, for example 51.12, -2.85.`,
    };
  const found = DEGREES.exec(typed);
  if (!found) return { place: named(typed, null, null) };
  const [, name = '', north = '', northMark, northSign, east = '', eastMark, eastSign] = found;
  if (!(isDegrees(north, northMark, northSign) && isDegrees(east, eastMark, eastSign)))
    return { place: named(typed, null, null) };
  const verbatim = typed.slice(name.length).replace(/^[\s,@]+/, '');
  const latitude = signed(north, northSign, 'S');
  const longitude = signed(east, eastSign, 'W');
  if (latitude === null || longitude === null)
    return {
      problem: `"${verbatim}" has both a sign and a letter for one direction: leave one of them out.`,
    };
  if (Math.abs(latitude) > 90)
    return { problem: `Latitude ${latitude} is past 90: latitude comes first, then longitude.` };
  if (Math.abs(longitude) > 180) return { problem: `Longitude ${longitude} is past 180.` };
  if (name.trim() === '')
    return { problem: `Put a name before ${verbatim}, so that you find the place again.` };
  return { place: named(name.trim(), { latitude, longitude }, verbatim) };
}

function named(name: string, position: Position | null, verbatimCoordinates: string | null): Place {
  return {
    name,
    position,
    verbatimCoordinates,
    uncertainty: null,
    habitat: null,
    protection: null,
    timeZone: null,
  };
}

function isDegrees(digits: string, mark: string | undefined, letter: string | undefined): boolean {
  return /[.+−-]/.test(digits) || mark === '°' || letter !== undefined;
}

function signed(digits: string, letter: string | undefined, negative: 'S' | 'W'): number | null {
  if (letter !== undefined && /^[+−-]/.test(digits)) return null;
  const value = Number(digits.replace('−', '-'));
  const turned = letter?.toUpperCase() === negative ? -value : value;
  return turned === 0 ? 0 : turned;
}
