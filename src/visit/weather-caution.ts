import type { Weather } from './weather.ts';

/**
 * The limits of USGS roadside survey training: no counting in wind above 19 km/h, which is the end
 * of Beaufort 3 (on prairie 4 is still taken), and none in fog; light drizzle is tolerated.
 */
const SOURCE = 'USGS roadside survey training';
const MOST_FORCE = 3;

/** What the caution is made from. */
type Conditions = Pick<Weather, 'windForce' | 'precipitation' | 'visibility' | 'remarks'>;

/**
 * A sentence when the conditions make counts unreliable, else null. That snow, hail and thunder are
 * as rain, that drizzle is light unless its remark says otherwise, and that poor visibility is as
 * fog are the project's own choices.
 */
export function weatherCaution(weather: Conditions): string | null {
  const wind = windWords(weather);
  const falling = fallingWords(weather);
  const hidden = hiddenWords(weather);
  const all = [wind, falling, hidden].filter((words) => words !== null);
  if (all.length > 1)
    return `${capital(all.join(', '))}: much is easily missed, and counts come out low (${SOURCE}).`;
  if (wind !== null)
    return `${capital(wind)}: small birds are easily missed (above Beaufort ${MOST_FORCE}${weather.windForce === MOST_FORCE + 1 ? ', on prairie 4' : ''}; ${SOURCE}).`;
  if (falling !== null)
    return `${capital(falling)}: much is easily missed (more than light drizzle; ${SOURCE}).`;
  return hidden === null
    ? null
    : `${capital(hidden)}: what is farther off is missed (avoid fog; ${SOURCE}).`;
}

function windWords({ windForce }: Conditions): string | null {
  return windForce !== null && windForce > MOST_FORCE ? `wind F${windForce}` : null;
}

const FALLING: ReadonlySet<string | null> = new Set([
  'rain',
  'showers',
  'sleet',
  'snow',
  'hail',
  'thunder',
]);

function fallingWords({ precipitation, remarks }: Conditions): string | null {
  if (FALLING.has(precipitation)) return precipitation;
  const strength = /\b(?:moderate|steady|heavy)\b/i.exec(remarks ?? '')?.[0];
  return precipitation === 'drizzle' && strength !== undefined
    ? `${strength.toLowerCase()} drizzle`
    : null;
}

function hiddenWords({ precipitation, visibility, remarks }: Conditions): string | null {
  if (precipitation === 'fog' || precipitation === 'mist') return precipitation;
  // The second of two kinds of precipitation, as in `drizzle fog`, is a remark.
  const second = /(?<!\b(?:no|after|before) )\b(?:fog|mist)\b/i.exec(remarks ?? '')?.[0];
  return second?.toLowerCase() ?? (visibility === 'poor' ? 'poor visibility' : null);
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
