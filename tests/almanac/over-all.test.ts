import { describe, expect, test } from 'vitest';
import { likelyHere } from '../../src/almanac/asking/likely.ts';
import { placePage, placesVisited } from '../../src/almanac/asking/place-page.ts';
import { speciesCount, taxaSeen, threatenedSeen } from '../../src/almanac/asking/taxa-seen.ts';
import { thisWeekBefore } from '../../src/almanac/asking/this-week.ts';
import { unnamed } from '../../src/almanac/asking/unnamed.ts';
import { runningTotals } from '../../src/almanac/asking/year-page.ts';
import { knownFrom } from '../../src/taxa/known.ts';
import { bird, birdIndex } from '../taxa/birds.ts';
import { COMMON_TERN, DROVE, digests, GULL, MALLARD, outing, POCHARD } from './made.ts';

describe('Over all visits', () => {
  const visits = digests(
    outing('2024-05-03', [
      [MALLARD, 4],
      [GULL, 2],
    ]),
    outing('2024-08-20', [[POCHARD, 1]], { place: DROVE }),
    outing('2025-01-02', [{ taxon: null, words: 'brown thing' }, [MALLARD, 1]]),
    outing('2025-12-30', [[COMMON_TERN, 1]], { place: DROVE }),
    outing('2025-12-31', [{ taxon: null, words: 'grass' }]),
  );

  test('taxa stand by their visits; a genus is a taxon and no species.', () => {
    const taxa = taxaSeen(visits);
    expect(taxa.map(({ name, visits: number }) => [name, number])).toEqual([
      ['Mallard', 2],
      ['Pochard', 1],
      ['gull', 1],
      ['Common Tern', 1],
    ]);
    expect(speciesCount(taxa)).toBe(3);
  });

  test('threatened are those of CR, EN and VU.', () => {
    expect(threatenedSeen(visits).map(({ name }) => name)).toEqual(['Pochard']);
  });

  test('unnamed entries wait, the latest first.', () => {
    expect(unnamed(visits).map(({ entry }) => entry.name)).toEqual(['grass', 'brown thing']);
  });

  test('each year has its running total, and what it was by a day of the year.', () => {
    expect(runningTotals(visits, '06-30')).toEqual([
      {
        year: 2024,
        visits: 2,
        steps: [
          { date: '2024-05-03', species: 1 },
          { date: '2024-08-20', species: 2 },
        ],
        byThen: 1,
      },
      {
        year: 2025,
        visits: 3,
        steps: [
          { date: '2025-01-02', species: 1 },
          { date: '2025-12-30', species: 2 },
        ],
        byThen: 1,
      },
    ]);
  });

  test('the day of the year that is asked for counts with it.', () => {
    const byThen = (day: string) => runningTotals(visits, day).map((year) => year.byThen);
    expect(byThen('05-03')).toEqual([1, 1]);
    expect(byThen('05-02')).toEqual([0, 1]);
    expect(byThen('12-31')).toEqual([2, 2]);
  });

  test('the week around New Year holds what was seen on either side of it in earlier years.', () => {
    const names = (date: string) => thisWeekBefore(visits, date).map(({ name }) => name);
    expect(names('2026-12-31')).toEqual(['Common Tern', 'Mallard']);
    expect(names('2026-01-01')).toEqual(['Mallard']);
    expect(names('2025-12-30')).toEqual(['Mallard']);
    expect(names('2025-01-02')).toEqual([]);
    expect(names('2026-05-06')).toEqual(['Mallard', 'gull']);
    expect(names('2026-05-07')).toEqual([]);
  });

  test('a place has its visits, hours, taxa and firsts.', () => {
    expect(placesVisited(visits)).toEqual([
      { key: 'sallow mere', name: 'Sallow Mere', visits: 3, last: '2025-12-31' },
      { key: 'withy drove', name: 'Withy Drove', visits: 2, last: '2025-12-30' },
    ]);
    expect(placePage(visits, 'withy drove')).toMatchObject({
      name: 'Withy Drove',
      visits: 2,
      first: '2024-08-20',
      last: '2025-12-30',
      watched: 4 * 3_600_000,
      species: 2,
      threatened: [{ name: 'Pochard' }],
      firsts: [
        { name: 'Pochard', first: 'first', date: '2024-08-20' },
        { name: 'Common Tern', first: 'first' },
      ],
    });
    expect(placePage(visits, 'nowhere')).toBeNull();
  });
});

describe('Likely today', () => {
  const mallard = bird('Mallard');
  const garganey = bird('Garganey');
  const seen = (date: string, taxon: typeof mallard) =>
    outing(date, [[{ ...MALLARD, scientificName: taxon.scientificName, list: taxon.list }, 1]]);
  const visits = ['2025-04-08', '2025-04-12', '2025-04-15'].map((date) => seen(date, garganey));

  test('stands what was met here in this season, with the visits that met it.', () => {
    const likely = likelyHere(
      birdIndex,
      knownFrom(visits),
      { place: 'sallow mere', date: '2026-04-10', today: new Map() },
      5,
    );
    expect(likely).toHaveLength(5);
    expect(likely[0]).toMatchObject({
      taxon: { vernacularName: 'Garganey' },
      visits: 3,
      visitsHere: 3,
    });
    const expected = likely.map((each) => each.expected);
    expect(expected).toEqual(expected.toSorted((one, two) => two - one));
  });
});
