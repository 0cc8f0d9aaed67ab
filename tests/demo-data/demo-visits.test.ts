import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_TAXA, demoVisits } from '../../demo-data/model/demo-visits.ts';
import { readSpeciesList } from '../../src/taxa/species-list.ts';
import { standing, Visit } from '../../src/visit/visit.ts';

const LISTS = new URL('../../taxa/britain-ireland/', import.meta.url);
const taxa = readdirSync(LISTS)
  .filter((file) => file.endsWith('.csv'))
  .sort()
  .flatMap((file) => {
    const group = file.replace(/\.csv$/, '');
    const identity = { name: `britain-ireland-${group}`, region: 'britain-ireland', group };
    return readSpeciesList(identity, readFileSync(new URL(file, LISTS), 'utf8')).taxa;
  });
const visits = demoVisits(taxa);
const entries = visits.flatMap((visit) => visit.entries);

/** Months, from 1, in which visits have a species standing. */
function monthsOf(name: string): number[] {
  const having = visits.filter((visit) =>
    standing(visit).some(({ taxon }) => taxon?.vernacularName === name),
  );
  return [...new Set(having.map(({ start }) => Number(start.slice(5, 7))))].sort((a, b) => a - b);
}

describe('the invented notebook', () => {
  test('The same lists give the same visits, byte for byte.', () => {
    expect(JSON.stringify(demoVisits(taxa))).toBe(JSON.stringify(visits));
  });

  test('Another seed gives other visits.', () => {
    const usual = JSON.stringify(visits);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
        fc.pre(seed !== 20_231_101);
        expect(JSON.stringify(demoVisits(taxa, seed)) === usual).toBe(false);
      }),
      { numRuns: 3 },
    );
  });

  test('Every visit stands the check of the visit schema and loses nothing by it.', () => {
    for (const visit of visits) expect(Visit.parse(visit)).toEqual(visit);
  });

  test('There are 150 ended visits on days of their own, in order, in the three years.', () => {
    const days = visits.map(({ start }) => start.slice(0, 10));
    expect(days).toHaveLength(150);
    expect(new Set(days).size).toBe(150);
    expect(days).toEqual(days.toSorted());
    expect((days[0] ?? '') >= '2023-11-01' && (days.at(-1) ?? '') <= '2026-10-31').toBe(true);
    expect(visits.every(({ end }) => end !== null)).toBe(true);
  });

  test('About three visits in five go to Sallow Mere, the others to five more places.', () => {
    const names = visits.map(({ place }) => place?.name);
    expect(new Set(names).size).toBe(6);
    const there = names.filter((name) => name === 'Sallow Mere').length / names.length;
    expect(there).toBeGreaterThan(0.5);
    expect(there).toBeLessThan(0.7);
  });

  test('Each visit has 15 to 45 entries.', () => {
    for (const visit of visits) {
      expect(visit.entries.length).toBeGreaterThanOrEqual(15);
      expect(visit.entries.length).toBeLessThanOrEqual(45);
    }
  });

  test('Ids are all different and of version 4 and variant 1 in form (RFC 9562, section 5.4).', () => {
    const ids = [...visits, ...entries].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids)
      expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  test('Every kind of count, parts, doubt, description and change comes up.', () => {
    expect(new Set(entries.map(({ count }) => count.kind)).size).toBe(5);
    expect(entries.some(({ parts }) => parts.length > 0)).toBe(true);
    expect(entries.some(({ uncertain }) => uncertain)).toBe(true);
    expect(entries.some(({ description }) => description !== null)).toBe(true);
    expect(entries.some(({ taxon }) => taxon === null)).toBe(true);
    expect(entries.some(({ struck }) => struck !== null)).toBe(true);
    const changes = visits.flatMap((visit) => visit.changes);
    expect(changes.some(({ reason }) => reason !== null)).toBe(true);
    expect(changes.some(({ undoes }) => undoes !== null)).toBe(true);
    expect(changes.some(({ redoes }) => redoes !== null)).toBe(true);
    expect(visits.some(({ effort }) => effort.pauses.length > 0)).toBe(true);
  });

  test('The lists have at least 130 birds and 40 other species of the model.', () => {
    const named = new Map(taxa.map((taxon) => [taxon.vernacularName, taxon]));
    const found = DEMO_TAXA.flatMap(({ name }) => named.get(name) ?? []);
    expect(found.filter((taxon) => taxon.class === 'Aves').length).toBeGreaterThanOrEqual(130);
    expect(found.filter((taxon) => taxon.class !== 'Aves').length).toBeGreaterThanOrEqual(40);
  });

  test('No species stands in the model twice.', () => {
    expect(new Set(DEMO_TAXA.map(({ name }) => name)).size).toBe(DEMO_TAXA.length);
  });

  // General knowledge of when they are in the country, from memory.
  test.each([
    ['Swift', 4, 9],
    ['Reed Warbler', 4, 10],
    ['Sand Martin', 2, 10],
    ['Orange-tip', 3, 6],
  ])('The months with a %s lie within %i to %i.', (name, first, last) => {
    const months = monthsOf(name);
    expect(months.length).toBeGreaterThan(0);
    expect(months.every((month) => month >= first && month <= last)).toBe(true);
  });

  test.each(['Wigeon', 'Fieldfare', 'Redwing'])(
    'A %s is met in winter and not in June or July.',
    (name) => {
      expect(monthsOf(name)).toEqual(expect.arrayContaining([12, 1, 2]));
      expect(monthsOf(name).some((month) => month === 6 || month === 7)).toBe(false);
    },
  );

  test('Without a list there are visits all the same, with unnamed entries only.', () => {
    const bare = demoVisits([]);
    expect(bare).toHaveLength(150);
    expect(bare.every((visit) => visit.entries.every(({ taxon }) => taxon === null))).toBe(true);
  });
});
