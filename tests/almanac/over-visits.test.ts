import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { accumulationOf } from '../../src/almanac/figures/accumulation.ts';
import { firstAndLast } from '../../src/almanac/figures/first-and-last.ts';
import {
  ARCTIC_TERN,
  BRIMSTONE,
  COMMON_TERN,
  digests,
  GULL,
  groupOf,
  MALLARD,
  outing,
  POCHARD,
  PRESENT,
} from './made.ts';

describe('First and last dates', () => {
  const visits = digests(
    outing('2024-03-10', []),
    outing('2024-04-12', [[COMMON_TERN, 2]]),
    outing('2024-09-01', [[COMMON_TERN, 1]]),
    outing('2024-11-02', []),
    outing('2025-05-01', [[COMMON_TERN, 1]], { hours: null }),
    outing('2026-05-01', []),
  );

  test('stand beside the effort of each year, also of years without it.', () => {
    expect(firstAndLast(visits, COMMON_TERN.scientificName)).toMatchObject({
      years: [
        {
          year: 2024,
          first: '2024-04-12',
          last: '2024-09-01',
          looked: ['2024-03-10', '2024-11-02'],
          visits: 4,
          visitsWith: 2,
          hours: 8,
        },
        { year: 2025, first: '2025-05-01', last: '2025-05-01', visits: 1, hours: 0 },
        { year: 2026, first: null, last: null, visits: 1, visitsWith: 0, hours: 2 },
      ],
      notes: ['On record at the first visit of 2025: it may have been there before.'],
    });
  });

  test('of what was never on record there are none.', () => {
    expect(firstAndLast(visits, POCHARD.scientificName)).toHaveProperty('refused');
  });
});

describe('Species accumulate', () => {
  test('over visits complete for the group, with its species only.', () => {
    const visits = digests(
      outing('2025-05-01', [
        [MALLARD, 1],
        [BRIMSTONE, 1],
        [GULL, 1],
      ]),
      outing('2025-05-02', [
        [MALLARD, 1],
        [POCHARD, PRESENT],
      ]),
      outing('2025-05-03', [[COMMON_TERN, 1]], { complete: false }),
    );
    const figure = accumulationOf(visits, 'birds', groupOf);
    // One of two visits: 1 species or 2, so 1.5 with a spread of a half (worked by hand).
    expect(figure).toMatchObject({
      steps: [
        { visits: 1, species: 1.5, sd: 0.5 },
        { visits: 2, species: 2, sd: 0 },
      ],
      notes: ['Not complete for birds and left out: 1 visit.'],
    });
  });

  test('not over a single complete visit.', () => {
    expect(accumulationOf(digests(outing('2025-05-01', [])), 'birds', groupOf)).toEqual({
      refused:
        '1 visit of 1 is complete for birds: two are needed. Say at the end of a visit that everything was logged.',
    });
  });

  test('to the species of all visits, never fewer with one visit more.', () => {
    const sets = fc.array(
      fc.uniqueArray(fc.constantFrom(MALLARD, POCHARD, COMMON_TERN, ARCTIC_TERN)),
      {
        minLength: 2,
        maxLength: 7,
      },
    );
    fc.assert(
      fc.property(sets, (all) => {
        const visits = digests(
          ...all.map((taxa) =>
            outing(
              '2025-05-01',
              taxa.map((taxon) => [taxon, 1]),
            ),
          ),
        );
        const figure = accumulationOf(visits, 'birds', groupOf);
        const species = 'steps' in figure ? figure.steps.map((step) => step.species) : [];
        expect(species).toHaveLength(all.length);
        expect(species.at(-1)).toBeCloseTo(new Set(all.flat()).size, 10);
        for (const [at, number] of species.entries())
          expect(number).toBeGreaterThanOrEqual((species[at - 1] ?? 0) - 1e-9);
      }),
    );
  });
});
