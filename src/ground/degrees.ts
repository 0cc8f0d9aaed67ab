import { degreesProblem, type PositionOrProblem } from './position.ts';

const FIGURES = String.raw`\d{1,3}(?:\.\d+)?`;
/** Degrees, then perhaps minutes, then perhaps seconds, each with or without its mark. */
const BODY = String.raw`[+-]?${FIGURES}(?:(?:\s*[°d]\s*|\s+)${FIGURES}(?:(?:\s*['m]\s*|\s+)${FIGURES}\s*["s]?|\s*['m])?|\s*[°d])?`;
const ANGLE = String.raw`[NSEW]\s*${BODY}|${BODY}\s*[NSEW]?`;
const PAIR = new RegExp(
  String.raw`^(${ANGLE})(?:\s*[,;]\s*|\s+|(?<=[NSEW]))(${ANGLE})$`.replaceAll('NSEW', 'NSEWnsew'),
);

/** A comma for the point, or whole numbers with nothing that says that they are degrees. */
const UNCLEAR =
  /^(?:[+-]?\d{1,3}\s*,\s*[+-]?\d{1,3}|[+-]?\d{1,3},\d+\s*°?\s*[NS]?[\s,]+[+-]?\d{1,3},\d+\s*°?\s*[EW]?)$/i;

interface Angle {
  /** Degrees, minutes, seconds, as far as they were given. */
  figures: string[];
  signed: boolean;
  negative: boolean;
  letter: string;
  degreeMark: boolean;
  minuteMark: boolean;
}

/**
 * Reads a pair of decimal degrees, degrees and decimal minutes, or degrees, minutes and seconds,
 * latitude first unless letters say otherwise: `51.12, -2.85`, `51° 7.2′ N 2° 51′ W`,
 * `N51°07'12" W2°51'00"`, `51d7m12s, -2d51m`. Minutes and seconds need their marks or the letters
 * N, S, E, W. Null for what is no such pair; a sentence where it can't be right.
 */
export function readDegrees(text: string): PositionOrProblem | null {
  const typed = plain(text);
  if (UNCLEAR.test(typed))
    return {
      problem: `"${text}": write decimal degrees with a point behind the name, for example 51.12, -2.85.`,
    };
  const found = PAIR.exec(typed);
  if (!found) return null;
  const [one, two] = [angleOf(found[1] ?? ''), angleOf(found[2] ?? '')];
  if (!areDegrees(one, two)) return null;
  for (const angle of [one, two]) {
    const problem = angleProblem(text, angle);
    if (problem !== null) return { problem };
  }
  return placed(text, one, two);
}

/** The many signs for degrees, minutes, seconds and minus as one of each. */
function plain(text: string): string {
  return text
    .trim()
    .replace(/[º˚]/g, '°')
    .replace(/''|′′|[″”“]/g, '"')
    .replace(/[′’‘]/g, "'")
    .replaceAll('−', '-');
}

function angleOf(text: string): Angle {
  const letter = /^[NSEW]|[NSEW]$/i.exec(text.replace(/s$/, ''))?.[0] ?? bareSouth(text);
  return {
    figures: text.match(/\d+(?:\.\d+)?/g) ?? [],
    signed: /[+-]/.test(text),
    negative: text.includes('-'),
    letter: letter.toUpperCase(),
    degreeMark: /[°d]/.test(text),
    minuteMark: /['m]/.test(text),
  };
}

/** A small s behind the figures is south, unless the other marks are letters too: then it is seconds. */
function bareSouth(text: string): string {
  return text.endsWith('s') && !/[dm]/.test(text) ? 'S' : '';
}

/** Do two runs of figures say that they are degrees? `Field 12 14` does not. */
function areDegrees(one: Angle, two: Angle): boolean {
  if (one.figures.length !== two.figures.length && !(one.degreeMark && two.degreeMark))
    return false;
  return [one, two].every((angle) =>
    angle.figures.length === 1
      ? angle.signed ||
        angle.degreeMark ||
        angle.letter !== '' ||
        angle.figures[0]?.includes('.') === true
      : angle.degreeMark || angle.letter !== '',
  );
}

function angleProblem(text: string, angle: Angle): string | null {
  const { figures, signed, letter, minuteMark } = angle;
  const [, minutes, seconds] = figures;
  if (signed && letter !== '')
    return `"${text}" has both a sign and a letter for one direction: leave one of them out.`;
  if (minutes !== undefined && letter === '' && !minuteMark)
    return `"${text}": write minutes with their mark, 51°7', or a letter N, S, E or W behind.`;
  const broken = figures.slice(0, -1).find((each) => each.includes('.'));
  if (broken !== undefined)
    return `"${text}": only the last figure of a direction can have a point; ${broken} is followed by another.`;
  for (const [name, value] of [
    ['Minutes', minutes],
    ['Seconds', seconds],
  ] as const)
    if (value !== undefined && Number(value) >= 60)
      return `${name} ${value} in "${text}" are past 59: write them below 60, or write decimal degrees.`;
  return null;
}

function placed(text: string, one: Angle, two: Angle): PositionOrProblem {
  const across = (angle: Angle) => angle.letter === 'E' || angle.letter === 'W';
  const along = (angle: Angle) => angle.letter === 'N' || angle.letter === 'S';
  if ((across(one) && across(two)) || (along(one) && along(two)))
    return {
      problem: `"${text}" gives one direction twice: write one with N or S and one with E or W.`,
    };
  const eastFirst = across(one) || along(two);
  const latitude = inDegrees(eastFirst ? two : one);
  const longitude = inDegrees(eastFirst ? one : two);
  const problem = degreesProblem('latitude', latitude) ?? degreesProblem('longitude', longitude);
  return problem === null ? { position: { latitude, longitude }, uncertainty: null } : { problem };
}

function inDegrees({ figures, negative, letter }: Angle): number {
  const [degrees = 0, minutes = 0, seconds = 0] = figures.map(Number);
  const size = degrees + minutes / 60 + seconds / 3600;
  // Adding 0 makes a zero of -0.
  return (negative || letter === 'S' || letter === 'W' ? -size : size) + 0;
}
