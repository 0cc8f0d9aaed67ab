import mgrs from 'mgrs';
import proj4 from 'proj4';
import type { GridReference, MgrsSquare } from './grid-reference.ts';
import { latitudesOf, longitudesOf } from './mgrs-reference.ts';
import type { PositionOrProblem } from './position.ts';

/**
 * The national grids (EPSG:27700 and EPSG:29903) with the seven-parameter shifts to WGS 84 that EPSG
 * gives for them. Such a shift is good to about 5 m (Ordnance Survey, A guide to coordinate systems
 * in Great Britain, for the British one; taken to hold for the Irish one).
 */
export const NATIONAL_GRIDS = {
  British: {
    projection: '+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000',
    datum: '+ellps=airy +towgs84=446.448,-125.157,542.06,0.15,0.247,0.842,-20.489',
  },
  Irish: {
    projection: '+proj=tmerc +lat_0=53.5 +lon_0=-8 +k=1.000035 +x_0=200000 +y_0=250000',
    datum: '+ellps=mod_airy +towgs84=482.5,-130.6,564.6,-1.042,-0.214,-0.631,8.15',
  },
} as const;

/** Metres by which a position may be out for the shift of its datum. */
const SHIFT_UNCERTAINTY = 5;
/** Decimals of a degree that are kept: a tenth of a metre, less than any square's side. */
const DECIMALS = 6;
const METRES_A_DEGREE = 111_000;

/**
 * The middle of a grid square, or a point, in WGS 84; with half the square's diagonal in whole metres
 * as its uncertainty, for the national grids joined with that of the shift of datum. UTM and MGRS are
 * taken to be in WGS 84. A sentence where there is no such square.
 */
export function gridPosition(reference: GridReference): PositionOrProblem {
  if (reference.grid === 'MGRS') return mgrsPosition(reference);
  if (reference.grid === 'UTM') {
    const { zone, south, easting, northing } = reference;
    const grid = `+proj=utm +zone=${zone}${south ? ' +south' : ''} +datum=WGS84 +units=m`;
    return read(proj4(grid).inverse([easting, northing]), null);
  }
  const { projection, datum } = NATIONAL_GRIDS[reference.grid];
  const at = proj4(`${projection} ${datum} +units=m`).inverse([
    reference.easting,
    reference.northing,
  ]);
  return read(at, Math.hypot(halfDiagonal(reference.side), SHIFT_UNCERTAINTY));
}

function mgrsPosition({ square, easting, northing, side }: MgrsSquare): PositionOrProblem {
  const none = {
    problem: `There is no square ${square}: look at its letters again, or write decimal degrees.`,
  };
  const metres = [easting, northing].map((each) => String(Math.floor(each)).padStart(5, '0'));
  const at = mgrsPoint(square + metres.join(''));
  if (at === null) return none;
  const zone = Number.parseInt(square, 10);
  const band = square[String(zone).length] ?? '';
  // The library reckons on with letters that a zone or band does not have, and lands in another one.
  const { from, to } = latitudesOf(band);
  const [west, east] = longitudesOf(zone, band);
  const high = side / METRES_A_DEGREE;
  const wide = high / Math.cos((at[1] * Math.PI) / 180);
  // Of a square that the edge of its zone or band cuts, the middle may lie beyond.
  if (at[1] < from - high || at[1] > to + high) return none;
  if (at[0] < west - wide || at[0] > east + wide) return none;
  return read(at, halfDiagonal(side));
}

function mgrsPoint(reference: string): [number, number] | null {
  try {
    return mgrs.toPoint(reference);
  } catch {
    return null;
  }
}

function halfDiagonal(side: number): number {
  return (side * Math.SQRT2) / 2;
}

function read([longitude = 0, latitude = 0]: number[], metres: number | null): PositionOrProblem {
  const whole = (degrees: number) => Number(degrees.toFixed(DECIMALS)) + 0;
  const position = { latitude: whole(latitude), longitude: whole(longitude) };
  return { position, uncertainty: metres === null ? null : Math.ceil(metres) };
}
