import type { SunWords } from '../outputs/entries-table.ts';
import { type SunOffset, sunOffset } from '../sky/sun-offset.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** How many reckonings are kept: those of some days. */
const MOST_KEPT = 200;

/**
 * Words of `sunOffset` for many entries of few visits: it is reckoned at the ends of an hour, and
 * between them it runs with the clock where both ends have the same sunrise or sunset.
 */
export function sunWords(): SunWords {
  const kept = new Map<string, SunOffset | null>();
  const reckoned: (...given: Parameters<SunWords>) => SunOffset | null = (
    moment,
    position,
    zone,
  ) => {
    const key = `${moment} ${position.latitude} ${position.longitude} ${zone}`;
    const before = kept.get(key);
    if (before !== undefined) return before;
    if (kept.size >= MOST_KEPT) kept.clear();
    const offset = sunOffset(moment, position, zone);
    kept.set(key, offset);
    return offset;
  };
  return (moment, position, zone) => {
    const from = Math.floor(moment / HOUR) * HOUR;
    const begin = reckoned(from, position, zone);
    const end = reckoned(from + HOUR, position, zone);
    if (!begin || begin.event !== end?.event || end.minutes - begin.minutes !== 60)
      return sunOffset(moment, position, zone)?.words ?? null;
    const minutes = begin.minutes + Math.floor((moment - from) / MINUTE);
    return `${Math.abs(minutes)} min ${minutes < 0 ? 'before' : 'after'} ${begin.event}`;
  };
}
