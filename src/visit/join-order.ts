import { bothMembers } from './join-canonical.ts';
import { type Step, stepOrder } from './join-history.ts';

/**
 * The steps of two copies in one order, common ones once. Each copy's order is kept, since its clock
 * may have run backwards; else the earlier comes first. Only where the two orders contradict each
 * other does time alone decide.
 */
export function inOneOrder(one: readonly Step[], two: readonly Step[]): Step[] {
  const inOne = new Map(one.map((step) => [step.id, step]));
  const inTwo = new Map(two.map((step) => [step.id, step]));
  const taken = new Set<string>();
  const order: Step[] = [];
  let [here, there] = [0, 0];
  for (;;) {
    while (taken.has(one[here]?.id ?? '')) here += 1;
    while (taken.has(two[there]?.id ?? '')) there += 1;
    const next = nextOf(one[here], two[there], inOne, inTwo);
    if (!next) return order;
    taken.add(next.id);
    const [mine, theirs] = [inOne.get(next.id), inTwo.get(next.id)];
    order.push(mine && theirs ? asOne(mine, theirs) : next);
  }
}

/** Of the next steps of both copies; one that the other copy has further on waits for it. */
function nextOf(
  one: Step | undefined,
  two: Step | undefined,
  inOne: ReadonlyMap<string, Step>,
  inTwo: ReadonlyMap<string, Step>,
): Step | undefined {
  if (!one || !two) return one ?? two;
  const [oneWaits, twoWaits] = [inTwo.has(one.id), inOne.has(two.id)];
  if (oneWaits !== twoWaits) return oneWaits ? two : one;
  return stepOrder(one, two) <= 0 ? one : two;
}

/**
 * A step that both copies have. Where they don't agree on what it takes back, it takes nothing back and
 * is a change like any other: one join found so, and the next ones must not find otherwise.
 */
function asOne(one: Step, two: Step): Step {
  return {
    ...one,
    change: bothMembers(one.change, two.change),
    undoes: one.undoes === two.undoes ? one.undoes : null,
    redoes: one.redoes === two.redoes ? one.redoes : null,
  };
}
