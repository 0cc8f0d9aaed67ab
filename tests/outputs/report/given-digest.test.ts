import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { digestOf } from '../../../src/almanac/asking/digest.ts';
import { givenDigest } from '../../../src/outputs/report/given-digest.ts';
import { notebooks } from '../../almanac/made.ts';
import { hiddenVisit } from '../full.ts';
import { given } from '../given.ts';

describe('A digest of what may be given out', () => {
  // The almanac's digest of the visit itself is the measure: both go by the same rules.
  test('has what the almanac has of a visit that hides nothing, less the words by hand.', () => {
    fc.assert(
      fc.property(notebooks(1, 1), (visits) => {
        for (const visit of visits) {
          const whole = digestOf(visit);
          const shown = givenDigest(given(visit, true));
          for (const part of ['id', 'epoch', 'date', 'place', 'watched', 'complete'] as const)
            expect(shown[part]).toEqual(whole[part]);
          expect(shown.seen).toEqual(whole.seen);
          expect(shown.notFound).toEqual(whole.notFound);
          expect(shown.groups).toEqual(whole.groups);
        }
      }),
    );
  });

  test('has no place and no words of a hidden visit.', () => {
    const shown = givenDigest(given(hiddenVisit()));
    expect(shown.place).toBeNull();
    expect(JSON.stringify(shown)).not.toMatch(/Sallow|sluice|raft|brown/);
  });
});
