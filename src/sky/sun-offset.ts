import { Temporal } from 'temporal-polyfill';
import type { Position } from '../ground/position.ts';
import { sunDay } from './sun.ts';

/** How far a moment is from the nearest sunrise or sunset. */
export interface SunOffset {
  event: 'sunrise' | 'sunset';
  /** Whole minutes, positive after the event and negative before it. */
  minutes: number;
  /** `35 min after sunrise` */
  words: string;
}

const MINUTE = 60_000;

/**
 * The offset of a moment (epoch milliseconds) from the sunrise or sunset nearest to it, of the same
 * date or of one beside it, so that an owl at half past midnight goes by the evening before. At the
 * same distance from both, sunrise is taken. Null on a date of polar day or polar night.
 *
 * Minutes are those between the times cut (the moment, as clocks do) and rounded (the event, as
 * almanacs do) to the minute, as on the screen.
 *
 * @param timeZone IANA name of the zone that tells the date
 * @throws RangeError for a zone that does not exist, which the caller has to exclude
 */
export function sunOffset(moment: number, position: Position, timeZone: string): SunOffset | null {
  const date = Temporal.Instant.fromEpochMilliseconds(moment)
    .toZonedDateTimeISO(timeZone)
    .toPlainDate();
  if (sunDay(position, date.toString(), timeZone).kind !== 'rises') return null;
  const nearest = [-1, 0, 1]
    .map((days) => sunDay(position, date.add({ days }).toString(), timeZone))
    .flatMap((day) =>
      day.kind === 'rises'
        ? [
            { event: 'sunrise' as const, at: day.sunrise },
            { event: 'sunset' as const, at: day.sunset },
          ]
        : [],
    )
    .flatMap(({ event, at }) => (at === null ? [] : [{ event, minutes: minutesSince(at, moment) }]))
    .sort(
      (one, two) =>
        Math.abs(one.minutes) - Math.abs(two.minutes) || one.event.localeCompare(two.event),
    )[0];
  if (!nearest) return null;
  const { event, minutes } = nearest;
  const words = `${Math.abs(minutes)} min ${minutes < 0 ? 'before' : 'after'} ${event}`;
  return { event, minutes, words };
}

function minutesSince(event: number, moment: number): number {
  return Math.floor(moment / MINUTE) - Math.round(event / MINUTE);
}
