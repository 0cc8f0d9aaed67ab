import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { goesOnFrom } from '../../src/notebook/copies.ts';
import { updateVisit, type VisitAction } from '../../src/visit/update.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { idOf, logging, placeOf, visitOf } from './visits.ts';

const time = visitOf().start;

/** What may be done to a visit; entries are named by small numbers, so that they are often hit. */
const anyAct: fc.Arbitrary<VisitAction | 'log'> = fc.oneof(
  fc.constant('log' as const),
  fc.constantFrom<VisitAction>({ do: 'undo', time }, { do: 'redo', time }),
  fc.integer({ min: 1, max: 4 }).map((number): VisitAction => ({ do: 'strike', time, number })),
  fc.integer({ min: 1, max: 4 }).map((number): VisitAction => ({ do: 'unstrike', time, number })),
  fc
    .constantFrom('Alder Carr', 'Withy Lane')
    .map((name): VisitAction => ({ do: 'set', time, part: 'place', value: placeOf(name) })),
  fc
    .constantFrom('frost', 'mist', null)
    .map((value): VisitAction => ({ do: 'set', time, part: 'description', value })),
);

function done(visit: Visit, acts: readonly (VisitAction | 'log')[]): Visit {
  return acts.reduce(
    (at, act) => (act === 'log' ? logging(at, 'owl') : updateVisit(at, act)),
    visit,
  );
}

describe('one state of a visit goes on from another', () => {
  test('whatever was done to it since', () => {
    fc.assert(
      fc.property(fc.array(anyAct), fc.array(anyAct), (before, since) => {
        const shorter = done(visitOf(), before);
        expect(goesOnFrom(done(shorter, since), shorter)).toBe(true);
      }),
    );
  });

  test('but not where each was changed in its own way, nor from what it does not hold', () => {
    const base = visitOf();
    expect(goesOnFrom(logging(base, 'owl'), logging(base, 'hare'))).toBe(false);
    expect(goesOnFrom(logging(logging(base, 'owl'), 'fox'), logging(base, 'hare'))).toBe(false);
    expect(goesOnFrom(base, logging(base, 'owl'))).toBe(false);
    const byHand = { ...base, description: 'typed into the file' };
    expect(goesOnFrom(logging(base, 'owl'), byHand)).toBe(false);
    expect(goesOnFrom(logging(base, 'owl'), { ...base, id: idOf(2) })).toBe(false);
  });
});
