import { Temporal } from 'temporal-polyfill';

const CLOCK = /^(\d{1,2})[:.](\d{2})$/;
const ISO_DATE = /^\d{4}-\d{2}-\d{2}$/;
const EXAMPLES = '07:40, yesterday 07:40 or 2026-11-14 07:40';

/** What the moment is reckoned from, in epoch milliseconds, and the zone whose clocks count. */
export interface Reckoning {
  now: number;
  /** The day that a clock time without a date belongs to. */
  day: number;
  timeZone: string;
}

/**
 * Reads when something was, as typed: a clock time, with `today`, `yesterday` or an ISO date before it.
 * Gives epoch milliseconds, or a sentence. An hour that the clocks leapt over is refused; of one that
 * came twice the first is taken. What has not come yet was not seen.
 */
export function readMoment(
  text: string,
  { now, day, timeZone }: Reckoning,
): { moment: number } | { problem: string } {
  const words = text.trim().toLowerCase().split(/\s+/);
  const [hour, minute] =
    CLOCK.exec(words.at(-1) ?? '')
      ?.slice(1)
      .map(Number) ?? [];
  const date = dateOf(words.slice(0, -1).join(' '), { now, day, timeZone });
  if (hour === undefined || minute === undefined || date === null)
    return { problem: `"${text.trim()}" is no time: write ${EXAMPLES}.` };
  if (hour > 23 || minute > 59)
    return { problem: `"${words.at(-1)}": hours go to 23 and minutes to 59.` };
  const wanted = date.toPlainDateTime({ hour, minute });
  const zoned = wanted.toZonedDateTime(timeZone, { disambiguation: 'earlier' });
  if (!zoned.toPlainDateTime().equals(wanted))
    return {
      problem: `The clocks leapt over ${words.at(-1)} on that day: write the time after it.`,
    };
  if (zoned.epochMilliseconds > now)
    return { problem: `"${text.trim()}" has not come yet: only what was seen is logged.` };
  return { moment: zoned.epochMilliseconds };
}

function dateOf(word: string, { now, day, timeZone }: Reckoning): Temporal.PlainDate | null {
  const on = (moment: number) =>
    Temporal.Instant.fromEpochMilliseconds(moment).toZonedDateTimeISO(timeZone).toPlainDate();
  if (word === '') return on(day);
  if (word === 'today') return on(now);
  if (word === 'yesterday') return on(now).subtract({ days: 1 });
  if (!ISO_DATE.test(word)) return null;
  try {
    return Temporal.PlainDate.from(word, { overflow: 'reject' });
  } catch {
    return null;
  }
}
