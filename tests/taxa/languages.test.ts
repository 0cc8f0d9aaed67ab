import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ENGLISH, inLanguages, languagesOf } from '../../src/taxa/languages.ts';
import { search } from '../../src/taxa/search.ts';
import { readSpeciesList } from '../../src/taxa/species-list.ts';
import type { Taxon } from '../../src/taxa/taxon.ts';
import { indexTaxa } from '../../src/taxa/taxon-index.ts';

// Welsh and Gaelic names from memory.
const { taxa } = readSpeciesList(
  { name: 'own-birds', region: 'own', group: 'birds' },
  [
    'scientificName,vernacularName,otherEnglishNames,vernacularName:cy,vernacularName:gd',
    'Pica pica,Magpie,Eurasian Magpie,Pioden | Piogen,Pioghaid',
    'Turdus merula,Blackbird,Ouzel,Aderyn Du,',
    'Podiceps auritus,Slavonian Grebe,Horned Grebe,,',
    'Falco subbuteo,,,Hebog yr Ehedydd,',
  ].join('\n'),
);
const taxonOf = (name: string): Taxon => {
  const taxon = taxa.find(({ scientificName }) => scientificName === name);
  if (!taxon) throw new Error(name);
  return taxon;
};
const namesOf = (taxon: Taxon) => [taxon.vernacularName, ...taxon.otherEnglishNames];

describe('names in languages', () => {
  const [magpie, grebe, hobby] = ['Pica pica', 'Podiceps auritus', 'Falco subbuteo'].map(
    taxonOf,
  ) as [Taxon, Taxon, Taxon];

  test('are as in the list where English is asked for', () => {
    for (const taxon of taxa) expect(inLanguages(taxon, ENGLISH)).toBe(taxon);
  });

  test.each([
    ['cy', ['cy'], ['Pioden', 'Piogen']],
    ['cy', ['cy', 'en'], ['Pioden', 'Piogen', 'Magpie', 'Eurasian Magpie']],
    ['en', ['en', 'cy'], ['Magpie', 'Eurasian Magpie', 'Pioden', 'Piogen']],
    ['en', ['cy'], ['Magpie', 'Eurasian Magpie', 'Pioden', 'Piogen']],
    ['gd', ['cy', 'gd'], ['Pioghaid', 'Pioden', 'Piogen']],
    ['gd', [], ['Pioghaid']],
  ])('shown in %s and searched in %j are %j', (shown, searched, names) => {
    expect(namesOf(inLanguages(magpie, { shown, searched }))).toEqual(names);
  });

  test('fall back to English where there is none', () => {
    expect(inLanguages(grebe, { shown: 'cy', searched: ['cy'] }).vernacularName).toBe(
      'Slavonian Grebe',
    );
    expect(inLanguages(hobby, { shown: 'gd', searched: ['gd'] }).vernacularName).toBeNull();
    expect(inLanguages(hobby, { shown: 'cy', searched: ['cy'] }).vernacularName).toBe(
      'Hebog yr Ehedydd',
    );
  });

  test('are found by the search in every language that is searched', () => {
    const index = indexTaxa(
      taxa.map((each) => inLanguages(each, { shown: 'cy', searched: ['en'] })),
    );
    for (const words of ['aderyn du', 'blackbird', 'ouzel', 'turdus merula'])
      expect(search(index, words, () => 0)[0]?.taxon.vernacularName).toBe('Aderyn Du');
  });

  test('never stand twice, and change nothing but names', () => {
    const tags = fc.constantFrom('en', 'cy', 'gd', 'fr');
    fc.assert(
      fc.property(fc.constantFrom(...taxa), tags, fc.array(tags), (taxon, shown, searched) => {
        const named = inLanguages(taxon, { shown, searched });
        const names = namesOf(named);
        expect(new Set(names).size).toBe(names.length);
        expect({ ...named, vernacularName: 0, otherEnglishNames: 0 }).toEqual({
          ...taxon,
          vernacularName: 0,
          otherEnglishNames: 0,
        });
      }),
    );
  });

  test('are told by their tags, without English', () => {
    expect(languagesOf(taxa)).toEqual(['cy', 'gd']);
    expect(languagesOf([])).toEqual([]);
  });

  test('are none where a cell holds separators only', () => {
    const list = readSpeciesList(
      { name: 'own-x', region: 'own', group: 'x' },
      'scientificName,vernacularName:cy\nPica pica, | \nTurdus merula,| Aderyn Du |',
    );
    expect(list.taxa.map(({ namesIn }) => namesIn)).toEqual([undefined, { cy: ['Aderyn Du'] }]);
  });
});
