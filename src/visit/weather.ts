import * as z from 'zod';
import type { Declared } from './declared.ts';
import { Stamp } from './time.ts';

/** The sixteen points of the compass, clockwise from north. */
export const COMPASS = [
  'N',
  'NNE',
  'NE',
  'ENE',
  'E',
  'ESE',
  'SE',
  'SSE',
  'S',
  'SSW',
  'SW',
  'WSW',
  'W',
  'WNW',
  'NW',
  'NNW',
] as const;

/** Names of the Beaufort forces 0 to 12 (WMO-No. 8, code table 1100). */
export const BEAUFORT = [
  'calm',
  'light air',
  'light breeze',
  'gentle breeze',
  'moderate breeze',
  'fresh breeze',
  'strong breeze',
  'near gale',
  'gale',
  'strong gale',
  'storm',
  'violent storm',
  'hurricane force',
] as const;

/** Words for what falls or hangs in the air, as a walker types them. */
export const PRECIPITATION = [
  'dry',
  'drizzle',
  'rain',
  'showers',
  'sleet',
  'snow',
  'hail',
  'mist',
  'fog',
  'thunder',
] as const;

/** Words for how far can be seen, as a walker types them. */
export const VISIBILITY = ['poor', 'moderate', 'good', 'excellent'] as const;

/** One reading of the weather; what was typed is kept word for word beside what was understood. */
export const Weather = z.looseObject({
  time: Stamp,
  verbatim: z.string().min(1),
  /** Degrees Celsius, to a tenth. */
  temperature: z.number().nullable(),
  /** Beaufort force, 0 to 12. */
  windForce: z.number().int().min(0).max(12).nullable(),
  /** Metres a second, where a speed was given rather than a force. */
  windSpeed: z.number().min(0).nullable(),
  windFrom: z.enum(COMPASS).nullable(),
  /** Cloud in oktas, 0 to 8; 9 is a sky that can't be seen. */
  cloud: z.number().int().min(0).max(9).nullable(),
  precipitation: z.enum(PRECIPITATION).nullable(),
  visibility: z.enum(VISIBILITY).nullable(),
  /** Words that no field took: `light`, `after frost`. */
  remarks: z.string().nullable(),
});
export type Weather = Declared<z.infer<typeof Weather>>;

type Reading = Omit<Weather, 'time'>;
type Field = 'temperature' | 'windForce' | 'windFrom' | 'cloud' | 'precipitation';
type Understood = { field: Field; value: number | string } | { problem: string } | null;

/**
 * Reads one typed line of weather, `7c f3 sw 6/8 drizzle`, in any order and with any part missing.
 * Temperature takes c or f behind the number, the Beaufort force f before it, cloud is in oktas.
 * Words that no field takes become remarks; a value outside its scale gives a problem.
 */
export function readWeather(text: string): { reading: Reading } | { problem: string } {
  const verbatim = text.trim().replace(/\s+/g, ' ');
  if (verbatim === '') return { problem: 'Type the weather, for example 7c f3 sw 6/8 drizzle.' };
  const reading: Reading = {
    verbatim,
    temperature: null,
    windForce: null,
    windSpeed: null,
    windFrom: null,
    cloud: null,
    precipitation: null,
    visibility: null,
    remarks: null,
  };
  const remarks: string[] = [];
  for (const word of verbatim.split(' ')) {
    const understood = readWord(word.replace(/,$/, ''));
    if (understood === null) remarks.push(word);
    else if ('problem' in understood) return understood;
    else if (reading[understood.field] !== null && reading[understood.field] !== understood.value) {
      if (understood.field !== 'precipitation')
        return {
          problem: `"${word}": the ${FIELD_WORDS[understood.field]} was given before. Keep one.`,
        };
      remarks.push(word);
    } else Object.assign(reading, { [understood.field]: understood.value });
  }
  if (remarks.length > 0) reading.remarks = remarks.join(' ');
  return { reading };
}

const FIELD_WORDS: Record<Field, string> = {
  temperature: 'temperature',
  windForce: 'wind force',
  windFrom: 'wind direction',
  cloud: 'cloud',
  precipitation: 'precipitation',
};

function readWord(word: string): Understood {
  const degrees = /^([+-]?\d{1,3}(?:[.,]\d+)?)°?([cf])$/i.exec(word);
  if (degrees)
    return temperature(
      Number(degrees[1]?.replace(',', '.')),
      degrees[2]?.toLowerCase() === 'f',
      word,
    );
  const force = /^f(\d{1,2})$/i.exec(word);
  if (force) {
    const value = Number(force[1]);
    return value <= 12
      ? { field: 'windForce', value }
      : { problem: `"${word}": Beaufort force goes from f0 to f12.` };
  }
  const oktas = /^(\d{1,2})\/8$/.exec(word);
  if (oktas) {
    const value = Number(oktas[1]);
    return value <= 9
      ? { field: 'cloud', value }
      : { problem: `"${word}": cloud goes from 0/8 to 8/8, and 9/8 is a sky that can't be seen.` };
  }
  const point = COMPASS.find((name) => name === word.toUpperCase());
  if (point) return { field: 'windFrom', value: point };
  const falling = PRECIPITATION.find((name) => name === word.toLowerCase());
  return falling ? { field: 'precipitation', value: falling } : null;
}

/** Fahrenheit to Celsius is exact: (°F − 32) / 1.8, NIST SP 811, Appendix B (from memory). */
function temperature(value: number, fahrenheit: boolean, word: string): Understood {
  const celsius = fahrenheit ? (value - 32) / 1.8 : value;
  // The range of air temperatures ever measured on land, rounded outwards (from memory).
  if (celsius < -90 || celsius > 60)
    return { problem: `"${word}": no air has been that ${celsius < 0 ? 'cold' : 'hot'}.` };
  const tenths = Math.round(celsius * 10);
  // A file can't hold -0, and nobody reads it.
  return { field: 'temperature', value: tenths === 0 ? 0 : tenths / 10 };
}

/** A reading for the head line: `7 °C, F3 SW, 6/8, drizzle`. */
export function weatherWords(weather: Weather): string {
  const wind = [weather.windForce === null ? '' : `F${weather.windForce}`, weather.windFrom ?? '']
    .filter((part) => part !== '')
    .join(' ');
  return [
    weather.temperature === null ? '' : `${weather.temperature} °C`,
    wind,
    weather.cloud === null ? '' : `${weather.cloud}/8`,
    [weather.remarks ?? '', weather.precipitation ?? ''].filter((part) => part !== '').join(' '),
  ]
    .filter((part) => part !== '')
    .join(', ');
}
