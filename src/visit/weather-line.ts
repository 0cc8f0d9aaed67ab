import { readVisibility } from './weather-air.ts';
import { readWind, SPEED_UNITS } from './weather-wind.ts';

/** Words of a line of weather that belong together, and how they are to be read. */
export interface Phrase {
  /** As typed. */
  typed: string;
  /** What is left to be read without the words that only name it: `good` of `vis good`. */
  value: string;
  /** A remark is kept as it is; so is a gust, though a gust that can't be is told. */
  as: 'value' | 'visibility' | 'gust' | 'remark';
}

const SPACED_UNIT = new RegExp(`^(?:${[...SPEED_UNITS, '°?[cf]', 'deg'].join('|')})$`, 'i');
const VISIBILITY = /^vis(?:ibility)?$/i;

/**
 * Cuts a line of single-spaced words into phrases: `15 km/h`, `vis good`, `good visibility`,
 * `vis 2 km`, `wind f3`, `gusts to 40 km/h`. What stands behind `no`, `after` or `before` is of
 * another time and becomes a remark with it.
 */
export function phrases(line: string): Phrase[] {
  const words = line.split(' ');
  const all: Phrase[] = [];
  for (let at = 0; at < words.length; ) {
    const { length, value, as } = next(
      words.slice(at, at + 4).map((word) => word.replace(/,$/, '')),
    );
    all.push({ typed: words.slice(at, at + length).join(' '), value, as });
    at += length;
  }
  return all;
}

type Next = Omit<Phrase, 'typed'> & { length: number };

function next(words: readonly string[]): Next {
  const [first = '', second = ''] = words;
  if (/^(?:no|after|before)$/i.test(first))
    return { length: Math.min(2, words.length), value: '', as: 'remark' };
  if (/^gust(?:s|ing)?$/i.test(first)) return gust(words);
  if (/^wind$/i.test(first)) {
    const wind = plain(words.slice(1));
    return readWind(wind.value) ? { ...wind, length: wind.length + 1 } : plain(words);
  }
  if (VISIBILITY.test(second) && readVisibility(first))
    return { length: 2, value: first, as: 'visibility' };
  if (VISIBILITY.test(first)) {
    const far = words.slice(1, 3).join(' ');
    if (readVisibility(far))
      return { length: words.length > 2 ? 3 : 2, value: far, as: 'visibility' };
    if (readVisibility(second)) return { length: 2, value: second, as: 'visibility' };
  }
  return plain(words);
}

/** A value of one word, or of a number and a unit apart. */
function plain(words: readonly string[]): Next {
  const [first = '', second = ''] = words;
  return /\d$/.test(first) && SPACED_UNIT.test(second)
    ? { length: 2, value: `${first} ${second}`, as: 'value' }
    : { length: 1, value: first, as: 'value' };
}

function gust(words: readonly string[]): Next {
  const from = /^to$/i.test(words[1] ?? '') ? 2 : 1;
  const { length, value } = plain(words.slice(from));
  return readWind(value)
    ? { length: from + length, value, as: 'gust' }
    : { length: 1, value: '', as: 'remark' };
}
