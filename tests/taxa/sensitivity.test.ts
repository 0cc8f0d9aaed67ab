import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sensitivityOf } from '../../src/taxa/sensitivity.ts';
import { type EntryTaxon, RED_LIST_CATEGORIES } from '../../src/visit/entry.ts';
import { taxonOf } from '../visit/made.ts';

type Level = EntryTaxon['sensitivity'];
const LEVELS: Level[] = [null, 'low', 'medium', 'high', 'extreme'];
const levels = fc.constantFrom(...LEVELS);
const categories = fc.constantFrom(...RED_LIST_CATEGORIES);
const means = fc.constantFrom('native', 'vagrant', 'introduced', 'uncertain', null);

describe('how strongly a place is hidden', () => {
  // Threatened are CR, EN and VU: IUCN Red List Categories and Criteria 3.1 (2012), part II. The levels are ours.
  test.each<[EntryTaxon['redListCategory'], Level, Level]>([
    ['CR', null, 'high'],
    ['EN', null, 'high'],
    ['VU', null, 'medium'],
    ['NT', null, null],
    ['LC', null, null],
    ['DD', null, null],
    ['NE', null, null],
    ['EX', null, null],
    ['EW', null, null],
    ['CR', 'low', 'high'],
    ['VU', 'low', 'medium'],
    ['VU', 'high', 'high'],
    ['CR', 'extreme', 'extreme'],
    ['LC', 'extreme', 'extreme'],
    ['LC', 'low', 'low'],
  ])('of a native %s with %s in the list is %s', (redListCategory, sensitivity, level) => {
    expect(sensitivityOf(taxonOf({ redListCategory, sensitivity }))).toBe(level);
  });

  test('of what people brought is what the list says', () => {
    fc.assert(
      fc.property(categories, levels, (redListCategory, sensitivity) => {
        const establishmentMeans = 'introduced';
        expect(sensitivityOf({ redListCategory, sensitivity, establishmentMeans })).toBe(
          sensitivity,
        );
      }),
    );
  });

  test('is never less than the list says, and the same when asked again', () => {
    fc.assert(
      fc.property(categories, levels, means, (redListCategory, sensitivity, establishmentMeans) => {
        const taxon = { redListCategory, sensitivity, establishmentMeans };
        const level = sensitivityOf(taxon);
        expect(LEVELS.indexOf(level)).toBeGreaterThanOrEqual(LEVELS.indexOf(sensitivity));
        expect(sensitivityOf({ ...taxon, sensitivity: level })).toBe(level);
      }),
    );
  });
});
