import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LATEST_KEPT, MOST_KEPT, momentsToDrop } from '../../src/notebook/thinning.ts';

/** What is kept after moments came one after another, each thinned as it came. */
function keptOf(moments: readonly number[]): number[] {
  let kept: number[] = [];
  for (const moment of moments) {
    kept = [...kept, moment];
    const dropped = momentsToDrop(kept);
    kept = kept.filter((each) => !dropped.includes(each));
  }
  return kept;
}

const rising = fc
  .uniqueArray(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 1, maxLength: 60 })
  .map((moments) => moments.sort((one, two) => one - two));

test('never more than ten moments stay, the five latest and the very first among them', () => {
  fc.assert(
    fc.property(rising, (moments) => {
      const kept = keptOf(moments);
      expect(kept).toHaveLength(Math.min(MOST_KEPT, moments.length));
      expect(kept.slice(-LATEST_KEPT)).toEqual(moments.slice(-LATEST_KEPT));
      expect(kept[0]).toBe(moments[0]);
    }),
  );
});

test('many at once come down to ten as well, and only what was there is dropped', () => {
  fc.assert(
    fc.property(rising, (moments) => {
      const dropped = momentsToDrop(moments);
      expect(new Set(dropped).size).toBe(dropped.length);
      for (const moment of dropped) expect(moments).toContain(moment);
      expect(moments.length - dropped.length).toBe(Math.min(MOST_KEPT, moments.length));
    }),
  );
});

test('of the older ones that one goes which lies closest behind its elder neighbour', () => {
  expect(momentsToDrop([0, 100, 130, 300, 400, 500, 600, 601, 602, 603, 604])).toEqual([130]);
  expect(momentsToDrop([0, 1, 2, 3, 4, 5, 6, 7, 8, 9])).toEqual([]);
});

test('a walk of a save a minute keeps states from its start, its middle and its end', () => {
  const kept = keptOf(Array.from({ length: 240 }, (_, minute) => minute));
  const gaps = kept.slice(1, 6).map((moment, at) => moment - (kept[at] ?? 0));
  expect(Math.max(...gaps)).toBeLessThanOrEqual(100);
  expect(kept.filter((moment) => moment > 20 && moment < 220).length).toBeGreaterThanOrEqual(3);
});
