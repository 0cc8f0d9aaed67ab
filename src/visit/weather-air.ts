import { celsiusOf, LENGTH, type TemperatureUnit } from './units.ts';

/** A value in the unit in which it is kept, or what to mend; null for a word that is none. */
type Value = { value: number } | { problem: string } | null;

/** Reads `7c`, `-3.5 °C` or `45f` as degrees Celsius, to a tenth. */
export function readTemperature(word: string): Value {
  const range = /^-?\d+(?:[.,]\d+)?[-–](\d+(?:[.,]\d+)?) ?°?([cf])$/i.exec(word);
  if (range)
    return { problem: `"${word}": give one temperature, for example ${range[1]}${range[2]}.` };
  const found = /^([+-]?\d{1,3}(?:[.,]\d+)?) ?°?([cf])$/i.exec(word);
  if (!found) return null;
  const [, digits = '', unit = ''] = found;
  const celsius = celsiusOf(
    Number(digits.replace(',', '.')),
    unit.toLowerCase() as TemperatureUnit,
  );
  // The range of air temperatures ever measured on land, rounded outwards (from memory).
  if (celsius < -90 || celsius > 60)
    return { problem: `"${word}": no air has been that ${celsius < 0 ? 'cold' : 'hot'}.` };
  const tenths = Math.round(celsius * 10);
  // A file can't hold -0, and nobody reads it.
  return { value: tenths === 0 ? 0 : tenths / 10 };
}

/** Reads `6/8`: cloud in oktas, 9 for a sky that can't be seen. */
export function readCloud(word: string): Value {
  const range = /^\d[-–](\d)\/8$/.exec(word);
  if (range) return { problem: `"${word}": give one cloud cover, for example ${range[1]}/8.` };
  const found = /^(\d{1,2})\/8$/.exec(word);
  if (!found) return null;
  const value = Number(found[1]);
  return value <= 9
    ? { value }
    : { problem: `"${word}": cloud goes from 0/8 to 8/8, and 9/8 is a sky that can't be seen.` };
}

/**
 * Metres from which the next better word for visibility holds. The limits are those of the weather
 * forecasts of the UK Met Office (from memory: very poor below 1 km, poor below 4, moderate below 10,
 * good below 20, very good below 40, then excellent); that very poor is told as poor and very good as
 * good is the project's own choice. So is that only the word is kept, beside the line as typed.
 */
export const VISIBILITY_FROM = {
  poor: 0,
  moderate: 4000,
  good: 10_000,
  excellent: 40_000,
} as const;

type VisibilityWord = keyof typeof VISIBILITY_FROM;
const WORDS = Object.keys(VISIBILITY_FROM) as VisibilityWord[];

/** Reads `good`, `2 km`, `800m` or `3 mi` as a word for visibility; null for anything else. */
export function readVisibility(words: string): VisibilityWord | null {
  const found = /^(\d{1,6}(?:[.,]\d+)?) ?(km|nmi|mi|m)$/i.exec(words);
  if (!found) return WORDS.find((word) => word === words.toLowerCase()) ?? null;
  const unit = (found[2] ?? '').toLowerCase() as keyof typeof LENGTH;
  const metres = Number((found[1] ?? '').replace(',', '.')) * LENGTH[unit];
  return WORDS.findLast((word) => VISIBILITY_FROM[word] <= metres) ?? null;
}
