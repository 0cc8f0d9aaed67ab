import { Temporal } from 'temporal-polyfill';
import * as z from 'zod';

/**
 * A moment as it is kept in files: RFC 3339 date and time to the second with the offset that the
 * place's clocks showed, for example `2026-11-14T07:41:05+00:00`. The offset stays even when a place,
 * and with it a zone, is given later: what the clock on the wall said is part of the observation.
 */
export const Stamp = z
  .string()
  .regex(
    /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}[+-]\d{2}:\d{2}$/,
    'a time such as 2026-11-14T07:41:05+00:00',
  )
  .refine((text) => isMoment(text), 'a time that exists in the calendar');
export type Stamp = z.infer<typeof Stamp>;

function isMoment(text: string): boolean {
  try {
    Temporal.Instant.from(text);
    return true;
  } catch {
    return false;
  }
}

/** True for a name that the IANA zone database of this runtime knows, such as `Europe/London`. */
export function isTimeZone(name: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name);
    return true;
  } catch {
    return false;
  }
}

/** The stamp of a moment (epoch milliseconds) in an IANA zone. */
export function stamp(epochMilliseconds: number, timeZone: string): Stamp {
  const zoned =
    Temporal.Instant.fromEpochMilliseconds(epochMilliseconds).toZonedDateTimeISO(timeZone);
  return zoned.toString({ timeZoneName: 'never', smallestUnit: 'second' });
}

/** Epoch milliseconds of a stamp. */
export function epochOf(moment: Stamp): number {
  return Temporal.Instant.from(moment).epochMilliseconds;
}

/** Local date of a stamp, `YYYY-MM-DD`. */
export function dateOf(moment: Stamp): string {
  return moment.slice(0, 10);
}

/** Local clock time of a stamp, `HH:MM`. */
export function clockOf(moment: Stamp): string {
  return moment.slice(11, 16);
}

/** Offset of a stamp from UTC, `+HH:MM`. */
export function offsetOf(moment: Stamp): string {
  return moment.slice(19);
}

/** Minutes and hours as a walker says them: `0:32`, `2:05`; days are counted into the hours. */
export function durationWords(milliseconds: number): string {
  const minutes = Math.max(0, Math.floor(milliseconds / 60_000));
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}
