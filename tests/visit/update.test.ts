import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Observation } from '../../src/visit/entry.ts';
import {
  nextInWords,
  standingChanges,
  updateVisit,
  type VisitAction,
} from '../../src/visit/update.ts';
import { standing, Visit } from '../../src/visit/visit.ts';
import {
  entryOf,
  idOf,
  minutesIn,
  observed,
  POCHARD,
  placeOf,
  visitAt,
  withLogged,
} from './made.ts';

type Deed = VisitAction extends infer Action
  ? Action extends unknown
    ? Omit<Action, 'time'>
    : never
  : never;

let minute = 0;
function doing(visit: Visit, ...deeds: Deed[]): Visit {
  return deeds.reduce<Visit>((so, deed) => {
    minute = (minute + 1) % 900;
    return updateVisit(so, { ...deed, time: minutesIn(minute) } as VisitAction);
  }, visit);
}

const log = (over: Partial<Observation> = {}, id = 7): Deed => ({
  do: 'log',
  id: idOf(id),
  observation: observed(over),
});
const undo: Deed = { do: 'undo' };
const redo: Deed = { do: 'redo' };

describe('logging', () => {
  test('numbers entries from 1 in the order in which they come', () => {
    const visit = doing(visitAt(), log(), log(), log());
    expect(visit.entries.map((entry) => entry.number)).toEqual([1, 2, 3]);
    expect(visit.entries.every((entry) => entry.struck === null)).toBe(true);
  });

  test('never gives the number of a struck or undone entry to another', () => {
    const struck = doing(visitAt(), log(), log(), { do: 'strike', number: 2 }, log());
    expect(struck.entries.map((entry) => entry.number)).toEqual([1, 2, 3]);
    expect(standing(struck).map((entry) => entry.number)).toEqual([1, 3]);
    const undone = doing(visitAt(), log(), undo, log());
    expect(standing(undone).map((entry) => entry.number)).toEqual([2]);
  });

  test('a whole entry once more makes a new one with a number, id and time of its own', () => {
    const once = doing(visitAt(), log(), { do: 'strike', number: 1 });
    const twice = doing(once, { do: 'log', id: idOf(8), observation: entryOf(once, 1) });
    expect(entryOf(twice, 2)).toMatchObject({ id: idOf(8), struck: null });
    expect(entryOf(twice, 2).time).not.toBe(entryOf(twice, 1).time);
  });
});

describe('amending', () => {
  test('keeps the number, id and time, and the earlier value with the reason', () => {
    const before = doing(visitAt(), log());
    const observation = observed({ taxon: POCHARD, words: 'pochard' });
    const after = doing(before, { do: 'amend', number: 1, observation, reason: 'seen better' });
    const { id, number, time } = entryOf(before, 1);
    expect(entryOf(after, 1)).toMatchObject({ id, number, time, taxon: POCHARD, struck: null });
    expect(after.changes.at(-1)).toMatchObject({
      reason: 'seen better',
      before: entryOf(before, 1),
    });
  });

  test('by a whole other entry takes over what was seen and nothing else', () => {
    const before = doing(visitAt(), log(), log({ taxon: POCHARD }, 8));
    const after = doing(before, { do: 'amend', number: 2, observation: entryOf(before, 1) });
    expect(after.entries.map((entry) => [entry.number, entry.id])).toEqual([
      [1, idOf(7)],
      [2, idOf(8)],
    ]);
  });

  test('keeps fields of the entry that this version does not know', () => {
    const before = doing(visitAt(), log());
    const known = { ...before, entries: [{ ...entryOf(before, 1), picture: 'a.jpg' }] };
    const after = doing(known, { do: 'amend', number: 1, observation: observed({ words: 'x' }) });
    expect(entryOf(after, 1)).toMatchObject({ picture: 'a.jpg', words: 'x' });
  });
});

describe('an action that finds nothing to do', () => {
  const visit = doing(visitAt(), log(), { do: 'strike', number: 1 }, log({}, 8));
  test.each<[string, Deed]>([
    ['undo of an empty visit', undo],
    ['redo of nothing undone', redo],
    ['strike of an unknown entry', { do: 'strike', number: 9 }],
    ['strike of a struck entry', { do: 'strike', number: 1 }],
    ['unstrike of a standing entry', { do: 'unstrike', number: 2 }],
    ['amend of an unknown entry', { do: 'amend', number: 9, observation: observed() }],
    ['amend to what stands there', { do: 'amend', number: 2, observation: observed() }],
    ['a place set to the same', { do: 'set', part: 'place', value: placeOf() }],
    ['a description set to none', { do: 'set', part: 'description', value: null }],
  ])('%s gives back the same visit', (title, deed) => {
    const given = title.includes('empty') ? visitAt() : visit;
    expect(doing(given, deed)).toBe(given);
  });
});

describe('undo and redo', () => {
  test('go through everything that was done, latest first, and say what comes next', () => {
    const done = doing(
      visitAt(),
      log(),
      { do: 'set', part: 'description', value: 'by the sluice' },
      { do: 'strike', number: 1 },
    );
    expect(nextInWords(done, 'undo')).toBe('1 Mallard');
    const once = doing(done, undo);
    expect(standing(once)).toHaveLength(1);
    expect(nextInWords(once, 'undo')).toBe('the description');
    const twice = doing(once, undo);
    expect(twice.description).toBeNull();
    expect(nextInWords(twice, 'redo')).toBe('the description');
    expect(standing(doing(twice, undo))).toEqual([]);
    expect(doing(twice, redo, redo).description).toBe('by the sluice');
    expect(standing(doing(twice, redo, redo))).toEqual([]);
  });

  test('a new action ends what could be redone', () => {
    const visit = doing(visitAt(), log(), undo, log());
    expect(nextInWords(visit, 'redo')).toBeNull();
    expect(doing(visit, redo)).toBe(visit);
  });
});

const observations = fc.constantFrom(
  observed(),
  observed({ taxon: POCHARD, count: { kind: 'at least', value: 120 } }),
  observed({ taxon: null, words: 'small brown', count: { kind: 'present' } }),
);
const number = fc.integer({ min: 1, max: 5 });
const deeds: fc.Arbitrary<Deed[]> = fc.array(
  fc.oneof(
    {
      weight: 4,
      arbitrary: observations.map((observation): Deed => ({ do: 'log', id: idOf(9), observation })),
    },
    fc
      .tuple(number, observations)
      .map(([at, observation]): Deed => ({ do: 'amend', number: at, observation })),
    number.map((at): Deed => ({ do: 'strike', number: at })),
    number.map((at): Deed => ({ do: 'unstrike', number: at })),
    fc.constantFrom<Deed>(
      { do: 'set', part: 'place', value: placeOf({ name: 'Withy Drove' }) },
      { do: 'set', part: 'place', value: null },
      { do: 'set', part: 'description', value: 'still, bright' },
      { do: 'set', part: 'end', value: minutesIn(899) },
      { do: 'set', part: 'effort', value: { ...visitAt().effort, observers: 2 } },
    ),
    { weight: 3, arbitrary: fc.constantFrom(undo, redo) },
  ),
  { maxLength: 25 },
);

/** All but the changes and the moments of striking: what an observer would see. */
function seen(visit: Visit) {
  const { changes: _, ...rest } = visit;
  return {
    ...rest,
    entries: visit.entries.map((entry) => ({ ...entry, struck: entry.struck !== null })),
  };
}

describe('any run of actions', () => {
  test('undone as often as it is long leaves no standing entry and the visit as it began', () => {
    fc.assert(
      fc.property(deeds, (all) => {
        const first = visitAt();
        const back = doing(first, ...all, ...all.map(() => undo));
        expect(standing(back)).toEqual([]);
        expect({ ...seen(back), entries: [] }).toEqual(seen(first));
        expect(standingChanges(back).done).toEqual([]);
      }),
    );
  });

  test('undone some steps and redone as many is as it was', () => {
    fc.assert(
      fc.property(deeds, fc.nat(12), (all, steps) => {
        const visit = doing(visitAt(), ...all);
        const possible = Math.min(steps, standingChanges(visit).done.length);
        const back = doing(visit, ...Array.from({ length: possible }, () => undo));
        expect(seen(doing(back, ...Array.from({ length: possible }, () => redo)))).toEqual(
          seen(visit),
        );
      }),
    );
  });

  test('only ever adds changes and entries, and never moves a number, id or time', () => {
    fc.assert(
      fc.property(deeds, (all) => {
        let visit = visitAt();
        for (const deed of all) {
          const after = doing(visit, deed);
          expect(after.changes.slice(0, visit.changes.length)).toEqual(visit.changes);
          const fixed = (of: Visit) =>
            of.entries.map((entry) => [entry.number, entry.id, entry.time]);
          expect(fixed(after).slice(0, visit.entries.length)).toEqual(fixed(visit));
          expect(after.entries.map((entry) => entry.number)).toEqual(
            after.entries.map((_, at) => at + 1),
          );
          visit = after;
        }
      }),
    );
  });

  test('written to a file and read again is whole, and undo goes on as without the restart', () => {
    fc.assert(
      fc.property(deeds, (all) => {
        const visit = doing(visitAt(), ...all);
        const read = Visit.parse(JSON.parse(JSON.stringify(visit))) as Visit;
        expect(read).toEqual(visit);
        expect(seen(doing(read, undo, undo, redo))).toEqual(seen(doing(visit, undo, undo, redo)));
      }),
    );
  });

  test('leaves the visit that it began with untouched', () => {
    fc.assert(
      fc.property(deeds, (all) => {
        const visit = withLogged(visitAt(), {}, { taxon: POCHARD });
        const copy = structuredClone(visit);
        doing(visit, ...all);
        expect(visit).toEqual(copy);
      }),
    );
  });
});
