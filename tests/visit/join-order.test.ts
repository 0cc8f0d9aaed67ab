import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Step } from '../../src/visit/join-history.ts';
import { inOneOrder } from '../../src/visit/join-order.ts';
import { START } from './made.ts';

function stepOf(name: number, epoch: number, undoes: string | null = null): Step {
  const about = { time: START, undoes: null, redoes: null, reason: null };
  return {
    id: `step ${name}`,
    says: `step ${name}`,
    nth: 1,
    epoch,
    target: 'description',
    change: { ...about, part: 'description', before: null },
    after: null,
    undoes,
    redoes: null,
  };
}

const idsOf = (steps: readonly Step[]) => steps.map(({ id }) => id);

/** Any two lists of some of twelve steps, in orders that may contradict each other and the times. */
const lists = fc
  .array(fc.nat(5), { minLength: 12, maxLength: 12 })
  .map((epochs) => epochs.map((epoch, at) => stepOf(at, epoch)))
  .chain((steps) => fc.tuple(fc.shuffledSubarray(steps), fc.shuffledSubarray(steps)));

describe('two lists of steps, whatever their orders', () => {
  test('hold every step of both once, in the same order whichever comes first', () => {
    fc.assert(
      fc.property(lists, ([one, two]) => {
        const both = idsOf(inOneOrder(one, two));
        expect(new Set(both)).toEqual(new Set(idsOf([...one, ...two])));
        expect(new Set(both).size).toBe(both.length);
        expect(idsOf(inOneOrder(two, one))).toEqual(both);
      }),
      { numRuns: 2000 },
    );
  });

  test('come to the same when either is put in once more', () => {
    fc.assert(
      fc.property(lists, ([one, two]) => {
        const both = inOneOrder(one, two);
        for (const list of [one, two, both])
          expect(idsOf(inOneOrder(list, both))).toEqual(idsOf(both));
      }),
      { numRuns: 2000 },
    );
  });

  test('keep the order of each where the two do not contradict each other', () => {
    fc.assert(
      fc.property(lists, ([all]) => {
        const one = all.filter((_, at) => at % 2 === 0 || at % 3 === 0);
        const two = all.filter((_, at) => at % 2 === 1);
        const both = idsOf(inOneOrder(one, two));
        for (const list of [one, two]) {
          const own = new Set(idsOf(list));
          expect(both.filter((id) => own.has(id))).toEqual(idsOf(list));
        }
      }),
      { numRuns: 2000 },
    );
  });
});

test('steps that wait for nothing come by time', () => {
  const both = inOneOrder([stepOf(1, 10), stepOf(2, 30)], [stepOf(3, 20), stepOf(4, 40)]);
  expect(idsOf(both)).toEqual(['step 1', 'step 3', 'step 2', 'step 4']);
});

test.each([
  ['step 1', 'step 1', 'step 1'],
  ['step 1', 'step 2', null],
  ['step 1', null, null],
])('a step that takes back %s in one list and %s in the other takes back %s', (one, two, both) => {
  for (const [here, there] of [
    [one, two],
    [two, one],
  ] as const)
    expect(inOneOrder([stepOf(3, 1, here)], [stepOf(3, 1, there)])[0]?.undoes).toBe(both);
});
