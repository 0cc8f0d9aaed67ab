import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sensitivityOf } from '../../src/taxa/sensitivity.ts';
import { readSpeciesList, type SpeciesList } from '../../src/taxa/species-list.ts';
import type { Taxon } from '../../src/taxa/taxon.ts';
import { unitedTaxa } from '../../src/taxa/united.ts';
import { RED_LIST_CATEGORIES, taxonKey } from '../../src/visit/entry.ts';
import { birds } from './birds.ts';

function own(header: string, ...rows: string[]): SpeciesList {
  const list = readSpeciesList(
    { name: 'own-list', region: 'own', group: 'mine' },
    [header, ...rows].join('\n'),
  );
  expect(list.problems).toEqual([]);
  return list;
}
function only(taxa: readonly Taxon[], name: string): Taxon {
  const found = taxa.filter((taxon) => taxonKey(taxon) === name);
  expect(found).toHaveLength(1);
  return found[0] as Taxon;
}

describe('lists that are used together', () => {
  test('have every taxon once, first in the order of the first list', () => {
    const list = own('scientificName', 'Pica pica', 'Bombus lapidarius', 'Anas platyrhynchos');
    const taxa = unitedTaxa([list, birds]);
    expect(taxa.slice(0, 3).map(({ scientificName }) => scientificName)).toEqual([
      'Pica pica',
      'Bombus lapidarius',
      'Anas platyrhynchos',
    ]);
    expect(taxa).toHaveLength(birds.taxa.length + 1);
    expect(new Set(taxa.map(taxonKey)).size).toBe(taxa.length);
    expect(unitedTaxa([])).toEqual([]);
    expect(unitedTaxa([birds])).toEqual(birds.taxa);
  });

  test('keep an own name before the shipped one, and find by both', () => {
    const list = own(
      'scientificName,vernacularName,vernacularName:cy,frequency',
      'Pica pica,Maggie,Pioden,4',
    );
    expect(only(unitedTaxa([list, birds]), 'Pica pica')).toMatchObject({
      vernacularName: 'Maggie',
      otherEnglishNames: expect.arrayContaining(['Magpie']),
      namesIn: { cy: ['Pioden'] },
      frequency: 4,
      redListCategory: 'LC',
      family: 'Corvidae',
      list: 'own-list',
    });
    const turned = only(unitedTaxa([birds, list]), 'Pica pica');
    expect(turned).toMatchObject({
      vernacularName: 'Magpie',
      otherEnglishNames: expect.arrayContaining(['Maggie']),
      list: 'britain-ireland-birds',
    });
    expect(turned.otherEnglishNames).not.toContain('Magpie');
  });

  test('let an own list with bare names take nothing from the shipped ones', () => {
    const bare = own('scientificName', ...birds.taxa.filter(isPlain).map((t) => t.scientificName));
    const united = unitedTaxa([bare, birds]);
    for (const shipped of birds.taxa.filter(isPlain)) {
      const taxon = only(united, taxonKey(shipped));
      expect({ ...taxon, list: '', sensitivity: null, taxonRank: '', countedSingly: true }).toEqual(
        {
          ...shipped,
          list: '',
          sensitivity: null,
          taxonRank: '',
          countedSingly: true,
        },
      );
      expect(sensitivityOf(taxon)).toBe(sensitivityOf(shipped));
    }
  });

  test('never uncover a place that one of them hides, whatever an own list says', () => {
    const levels = [null, 'low', 'medium', 'high', 'extreme'];
    const rows = fc.record({
      redListCategory: fc.constantFrom('', ...RED_LIST_CATEGORIES),
      sensitivity: fc.constantFrom('', 'low', 'medium', 'high', 'extreme'),
      establishmentMeans: fc.constantFrom('', 'native', 'introduced', 'vagrant'),
    });
    fc.assert(
      fc.property(
        fc.constantFrom(...birds.taxa.filter(isPlain)),
        rows,
        fc.boolean(),
        (shipped, row, first) => {
          const list = own(
            'scientificName,redListCategory,sensitivity,establishmentMeans',
            [shipped.scientificName, ...Object.values(row)].join(','),
          );
          const lists = first ? [list, birds] : [birds, list];
          const now = sensitivityOf(only(unitedTaxa(lists), taxonKey(shipped)));
          for (const taxon of [shipped, list.taxa[0] as Taxon])
            expect(levels.indexOf(now)).toBeGreaterThanOrEqual(
              levels.indexOf(sensitivityOf(taxon)),
            );
        },
      ),
    );
  });

  test('note plants as the shipped list does where an own one says only their names', () => {
    const shipped = own('scientificName,countedSingly', 'Taxus baccata,false');
    const bare = own('scientificName', 'Taxus baccata');
    for (const lists of [
      [bare, shipped],
      [shipped, bare],
    ])
      expect(only(unitedTaxa(lists), 'Taxus baccata').countedSingly).toBe(false);
  });

  test('of three still hide what the last of them hides', () => {
    const [one, two, three] = ['', 'low', 'extreme'].map((level) =>
      own('scientificName,sensitivity', `Pica pica,${level}`),
    ) as [SpeciesList, SpeciesList, SpeciesList];
    expect(only(unitedTaxa([one, two, three]), 'Pica pica').sensitivity).toBe('extreme');
  });
});

function isPlain(taxon: Taxon): boolean {
  return taxon.identificationQualifier === null;
}
