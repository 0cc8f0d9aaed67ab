import { clockOf, stamp } from '../visit/time.ts';
import type { Holder } from './lock-file.ts';

/** The program that holds a visit: `process 1234 on fenland, since 07:40`, by the clock of a zone. */
export function holderWords(holder: Holder | null, timeZone = 'UTC'): string {
  if (holder === null) return 'it does not say which';
  const since = clockOf(stamp(Date.parse(holder.began), timeZone));
  const zone = timeZone === 'UTC' ? ' UTC' : '';
  return `process ${holder.process} on ${holder.host}, since ${since}${zone}`;
}
