import { expect, test } from 'vitest';
import { firstsInOrder } from '../../src/outputs/firsts.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { entryOf, idOf, placeOf } from '../visit/made.ts';
import { at, OTTER } from './given.ts';

function dated(visit: Visit, day: number): Visit {
  return { ...visit, id: idOf(day), start: `2026-11-${day}T08:00:00+00:00` };
}
const lane = placeOf({ name: 'Withy Lane' });

test('a first here is told by the visits before, whose order alone is needed', () => {
  const firsts = firstsInOrder(false);
  const visits = [dated(at(placeOf(), {}), 14), dated(at(lane, {}), 15), dated(at(lane, {}), 16)];
  const told = visits.map((visit) => {
    const first = firsts.of(visit, entryOf(visit, 1));
    firsts.learn(visit);
    return first;
  });
  expect(told).toEqual(['first', 'first here', null]);
});

test('a hidden visit has no first here and takes none away, or it would tell its place', () => {
  const hidden = dated(at(placeOf(), { taxon: OTTER }, {}), 15);
  const open = dated(at(placeOf(), {}), 16);
  for (const [exact, ofHidden, ofOpen] of [
    [false, null, 'first here'],
    [true, 'first here', null],
  ] as const) {
    const firsts = firstsInOrder(exact);
    firsts.learn(dated(at(lane, {}), 14));
    expect(firsts.of(hidden, entryOf(hidden, 2))).toBe(ofHidden);
    firsts.learn(hidden);
    expect(firsts.of(open, entryOf(open, 1))).toBe(ofOpen);
  }
});
