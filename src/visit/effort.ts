import * as z from 'zod';
import type { Declared } from './declared.ts';
import { epochOf, Stamp } from './time.ts';
import { LENGTH } from './units.ts';
import { distanceShown, type UnitsShown } from './units-shown.ts';

/** A stretch of the visit in which nobody was looking; open while `end` is null. */
const Pause = z.looseObject({ start: Stamp, end: Stamp.nullable() });

/** What a recorded track says of the walk. */
const Track = z.looseObject({
  /** Name of the file that was read. */
  file: z.string().min(1),
  start: Stamp,
  end: Stamp,
  /** Milliseconds in which the observer moved. */
  movingTime: z.number().min(0),
  /** Metres climbed, smoothed; null where the track has no heights. */
  climb: z.number().min(0).nullable(),
});

/** What went into a visit, so that its counts can be set beside those of another. */
export const Effort = z.looseObject({
  pauses: z.array(Pause),
  /** Metres walked, as the observer gave them or as a track has them. */
  distance: z.number().min(0).nullable(),
  observers: z.number().int().min(1).nullable(),
  /** One of `METHODS`, or the observer's own words: on foot, from the hide, by boat. */
  method: z.string().nullable(),
  /** The track that the distance comes from; null where it was given by hand. */
  track: Track.nullable(),
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

/** The effort with its open pause, if there is one, ended at `time`. */
export function goneOn(effort: Effort, time: Stamp): Effort {
  const pauses = effort.pauses.map((pause) =>
    pause.end === null ? { ...pause, end: time } : pause,
  );
  return { ...effort, pauses };
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

/** The way round the Earth at the equator in metres (WGS 84), to the metre. */
const MOST_METRES = 40_075_017;

const NUMBER = String.raw`(?<![\w.,~+–-])(\d{1,9}(?:[.,]\d+)?)`;
const DISTANCE = new RegExp(String.raw`${NUMBER}\s*(km|nmi|mi|miles?|yd|m)(?![\w/])`, 'i');
const OBSERVERS = new RegExp(String.raw`${NUMBER}\s*(?:people|persons?|observers?|of us)\b`, 'i');
const LEFT_OVER = /(?<!\S)[~+–-]?\d[\d.,–-]*(?:km|nmi|mi|miles?|yd|m)?(?!\S)/i;

const TIME =
  /(?<![\w.,])(?:\d{1,4}(?:[.,]\d+)?\s*(?:min(?:ute)?s?|h(?:ou)?rs?|h)(?:\s*\d{1,2}(?:\s*min(?:ute)?s?)?)?|\d{1,2}:\d{2})(?![\w:])/i;

/** How a visit can be counted, in the trade's words; common practice, no source. */
export const METHODS = [
  'casual',
  'timed count',
  'point count',
  'line transect',
  'whole-site count',
] as const;

/** The method that typed words begin alone, from three letters on: `transect` is the line transect. */
function methodOf(words: string): string {
  const typed = words.toLowerCase();
  if (typed.length < 3) return words;
  const starting = METHODS.filter((method) => {
    const plain = method.replace('-', ' ');
    return [method, plain, ...starts(plain)].some((name) => name.startsWith(typed));
  });
  return starting.length === 1 && starting[0] ? starting[0] : words;
}

/** A name from each of its words on: `whole site count`, `site count`, `count`. */
function starts(name: string): string[] {
  const words = name.split(' ');
  return words.map((_, at) => words.slice(at).join(' '));
}

type Read = Pick<Effort, 'distance' | 'observers' | 'method'>;

/**
 * Reads a line of effort, in any order and with any part missing: `3.2 km 2 people on foot`.
 * The words left over are the method: one of `METHODS` where they begin it and no other, else they
 * stay as they are. A time is refused: the visit has its own, and a second could only disagree.
 */
export function readEffort(text: string): { effort: Read } | { problem: string } {
  const far = DISTANCE.exec(text);
  const withoutDistance = far ? text.replace(far[0], ' ') : text;
  const many = OBSERVERS.exec(withoutDistance);
  const rest = (many ? withoutDistance.replace(many[0], ' ') : withoutDistance)
    .trim()
    .replace(/\s+/g, ' ');
  const problem = problemOf(far, many, rest);
  if (problem !== null) return { problem };
  return {
    effort: {
      distance: far ? metresOf(far) : null,
      observers: many ? Number(many[1]) : null,
      method: rest === '' ? null : methodOf(rest),
    },
  };
}

function problemOf(
  far: RegExpExecArray | null,
  many: RegExpExecArray | null,
  rest: string,
): string | null {
  const again = far && DISTANCE.exec(rest);
  if (again) return `Two distances, ${far[0]} and ${again[0]}: keep one.`;
  const [typed = '', digits = '', unit = ''] = far ?? [];
  if (/,\d{3}$/.test(digits)) {
    const [whole, part] = digits.split(',');
    return `"${typed}" can be read in two ways: write ${whole}${part} ${unit} or ${whole}.${part} ${unit}.`;
  }
  if (far && metresOf(far) > MOST_METRES) return `"${typed}" is more than once round the Earth.`;
  if (many && !Number.isInteger(Number(many[1])))
    return `"${many[0]}": write a whole number of people.`;
  if (many && Number(many[1]) === 0)
    return 'At least one person was there: write 1 person or leave it out.';
  const time = TIME.exec(rest)?.[0];
  if (time !== undefined)
    return `"${time}": leave it out. The time comes from the visit itself, from start to end less the pauses.`;
  const number = LEFT_OVER.exec(rest)?.[0];
  if (number === undefined) return null;
  return /^\d+(?:[.,]\d+)?$/.test(number)
    ? `"${number}" has no unit: write ${number} km, ${number} mi or ${number} people.`
    : `"${number}" can't be read: write one number with its unit, for example 3.2 km or 2 people.`;
}

/** To a tenth of a millimetre, in which every unit but the longest decimal fraction is exact. */
function metresOf([, digits = '', unit = '']: readonly string[]): number {
  const name = unit.toLowerCase().replace(/^miles?$/, 'mi') as keyof typeof LENGTH;
  return Math.round(Number(digits.replace(',', '.')) * LENGTH[name] * 10_000) / 10_000;
}

/** The effort with a line that was read; another distance than that of its track is one by hand. */
export function toldAnew(effort: Effort, read: Read): Effort {
  const track = read.distance === effort.distance ? effort.track : null;
  return { ...effort, ...read, track };
}

/** Effort as it is typed, so that it reads back as it is: `3.2 km 2 people on foot`. */
export function effortText(
  { distance, observers, method }: Effort,
  unit: UnitsShown['distance'] = 'km',
): string {
  return [
    distance === null ? '' : exactDistance(distance, unit),
    observers === null ? '' : `${observers} ${observers === 1 ? 'person' : 'people'}`,
    method ?? '',
  ]
    .filter((part) => part !== '')
    .join(' ');
}

/** In the unit wanted where that says it exactly, else in another one. */
function exactDistance(metres: number, unit: UnitsShown['distance']): string {
  const words = [unit, 'km' as const].map((each) => distanceShown(metres, each));
  const exact = words.find((each) => {
    const read = readEffort(each);
    return 'effort' in read && read.effort.distance === metres;
  });
  return exact ?? `${metres} m`;
}
