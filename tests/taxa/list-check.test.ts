import { describe, expect, test } from 'vitest';
import { checkedTogether } from '../../src/taxa/list-check.ts';
import { readSpeciesList } from '../../src/taxa/species-list.ts';

function list(name: string, region: string, ...rows: string[]) {
  const header = 'scientificName,identificationQualifier,frequency';
  return readSpeciesList({ name, region, group: name }, [header, ...rows].join('\n'));
}

describe('lists that are checked together', () => {
  test('are in order where each taxon stands once in a region', () => {
    expect(checkedTogether([])).toEqual([]);
    expect(
      checkedTogether([
        list('one', 'here', 'Larus,sp.,', 'Larus canus,,'),
        list('two', 'here', 'Larus,,', 'Larus,canus/argentatus,'),
        list('three', 'there', 'Larus canus,,'),
      ]),
    ).toEqual([]);
  });

  test('tell a taxon of two lists of a region, by the list that has it first', () => {
    const lists = ['one', 'two', 'three'].map((name) => list(name, 'here', 'Larus,sp.,'));
    expect(checkedTogether(lists)).toEqual([
      'two: Larus sp. also stands in one.',
      'three: Larus sp. also stands in one.',
    ]);
  });

  test('tell the rows that could not be read first', () => {
    const problems = checkedTogether([
      list('one', 'here', 'Larus canus,,'),
      list('two', 'here', 'Larus canus,,', 'Pica pica,,9', ',,1'),
    ]);
    expect(problems).toEqual([
      expect.stringMatching(/^two, line 3: frequency: "9"/),
      expect.stringMatching(/^two, line 4: scientificName: there is no scientific name/),
      'two: Larus canus also stands in one.',
    ]);
  });
});
