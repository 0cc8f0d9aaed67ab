import { LENGTH, SPEED, type SpeedUnit, TEMPERATURE } from './units.ts';

/** Units in which values may be shown; files keep degrees Celsius, metres and metres a second. */
export const UNITS_SHOWN = {
  temperature: ['C', 'F'],
  distance: ['km', 'mi'],
  wind: ['Beaufort', 'm/s', 'km/h', 'mph', 'kn'],
} as const;

/** The unit chosen for each kind of value. */
export type UnitsShown = {
  readonly [Kind in keyof typeof UNITS_SHOWN]: (typeof UNITS_SHOWN)[Kind][number];
};

export const USUAL_UNITS: UnitsShown = { temperature: 'C', distance: 'km', wind: 'Beaufort' };

/** Below so many miles a distance is told in yards. */
const IN_YARDS = 0.1;

/** Degrees Celsius as `7 °C` or `45 °F`; a tenth of a degree Celsius does not hold more than whole degrees Fahrenheit. */
export function temperatureShown(celsius: number, unit: UnitsShown['temperature']): string {
  const { zero, size } = TEMPERATURE.f;
  return unit === 'C' ? `${celsius} °C` : `${Math.round(celsius * size + zero)} °F`;
}

/**
 * Wind as its force with the metres a second that were measured, `F3 4.2 m/s`, or in another unit as the
 * speed alone. Where only a force was given it stays one: it is no speed. Speed in metres a second.
 */
export function windShown(
  force: number | null,
  speed: number | null,
  unit: UnitsShown['wind'],
): string {
  const forceWords = force === null ? '' : `F${force}`;
  if (speed === null) return forceWords;
  if (unit !== 'Beaufort') return speedShown(speed, unit);
  return [forceWords, speedShown(speed, 'm/s')].filter((part) => part !== '').join(' ');
}

function speedShown(speed: number, unit: SpeedUnit): string {
  return `${Math.round((speed / SPEED[unit]) * 10) / 10} ${unit}`;
}

/** Metres as `800 m` or `3.2 km`, to ten metres; or as `160 yd` or `2.01 mi`, to a hundredth of a mile. */
export function distanceShown(metres: number, unit: UnitsShown['distance'] = 'km'): string {
  if (unit === 'km')
    return metres < 1000 ? `${Math.round(metres)} m` : `${Math.round(metres / 10) / 100} km`;
  const miles = metres / LENGTH.mi;
  return miles < IN_YARDS
    ? `${Math.round(metres / LENGTH.yd)} yd`
    : `${Math.round(miles * 100) / 100} mi`;
}
