import { Temporal } from 'temporal-polyfill';
import type { SunDay } from './sun.ts';

type RisingDay = Extract<SunDay, { kind: 'rises' }>;
type TwilightDay = Extract<SunDay, { kind: 'polar-night' }>;

const MINUTE = 60_000;

/**
 * The sun of a day in words, for a head line.
 *
 * Minutes since or until sunrise are always told; those until or since sunset join them from solar
 * noon on. They are the difference of the clock times shown: sunrise and sunset are rounded to the
 * minute, as almanacs do, and `now` is cut to it, as clocks do.
 *
 * - `long`: 'sunrise 07:22, sunset 16:14, 50 min after sunrise', hours from 120 min on
 * - `middle`: 'sun 07:22 to 16:14, 50 min after sunrise', without the way to sunset
 * - `short`: 'sun 07:22-16:14 rise+50min', hours from 100 min on; ASCII, at most 36 columns for a
 *   `now` within three days of the day
 *
 * @param now epoch milliseconds, a moment of the day or of the night beside it
 * @param timeZone IANA name of the zone in which the times are shown
 */
export function sunWords(
  day: SunDay,
  now: number,
  timeZone: string,
  width: 'short' | 'middle' | 'long',
): string {
  const long = width === 'long';
  switch (day.kind) {
    case 'polar-day':
      return long ? 'polar day: the sun stays up today' : 'polar day, sun up all day';
    case 'polar-night':
      return long ? longPolarNight(day, timeZone) : shortPolarNight(day, timeZone);
    case 'rises':
      if (width === 'middle') return middleRises(day, now, timeZone);
      return long ? longRises(day, now, timeZone) : shortRises(day, now, timeZone);
  }
}

function longPolarNight({ dawn, dusk }: TwilightDay, timeZone: string): string {
  const night = 'polar night: the sun stays down today';
  if (dawn === null || dusk === null) return night;
  return `${night}, civil twilight ${clock(dawn, timeZone)} to ${clock(dusk, timeZone)}`;
}

function shortPolarNight({ dawn, dusk }: TwilightDay, timeZone: string): string {
  if (dawn === null || dusk === null) return 'polar night, sun down all day';
  return `polar night, twilight ${clock(dawn, timeZone)}-${clock(dusk, timeZone)}`;
}

function longRises(day: RisingDay, now: number, timeZone: string): string {
  const { sunrise, sunset, noon } = day;
  const datedClock = (epoch: number) => clock(epoch, timeZone) + besideDay(epoch, noon, timeZone);
  const words = [
    sunrise === null ? 'up since the day before' : `sunrise ${datedClock(sunrise)}`,
    sunset === null ? 'then up past midnight' : `sunset ${datedClock(sunset)}`,
  ];
  if (sunrise !== null) words.push(longDistance(minutesSince(sunrise, now), 'sunrise'));
  if (sunset !== null && tellsSunset(day, now)) {
    words.push(longDistance(minutesSince(sunset, now), 'sunset'));
  }
  return words.join(', ');
}

function middleRises(day: RisingDay, now: number, timeZone: string): string {
  const { sunrise, sunset } = day;
  const span = `sun ${shortSpan(day, timeZone).replace('-', ' to ')}`;
  if (sunrise !== null) return `${span}, ${longDistance(minutesSince(sunrise, now), 'sunrise')}`;
  return sunset === null ? span : `${span}, ${longDistance(minutesSince(sunset, now), 'sunset')}`;
}

function shortRises(day: RisingDay, now: number, timeZone: string): string {
  const { sunrise, sunset } = day;
  const words = [`sun ${shortSpan(day, timeZone)}`];
  if (sunrise !== null) words.push(shortDistance(minutesSince(sunrise, now), 'rise'));
  if (sunset !== null && tellsSunset(day, now)) {
    words.push(shortDistance(minutesSince(sunset, now), 'set'));
  }
  return words.join(' ');
}

function shortSpan({ sunrise, sunset }: RisingDay, timeZone: string): string {
  const from = sunrise === null ? null : clock(sunrise, timeZone);
  const until = sunset === null ? null : clock(sunset, timeZone);
  if (from === null) return `up until ${until}`;
  return until === null ? `up from ${from}` : `${from}-${until}`;
}

function tellsSunset({ sunrise, noon }: RisingDay, now: number): boolean {
  return sunrise === null || now >= noon;
}

function clock(epoch: number, timeZone: string): string {
  return toMinute(epoch, timeZone).toPlainTime().toString({ smallestUnit: 'minute' });
}

function besideDay(epoch: number, noon: number, timeZone: string): string {
  const eventDate = toMinute(epoch, timeZone).toPlainDate();
  const noonDate = toMinute(noon, timeZone).toPlainDate();
  const order = Temporal.PlainDate.compare(eventDate, noonDate);
  if (order === 0) return '';
  return order > 0 ? ' next day' : ' the day before';
}

function toMinute(epoch: number, timeZone: string): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(epoch).round('minute').toZonedDateTimeISO(timeZone);
}

function minutesSince(event: number, now: number): number {
  return Math.floor(now / MINUTE) - Math.round(event / MINUTE);
}

function longDistance(minutes: number, event: string): string {
  const { size, hours, rest } = parts(minutes);
  const length = size < 120 ? `${size} min` : `${hours} h ${rest} min`;
  return `${length} ${minutes < 0 ? 'before' : 'after'} ${event}`;
}

function shortDistance(minutes: number, event: string): string {
  const { size, hours, rest } = parts(minutes);
  // Hours begin earlier than in the long words: '119min' would be a column too wide.
  const length = size < 100 ? `${size}min` : `${hours}h${rest}`;
  return `${event}${minutes < 0 ? '-' : '+'}${length}`;
}

function parts(minutes: number): { size: number; hours: number; rest: string } {
  const size = Math.abs(minutes);
  return { size, hours: Math.floor(size / 60), rest: String(size % 60).padStart(2, '0') };
}
