import { halves, uneven } from './grid-figures.ts';
import { readMgrs } from './mgrs-reference.ts';

/** A square of a national grid: the metres of its middle and of its side. */
interface NationalSquare {
  grid: 'British' | 'Irish';
  easting: number;
  northing: number;
  side: number;
}

/** A square of the Military Grid Reference System: `30UST`, the metres of its middle within that, its side. */
export interface MgrsSquare {
  grid: 'MGRS';
  square: string;
  easting: number;
  northing: number;
  side: number;
}

/** A point in a zone of Universal Transverse Mercator, in metres. */
interface UtmPoint {
  grid: 'UTM';
  zone: number;
  /** Is the northing counted from ten thousand kilometres south of the equator? */
  south: boolean;
  easting: number;
  northing: number;
}

export type GridReference = NationalSquare | MgrsSquare | UtmPoint;
export type GridOrProblem = GridReference | { problem: string };

/** Letters of a square within a grid of five by five, from the north-west; grids have no I. */
const LETTERS = 'ABCDEFGHJKLMNOPQRSTUVWXYZ';
const HUNDRED_KM = 100_000;
/** The British grid begins in the square SV, and is 700 km wide and 1300 km high. */
const BRITISH_WIDTH = 700_000;
const BRITISH_HEIGHT = 1_300_000;

const NATIONAL = /^([A-Z]{1,2})\s*(\d+)(?:\s+(\d+))?$/i;

/**
 * Reads a reference to a grid without turning it into degrees: the British and the Irish national
 * grid (`ST 401 285`, `H 123 456`, 2 to 10 figures), MGRS (`30U VC 123 678`), UTM
 * (`30U 510000 5663000`). A letter in small counts as the same. Letters and extent of the British grid:
 * Ordnance Survey, A guide to coordinate systems in Great Britain; of the Irish one: common practice.
 * Null for what is no grid reference; a sentence where there is no such square.
 */
export function readGridReference(text: string): GridOrProblem | null {
  const typed = text.trim().toUpperCase();
  const national = NATIONAL.exec(typed);
  if (!national) return readMgrs(typed);
  const [, letters = '', one = '', two] = national;
  const figures = halves(one, two);
  if (figures === null) return { problem: uneven(typed, `${letters} 401 285`) };
  const corner = letters.length === 2 ? britishCorner(letters) : irishCorner(letters);
  if ('problem' in corner) return corner;
  const side = HUNDRED_KM / 10 ** figures.digits;
  return {
    grid: letters.length === 2 ? 'British' : 'Irish',
    easting: corner.easting + (figures.east + 0.5) * side,
    northing: corner.northing + (figures.north + 0.5) * side,
    side,
  };
}

type Corner = { easting: number; northing: number } | { problem: string };

function cornerIn(letter: string, side: number): { easting: number; northing: number } {
  const at = LETTERS.indexOf(letter);
  return { easting: (at % 5) * side, northing: (4 - Math.floor(at / 5)) * side };
}

function britishCorner(letters: string): Corner {
  if (letters.includes('I')) return { problem: noI(letters) };
  const big = cornerIn(letters[0] ?? '', 5 * HUNDRED_KM);
  const small = cornerIn(letters[1] ?? '', HUNDRED_KM);
  const easting = big.easting + small.easting - 10 * HUNDRED_KM;
  const northing = big.northing + small.northing - 5 * HUNDRED_KM;
  const within =
    easting >= 0 && easting < BRITISH_WIDTH && northing >= 0 && northing < BRITISH_HEIGHT;
  if (within) return { easting, northing };
  return {
    problem: `${letters} is no square of the British grid: look at the two letters again, or write decimal degrees.`,
  };
}

function irishCorner(letter: string): Corner {
  return letter === 'I' ? { problem: noI(letter) } : cornerIn(letter, HUNDRED_KM);
}

function noI(letters: string): string {
  return `${letters} is no square of a grid: grids have no letter I. Perhaps it is J or L.`;
}
