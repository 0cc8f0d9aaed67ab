import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withWholeChanges } from '../../src/visit/count-changes.ts';
import type { Entry } from '../../src/visit/entry.ts';
import { joinVisits, unsound } from '../../src/visit/join.ts';
import { canonical } from '../../src/visit/join-canonical.ts';
import { standingChanges, updateVisit } from '../../src/visit/update.ts';
import { Conflict, standing, Visit } from '../../src/visit/visit.ts';
import { anyVisit } from '../notebook/visits.ts';
import { anyCopies, anyCopiesThatGoOn, type Copies } from './join-made.ts';
import { minutesIn } from './made.ts';

// The laws of a join in a semilattice (commutative, idempotent, absorbing); common practice, no source.

const often = { numRuns: 400 };
const PARTS = Conflict.shape.part.exclude(['entry']).options;

function always(law: (copies: Copies) => void) {
  fc.assert(fc.property(anyCopies, law), often);
}

/** Everything that ever stood for the parts and the entries, but for the numbers of entries. */
function everStood(visit: Visit): Set<string> {
  const observation = ({ number: _, ...entry }: Entry) => `entry ${canonical(entry)}`;
  const stood = new Set([
    ...visit.entries.map(observation),
    ...PARTS.map((part) => `${part} ${canonical(visit[part])}`),
  ]);
  for (const change of withWholeChanges(visit).changes)
    if (change.part !== 'entry') stood.add(`${change.part} ${canonical(change.before)}`);
    else if (change.before !== null) stood.add(observation(change.before));
  return stood;
}

function undoneToTheEnd(visit: Visit): Visit {
  let now = visit;
  for (let step = 0; step <= visit.changes.length; step += 1) {
    const next = updateVisit(now, { do: 'undo', time: minutesIn(800) });
    if (next === now) return now;
    now = next;
  }
  throw new Error('undo has no end');
}

describe('any two copies of a visit', () => {
  test('come to the same whichever is joined to the other', () => {
    always(({ one, two }) => {
      expect(joinVisits(one, two)).toEqual(joinVisits(two, one));
    });
  });

  test('stay as they are when joined with themselves', () => {
    always(({ one, two }) => {
      expect(joinVisits(one, one)).toEqual(one);
      const both = joinVisits(one, two);
      expect(joinVisits(both, both)).toEqual(both);
    });
  });

  test('add nothing when joined once more', () => {
    always(({ base, one, two }) => {
      const both = joinVisits(one, two);
      expect(joinVisits(both, one)).toEqual(both);
      expect(joinVisits(both, two)).toEqual(both);
      expect(joinVisits(base, both)).toEqual(both);
    });
  });

  test('leave a copy as it is when the other is its own past', () => {
    always(({ base, one }) => {
      expect(joinVisits(base, one)).toEqual(one);
      expect(joinVisits(one, base)).toEqual(one);
    });
  });

  test('lose no entry and no value that ever stood', () => {
    always(({ one, two }) => {
      const both = joinVisits(one, two);
      const ids = new Set(both.entries.map(({ id }) => id));
      for (const { id } of [...one.entries, ...two.entries]) expect(ids).toContain(id);
      const stood = everStood(both);
      const lost = [...everStood(one), ...everStood(two)].filter((value) => !stood.has(value));
      expect(lost).toEqual([]);
    });
  });

  test('have each entry once, under a number of its own that only a clash changes', () => {
    always(({ one, two }) => {
      const both = joinVisits(one, two);
      expect(unsound(both)).toBeNull();
      const numbers = new Map(both.entries.map(({ id, number }) => [id, number]));
      const all = new Map([...one.entries, ...two.entries].map((entry) => [entry.id, entry]));
      const highest = Math.max(0, ...[...all.values()].map(({ number }) => number));
      for (const { id, number, time } of all.values()) {
        const rivals = [...all.values()].filter((each) => each.number === number && each.id !== id);
        const first = rivals.every(
          (rival) => canonical([time, id]) < canonical([rival.time, rival.id]),
        );
        if (first) expect(numbers.get(id)).toBe(number);
        else expect(numbers.get(id)).toBeGreaterThan(highest);
      }
    });
  });

  test('are a visit that a file may hold', () => {
    always(({ one, two }) => {
      const both = joinVisits(one, two);
      expect(Visit.parse(JSON.parse(JSON.stringify(both)))).toEqual(both);
    });
  });

  test('can be undone to the beginning, which strikes every entry and restores every part', () => {
    always(({ base, one, two }) => {
      const back = undoneToTheEnd(joinVisits(one, two));
      expect(standing(back)).toEqual([]);
      const first = undoneToTheEnd(base);
      for (const part of PARTS) expect(back[part]).toEqual(first[part]);
      expect(standingChanges(back).done).toEqual([]);
    });
  });

  test('keep a value that one copy alone changed', () => {
    always(({ base, one, two }) => {
      const both = joinVisits(one, two);
      const touched = (visit: Visit) =>
        new Set(visit.changes.slice(base.changes.length).map(({ part }) => part));
      for (const part of PARTS) {
        if (!touched(two).has(part)) expect(both[part]).toEqual(one[part]);
        if (!touched(one).has(part)) expect(both[part]).toEqual(two[part]);
      }
    });
  });

  test('leave both copies untouched', () => {
    always(({ one, two }) => {
      const before = structuredClone([one, two]);
      joinVisits(one, two);
      expect([one, two]).toEqual(before);
    });
  });
});

describe('any two files of one visit, though no program made them', () => {
  test('come to one visit that a file may hold, whichever is joined to the other', () => {
    fc.assert(
      fc.property(anyVisit, anyVisit, (one, other) => {
        const two = { ...other, id: one.id };
        fc.pre(unsound(one) === null && unsound(two) === null);
        const both = joinVisits(one, two);
        expect(joinVisits(two, one)).toEqual(both);
        expect(joinVisits(both, one)).toEqual(both);
        expect(Visit.safeParse(both).success).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});

describe('copies that go on after a join', () => {
  const later = (law: (first: Visit, second: Visit, copies: Copies) => void) =>
    fc.assert(
      fc.property(anyCopiesThatGoOn, fc.boolean(), ({ goOn, goOnOtherwise, ...copies }, told) => {
        const both = joinVisits(copies.one, copies.two);
        // The other copy may have taken part in the join, or not know of it yet.
        law(goOn(both), goOnOtherwise(told ? both : copies.two), copies);
      }),
      often,
    );

  test('obey the same laws', () => {
    later((first, second) => {
      const both = joinVisits(first, second);
      expect(joinVisits(second, first)).toEqual(both);
      expect(joinVisits(both, first)).toEqual(both);
      expect(joinVisits(second, both)).toEqual(both);
      expect(joinVisits(first, first)).toEqual(first);
      expect(unsound(both)).toBeNull();
    });
  });

  test('take in a join that they took part in as their own past', () => {
    later((first, _, { one, two }) => {
      expect(joinVisits(first, joinVisits(one, two))).toEqual(first);
      expect(joinVisits(two, first)).toEqual(first);
    });
  });

  test('lose nothing and can be undone to the beginning', () => {
    later((first, second, { base }) => {
      const both = joinVisits(first, second);
      const stood = everStood(both);
      expect(
        [...everStood(first), ...everStood(second)].filter((each) => !stood.has(each)),
      ).toEqual([]);
      const back = undoneToTheEnd(both);
      expect(standing(back)).toEqual([]);
      const beginning = undoneToTheEnd(base);
      for (const part of PARTS) expect(back[part]).toEqual(beginning[part]);
    });
  });
});
