import * as z from 'zod';
import { GROUP_SIZES } from '../visit/count.ts';
import { UNITS_SHOWN, USUAL_UNITS } from '../visit/units-shown.ts';

/** One setting: what stands above it in the file, its usual value, and what may be written. */
interface Setting<Value> {
  about: string;
  usual: Value;
  /** Takes what the file or the command line holds; an issue says what is wrong and how to mend it. */
  shape: z.ZodType<Value>;
  /** A value as it is written. */
  written(value: Value): unknown;
}

/** Who observes: how many, and their names where they were given. */
export interface Observers {
  number: number | null;
  names: string[];
}

export const BY_PLACE = 'by place';
const NONE = 'none';
const MOST_OBSERVERS = 9999;
const LARGEST_GROUP = 1000;

/** Several values may be written as a list, or in one line with commas between them. */
function several(parted: RegExp) {
  return (written: unknown) =>
    typeof written === 'string'
      ? written
          .split(parted)
          .map((each) => each.trim())
          .filter((each) => each !== '')
      : typeof written === 'number'
        ? [written]
        : written;
}

function setting<Value>(given: Setting<Value>): Setting<Value> {
  return given;
}

/** Tags are the same in any case (RFC 5646, section 2.1.1). */
const Language = z
  .string('is no language tag: write one such as en or cy')
  .trim()
  .toLowerCase()
  .regex(/^[a-z]{2,3}(-[a-z0-9]+)*$/, 'is no language tag: write one such as en or cy');

function oneOf<const Units extends readonly [string, ...string[]]>(units: Units) {
  return z.preprocess(
    (written) =>
      typeof written === 'string'
        ? (units.find((unit) => unit.toLowerCase() === written.trim().toLowerCase()) ?? written)
        : written,
    z.enum(units, `is no unit for this: write ${units.join(' or ')}`),
  ) as unknown as z.ZodType<Units[number]>;
}

const WRONG_LISTS = `names no lists: write ${BY_PLACE}, or names such as [britain-ireland-birds, own-moths]`;
const WRONG_SIZES = `are no group sizes: write two to nine whole numbers from 1 to ${LARGEST_GROUP}, rising, such as [1, 5, 10]`;
const WRONG_OBSERVERS = `tells of no observers: write ${NONE}, a whole number from 1 to ${MOST_OBSERVERS}, or names such as [Wren Alder, Jo Marsh]`;

/** All settings by their keys, in the order of the file. */
export const SETTINGS = {
  lists: setting<string[] | null>({
    about: `Which species lists are in use: "${BY_PLACE}" for those of the region and all of your own, or their names.`,
    usual: null,
    shape: z.preprocess(
      (written) => (written === BY_PLACE ? null : several(/[,;\s]+/)(written)),
      z.array(z.string(WRONG_LISTS), WRONG_LISTS).min(1, WRONG_LISTS).nullable(),
    ),
    written: (names) => names ?? BY_PLACE,
  }),
  'languages.shown': setting<string>({
    about: 'In which language names are shown, as a tag (RFC 5646) such as en or cy.',
    usual: 'en',
    shape: Language,
    written: (tag) => tag,
  }),
  'languages.searched': setting<string[]>({
    about: 'In which languages names are searched.',
    usual: ['en'],
    shape: z.preprocess(
      several(/[,;\s]+/),
      z
        .array(Language, 'is no list of language tags: write for example [en, cy]')
        .min(1, 'is no list of language tags: write for example [en, cy]'),
    ),
    written: (tags) => tags,
  }),
  'group-sizes': setting<readonly number[]>({
    about:
      'The steps of the count: Left and Right on the entry line, and the digits of the Board. Two to nine, rising.',
    usual: GROUP_SIZES,
    shape: z.preprocess(
      (written) => {
        const sizes = several(/[,;\s]+/)(written);
        return Array.isArray(sizes) ? sizes.map(numberIn) : sizes;
      },
      z
        .array(z.int(WRONG_SIZES).min(1, WRONG_SIZES).max(LARGEST_GROUP, WRONG_SIZES), WRONG_SIZES)
        .min(2, WRONG_SIZES)
        .max(9, WRONG_SIZES)
        .refine(
          (sizes) => sizes.every((size, at) => size > (sizes[at - 1] ?? 0)),
          'do not rise: write each size once, the smallest first, such as [1, 5, 10]',
        ),
    ),
    written: (sizes) => sizes,
  }),
  observers: setting<Observers>({
    about: `Who observes: a number, or names. A new visit begins with it; "${NONE}" leaves it open.`,
    usual: { number: null, names: [] },
    shape: z.preprocess(observersIn, z.unknown()).transform((read, context) => {
      const number = z.int().min(1).max(MOST_OBSERVERS).nullable();
      const shape = z.object({ number, names: z.array(z.string().trim().min(1)) });
      const checked = shape.safeParse(read);
      if (checked.success) return checked.data;
      context.addIssue(WRONG_OBSERVERS);
      return z.NEVER;
    }),
    written: ({ number, names }) => (names.length > 0 ? names : (number ?? NONE)),
  }),
  'units.temperature': setting({
    about: 'Units in which values are shown; files keep °C, metres and metres a second. C or F:',
    usual: USUAL_UNITS.temperature,
    shape: oneOf(UNITS_SHOWN.temperature),
    written: (unit) => unit,
  }),
  'units.distance': setting({
    about: 'km (and m) or mi (and yd):',
    usual: USUAL_UNITS.distance,
    shape: oneOf(UNITS_SHOWN.distance),
    written: (unit) => unit,
  }),
  'units.wind': setting({
    about:
      'Beaufort, with m/s where that was measured; or m/s, km/h, mph or kn, with Beaufort where only a force was given:',
    usual: USUAL_UNITS.wind,
    shape: oneOf(UNITS_SHOWN.wind),
    written: (unit) => unit,
  }),
} as const;

export type Key = keyof typeof SETTINGS;
export type Values = { [K in Key]: (typeof SETTINGS)[K]['usual'] };
export const KEYS = Object.keys(SETTINGS) as Key[];

export function isKey(word: string): word is Key {
  return Object.hasOwn(SETTINGS, word);
}

/** A setting's value from what was written, or what is wrong with it: the sentence without its subject. */
export function readValue<K extends Key>(
  key: K,
  written: unknown,
): { value: Values[K] } | { problem: string } {
  const read = SETTINGS[key].shape.safeParse(written);
  if (read.success) return { value: read.data as Values[K] };
  return { problem: read.error.issues[0]?.message ?? 'is not understood' };
}

/** A value as it stands in the file: a word, a number or a list of them. */
export function writtenOf<K extends Key>(key: K, value: Values[K]): unknown {
  return (SETTINGS[key] as unknown as Setting<Values[K]>).written(value);
}

/** A value as it is written in one line: `1, 2, 5`. */
export function valueText<K extends Key>(key: K, value: Values[K]): string {
  const plain = writtenOf(key, value);
  return Array.isArray(plain) ? plain.join(', ') : String(plain);
}

/** A whole number as it may be typed; anything else stays for the check to refuse. */
function numberIn(written: unknown): unknown {
  return typeof written === 'string' && /^\d{1,9}$/.test(written) ? Number(written) : written;
}

function observersIn(written: unknown): unknown {
  const plain = numberIn(typeof written === 'string' ? written.trim() : written);
  if (plain === NONE) return { number: null, names: [] };
  if (typeof plain === 'number') return { number: plain, names: [] };
  const names = several(/[,;]/)(plain);
  return Array.isArray(names) && names.length > 0 ? { number: names.length, names } : plain;
}
