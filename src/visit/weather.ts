import * as z from 'zod';
import type { Declared } from './declared.ts';
import { Stamp } from './time.ts';
import { temperatureShown, type UnitsShown, USUAL_UNITS, windShown } from './units-shown.ts';
import { readCloud, readTemperature, readVisibility } from './weather-air.ts';
import { type Phrase, phrases } from './weather-line.ts';
import { readWind } from './weather-wind.ts';

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
  /** Metres a second, to a tenth of a millimetre, where a speed was given. */
  windSpeed: z.number().min(0).nullable(),
  windFrom: z.enum(COMPASS).nullable(),
  /** Cloud in oktas, 0 to 8; 9 is a sky that can't be seen. */
  cloud: z.number().int().min(0).max(9).nullable(),
  precipitation: z.enum(PRECIPITATION).nullable(),
  visibility: z.enum(VISIBILITY).nullable(),
  /** Words that no field took: `light`, `after frost`, `gusts 40 km/h`. */
  remarks: z.string().nullable(),
});
export type Weather = Declared<z.infer<typeof Weather>>;

/** A reading before its time is known. */
export type Reading = Omit<Weather, 'time'>;

/** What a phrase says; `speedForce` is the force of a speed, which a typed force goes before. */
type Said = Partial<Omit<Reading, 'verbatim' | 'remarks'>> & { speedForce?: number };

/** A field in words, where its name does not say it. */
const FIELD_WORDS: { readonly [Field in keyof Said]?: string } = {
  windForce: 'wind force',
  windSpeed: 'wind speed',
  windFrom: 'wind direction',
};

/**
 * Reads one typed line of weather, `7c f3 sw 6/8 drizzle`, in any order and with any part missing.
 *
 * - temperature: `7c`, `45f`; wind: Beaufort `f3`, or `4 m/s`, `15 km/h`, `10 mph`, `8 kn`, which is
 *   kept and classified; from: a point of the compass or a bearing such as `240°`
 * - cloud: oktas, `6/8`; visibility: `vis good` or `vis 2 km`
 * - gusts, what follows `no`, `after` or `before`, a second kind of precipitation, and words that no
 *   field takes are remarks
 *
 * A value outside its scale, or a second one that disagrees, gives a problem.
 */
export function readWeather(text: string): { reading: Reading } | { problem: string } {
  const verbatim = text.trim().replace(/\s+/g, ' ');
  if (verbatim === '') return { problem: 'Type the weather, for example 7c f3 sw 6/8 drizzle.' };
  const all: Said = {};
  const remarks: string[] = [];
  for (const phrase of phrases(verbatim)) {
    const said = saidBy(phrase);
    if (said !== null && 'problem' in said) return said;
    const again = twice(all, said ?? {});
    if (said === null || again === 'precipitation') remarks.push(phrase.typed);
    else if (again)
      return {
        problem: `"${phrase.typed}": the ${FIELD_WORDS[again] ?? again} was given before. Keep one.`,
      };
    else Object.assign(all, said);
  }
  const { speedForce = null, windForce = speedForce, ...said } = all;
  if (windForce !== null && speedForce !== null && Math.abs(windForce - speedForce) > 1)
    return {
      problem: `Force f${windForce} and a speed of force f${speedForce} are far apart. Keep one.`,
    };
  return {
    reading: {
      ...{ verbatim, temperature: null, windSpeed: null, windFrom: null },
      ...{ cloud: null, precipitation: null, visibility: null },
      ...said,
      windForce,
      remarks: remarks.length > 0 ? remarks.join(' ') : null,
    },
  };
}

/** The field that was said before and otherwise. */
function twice(all: Said, said: Said): keyof Said | undefined {
  return (Object.keys(said) as (keyof Said)[]).find(
    (field) => all[field] !== undefined && all[field] !== said[field],
  );
}

function saidBy({ value, as }: Phrase): Said | { problem: string } | null {
  if (as === 'remark') return null;
  if (as === 'visibility') return { visibility: readVisibility(value) };
  if (as === 'value') return saidIn(value);
  const gust = readWind(value);
  return gust && 'problem' in gust ? gust : null;
}

function saidIn(words: string): Said | { problem: string } | null {
  const temperature = readTemperature(words);
  if (temperature)
    return 'problem' in temperature ? temperature : { temperature: temperature.value };
  const cloud = readCloud(words);
  if (cloud) return 'problem' in cloud ? cloud : { cloud: cloud.value };
  const wind = readWind(words);
  if (wind) {
    if ('problem' in wind) return wind;
    if ('point' in wind) return { windFrom: COMPASS[wind.point] ?? 'N' };
    return wind.speed === null
      ? { windForce: wind.force }
      : { windSpeed: wind.speed, speedForce: wind.force };
  }
  const point = COMPASS.find((name) => name === words.toUpperCase());
  if (point) return { windFrom: point };
  const falling = PRECIPITATION.find((name) => name === words.toLowerCase());
  return falling ? { precipitation: falling } : null;
}

/** A reading for the head line: `7 °C, F3 4.2 m/s SW, 6/8, light drizzle, vis good`. */
export function weatherWords(weather: Weather, units: UnitsShown = USUAL_UNITS): string {
  const { temperature, windForce, windSpeed, windFrom, cloud, precipitation, visibility, remarks } =
    weather;
  const together = (...parts: string[]) => parts.filter((part) => part !== '').join(' ');
  return [
    temperature === null ? '' : temperatureShown(temperature, units.temperature),
    together(windShown(windForce, windSpeed, units.wind), windFrom ?? ''),
    cloud === null ? '' : `${cloud}/8`,
    together(remarks ?? '', precipitation ?? ''),
    visibility === null ? '' : `vis ${visibility}`,
  ]
    .filter((part) => part !== '')
    .join(', ');
}
