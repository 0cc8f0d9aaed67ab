import { describe, expect, test } from 'vitest';
import { readSpeciesList } from '../../src/taxa/species-list.ts';
import { entryTaxon, TaxonRow } from '../../src/taxa/taxon.ts';
import { EntryTaxon } from '../../src/visit/entry.ts';
import { bird, birds } from './birds.ts';

const HEADER = Object.keys(TaxonRow.shape).join(',');
const PINE =
  'Pinus sylvestris,Scots Pine,,,species,Plantae,Pinopsida,Pinales,Pinaceae,native,LC,,false,1,';
const YEW =
  'Taxus baccata,Yew,English Yew | Common Yew,,species,Plantae,Pinopsida,Cupressales,Taxaceae,native,LC,IUCN,false,2,low';
const read = (...lines: string[]) => readSpeciesList('trees', lines.join('\n'));
const names = (...lines: string[]) => read(...lines).taxa.map((taxon) => taxon.scientificName);

describe('the shipped list', () => {
  test('is read without a problem', () => {
    expect(birds.problems).toEqual([]);
    expect(birds.taxa.length).toBeGreaterThan(300);
  });

  test('gives each taxon as an entry keeps it', () => {
    for (const taxon of birds.taxa)
      expect(EntryTaxon.safeParse(entryTaxon(taxon)).success).toBe(true);
    expect(entryTaxon(bird('Mallard'))).toEqual({
      scientificName: 'Anas platyrhynchos',
      vernacularName: 'Mallard',
      taxonRank: 'species',
      redListCategory: 'LC',
      redListSource: 'IUCN via AviList v2025',
      sensitivity: null,
      list: 'britain-ireland-birds',
    });
  });
});

describe('a species list', () => {
  test('is read cell by cell', () => {
    expect(read(HEADER, YEW)).toEqual({
      name: 'trees',
      problems: [],
      taxa: [
        {
          scientificName: 'Taxus baccata',
          vernacularName: 'Yew',
          otherEnglishNames: ['English Yew', 'Common Yew'],
          olderScientificNames: [],
          taxonRank: 'species',
          kingdom: 'Plantae',
          class: 'Pinopsida',
          order: 'Cupressales',
          family: 'Taxaceae',
          establishmentMeans: 'native',
          redListCategory: 'LC',
          redListSource: 'IUCN',
          countedSingly: false,
          frequency: 2,
          sensitivity: 'low',
          list: 'trees',
        },
      ],
    });
  });

  test.each([
    ['a byte order mark', `\ufeff${HEADER}\n${PINE}\n${YEW}\n`],
    [
      'a byte order mark before a quote',
      `\ufeff"${HEADER.split(',').join('","')}"\n${PINE}\n${YEW}\n`,
    ],
    ['CRLF', `${HEADER}\r\n${PINE}\r\n${YEW}\r\n`],
    ['no end of the last line', `${HEADER}\n${PINE}\n${YEW}`],
    ['empty lines', `${HEADER}\n\n${PINE}\n\n\n${YEW}\n\n`],
    [
      'spaces around cells',
      `${HEADER.replaceAll(',', ' , ')}\n${PINE.replaceAll(',', ' ,')}\n${YEW}`,
    ],
    ['columns of its own behind', `${HEADER},mine\n${PINE},a\n${YEW},"b, c"`],
    [
      'every cell in quotes',
      [HEADER, PINE, YEW].map((line) => `"${line.split(',').join('","')}"`).join('\n'),
    ],
  ])('may have %s', (_, csv) => {
    const list = readSpeciesList('trees', csv);
    expect(list.problems).toEqual([]);
    expect(list.taxa.map((taxon) => taxon.vernacularName)).toEqual(['Scots Pine', 'Yew']);
  });

  test.each([
    ['a wrong category', PINE.replace('LC', 'XX'), /line 3: redListCategory: .*"EX"/],
    ['no scientific name', PINE.replace('Pinus sylvestris', ''), /line 3: scientificName: /],
    ['a frequency past the scale', PINE.replace(',1,', ',5,'), /line 3: frequency: /],
    ['no frequency', PINE.replace(',1,', ',,'), /line 3: frequency: /],
    ['a word for true', PINE.replace('false', 'no'), /line 3: countedSingly: .*"true"/],
    ['an unknown sensitivity', `${PINE}secret`, /line 3: sensitivity: /],
    ['a cell too many', `${PINE},`, /line 3: not as many cells as the first line, which has 15/],
    ['a cell too few', PINE.slice(0, -1), /line 3: not as many cells/],
    [
      'a comma outside quotes',
      PINE.replace('Scots', 'Scots, or Baltic,'),
      /line 3: not as many cells/,
    ],
    ['a taxon that stands above', YEW, /line 3: Taxus baccata stands in the list twice/],
  ])('with %s tells the line and keeps the others', (_, row, problem) => {
    const list = read(HEADER, YEW, row, PINE.replace('Pinus sylvestris', 'Pinus nigra'));
    expect(list.taxa.map((taxon) => taxon.scientificName)).toEqual([
      'Taxus baccata',
      'Pinus nigra',
    ]);
    expect(list.problems).toEqual([expect.stringMatching(problem)]);
    expect(list.problems[0]).toMatch(/^trees, /);
  });

  test.each([
    [
      'without a column',
      [HEADER.replace(',kingdom', ''), PINE.replace(',Plantae', '')],
      /no column kingdom: add it/,
    ],
    ['that is empty', [''], /no column scientificName, /],
    [
      'with semicolons',
      [HEADER.replaceAll(',', ';'), PINE.replaceAll(',', ';')],
      /no column scientificName, /,
    ],
    ['with a quote left open', [HEADER, PINE, '"Taxus'], /^trees: not a CSV table: .* line 3/],
  ])('%s is told in one sentence', (_, lines, problem) => {
    expect(names(...lines)).toEqual([]);
    expect(read(...lines).problems).toEqual([expect.stringMatching(problem)]);
  });
});
