import type { Entry } from './entry.ts';
import { inOrder } from './join-canonical.ts';
import { epochOf } from './time.ts';

/**
 * A number for each entry of two copies by its id. An entry keeps its number (the higher where the
 * copies differ: an earlier join gave it that) unless another one has it: then the one that was logged
 * first keeps it, and the other gets the next above all.
 */
export function numbersOf(
  entries: readonly Entry[],
  one: readonly Entry[],
  two: readonly Entry[],
): Map<Entry['id'], number> {
  const claims = new Map<Entry['id'], number>();
  for (const { id, number } of [...one, ...two])
    claims.set(id, Math.max(number, claims.get(id) ?? 0));
  let most = Math.max(0, ...claims.values());
  const given = new Set<number>();
  const numbers = new Map<Entry['id'], number>();
  const logged = entries
    .map((entry) => ({ id: entry.id, epoch: epochOf(entry.time) }))
    .sort((a, b) => a.epoch - b.epoch || inOrder(a.id, b.id));
  for (const { id } of logged) {
    const claim = claims.get(id) ?? 0;
    const free = claim > 0 && !given.has(claim);
    if (!free) most += 1;
    given.add(free ? claim : most);
    numbers.set(id, free ? claim : most);
  }
  return numbers;
}
