import { describe, expect, test } from 'vitest';
import { joinVisits } from '../../src/visit/join.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { amend, base, counted, type Deed, describeAs, doing, log } from './join-made.ts';
import { entryOf, idOf, minutesIn, POCHARD, placeOf } from './made.ts';

const placesOf = (visit: Visit) => visit.entries.map(({ number, id }) => [number, id]);

describe('entries logged on both sides', () => {
  const one = doing(base, [10, log(21, 'teal')], [30, log(22, 'coot')]);
  const two = doing(base, [20, log(31, 'wren')], [40, log(32, 'robin')]);

  test('all stand; of two under one number the first logged keeps it', () => {
    const both = joinVisits(one, two);
    expect(placesOf(both)).toEqual([
      [1, idOf(11)],
      [2, idOf(12)],
      [3, idOf(21)],
      [4, idOf(22)],
      [5, idOf(31)],
      [6, idOf(32)],
    ]);
    expect(both.conflicts).toEqual([]);
  });

  test('logged in one second, the lower id keeps the number', () => {
    const [here, there] = [doing(base, [10, log(22)]), doing(base, [10, log(21)])];
    expect(placesOf(joinVisits(here, there)).slice(2)).toEqual([
      [3, idOf(21)],
      [4, idOf(22)],
    ]);
  });

  test('take their new numbers along into every earlier value of theirs', () => {
    const there = doing(two, [50, amend(3, counted(7))], [60, { do: 'strike', number: 3 }]);
    const both = joinVisits(one, there);
    const of31 = both.changes.filter(
      ({ part, ...change }) => part === 'entry' && 'number' in change && change.number === 5,
    );
    expect(of31.map(({ before }) => before)).toEqual([
      null,
      expect.objectContaining({ number: 5, words: 'wren' }),
      expect.objectContaining({ number: 5, ...counted(7) }),
    ]);
  });

  test('the next entry after a join gets the next number above all, and a further join keeps it', () => {
    const both = joinVisits(one, two);
    const after = doing(both, [70, log(41)]);
    expect(entryOf(after, 7).id).toBe(idOf(41));
    expect(joinVisits(two, after)).toEqual(after);
  });
});

describe('one thing changed on one side', () => {
  test('comes over, though the clock of the other side is ahead', () => {
    const one = doing(base, [90, log(21)]);
    const two = doing(base, [10, amend(1, counted(9))], [11, describeAs('mist')]);
    const both = joinVisits(one, two);
    expect(entryOf(both, 1)).toMatchObject(counted(9));
    expect(both).toMatchObject({ description: 'mist', conflicts: [] });
  });
});

describe('one thing changed on both sides', () => {
  test('an entry stands as it was changed last; both values are told in words and kept', () => {
    const one = doing(base, [20, amend(1, { ...counted(4), description: 'by the sluice' })]);
    const two = doing(base, [10, amend(1, { ...counted(6), taxon: POCHARD })]);
    const both = joinVisits(one, two);
    expect(entryOf(both, 1)).toEqual(entryOf(one, 1));
    expect(both.conflicts).toEqual([
      {
        part: 'entry',
        entryId: idOf(11),
        time: minutesIn(20),
        stands: '4 Mallard: by the sluice',
        other: '6 Pochard',
      },
    ]);
    expect(both.changes.map(({ before }) => before)).toContainEqual(entryOf(two, 1));
  });

  test('a name of two meanings is told with what differs', () => {
    const other = { ...POCHARD, vernacularName: 'Mallard' };
    const one = doing(base, [20, amend(1, { typed: 'x', description: 'one' })]);
    const two = doing(base, [10, amend(1, { taxon: other, description: 'one' })]);
    const [conflict] = joinVisits(one, two).conflicts;
    expect(conflict?.stands).toContain('"scientificName":"Anas platyrhynchos"');
    expect(conflict?.other).toContain('"scientificName":"Aythya ferina"');
  });

  test.each<[string, Deed, Deed, string, string]>([
    ['description', describeAs('mist'), describeAs('sun'), 'sun', 'mist'],
    [
      'place',
      { do: 'set', part: 'place', value: null },
      { do: 'set', part: 'place', value: placeOf({ name: 'Withy Drove', position: null }) },
      'Withy Drove',
      'no place',
    ],
    [
      'end',
      { do: 'set', part: 'end', value: minutesIn(60) },
      { do: 'set', part: 'end', value: minutesIn(80) },
      '2026-11-14 09:00',
      '2026-11-14 08:40',
    ],
    [
      'effort',
      { do: 'set', part: 'effort', value: { ...base.effort, observers: 2 } },
      {
        do: 'set',
        part: 'effort',
        value: { ...base.effort, distance: 3200, complete: true, groups: ['birds'] },
      },
      '3.2 km, complete for birds',
      '2 people',
    ],
  ])('a %s is told in words', (part, earlier, later, stands, other) => {
    const [one, two] = [doing(base, [10, earlier]), doing(base, [20, later])];
    const told = { part, entryId: null, time: minutesIn(20), stands, other };
    expect(joinVisits(one, two).conflicts).toEqual([told]);
  });

  test('in the same way is no conflict', () => {
    const one = doing(base, [10, describeAs('mist')], [12, { do: 'strike', number: 1 }]);
    const two = doing(base, [20, describeAs('mist')], [22, { do: 'strike', number: 1 }]);
    expect(joinVisits(one, two)).toMatchObject({ description: 'mist', conflicts: [] });
  });

  test('and settled after the join is told once only', () => {
    const [one, two] = [
      doing(base, [10, describeAs('mist')]),
      doing(base, [20, describeAs('sun')]),
    ];
    const settled = doing(joinVisits(one, two), [30, describeAs('mist, then sun')]);
    const again = joinVisits(settled, two);
    expect(again).toEqual(settled);
    expect(again.conflicts).toHaveLength(1);
  });
});
