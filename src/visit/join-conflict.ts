import { type Effort, effortText } from './effort.ts';
import { type Entry, entryText } from './entry.ts';
import { alike, canonical, inOrder } from './join-canonical.ts';
import type { Step, Target, Value } from './join-history.ts';
import type { Place } from './place.ts';
import { clockOf, dateOf, epochOf, type Stamp } from './time.ts';
import { Conflict } from './visit.ts';
import { type Weather, weatherWords } from './weather.ts';

/** The conflict between the step that stands and another value; null where they say the same. */
export function conflictOf(stands: Step, other: Value): Conflict | null {
  const [one, two] = [judged(stands.after), judged(other)];
  const part = Conflict.shape.part.safeParse(stands.target);
  // Changes of an entry that a damaged file no longer has: nobody could settle them.
  const nowhere = !part.success && !Conflict.shape.entryId.safeParse(stands.target).success;
  if (nowhere || alike(one, two)) return null;
  const words = [
    valueWords(stands.target, stands.after),
    valueWords(stands.target, other),
  ] as const;
  const details = words[0] === words[1] ? [differing(one, two), differing(two, one)] : ['', ''];
  return {
    part: part.success ? part.data : 'entry',
    entryId: part.success ? null : stands.target,
    time: stands.change.time,
    stands: `${words[0]}${details[0]}`,
    other: `${words[1]}${details[1]}`,
  };
}

/** The conflicts of both copies, each once, by time. */
export function allConflicts(...conflicts: readonly Conflict[]): Conflict[] {
  const byText = new Map(conflicts.map((conflict) => [canonical(conflict), conflict]));
  return [...byText]
    .sort(
      ([text, one], [other, two]) => epochOf(one.time) - epochOf(two.time) || inOrder(text, other),
    )
    .map(([, conflict]) => conflict);
}

/** What matters of a value: not an entry's number, how a name was typed, or when it was struck out. */
function judged(value: Value): unknown {
  if (!isEntry(value)) return value;
  const { number: _, typed: __, words, struck, ...rest } = value;
  return { ...rest, words: value.taxon ? '' : words, struck: struck !== null };
}

function isEntry(value: Value): value is Entry {
  return value !== null && typeof value === 'object' && 'struck' in value;
}

function valueWords(target: Target, value: Value): string {
  if (isEntry(value)) return value.struck === null ? entryText(value) : struckWords(value);
  switch (target) {
    case 'place':
      return placeWords(value as Place | null);
    case 'weather':
      return weatherListWords(value as Weather[]);
    case 'effort':
      return effortWords(value as Effort);
    case 'highest':
      return (value as string[]).join(', ') || 'none';
    case 'end':
      return value === null ? 'not ended' : `${dateOf(value as Stamp)} ${clockOf(value as Stamp)}`;
    default:
      return value === null ? 'none' : String(value);
  }
}

function struckWords(entry: Entry): string {
  return `${entryText(entry)} (struck out)`;
}

function placeWords(place: Place | null): string {
  if (place === null) return 'no place';
  const { name, position } = place;
  return position === null ? name : `${name} ${position.latitude}, ${position.longitude}`;
}

function weatherListWords(readings: readonly Weather[]): string {
  if (readings.length === 0) return 'none';
  return readings.map((reading) => `${clockOf(reading.time)} ${weatherWords(reading)}`).join('; ');
}

function effortWords(effort: Effort): string {
  const { pauses, complete, groups } = effort;
  const paused = pauses.map(({ start, end }) => `${clockOf(start)}–${end ? clockOf(end) : ''}`);
  const answer = complete === null ? '' : complete ? 'complete' : 'not complete';
  const words = [
    effortText(effort),
    paused.length === 0 ? '' : `paused ${paused.join(', ')}`,
    groups === null ? answer : `${answer} for ${groups.join(', ')}`,
  ].filter((part) => part !== '');
  return words.length === 0 ? 'none' : words.join(', ');
}

/** Members that the other value lacks or has otherwise, for two that the usual words make the same. */
function differing(value: unknown, other: unknown): string {
  if (!isRecord(value) || !isRecord(other)) return '';
  const own = Object.entries(value)
    .filter(([key, member]) => !alike(member, other[key]))
    .map(([key, member]) => `${key} ${canonical(member)}`);
  return own.length === 0 ? '' : ` (${own.sort().join(', ')})`;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
