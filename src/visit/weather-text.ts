import { type Reading, readWeather } from './weather.ts';

/**
 * A reading as it is typed, so that it can be mended and reads back: the line as the observer typed
 * it where that still says what is kept, else one made of the fields. Only remarks that look like a
 * value themselves can't be told so.
 */
export function weatherText(weather: Reading): string {
  return saysAll(weather.verbatim, weather) ? weather.verbatim : fieldsText(weather);
}

/** A reading made of its fields in the usual order, whatever was typed: `7c f3 4.2 m/s sw 6/8 rain`. */
function fieldsText(weather: Omit<Reading, 'verbatim'>): string {
  return [
    weather.temperature === null ? '' : `${weather.temperature}c`,
    // The force stands beside the speed: which it is at the edges, the unit typed has decided.
    weather.windForce === null ? '' : `f${weather.windForce}`,
    weather.windSpeed === null ? '' : `${weather.windSpeed} m/s`,
    weather.windFrom?.toLowerCase() ?? '',
    weather.cloud === null ? '' : `${weather.cloud}/8`,
    weather.precipitation ?? '',
    weather.visibility === null ? '' : `vis ${weather.visibility}`,
    weather.remarks ?? '',
  ]
    .filter((part) => part !== '')
    .join(' ');
}

function saysAll(text: string, weather: Reading): boolean {
  const read = readWeather(text);
  return 'reading' in read && fieldsText(read.reading) === fieldsText(weather);
}
