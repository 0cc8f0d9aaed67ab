import { describe, expect, test } from 'vitest';
import { withShortChanges, withWholeChanges } from '../../src/visit/count-changes.ts';
import { updateVisit } from '../../src/visit/update.ts';
import { Visit } from '../../src/visit/visit.ts';
import { entryOf, minutesIn, observed, visitAt, withLogged } from './made.ts';

const start = withLogged(visitAt(), { count: { kind: 'exact', value: 1 } });
const struck = Array.from({ length: 5 }, (_, at) => at + 2).reduce(
  (visit, value) =>
    updateVisit(visit, {
      do: 'recount',
      number: 1,
      time: minutesIn(value),
      count: { kind: 'exact', value },
    }),
  start,
);

describe('a change of the count alone', () => {
  test('keeps the earlier count and not the whole entry', () => {
    expect(struck.changes.slice(1).map((change) => [change.part, change.before])).toEqual(
      [1, 2, 3, 4, 5].map((value) => ['count', { kind: 'exact', value }]),
    );
    expect(Visit.safeParse(struck).success).toBe(true);
  });

  test('is undone and redone stroke by stroke', () => {
    const time = minutesIn(20);
    const back = [1, 2, 3].reduce((visit) => updateVisit(visit, { do: 'undo', time }), struck);
    expect(entryOf(back, 1).count).toEqual({ kind: 'exact', value: 3 });
    const again = updateVisit(back, { do: 'redo', time });
    expect(entryOf(again, 1).count).toEqual({ kind: 'exact', value: 4 });
    const all = struck.changes.reduce((visit) => updateVisit(visit, { do: 'undo', time }), struck);
    expect(entryOf(all, 1)).toEqual({ ...entryOf(start, 1), struck: time });
  });

  test('can be told whole, and comes back as it was', () => {
    const whole = withWholeChanges(struck);
    expect(whole.changes[3]).toMatchObject({
      part: 'entry',
      before: { ...entryOf(start, 1), count: { kind: 'exact', value: 3 } },
    });
    expect(withShortChanges(whole)).toEqual(struck);
  });

  test('is none where something else changed too', () => {
    const observation = observed({ description: 'asleep', count: { kind: 'exact', value: 9 } });
    const amended = updateVisit(start, {
      do: 'amend',
      number: 1,
      time: minutesIn(9),
      observation,
    });
    expect(amended.changes.at(-1)?.part).toBe('entry');
  });
});
