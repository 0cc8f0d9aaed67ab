import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ask } from '../../src/almanac/asking/ask.ts';
import type { TaxonSearch } from '../../src/almanac/asking/reading.ts';
import { search } from '../../src/taxa/search.ts';
import { taxonKey } from '../../src/visit/entry.ts';
import { birdIndex, newNotebook } from '../taxa/birds.ts';
import {
  ARCTIC_TERN,
  BRIMSTONE,
  COMMON_TERN,
  DROVE,
  digests,
  GULL,
  groupOf,
  MALLARD,
  notebooks,
  outing,
  POCHARD,
} from './made.ts';

/** What the program's own search surely means. */
const listed: TaxonSearch = (words) =>
  search(birdIndex, words, newNotebook, 1).map(({ taxon }) => ({
    key: taxonKey(taxon),
    name: taxon.vernacularName ?? taxon.scientificName,
  }));

const MAY_HILL = { ...DROVE, name: 'May Hill' };
const visits = digests(
  outing('2024-05-03', [[COMMON_TERN, 4], { taxon: MALLARD, description: 'asleep by the raft' }]),
  outing('2024-06-03', [[ARCTIC_TERN, 1]]),
  outing('2025-05-10', [[COMMON_TERN, 2], [POCHARD, 3], { taxon: null, words: 'brown thing' }]),
  outing('2025-05-11', [[POCHARD, 1]], { place: DROVE, description: 'Rain all day' }),
  outing(
    '2025-07-01',
    [
      [BRIMSTONE, 1],
      [GULL, 2],
    ],
    { place: MAY_HILL },
  ),
);

function asked(words: string) {
  return ask(words, visits, { search: listed, groupOf });
}

/** The dates and names that an answer has. */
function foundBy(words: string): string[] {
  return asked(words).found.map(({ visit, entry }) => `${visit.date} ${entry.name}`);
}

describe('A question in a few words', () => {
  test.each<[string, string[]]>([
    ['tern may', ['2024-05-03 Common Tern', '2025-05-10 Common Tern']],
    ['terns', ['2024-05-03 Common Tern', '2024-06-03 Arctic Tern', '2025-05-10 Common Tern']],
    ['May tern', ['2024-05-03 Common Tern', '2025-05-10 Common Tern']],
    ['arctic tern june 2024', ['2024-06-03 Arctic Tern']],
    ['sterna paradisaea', ['2024-06-03 Arctic Tern']],
    ['sallow 2025 threatened', ['2025-05-10 Pochard']],
    ['VU', ['2025-05-10 Pochard', '2025-05-11 Pochard']],
    ['vulnerable drove', ['2025-05-11 Pochard']],
    ['may hill', ['2025-07-01 Brimstone', '2025-07-01 gull']],
    ['2025-07', ['2025-07-01 Brimstone', '2025-07-01 gull']],
    ['2025-05-11', ['2025-05-11 Pochard']],
    ['butterflies', ['2025-07-01 Brimstone']],
    ['butterfly', ['2025-07-01 Brimstone']],
    ['birds july', ['2025-07-01 gull']],
    ['unnamed', ['2025-05-10 brown thing']],
    ['first 2025', ['2025-05-10 Pochard', '2025-07-01 Brimstone']],
    ['first here', ['2025-05-11 Pochard']],
    ['first this year', ['2025-05-10 Common Tern']],
    ['raft', ['2024-05-03 Mallard']],
    ['asleep may', ['2024-05-03 Mallard']],
    ['mallard pochard 2025', ['2025-05-10 Pochard', '2025-05-11 Pochard']],
    // By four-letter code, by initials and in spite of a slip, which only the search knows.
    ['poch may 2025 drove', ['2025-05-11 Pochard']],
    ['COTE 2024', ['2024-05-03 Common Tern']],
    ['mallrad', ['2024-05-03 Mallard']],
    ['osprey', []],
    ['may 2031', []],
  ])('"%s" finds %j.', (words, found) => {
    expect(foundBy(words)).toEqual(found);
  });

  test('Nothing typed asks for everything.', () => {
    expect(asked('  ').found).toHaveLength(visits.flatMap(({ entries }) => entries).length);
    expect(asked('').visits).toEqual(visits);
  });

  test('The answer says how the words were understood, and out of how many visits.', () => {
    expect(asked('tern may').sentence).toBe(
      'Common Tern or Arctic Tern, May: 2 entries in 2 of 3 visits.',
    );
    expect(asked('tern may 2031').sentence).toBe(
      'Common Tern or Arctic Tern, May, 2031: no visit was made there or then.',
    );
    expect(asked('osprey').sentence).toBe('Osprey: 0 entries in 0 of 5 visits.');
  });

  test('The visits of the answer keep their place and time and only the taxa asked for.', () => {
    expect(asked('tern 2025').visits.map(({ seen }) => seen.map(({ key }) => key))).toEqual([
      ['Sterna hirundo'],
      [],
      [],
    ]);
  });

  test('A taxon of which only a doubtful entry fits is not on record in the answer.', () => {
    const both = digests(
      outing('2025-05-01', [
        [MALLARD, 1],
        { taxon: MALLARD, uncertain: true, description: 'asleep' },
      ]),
    );
    const { found, visits: narrow } = ask('asleep', both, { search: listed, groupOf });
    expect(found.map(({ entry }) => entry.uncertain)).toEqual([true]);
    expect(narrow[0]?.seen).toEqual([]);
  });

  test('Names in the plural find the singular.', () => {
    const lady = { ...BRIMSTONE, scientificName: 'Vanessa cardui', vernacularName: 'Painted Lady' };
    const finch = { ...MALLARD, scientificName: 'Chloris chloris', vernacularName: 'Greenfinch' };
    const both = digests(
      outing('2025-05-01', [
        [lady, 1],
        [finch, 1],
      ]),
    );
    for (const [words, name] of [
      ['painted ladies', 'Painted Lady'],
      ['ladies', 'Painted Lady'],
      ['greenfinches', 'Greenfinch'],
    ] as const) {
      const answer = ask(words, both, { search: () => [], groupOf });
      expect(answer.found.map(({ entry }) => entry.name)).toEqual([name]);
    }
  });

  test('A word in the description of a visit finds the visit.', () => {
    expect(asked('rain').described.map(({ date }) => date)).toEqual(['2025-05-11']);
  });

  test('Where a word is a species and a place, the answer says how to ask for the place.', () => {
    const both = digests(
      outing('2025-05-01', [[MALLARD, 1]], { place: { ...DROVE, name: 'Mallard Pool' } }),
      outing('2025-05-02', [[MALLARD, 1]]),
    );
    const answer = ask('mall', both, { search: listed, groupOf });
    expect(answer.found).toHaveLength(2);
    expect(answer.notes).toEqual([
      '"mall" was taken for a species: type Mallard Pool whole for the place.',
    ]);
    expect(ask('mallard pool', both, { search: listed, groupOf }).found).toHaveLength(1);
  });

  test('Whatever is typed, there is an answer, and each of its entries stands in the visits.', () => {
    const words = fc.constantFrom(
      'tern',
      'may',
      'VU',
      'first',
      'sallow',
      '2025',
      'unnamed',
      'birds',
      'raft',
      '?',
      '-',
    );
    const text = fc.oneof(
      fc.string(),
      fc.array(words).map((all) => all.join(' ')),
    );
    fc.assert(
      fc.property(text, notebooks(1), (typed, made) => {
        const all = digests(...made);
        const { found, visits: narrow } = ask(typed, all, { search: () => [], groupOf });
        expect(narrow.length).toBeLessThanOrEqual(all.length);
        for (const { visit, entry } of found)
          expect(all.find(({ id }) => id === visit.id)?.entries).toContain(entry);
      }),
    );
  });

  test('The order of words of different kinds makes no difference.', () => {
    const words = fc.shuffledSubarray(['tern', 'may', '2025', 'sallow', 'first', 'birds']);
    fc.assert(
      fc.property(words, (some) => {
        expect(foundBy(some.join(' '))).toEqual(foundBy(some.toSorted().join(' ')));
      }),
    );
  });
});
