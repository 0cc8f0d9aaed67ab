import { halves, uneven } from './grid-figures.ts';
import type { GridOrProblem } from './grid-reference.ts';

/** Bands of 8° from 80° south on; the last, X, has 12° (NGA.SIG.0012). */
const BANDS = 'CDEFGHJKLMNPQRSTUVWX';
const BAND_HEIGHT = 8;
const LAST_ZONE = 60;
/** Metres in a degree of latitude, to a hundredth: enough to tell a wrong band. */
const METRES_A_DEGREE = 111_000;
const FALSE_NORTHING = 10_000_000;
/** What the length of a degree may be out by over a band, in degrees. */
const SLACK = 1;

const MGRS = /^(\d{1,2})\s*([A-Z])\s*([A-Z]{2})(?:\s*(\d+)(?:\s+(\d+))?)?$/;
const UTM =
  /^(\d{1,2})\s*(NORTH|SOUTH|[A-Z])\s+(\d{6}(?:\.\d+)?)\s*(?:M?E)?[\s,]+(\d{1,8}(?:\.\d+)?)\s*(?:M?N)?$/;

/**
 * Reads an MGRS square, or a point of a UTM zone with the letter of its band or with `north` or
 * `south`, in capitals. Null for what is neither; a sentence where there is no such zone or band, and
 * where S can be both the band and the southern half.
 */
export function readMgrs(typed: string): GridOrProblem | null {
  const square = MGRS.exec(typed);
  const point = square === null ? UTM.exec(typed) : null;
  const [, zone = '', band = ''] = square ?? point ?? [];
  if (!square && !point) return null;
  const problem = zoneProblem(typed, Number(zone), band);
  if (problem !== null) return { problem };
  if (square) return mgrsSquare(typed, square);
  return utmPoint(Number(zone), band, Number(point?.[3]), Number(point?.[4]));
}

function zoneProblem(typed: string, zone: number, band: string): string | null {
  if (zone < 1 || zone > LAST_ZONE)
    return `Zone ${zone} in "${typed}" is none: zones go from 1 to ${LAST_ZONE}.`;
  if ('ABYZ'.includes(band))
    return `Band ${band} in "${typed}" lies at a pole, where these grids are not read: write decimal degrees.`;
  if (band.length === 1 && !BANDS.includes(band))
    return `"${typed}" has a band that no grid has: the letters go from C to X without I and O.`;
  return null;
}

function mgrsSquare(typed: string, found: RegExpExecArray): GridOrProblem {
  const [, zone = '', band = '', letters = '', one, two] = found;
  const square = `${Number(zone)}${band}${letters}`;
  if (/[IO]/.test(letters))
    return {
      problem: `"${typed}": the letters of a square are never I or O. Perhaps it is J or Q.`,
    };
  if (one === undefined)
    return { grid: 'MGRS', square, easting: 50_000, northing: 50_000, side: 100_000 };
  const figures = halves(one, two);
  if (figures === null) return { problem: uneven(typed, `${square} 123 678`) };
  const side = 100_000 / 10 ** figures.digits;
  const middle = (figure: number) => (figure + 0.5) * side;
  return {
    grid: 'MGRS',
    square,
    easting: middle(figures.east),
    northing: middle(figures.north),
    side,
  };
}

function utmPoint(zone: number, band: string, easting: number, northing: number): GridOrProblem {
  const point = (south: boolean): GridOrProblem =>
    northing > FALSE_NORTHING
      ? { problem: `Northing ${northing} is past ${FALSE_NORTHING}: look at its figures again.` }
      : { grid: 'UTM', zone, south, easting, northing };
  if (band.length > 1) return point(band === 'SOUTH');
  const south = band < 'N';
  const fits = inBand(band, northing, south);
  const ways = `write ${zone} north ${easting} ${northing} or ${zone} south ${easting} ${northing}`;
  if (band === 'S')
    return {
      problem: `${zone}S can be the band S, north of the equator, or the southern half: ${ways}.`,
    };
  if (fits) return point(south);
  return {
    problem: `Northing ${northing} does not lie in band ${band}: look at the letter, or ${ways}.`,
  };
}

/** The latitudes between which a band lies. */
export function latitudesOf(band: string): { from: number; to: number } {
  const from = BANDS.indexOf(band) * BAND_HEIGHT - 80;
  return { from, to: band === 'X' ? 84 : from + BAND_HEIGHT };
}

/** Zones that are wider or narrower than 6° by Norway (V) and Svalbard (X), west and east (from memory). */
const ODD_ZONES: Record<string, [number, number]> = {
  '31V': [0, 3],
  '32V': [3, 12],
  '31X': [0, 9],
  '33X': [9, 21],
  '35X': [21, 33],
  '37X': [33, 42],
};

/** The longitudes between which a zone lies in a band, west and east. */
export function longitudesOf(zone: number, band: string): [number, number] {
  return ODD_ZONES[`${zone}${band}`] ?? [zone * 6 - 186, zone * 6 - 180];
}

function inBand(band: string, northing: number, south: boolean): boolean {
  const { from, to } = latitudesOf(band);
  const latitude = (northing - (south ? FALSE_NORTHING : 0)) / METRES_A_DEGREE;
  return latitude > from - SLACK && latitude < to + SLACK;
}
