import { describe, expect, test } from 'vitest';
import { demoVisits } from '../../demo-data/model/demo-visits.ts';
import { occasionOf, priorFor } from '../../src/taxa/expected.ts';
import { knownFrom } from '../../src/taxa/known.ts';
import { plainWords } from '../../src/taxa/names.ts';
import { search } from '../../src/taxa/search.ts';
import { birdIndex, birds, hitsFor, namesOf } from '../taxa/birds.ts';
import { editsBetween } from './edits.ts';
import { pairs } from './queries.ts';
import { answersTo, isTypo, missesOf, shareWithin } from './score.ts';

const answers = answersTo(pairs, (typed) => namesOf(hitsFor(typed)));
const clear = answers.filter(({ pair }) => !pair.several);
const typos = clear.filter(({ pair }) => isTypo(pair));
const doubtful = answers.filter(({ pair }) => pair.several);

describe('the queries', () => {
  test('are 230 by hand and 230 generated at least, each but once', () => {
    const typed = (made: string) =>
      new Set(pairs.filter((pair) => pair.made === made).map((pair) => pair.typed));
    expect(typed('hand').size).toBeGreaterThanOrEqual(230);
    expect(typed('generated').size).toBeGreaterThanOrEqual(230);
    expect(typed('hand').size + typed('generated').size).toBe(pairs.length);
  });

  test('mean what is in the list, and one thing unless they are marked', () => {
    const names = new Set(birds.taxa.map(({ vernacularName }) => vernacularName));
    const strange = pairs.flatMap(({ means }) => means.filter((name) => !names.has(name)));
    expect(strange).toEqual([]);
    expect(pairs.filter(({ means, several }) => means.length > 1 && !several)).toEqual([]);
  });

  test.each([
    ['one edit', 1],
    ['two edits', 2],
  ])('of %s are so far from the name that is meant', (kind, edits) => {
    const far = pairs
      .filter((pair) => pair.kind === kind)
      .filter(({ typed, means: [name = ''] }) => {
        return editsBetween(typed, plainWords(name).join(' ')) !== edits;
      });
    expect(far).toEqual([]);
  });
});

// How good a search must be is the project's own measure: on the shipped list, in a new notebook.
describe('the search, on the shipped birds in a new notebook', () => {
  test.each([
    [95, 'clear queries', 'first', clear, 1],
    [99, 'clear queries', 'among the first three', clear, 3],
    [90, 'names with a slip or two', 'first', typos, 1],
    [95, 'names with a slip or two', 'among the first three', typos, 3],
    [98, 'queries that may mean several species', 'among the first eight', doubtful, 8],
  ] as const)('has for %i in 100 %s what is meant %s', (least, _kind, _where, asked, first) => {
    const misses = missesOf(asked, first).join('\n');
    expect(100 * shareWithin(asked, first), misses).toBeGreaterThanOrEqual(least);
  });
});

describe('the search, with what an invented notebook has learned', () => {
  test('has for 70 in 100 queries that may mean several species one first that the visit met', () => {
    const visits = demoVisits(birds.taxa);
    const known = knownFrom(visits.slice(0, 120));
    const asked = visits.slice(120).flatMap((visit) => {
      const met = new Set(visit.entries.map(({ taxon }) => taxon?.vernacularName));
      const prior = priorFor(birdIndex, known, {
        ...occasionOf(visit, visit.start),
        today: new Map(),
      });
      return pairs
        .filter((pair) => pair.several)
        .map((pair) => ({ pair, meant: pair.means.filter((name) => met.has(name)) }))
        .filter(({ meant }) => meant.length > 0)
        .map(({ pair, meant }) => {
          const [first = ''] = namesOf(search(birdIndex, pair.typed, prior));
          return meant.includes(first);
        });
    });
    expect(asked.length).toBeGreaterThan(500);
    expect(asked.filter(Boolean).length / asked.length).toBeGreaterThanOrEqual(0.7);
  });
});
