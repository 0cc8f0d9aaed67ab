import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { taxaSeen } from '../../src/almanac/asking/taxa-seen.ts';
import { highestCount, taxonPage } from '../../src/almanac/asking/taxon-page.ts';
import type { Count } from '../../src/visit/count.ts';
import { taxonKey } from '../../src/visit/entry.ts';
import {
  DROVE,
  digests,
  exactly,
  groupOf,
  MALLARD,
  notebooks,
  outing,
  POCHARD,
  PRESENT,
} from './made.ts';

describe('The page of a taxon', () => {
  const visits = digests(
    outing('2024-05-03', [[MALLARD, 4]]),
    outing('2024-05-20', [[POCHARD, 1]], { place: DROVE }),
    outing('2025-05-04', [
      [MALLARD, { kind: 'at least', value: 30 }],
      { taxon: MALLARD, uncertain: true },
    ]),
    outing('2025-05-09', [[MALLARD, 30]], { place: DROVE, complete: null }),
    outing('2025-06-01', [[MALLARD, 0]]),
    outing('2025-12-01', [[MALLARD, PRESENT]], { place: null, groups: ['butterflies'] }),
  );
  const page = taxonPage(visits, taxonKey(MALLARD), groupOf);

  test('has its dates, its visits out of all, zeros and doubtful entries apart.', () => {
    expect(page).toMatchObject({
      name: 'Mallard',
      first: '2024-05-03',
      last: '2025-12-01',
      visitsWith: 4,
      visits: 6,
      visitsNone: 1,
      uncertain: 1,
      years: [
        { year: 2024, visitsWith: 1, visits: 2 },
        { year: 2025, visitsWith: 3, visits: 4 },
      ],
    });
  });

  test('has the share of a month from complete visits alone, with their number beside.', () => {
    expect(page?.months[4]).toEqual({
      month: 5,
      visits: 4,
      visitsWith: 3,
      complete: 3,
      completeWith: 2,
      share: 2 / 3,
    });
    expect(page?.months[5]).toMatchObject({ complete: 1, share: 0 });
    expect(page?.months[11]).toMatchObject({ visits: 1, visitsWith: 1, complete: 0, share: null });
    expect(page?.months[0]).toMatchObject({ visits: 0, share: null });
  });

  test('has its highest count with date and place; at least thirty stands above thirty.', () => {
    expect(page?.highest).toMatchObject({
      total: { count: { kind: 'at least', value: 30 } },
      rule: 'adds up',
      date: '2025-05-04',
      place: 'Sallow Mere',
    });
  });

  test('has the earliest of equal highest counts, unless a later one is a lower bound.', () => {
    const counts: [string, Count][] = [
      ['2025-05-01', exactly(30)],
      ['2025-05-02', exactly(30)],
      ['2025-05-03', { kind: 'at least', value: 30 }],
    ];
    const all = digests(...counts.map(([date, count]) => outing(date, [[MALLARD, count]])));
    expect(highestCount(all, taxonKey(MALLARD))?.date).toBe('2025-05-03');
    expect(highestCount(all.slice(0, 2), taxonKey(MALLARD))?.date).toBe('2025-05-01');
  });

  test('has its places, each with its visits out of those made there.', () => {
    expect(page?.places).toEqual([
      { name: 'Sallow Mere', visitsWith: 2, visits: 3, last: '2025-05-04' },
      { name: 'Withy Drove', visitsWith: 1, visits: 2, last: '2025-05-09' },
    ]);
  });

  test('is none for what was never on record.', () => {
    expect(taxonPage(visits, 'Cygnus olor', groupOf)).toBeNull();
    expect(taxonPage([], taxonKey(MALLARD), groupOf)).toBeNull();
  });

  test('has months that add up, and a highest count that no visit passes.', () => {
    fc.assert(
      fc.property(notebooks(1, 1), (made) => {
        const all = digests(...made);
        for (const { key, visits: number } of taxaSeen(all)) {
          const each = taxonPage(all, key, groupOf);
          const sum = (of: 'visits' | 'visitsWith') =>
            each?.months.reduce((so, month) => so + month[of], 0);
          expect(sum('visitsWith')).toBe(number);
          expect(sum('visits')).toBe(all.length);
          for (const { complete, completeWith, share } of each?.months ?? [])
            expect(share).toBe(complete === 0 ? null : completeWith / complete);
        }
      }),
    );
  });
});
