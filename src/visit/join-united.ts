import type { Effort } from './effort.ts';
import { alike, canonical, inOrder } from './join-canonical.ts';
import type { Target, Value } from './join-history.ts';
import { epochOf } from './time.ts';
import type { Weather } from './weather.ts';

/**
 * What two copies made of a list that both only added to, since the value that both had: readings of
 * the weather, pauses of the effort, taxa whose highest count is the visit's. Null where a person must choose.
 */
export function united(target: Target, had: Value, one: Value, two: Value): Value {
  if (target === 'weather') return readings(had as Weather[], one as Weather[], two as Weather[]);
  if (target === 'effort') return effortOf(had as Effort, one as Effort, two as Effort);
  if (target === 'highest') return taxa(had as string[], one as string[], two as string[]);
  return null;
}

function taxa(had: string[], one: string[], two: string[]): string[] | null {
  return keepsAll(had, one) && keepsAll(had, two) ? once([...one, ...two], () => 0) : null;
}

function readings(had: Weather[], one: Weather[], two: Weather[]): Weather[] | null {
  if (!keepsAll(had, one) || !keepsAll(had, two)) return null;
  return once([...one, ...two], ({ time }) => epochOf(time));
}

/** Pauses only: all else must be the same in both, and no two pauses may overlap, which count twice. */
function effortOf(had: Effort, one: Effort, two: Effort): Effort | null {
  if (!alike({ ...one, pauses: [] }, { ...two, pauses: [] })) return null;
  if (!keepsAll(had.pauses, one.pauses) || !keepsAll(had.pauses, two.pauses)) return null;
  const pauses = once([...one.pauses, ...two.pauses], ({ start }) => epochOf(start));
  const apart = pauses.every(({ end }, at) => {
    const next = pauses[at + 1];
    return next === undefined || (end !== null && epochOf(end) <= epochOf(next.start));
  });
  return apart ? { ...one, pauses } : null;
}

function keepsAll<T>(had: readonly T[], has: readonly T[]): boolean {
  const all = new Set(has.map(canonical));
  return had.every((item) => all.has(canonical(item)));
}

function once<T>(items: readonly T[], time: (item: T) => number): T[] {
  const byText = new Map(items.map((item) => [canonical(item), item]));
  return [...byText]
    .sort(([text, item], [other, another]) => time(item) - time(another) || inOrder(text, other))
    .map(([, item]) => item);
}
