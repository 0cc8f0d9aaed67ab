import { describe, expect, test } from 'vitest';
import { CATEGORY_WORDS, isThreatened } from '../../src/taxa/red-list.ts';
import { RED_LIST_CATEGORIES } from '../../src/visit/entry.ts';

// IUCN 2012, IUCN Red List Categories and Criteria, version 3.1, second edition, part II (figure 1).
const PUBLISHED = [
  ['EX', 'Extinct', false],
  ['EW', 'Extinct in the Wild', false],
  ['CR', 'Critically Endangered', true],
  ['EN', 'Endangered', true],
  ['VU', 'Vulnerable', true],
  ['NT', 'Near Threatened', false],
  ['LC', 'Least Concern', false],
  ['DD', 'Data Deficient', false],
  ['NE', 'Not Evaluated', false],
] as const;

describe('the IUCN Red List categories, version 3.1', () => {
  test('are these nine, in this order', () => {
    expect(RED_LIST_CATEGORIES).toEqual(PUBLISHED.map(([letters]) => letters));
  });

  test.each(PUBLISHED)('%s is %s; threatened: %j', (letters, words, threatened) => {
    expect(CATEGORY_WORDS[letters]).toBe(words.toLowerCase());
    expect(isThreatened(letters)).toBe(threatened);
  });
});
