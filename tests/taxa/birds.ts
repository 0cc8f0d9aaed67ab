import { readFileSync } from 'node:fs';
import { priorFor } from '../../src/taxa/expected.ts';
import { type Hit, search } from '../../src/taxa/search.ts';
import { readSpeciesList } from '../../src/taxa/species-list.ts';
import type { Taxon } from '../../src/taxa/taxon.ts';
import { indexTaxa } from '../../src/taxa/taxon-index.ts';

const file = new URL('../../taxa/britain-ireland/birds.csv', import.meta.url);

/** The list that is shipped, read as the program reads it. */
export const birds = readSpeciesList(
  { name: 'britain-ireland-birds', region: 'britain-ireland', group: 'birds' },
  readFileSync(file, 'utf8'),
);
export const birdIndex = indexTaxa(birds.taxa);

/** What a notebook without visits expects in November. */
export const newNotebook = priorFor(birdIndex, null, {
  place: null,
  date: '2026-11-14',
  today: new Map(),
});

export function hitsFor(words: string): Hit[] {
  return search(birdIndex, words, newNotebook);
}

export function namesOf(hits: readonly Hit[]): string[] {
  return hits.map(({ taxon }) => taxon.vernacularName ?? taxon.scientificName);
}

export function bird(name: string): Taxon {
  const taxon = birds.taxa.find(({ vernacularName }) => vernacularName === name);
  if (!taxon) throw new Error(`no ${name} in the list`);
  return taxon;
}
