import { Temporal } from 'temporal-polyfill';

/** What is wrong with a value, without a full stop. */
export interface Fault {
  fault: string;
}

/** A decimal number as XML Schema has it: no exponent. */
const DECIMAL = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/;
/** Date and time as XML Schema has it, with the zone that GPX leaves out at times. */
const DATE_TIME = /^-?\d{4,}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:\.\d+)?(Z|[+-]\d{2}:\d{2})?$/;

function decimalOf(text: string | undefined): number | null {
  const trimmed = text?.trim() ?? '';
  return DECIMAL.test(trimmed) ? Number(trimmed) : null;
}

/** Degrees of the attribute `lat`: from -90 to 90. */
export function latitudeOf(text: string | undefined): { value: number } | Fault {
  const value = decimalOf(text);
  if (text === undefined) return { fault: 'this point has no lat' };
  if (value === null) return { fault: `lat "${text}" is no decimal number` };
  if (Math.abs(value) > 90) return { fault: `lat ${text} is past 90` };
  return { value: value + 0 };
}

/** Degrees of the attribute `lon`: from -180 to just below 180. */
export function longitudeOf(text: string | undefined): { value: number } | Fault {
  const value = decimalOf(text);
  if (text === undefined) return { fault: 'this point has no lon' };
  if (value === null) return { fault: `lon "${text}" is no decimal number` };
  if (value === 180) return { fault: 'lon 180 is not allowed in GPX: it is written -180 there' };
  if (value < -180 || value > 180) return { fault: `lon ${text} is past 180` };
  return { value: value + 0 };
}

/** Metres above the sea. */
export function elevationOf(text: string): { value: number } | Fault {
  const value = decimalOf(text);
  return value === null ? { fault: `ele "${text.trim()}" is no number of metres` } : { value };
}

/** Epoch milliseconds; GPX times are UTC, also where their Z is missing. */
export function timeOf(text: string): { value: number } | Fault {
  const trimmed = text.trim();
  const found = DATE_TIME.exec(trimmed);
  const fault = `time "${trimmed}" is none: write for example 2026-11-14T07:41:05Z`;
  if (!found) return { fault };
  try {
    const moment = Temporal.Instant.from(found[1] === undefined ? `${trimmed}Z` : trimmed);
    return { value: moment.epochMilliseconds };
  } catch {
    return { fault };
  }
}
