import * as z from 'zod';
import type { Declared } from './declared.ts';
import { epochOf, Stamp } from './time.ts';

/** A stretch of the visit in which nobody was looking; open while `end` is null. */
export const Pause = z.looseObject({ start: Stamp, end: Stamp.nullable() });

/** What went into a visit, so that its counts can be set beside those of another. */
export const Effort = z.looseObject({
  pauses: z.array(Pause),
  /** Metres walked, as the observer gave them. */
  distance: z.number().min(0).nullable(),
  observers: z.number().int().min(1).nullable(),
  /** In the observer's words: on foot, from the hide, by boat. */
  method: z.string().nullable(),
  /** Was everything noticed logged, so that what is missing was not seen? Null: not said. */
  complete: z.boolean().nullable(),
  /** The groups for which the answer holds, such as `birds`; null where it was not said. */
  groups: z.array(z.string()).nullable(),
});
export type Effort = Declared<z.infer<typeof Effort>>;

/** Is the visit paused now? */
export function paused(effort: Effort): boolean {
  return effort.pauses.at(-1)?.end === null;
}

/** Milliseconds from `start` to `now` less the pauses; both in epoch milliseconds. Never below 0. */
export function watchedTime(effort: Effort, start: number, now: number): number {
  const away = effort.pauses.reduce((sum, pause) => {
    const from = epochOf(pause.start);
    const to = pause.end === null ? now : epochOf(pause.end);
    return sum + Math.max(0, to - from);
  }, 0);
  return Math.max(0, now - start - away);
}

/** Metres in one of each unit that distances are typed in; exact (NIST SP 811, Appendix B, from memory). */
const METRES = { m: 1, km: 1000, mi: 1609.344, yd: 0.9144, nmi: 1852 } as const;

/**
 * Reads a line of effort, in any order and with any part missing: `3.2 km 2 people on foot`.
 * The words left over are the method.
 */
export function readEffort(
  text: string,
): { effort: Pick<Effort, 'distance' | 'observers' | 'method'> } | { problem: string } {
  let distance: number | null = null;
  let observers: number | null = null;
  const rest = text
    .replace(
      /(?<![\w.])(\d+(?:[.,]\d+)?)\s*(km|nmi|mi|miles?|yd|m)\b/i,
      (_, digits: string, unit: string) => {
        const name = unit.toLowerCase().startsWith('mile') ? 'mi' : unit.toLowerCase();
        distance = Number(digits.replace(',', '.')) * METRES[name as keyof typeof METRES];
        return ' ';
      },
    )
    .replace(/(?<![\w.])(\d+)\s*(?:people|persons?|observers?|of us)\b/i, (_, digits: string) => {
      observers = Number(digits);
      return ' ';
    })
    .trim()
    .replace(/\s+/g, ' ');
  const number = /(?<!\S)\d+(?:[.,]\d+)?(?!\S)/.exec(rest);
  if (number)
    return {
      problem: `"${number[0]}" has no unit: write ${number[0]} km, ${number[0]} mi or ${number[0]} people.`,
    };
  if (observers === 0)
    return { problem: 'At least one person was there: write 1 people or leave it out.' };
  return { effort: { distance, observers, method: rest === '' ? null : rest } };
}

/** Effort as it is typed: `3.2 km 2 people on foot`. */
export function effortText(effort: Effort): string {
  return [
    effort.distance === null ? '' : distanceWords(effort.distance),
    effort.observers === null
      ? ''
      : `${effort.observers} ${effort.observers === 1 ? 'person' : 'people'}`,
    effort.method ?? '',
  ]
    .filter((part) => part !== '')
    .join(' ');
}

/** Metres in words: below a kilometre as metres, else kilometres to ten metres. */
export function distanceWords(metres: number): string {
  return metres < 1000 ? `${Math.round(metres)} m` : `${Math.round(metres / 10) / 100} km`;
}
