import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { occasionOf, priorFor } from '../../src/taxa/expected.ts';
import { knownFrom } from '../../src/taxa/known.ts';
import { readSpeciesList } from '../../src/taxa/species-list.ts';
import type { Taxon } from '../../src/taxa/taxon.ts';
import { indexTaxa } from '../../src/taxa/taxon-index.ts';
import { placeKey } from '../../src/visit/place.ts';
import { updateVisit } from '../../src/visit/update.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { minutesIn, observed, placeOf, taxonOf, visitAt, withLogged } from '../visit/made.ts';
import { birdIndex } from './birds.ts';

/** Lists that are made up: frequencies 1 to 4 and one that is not said, of twenty taxa each. */
const taxaOf = (list: string, group: string) =>
  readSpeciesList(
    { name: list, region: 'own', group },
    [
      'scientificName,class,frequency',
      ...Array.from(
        { length: 100 },
        (_, at) =>
          `${list === 'a' ? 'Avis' : 'Planta'} ${name(at)},${group},${['1', '2', '3', '4', ''][at % 5]}`,
      ),
    ].join('\n'),
  ).taxa;
const name = (at: number) => [...String(at)].map((digit) => 'abcdefghij'[Number(digit)]).join('');
const avian = taxaOf('a', 'Aves');
const plants = taxaOf('b', 'Magnoliopsida');
const index = indexTaxa([...avian, ...plants]);
const at = (taxa: readonly Taxon[], place: number): Taxon => taxa[place] as Taxon;
const nowhere = (date: string) => ({ place: null, date, today: new Map<string, number>() });

function outing(date: string, place: string | null, ...seen: Taxon[]): Visit {
  const where = place === null ? null : placeOf({ name: place });
  return withLogged(
    visitAt(where, `${date}T08:00:00+00:00`),
    ...seen.map((taxon) => observed({ taxon: taxonOf(taxon) })),
  );
}

describe('what is expected in a new notebook', () => {
  const prior = priorFor(index, null, nowhere('2026-05-14'));

  test('is as worked out by hand', () => {
    // Sum of the shares of a list: 20 (0.3 + 0.08 + 0.015 + 0.0025 + 0.015) = 8.25. Of birds a visit has 12
    // species: a scarce one stands in 0.015 x 12 / 8.25 of the visits. Of plants min(1, 0.02 x 8.25) = 0.165.
    // A taxon of every visit scores 20, one of a ten-thousandth of them or less 0.
    const score = (share: number) => Math.max(0, 20 * (1 - Math.log(share) / Math.log(1e-4)));
    const bird = (share: number) => score((share * 12) / 8.25);
    const plant = (share: number) => score((share * 0.165) / 8.25);
    [0.3, 0.08, 0.015, 0.0025, 0.015].forEach((share, place) => {
      expect(prior(at(avian, place))).toBeCloseTo(bird(share), 9);
      expect(prior(at(plants, place))).toBeCloseTo(plant(share), 9);
    });
  });

  test('of a taxon whose frequency is not said is as of a scarce one', () => {
    expect(prior(at(avian, 4))).toBe(prior(at(avian, 2)));
  });

  test('of a taxon of no list at all is a number from 0 to 20', () => {
    const strange = { ...at(avian, 0), scientificName: 'Ignota avis', list: 'gone', frequency: 9 };
    expect(prior(strange)).toBeGreaterThanOrEqual(0);
    expect(prior(strange)).toBeLessThanOrEqual(20);
    expect(priorFor(indexTaxa([]), null, nowhere('2026-05-14'))(strange)).not.toBeNaN();
  });
});

describe('what is expected in a notebook with visits', () => {
  const dates = fc
    .date({ min: new Date('1990-01-01'), max: new Date('2040-12-31'), noInvalidDate: true })
    .map((date) => date.toISOString().slice(0, 10));

  test('is from 0 to 20 whatever was seen when and where', () => {
    const visits = fc.array(
      fc.tuple(
        dates,
        fc.constantFrom(null, 'Sallow Mere', 'Withy Drove'),
        fc.subarray([...avian.slice(0, 6), ...plants.slice(0, 6)]),
      ),
      { maxLength: 6 },
    );
    const todays = fc.dictionary(fc.constantFrom('a', 'b', 'gone'), fc.nat(500));
    fc.assert(
      fc.property(visits, dates, todays, (made, date, today) => {
        const known = knownFrom(made.map(([day, place, seen]) => outing(day, place, ...seen)));
        const place = placeKey('Sallow Mere');
        const prior = priorFor(index, known, {
          place,
          date,
          today: new Map(Object.entries(today)),
        });
        for (const taxon of [...avian, ...plants]) {
          expect(prior(taxon)).toBeGreaterThanOrEqual(0);
          expect(prior(taxon)).toBeLessThanOrEqual(20);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('is never less for what was met once more on the day', () => {
    fc.assert(
      fc.property(dates, fc.integer({ min: 0, max: 4 }), fc.nat(5), (date, place, times) => {
        const [seen, other] = [at(avian, place), at(avian, place + 5)];
        const known = (count: number) =>
          knownFrom(Array.from({ length: count }, () => outing(date, null, seen)));
        const prior = priorFor(index, known(times + 1), nowhere(date));
        expect(prior(seen)).toBeGreaterThan(prior(other));
      }),
      { numRuns: 60 },
    );
  });

  test.each([
    ['the day before New Year as near as two days later', '2025-12-31', '2026-01-02', '2026-01-01'],
    ['a leap day as the first of March', '2024-02-29', '2024-03-01', '2024-05-14'],
  ])('takes %s', (_, one, two, today) => {
    const seen = at(avian, 3);
    const priors = [one, two].map((date) => {
      // In the year of the day, so that the years between weigh the same.
      const sameYear = `${today.slice(0, 4)}${date.slice(4)}`;
      return priorFor(index, knownFrom([outing(sameYear, null, seen)]), nowhere(today))(seen);
    });
    expect(priors[0]).toBeCloseTo(priors[1] ?? 0, 9);
  });

  test('forgets what was seen long ago', () => {
    const seen = at(avian, 3);
    const priors = [2026, 2022, 2010, 1990].map((year) =>
      priorFor(
        index,
        knownFrom([outing(`${year}-05-14`, null, seen)]),
        nowhere('2026-05-14'),
      )(seen),
    );
    expect(priors).toEqual(priors.toSorted((one, two) => two - one));
    expect(new Set(priors).size).toBe(4);
  });

  test('turns to the list of which most was logged today', () => {
    const known = knownFrom([outing('2026-05-01', null, at(avian, 0))]);
    const prior = (today: [string, number][]) =>
      priorFor(index, known, { place: null, date: '2026-05-14', today: new Map(today) });
    expect(prior([['b', 30]])(at(plants, 0))).toBeGreaterThan(prior([])(at(plants, 0)));
    expect(prior([['b', 30]])(at(avian, 1))).toBeLessThan(prior([])(at(avian, 1)));
  });

  test('is reckoned anew for another place, date and list', () => {
    const seen = at(avian, 3);
    const known = knownFrom([outing('2026-05-14', 'Sallow Mere', seen)]);
    const prior = (name: string | null, date: string, taxa = index) =>
      priorFor(taxa, known, { ...nowhere(date), place: name && placeKey(name) })(seen);
    const [here, away, later] = [
      prior('Sallow Mere', '2026-05-14'),
      prior('Withy Drove', '2026-05-14'),
      prior('Sallow Mere', '2026-11-14'),
    ];
    expect(here).toBeGreaterThan(away);
    expect(here).toBeGreaterThan(later);
    expect(prior('Sallow Mere', '2026-05-14', birdIndex)).not.toBeNaN();
    expect(prior('Sallow Mere', '2026-05-14')).toBe(here);
  });
});

describe('the occasion of a search', () => {
  test('counts the species of each list that stand in the visit, each once', () => {
    const [one, two, plant] = [at(avian, 0), at(avian, 1), at(plants, 0)];
    const visit = outing('2026-11-14', 'Sallow Mere', one, one, two, plant);
    const struck = updateVisit(visit, { do: 'strike', number: 3, time: minutesIn(9) });
    expect(occasionOf(visit, '2026-11-15T00:10:00+00:00')).toEqual({
      place: placeKey('Sallow Mere'),
      date: '2026-11-15',
      today: new Map([
        ['a', 2],
        ['b', 1],
      ]),
    });
    expect(occasionOf(struck, '2026-11-14T09:00:00+00:00').today.get('a')).toBe(1);
    expect(occasionOf(outing('2026-11-14', null), '2026-11-14T09:00:00+00:00').place).toBeNull();
  });
});
