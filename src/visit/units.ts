// Units in which an observer may give a value, each with what it is in the base unit, exactly: the
// international inch, foot, yard and mile, the avoirdupois pound and ounce, the nautical mile and the
// knot are exact by definition. Source: NIST SP 811 (2008), Appendix B (from memory).

/** Metres. */
export const LENGTH = {
  mm: 0.001,
  cm: 0.01,
  m: 1,
  km: 1000,
  in: 0.0254,
  ft: 0.3048,
  yd: 0.9144,
  mi: 1609.344,
  nmi: 1852,
} as const;

/** Grams. */
export const MASS = {
  mg: 0.001,
  g: 1,
  kg: 1000,
  oz: 28.349523125,
  lb: 453.59237,
} as const;

/** Metres a second. */
export const SPEED = {
  'm/s': 1,
  'km/h': 1000 / 3600,
  mph: 0.44704,
  kn: 1852 / 3600,
} as const;
export type SpeedUnit = keyof typeof SPEED;

/** Degrees Celsius are (value - `zero`) / `size`. */
export const TEMPERATURE = {
  c: { zero: 0, size: 1 },
  f: { zero: 32, size: 1.8 },
} as const;
export type TemperatureUnit = keyof typeof TEMPERATURE;

/** Degrees Celsius of a temperature. */
export function celsiusOf(value: number, unit: TemperatureUnit): number {
  const { zero, size } = TEMPERATURE[unit];
  return (value - zero) / size;
}

/** Metres a second of a speed, to a tenth of a millimetre, which holds the factors but no float dust. */
export function metresASecond(value: number, unit: SpeedUnit): number {
  return Math.round(value * SPEED[unit] * 10_000) / 10_000;
}
