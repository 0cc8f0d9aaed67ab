import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { almanacFrom, almanacOf, joined, visitsIn } from '../../src/almanac/asking/almanac.ts';
import { digestOf } from '../../src/almanac/asking/digest.ts';
import { firstRecords } from '../../src/almanac/asking/firsts.ts';
import { firstOf, knownFrom } from '../../src/taxa/known.ts';
import { digests, MALLARD, notebooks, outing } from './made.ts';

describe('The almanac', () => {
  test('of two notebooks together is that of all their visits, however it is come by.', () => {
    fc.assert(
      fc.property(notebooks(1), notebooks(50), (one, two) => {
        const union = visitsIn(almanacOf([...one, ...two]));
        expect(visitsIn(joined(almanacOf(one), almanacOf(two)))).toEqual(union);
        expect(visitsIn(joined(almanacOf(two), almanacOf(one)))).toEqual(union);
      }),
    );
  });

  test('does not hang on the order of the visits, nor do the pages made of it.', () => {
    fc.assert(
      fc.property(notebooks(1), (visits) => {
        const [one, two] = [visits, visits.toReversed()].map((each) => visitsIn(almanacOf(each)));
        expect(one).toEqual(two);
        expect(firstRecords(one ?? [])).toEqual(firstRecords(two ?? []));
      }),
    );
  });

  test('takes a visit that two notebooks share once, as it was changed last.', () => {
    fc.assert(
      fc.property(notebooks(1, 1), fc.boolean(), (visits, order) => {
        const longer = visits.map((visit) =>
          outing('2026-01-01', [[MALLARD, 1]], { id: Number(visit.id.slice(-12)) }),
        );
        const halves = order ? [visits, longer] : [longer, visits];
        const [one, two] = halves.map(almanacOf);
        const both = one && two ? joined(one, two) : new Map();
        expect(both.size).toBe(visits.length);
        for (const [at, visit] of visits.entries()) {
          const other = longer[at];
          if (!other || other.changes.length === visit.changes.length) continue;
          const kept = other.changes.length > visit.changes.length ? other : visit;
          expect(both.get(visit.id)).toEqual(digestOf(kept));
        }
      }),
    );
  });

  test('can be had again from digests that were kept as JSON.', () => {
    fc.assert(
      fc.property(notebooks(1), (visits) => {
        const almanac = almanacOf(visits);
        const kept = JSON.parse(JSON.stringify([...almanac.values()]));
        expect(almanacFrom(kept)).toEqual(almanac);
      }),
    );
  });

  test('tells the same firsts as the Field screen told while they were logged.', () => {
    fc.assert(
      fc.property(notebooks(1), (made) => {
        // Two visits of one day have no order of their own, which Known takes from the files.
        const days = new Set<string>();
        const visits = made
          .filter(({ start }) => !days.has(start) && days.add(start))
          .sort((one, two) => (one.start < two.start ? -1 : 1));
        const told = visits.flatMap((visit, at) =>
          visit.entries.flatMap((entry) => {
            const first = firstOf(knownFrom(visits.slice(0, at)), visit, entry);
            return first === null ? [] : `${visit.id} ${entry.number} ${first}`;
          }),
        );
        const records = firstRecords(digests(...visits));
        expect(
          records.map(({ visit, entry, first }) => `${visit} ${entry} ${first}`).sort(),
        ).toEqual(told.sort());
      }),
    );
  });
});
