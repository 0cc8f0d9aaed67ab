import { describe, expect, test } from 'vitest';
import { odditiesIn } from '../../src/notebook/check-visit.ts';
import { updateVisit } from '../../src/visit/update.ts';
import type { Change, Visit } from '../../src/visit/visit.ts';
import { logging, moved, visitOf } from './visits.ts';

const START = '2026-11-14T07:41:05+00:00';

function withChange(visit: Visit, at: number, change: Partial<Change>): Visit {
  const changes = visit.changes.map((each, place) =>
    place === at ? { ...each, ...change } : each,
  );
  return { ...visit, changes: changes as Change[] };
}

function walked(): Visit {
  const logged = moved(logging(visitOf(), 'owl'), 'Alder Carr');
  const undone = updateVisit(logged, { do: 'undo', time: START });
  return updateVisit(undone, { do: 'redo', time: START });
}

describe('a visit as the program makes it', () => {
  test('fits together, with undo and redo', () => {
    expect(odditiesIn(walked())).toEqual([]);
    expect(odditiesIn({ ...walked(), end: '2026-11-14T09:00:00+00:00' })).toEqual([]);
  });
});

describe('a fault in a visit', () => {
  test.each<[string, Visit, string]>([
    [
      'a number twice',
      { ...visitOf(), entries: [...visitOf().entries, ...visitOf().entries] },
      'two entries bear the number 1',
    ],
    [
      'an undo of a change to come',
      withChange(walked(), 0, { undoes: 1 }),
      'change 0 takes back change 1, which is not before it',
    ],
    [
      'a redo of itself',
      withChange(walked(), 2, { redoes: 2 }),
      'change 2 takes back change 2, which is not before it',
    ],
    [
      'a change of no entry',
      withChange(walked(), 1, { number: 9 } as Partial<Change>),
      'change 1 is of entry 9, which is not there',
    ],
  ])('is %s', (_, visit, what) => {
    expect(odditiesIn(visit)).toContainEqual({ what, fault: true });
  });

  test('is an id twice', () => {
    const [one] = visitOf().entries;
    if (!one) throw new Error('An entry is needed.');
    const visit = { ...visitOf(), entries: [one, { ...one, number: 2 }] };
    expect(odditiesIn(visit)).toEqual([{ what: `two entries bear the id ${one.id}`, fault: true }]);
  });
});

describe('worth a look in a visit, and no fault, is', () => {
  const look = (visit: Visit) => odditiesIn(visit).filter(({ fault }) => !fault);

  test('an end before the start', () => {
    expect(look(visitOf({ end: '2026-11-14T07:00:00+00:00' }))).toEqual([
      { what: 'it ends at 07:00, before it starts', fault: false },
    ]);
  });

  test('an entry hours outside, on either side, and none within', () => {
    const late = logging(visitOf(), 'owl', '2026-11-14T13:00:00+00:00');
    expect(look(late)).toEqual([]);
    const what = 'entry 2 lies hours outside the visit, on 2026-11-14 at 13:00';
    expect(look({ ...late, end: '2026-11-14T10:00:00+00:00' })).toEqual([{ what, fault: false }]);
    const early = { ...visitOf(), start: '2026-11-14T12:00:00+00:00' };
    expect(look(early)).toHaveLength(1);
  });

  test('a clock that goes back by more than five minutes', () => {
    const first = logging(visitOf({ logged: [] }), 'owl', '2026-11-14T08:00:00+00:00');
    expect(look(logging(first, 'hare', '2026-11-14T07:55:00+00:00'))).toEqual([]);
    expect(look(logging(first, 'hare', '2026-11-14T07:54:00+00:00'))).toEqual([
      {
        what: 'the clock of change 1 stands 6 minutes before that of the change ahead of it',
        fault: false,
      },
    ]);
  });
});
