import { metresASecond, type SpeedUnit } from './units.ts';

/** One force of the Beaufort scale: its name, what is seen of it on land, and where it begins. */
interface Force {
  name: string;
  /** Null for the forces in which nobody counts birds. */
  landSign: string | null;
  /** The lowest speed of the force in each unit. */
  from: Record<SpeedUnit, number>;
}

/**
 * The Beaufort scale, forces 0 to 12. Source: WMO-No. 8, code table 1100 (names and columns from
 * memory; the facts of the land signs are its own, in our words).
 */
export const BEAUFORT: readonly Force[] = [
  force('calm', 'smoke goes straight up', [0, 0, 0, 0]),
  force('light air', 'smoke drifts, vanes stand still', [0.3, 1, 1, 1]),
  force('light breeze', 'felt on the face, leaves rustle', [1.6, 6, 4, 4]),
  force('gentle breeze', 'leaves and twigs never rest', [3.4, 12, 8, 7]),
  force('moderate breeze', 'dust and paper fly up, small branches move', [5.5, 20, 13, 11]),
  force('fresh breeze', 'small trees in leaf sway', [8, 29, 19, 17]),
  force('strong breeze', 'large branches move, wires whistle', [10.8, 39, 25, 22]),
  force('near gale', 'whole trees move', [13.9, 50, 32, 28]),
  force('gale', 'twigs break off', [17.2, 62, 39, 34]),
  force('strong gale', null, [20.8, 75, 47, 41]),
  force('storm', null, [24.5, 89, 55, 48]),
  force('violent storm', null, [28.5, 103, 64, 56]),
  force('hurricane force', null, [32.7, 118, 73, 64]),
];

type Columns = readonly [number, number, number, number];

function force(name: string, landSign: string | null, [ms, kmh, mph, kn]: Columns): Force {
  return { name, landSign, from: { 'm/s': ms, 'km/h': kmh, mph, kn } };
}

/**
 * Beaufort force of a speed, by the column of its unit: the columns of the table are rounded each for
 * itself and disagree at the edges (21 kn is force 5, the same 10.8 m/s force 6), so the observer's
 * unit decides. A speed between two rows, such as 5.5 km/h, belongs to the lower.
 */
export function forceOf(speed: number, unit: SpeedUnit): number {
  return BEAUFORT.findLastIndex(({ from }) => from[unit] <= speed);
}

/** Index of the point of the compass (of 16, from north) that is nearest to a bearing in degrees. */
function pointOf(degrees: number): number {
  return Math.round(degrees / 22.5) % 16;
}

/** What a word says of the wind; null for a word that says nothing of it. */
export type WindWord =
  | { force: number; speed: number | null }
  | { point: number }
  | { problem: string }
  | null;

/** The strongest gust measured near the ground is 113 m/s (WMO, 1996, from memory), rounded up. */
const MOST_SPEED = 115;

const UNITS: Record<string, SpeedUnit> = {
  'm/s': 'm/s',
  'km/h': 'km/h',
  kmh: 'km/h',
  kph: 'km/h',
  mph: 'mph',
  kn: 'kn',
  kt: 'kn',
  kts: 'kn',
  knots: 'kn',
};
/** Units of speed as they are typed. */
export const SPEED_UNITS = Object.keys(UNITS);

const SPEED_FORM = new RegExp(String.raw`^(\d{1,4}(?:[.,]\d+)?) ?(${SPEED_UNITS.join('|')})$`, 'i');
const SPEED_RANGE = new RegExp(
  String.raw`^\d+(?:[.,]\d+)?[-–]\d+(?:[.,]\d+)? ?(${SPEED_UNITS.join('|')})$`,
  'i',
);

/** Reads `f3`, `4 m/s`, `15km/h`, `10 mph`, `8 kt` or `240°`, the bearing from which it blows. */
export function readWind(word: string): WindWord {
  const force = /^f(\d{1,2})$/i.exec(word);
  if (force) {
    const value = Number(force[1]);
    if (value < BEAUFORT.length) return { force: value, speed: null };
    return { problem: `"${word}": Beaufort force goes from f0 to f12.` };
  }
  const between = /^f\d{1,2}[-–/]f?(\d{1,2})$/i.exec(word);
  if (between) return { problem: `"${word}": give one force, for example f${between[1]}.` };
  const range = SPEED_RANGE.exec(word);
  if (range) return { problem: `"${word}": give one speed, for example 15 ${range[1]}.` };
  const speed = SPEED_FORM.exec(word);
  if (speed) return readSpeed(word, speed[1] ?? '', speed[2] ?? '');
  return readBearing(word);
}

function readSpeed(word: string, digits: string, typedUnit: string): WindWord {
  const unit = UNITS[typedUnit.toLowerCase()] ?? 'm/s';
  const value = Number(digits.replace(',', '.'));
  const speed = metresASecond(value, unit);
  if (speed > MOST_SPEED)
    return { problem: `"${word}": no wind near the ground has been that strong.` };
  return { force: forceOf(value, unit), speed };
}

/** Bearings have three figures, as in common practice: `7°` may be meant as a temperature. */
function readBearing(word: string): WindWord {
  const found = /^([+-]?)(\d{1,4})(?:°| ?deg)$/i.exec(word);
  if (!found) return null;
  const [, sign = '', digits = ''] = found;
  if (sign !== '' || digits.length < 3) {
    const bearing = `${digits.padStart(3, '0')}°`;
    const temperature = `for a temperature write ${sign}${Number(digits)}c`;
    return {
      problem: `"${word}": ${temperature}${sign === '' ? `, for a wind direction ${bearing}` : ''}.`,
    };
  }
  if (Number(digits) > 360)
    return { problem: `"${word}": a wind direction goes from 000° to 360°.` };
  return { point: pointOf(Number(digits)) };
}
