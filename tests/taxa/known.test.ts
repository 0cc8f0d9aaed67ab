import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { priorFor } from '../../src/taxa/expected.ts';
import { type First, firstOf, knownFrom } from '../../src/taxa/known.ts';
import { search } from '../../src/taxa/search.ts';
import type { Observation } from '../../src/visit/entry.ts';
import { placeKey } from '../../src/visit/place.ts';
import { updateVisit } from '../../src/visit/update.ts';
import type { Visit } from '../../src/visit/visit.ts';
import {
  entryOf,
  minutesIn,
  observed,
  POCHARD,
  placeOf,
  visitAt,
  withLogged,
} from '../visit/made.ts';
import { bird, birdIndex, birds, namesOf, newNotebook } from './birds.ts';

const MERE = placeOf();
const DROVE = placeOf({ name: 'Withy Drove', position: null });
const at = (date: string) => `${date}T08:00:00+00:00`;

function outing(place: typeof MERE | null, date: string, ...seen: Partial<Observation>[]): Visit {
  return withLogged(visitAt(place, at(date)), ...seen);
}
/** What the last entry of a visit is, after the visits before it. */
function last(before: Visit[], visit: Visit): First | null {
  return firstOf(knownFrom(before), visit, entryOf(visit, visit.entries.length));
}

describe('a first', () => {
  const earlier = outing(MERE, '2025-11-02', {});
  test.each<[string, Visit[], Visit, First | null]>([
    ['in an empty notebook', [], outing(MERE, '2026-11-14', {}), 'first'],
    ['of another taxon', [earlier], outing(MERE, '2026-11-14', { taxon: POCHARD }), 'first'],
    [
      'at another place, also in another year',
      [earlier],
      outing(DROVE, '2026-11-14', {}),
      'first here',
    ],
    ['at another place in the same year', [earlier], outing(DROVE, '2025-12-14', {}), 'first here'],
    ['here, but in another year', [earlier], outing(MERE, '2026-11-14', {}), 'first this year'],
    ['here in the same year', [earlier], outing(MERE, '2025-11-14', {}), null],
    ['at no place, in the same year', [earlier], outing(null, '2025-11-14', {}), null],
    ['at no place, in another year', [earlier], outing(null, '2026-11-14', {}), 'first this year'],
    [
      'here, by a name that is spelt otherwise',
      [earlier],
      outing(placeOf({ name: 'sallow  MERE' }), '2025-11-14', {}),
      null,
    ],
    ['twice in one visit', [], outing(MERE, '2026-11-14', {}, {}), null],
    [
      'after an uncertain one in the visit',
      [],
      outing(MERE, '2026-11-14', { uncertain: true }, {}),
      'first',
    ],
    ['of an uncertain name', [], outing(MERE, '2026-11-14', { uncertain: true }), null],
    ['of an unnamed entry', [], outing(MERE, '2026-11-14', { taxon: null }), null],
    ['of none seen', [], outing(MERE, '2026-11-14', { count: { kind: 'exact', value: 0 } }), null],
    ['of about none', [], outing(MERE, '2026-11-14', { count: { kind: 'about', value: 0 } }), null],
    [
      'of present, not counted',
      [],
      outing(MERE, '2026-11-14', { count: { kind: 'present' } }),
      'first',
    ],
    [
      'where it was uncertain before',
      [outing(MERE, '2025-11-02', { uncertain: true })],
      outing(MERE, '2026-11-14', {}),
      'first',
    ],
    [
      'where a zero was counted before',
      [outing(MERE, '2025-11-02', { count: { kind: 'exact', value: 0 } })],
      outing(MERE, '2026-11-14', {}),
      'first',
    ],
  ])('%s', (_, before, visit, want) => {
    expect(last(before, visit)).toBe(want);
  });

  test('is none while struck out, and the next of its taxon takes its place', () => {
    const visit = outing(MERE, '2026-11-14', {}, {});
    const struck = updateVisit(visit, { do: 'strike', number: 1, time: minutesIn(9) });
    const none = knownFrom([]);
    expect([1, 2].map((number) => firstOf(none, visit, entryOf(visit, number)))).toEqual([
      'first',
      null,
    ]);
    expect([1, 2].map((number) => firstOf(none, struck, entryOf(struck, number)))).toEqual([
      null,
      'first',
    ]);
    expect(last([struck], outing(MERE, '2026-12-14', {}))).toBeNull();
    const gone = updateVisit(struck, { do: 'strike', number: 2, time: minutesIn(10) });
    expect(last([gone], outing(MERE, '2026-12-14', {}))).toBe('first');
  });
});

describe('what a notebook knows', () => {
  test('is the same in whatever order its visits are read', () => {
    const visits = [
      outing(MERE, '2026-05-14', {}),
      outing(DROVE, '2026-11-14', {}, { taxon: POCHARD }),
      outing(null, '2025-11-14', {}),
      outing(MERE, '2024-01-14', {}),
    ];
    const known = knownFrom(visits);
    fc.assert(
      fc.property(fc.shuffledSubarray(visits, { minLength: visits.length }), (shuffled) => {
        expect(knownFrom(shuffled)).toEqual(known);
      }),
    );
    expect(known.visits).toBe(4);
    expect(known.lastPlace?.name).toBe('Withy Drove');
    expect(known.places.get(placeKey('Sallow Mere'))).toMatchObject({
      visits: 2,
      last: '2026-05-14',
    });
    expect(known.taxa.get('Anas platyrhynchos')).toMatchObject({ visits: 4, last: '2026-11-14' });
  });

  test('counts a visit once, however many entries of a taxon it has', () => {
    const known = knownFrom([outing(MERE, '2026-11-14', {}, {}, {})]);
    expect(known.taxa.get('Anas platyrhynchos')?.visits).toBe(1);
  });
});

describe('what is expected', () => {
  const smew = (over: Partial<Observation> = {}) =>
    observed({ taxon: { ...POCHARD, ...bird('Smew') }, ...over });
  const [here, date] = [placeKey('Sallow Mere'), '2026-01-20'];
  const occasion = { place: here, date, today: new Map<string, number>() };
  const expecting = (...visits: Visit[]) => priorFor(birdIndex, knownFrom(visits), occasion);

  test('in a new notebook is what is common', () => {
    const ranked = ['Mallard', 'Pochard', 'Smew', 'Snow Goose'].map((name) =>
      newNotebook(bird(name)),
    );
    expect(ranked).toEqual(ranked.toSorted((one, two) => two - one));
    expect(new Set(ranked).size).toBe(4);
    expect(priorFor(birdIndex, null, occasion)(bird('Mallard'))).toBe(newNotebook(bird('Mallard')));
  });

  test('a bird seen here in this season stands before a commoner one', () => {
    const prior = expecting(outing(MERE, '2025-12-28', smew()));
    expect(prior(bird('Smew'))).toBeGreaterThan(prior(bird('Swift')));
    expect(namesOf(search(birdIndex, 'sm', prior))[0]).toBe('Smew');
    expect(namesOf(search(birdIndex, 's', prior))[0]).toBe('Smew');
    expect(namesOf(search(birdIndex, 's', newNotebook))[0]).not.toBe('Smew');
  });

  test('is most for what was seen here now, then here, then elsewhere now, then at all', () => {
    const priors = [
      outing(MERE, '2025-02-01', smew()),
      outing(DROVE, '2025-02-01', smew()),
      outing(DROVE, '2025-07-01', smew()),
    ].map((visit) => expecting(visit)(bird('Smew')));
    expect(priors).toEqual(priors.toSorted((one, two) => two - one));
    expect(priors.at(-1)).toBeGreaterThan(newNotebook(bird('Smew')));
    expect(expecting(outing(MERE, '2025-07-01', smew()))(bird('Smew'))).toBeLessThan(
      priors[0] ?? 0,
    );
  });

  test('takes December and January for one season', () => {
    const december = expecting(outing(MERE, '2025-12-12', smew()))(bird('Smew'));
    expect(december).toBeCloseTo(expecting(outing(MERE, '2025-02-28', smew()))(bird('Smew')), 9);
    expect(december).toBeGreaterThan(expecting(outing(MERE, '2025-11-01', smew()))(bird('Smew')));
  });

  test('is from 0 to 20, however often a bird was seen', () => {
    const often = Array.from({ length: 400 }, (_, day) =>
      outing(MERE, `2025-01-${10 + (day % 20)}`, {}),
    );
    const most = expecting(...often)(bird('Mallard'));
    expect(most).toBeGreaterThan(19.5);
    expect(most).toBeLessThanOrEqual(20);
    for (const taxon of birds.taxa) expect(newNotebook(taxon)).toBeGreaterThanOrEqual(0);
  });

  test('never lifts a bird over one whose name is typed in full', () => {
    const often = Array.from({ length: 99 }, (_, day) =>
      outing(
        MERE,
        `2025-01-${10 + (day % 20)}`,
        observed({ taxon: { ...POCHARD, ...bird('Ruddy Shelduck') } }),
      ),
    );
    const prior = expecting(...often);
    expect(namesOf(search(birdIndex, 'ruddy', prior))[0]).toBe('Ruddy Shelduck');
    expect(namesOf(search(birdIndex, 'shelduck', prior)).slice(0, 2)).toEqual([
      'Shelduck',
      'Ruddy Shelduck',
    ]);
  });
});
