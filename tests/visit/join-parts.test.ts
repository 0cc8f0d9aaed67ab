import { describe, expect, test } from 'vitest';
import { joinVisits, unsound } from '../../src/visit/join.ts';
import { nextInWords } from '../../src/visit/update.ts';
import { standing, type Visit } from '../../src/visit/visit.ts';
import {
  amend,
  base,
  counted,
  type Deed,
  describeAs,
  doing,
  log,
  reading,
  undo,
} from './join-made.ts';
import { idOf, minutesIn } from './made.ts';

describe('lists that both sides only added to', () => {
  const set = (visit: Visit, ...weather: Visit['weather']): Deed => ({
    do: 'set',
    part: 'weather',
    value: [...visit.weather, ...weather],
  });

  test('readings of the weather are put together by time, and undo takes them apart', () => {
    const first = doing(base, [5, set(base, reading(minutesIn(5)))]);
    const one = doing(first, [30, set(first, reading(minutesIn(30), 'f5'))]);
    const two = doing(first, [20, set(first, reading(minutesIn(20), 'f4'))]);
    const both = joinVisits(one, two);
    expect(both.weather.map(({ verbatim }) => verbatim)).toEqual(['f3', 'f4', 'f5']);
    expect(both.conflicts).toEqual([]);
    expect(doing(both, [40, undo]).weather).toEqual(one.weather);
    expect(doing(both, [40, undo], [41, undo], [42, undo]).weather).toEqual(first.weather);
  });

  test('a reading that one side took out is a conflict', () => {
    const first = doing(base, [5, set(base, reading(minutesIn(5)))]);
    const one = doing(first, [30, { do: 'set', part: 'weather', value: [] }]);
    const two = doing(first, [20, set(first, reading(minutesIn(20), 'f4'))]);
    expect(joinVisits(one, two).conflicts).toMatchObject([
      { part: 'weather', stands: 'none', other: '07:45 F3; 08:00 F4' },
    ]);
  });

  test("taxa whose highest count is the visit's are put together", () => {
    const one = doing(base, [10, { do: 'set', part: 'highest', value: ['Aythya ferina'] }]);
    const two = doing(base, [20, { do: 'set', part: 'highest', value: ['Anas crecca'] }]);
    const all = { highest: ['Anas crecca', 'Aythya ferina'], conflicts: [] };
    expect(joinVisits(one, two)).toMatchObject(all);
  });

  const pausing = (from: number, to: number | null, over = {}): Deed => {
    const pauses = [{ start: minutesIn(from), end: to === null ? null : minutesIn(to) }];
    return { do: 'set', part: 'effort', value: { ...base.effort, pauses, ...over } };
  };

  test('pauses are put together by time', () => {
    const both = joinVisits(doing(base, [40, pausing(30, 40)]), doing(base, [20, pausing(10, 20)]));
    expect(both.effort.pauses.map(({ start }) => start)).toEqual([minutesIn(10), minutesIn(30)]);
    expect(both.conflicts).toEqual([]);
  });

  test.each<[string, Deed]>([
    ['overlaps', pausing(15, 35)],
    ['is still open', pausing(10, null)],
    ['comes with another effort', pausing(10, 20, { observers: 2 })],
  ])('a pause that %s is a conflict', (_, other) => {
    const both = joinVisits(doing(base, [40, pausing(30, 40)]), doing(base, [39, other]));
    expect(both.effort.pauses).toEqual([{ start: minutesIn(30), end: minutesIn(40) }]);
    expect(both.conflicts).toHaveLength(1);
  });
});

describe('undo after a join', () => {
  test('takes the changes of both sides back by time', () => {
    const one = doing(base, [10, log(21, 'teal')]);
    const two = doing(base, [20, describeAs('sun')]);
    const both = joinVisits(one, two);
    expect(nextInWords(both, 'undo')).toBe('the description');
    expect(nextInWords(doing(both, [30, undo]), 'undo')).toBe('3 Mallard');
  });

  test('an undo of one side still counts as one where the other side changed other things', () => {
    const one = doing(base, [10, describeAs('mist')], [30, undo]);
    const two = doing(base, [20, log(31)]);
    const both = joinVisits(one, two);
    expect(both.changes.at(-1)).toMatchObject({ part: 'description', undoes: 2, before: 'mist' });
    expect(nextInWords(both, 'undo')).toBe('3 Mallard');
  });

  test('an undo that the other side came between becomes a change like any other', () => {
    const one = doing(base, [10, describeAs('mist')], [30, undo]);
    const two = doing(base, [20, describeAs('sun')]);
    const both = joinVisits(one, two);
    expect(both.changes.at(-1)).toMatchObject({ undoes: null, before: 'sun' });
    expect(both).toMatchObject({
      description: null,
      conflicts: [{ stands: 'none', other: 'sun' }],
    });
    expect(doing(both, [40, undo]).description).toBe('sun');
    expect(doing(both, [40, undo], [41, undo]).description).toBe('mist');
    expect(doing(both, [40, undo], [41, undo], [42, undo]).description).toBeNull();
  });

  test('an entry whose logging one side took back and the other amended ends struck out', () => {
    const one = doing(base, [20, undo]);
    const two = doing(base, [10, amend(2, counted(9))]);
    const both = joinVisits(one, two);
    expect(standing(both)).toHaveLength(1);
    const back = doing(both, ...[30, 31, 32, 33, 34].map((at): [number, Deed] => [at, undo]));
    expect(standing(back)).toEqual([]);
  });
});

describe('what the changes do not tell', () => {
  test('of two starts the earlier stands, with its zone', () => {
    const one = { ...base, start: '2026-11-14T08:30:00+01:00', timeZone: 'Europe/Berlin' };
    expect(joinVisits(one, base)).toMatchObject({ start: one.start, timeZone: 'Europe/Berlin' });
  });

  test('fields that this version does not know come from both sides', () => {
    const one = { ...base, tide: 'ebb', moon: 1 };
    const two = { ...base, tide: 'flood', mood: 'calm' };
    const all = { tide: 'flood', moon: 1, mood: 'calm' };
    expect(joinVisits(one, two)).toMatchObject(all);
    expect(joinVisits(two, one)).toMatchObject(all);
  });

  test('a value that a hand put into one file without a change is kept as a change', () => {
    const [one, two] = [
      { ...base, description: 'mist' },
      { ...base, description: 'sun' },
    ];
    const both = joinVisits(one, two);
    expect(joinVisits(two, one)).toEqual(both);
    for (const copy of [one, two, both]) expect(joinVisits(both, copy)).toEqual(both);
    const befores = both.changes.map(({ before }) => before);
    expect([...befores, both.description]).toEqual(expect.arrayContaining(['mist', 'sun']));
  });

  test('a value that a hand changed under its change is kept beside the other', () => {
    const one = doing(base, [10, describeAs('mist')]);
    const two = { ...one, description: 'rain' };
    const both = joinVisits(one, two);
    expect(joinVisits(two, one)).toEqual(both);
    expect(both.conflicts).toHaveLength(1);
    for (const copy of [one, two, both]) expect(joinVisits(both, copy)).toEqual(both);
  });
});

describe('a visit of which two entries can not be told apart', () => {
  const [first, second] = base.entries;
  test.each<[string, Visit, string]>([
    [
      'id',
      { ...base, entries: [first, { ...second, id: idOf(11) }] as Visit['entries'] },
      `id ${idOf(11)}`,
    ],
    [
      'number',
      { ...base, entries: [first, { ...second, number: 1 }] as Visit['entries'] },
      'number 1',
    ],
  ])('by the %s is no sound one', (_, visit, words) => {
    expect(unsound(base)).toBeNull();
    expect(unsound(visit)).toContain(words);
  });

  test('since one was logged twice is no sound one', () => {
    const changes = [...base.changes, ...base.changes.slice(0, 1)];
    expect(unsound({ ...base, changes })).toBe('entry 1 is logged twice in its changes');
  });
});
