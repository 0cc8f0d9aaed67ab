import { describe, expect, test } from 'vitest';
import { readSpeciesList } from '../../src/taxa/species-list.ts';
import { entryTaxon, TaxonRow } from '../../src/taxa/taxon.ts';
import { EntryTaxon } from '../../src/visit/entry.ts';
import { bird, birds } from './birds.ts';

const TREES = { name: 'trees', region: 'mine', group: 'trees' };
const HEADER = Object.keys(TaxonRow.shape).join(',');
const PINE =
  'Pinus sylvestris,,Scots Pine,,,species,Plantae,Pinopsida,Pinales,Pinaceae,native,LC,,false,1,';
const YEW =
  'Taxus baccata,,Yew,English Yew | Common Yew,,species,Plantae,Pinopsida,Cupressales,Taxaceae,native,LC,IUCN,false,2,low';
const read = (...lines: string[]) => readSpeciesList(TREES, lines.join('\n'));
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
      identificationQualifier: null,
      vernacularName: 'Mallard',
      taxonRank: 'species',
      establishmentMeans: 'native',
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
      ...TREES,
      problems: [],
      taxa: [
        {
          scientificName: 'Taxus baccata',
          identificationQualifier: null,
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

  test('may have scientific names alone; what is not said is taken as usual', () => {
    const { taxa, problems } = read('scientificName', 'Taxus baccata', 'Pinus', 'Pinaceae');
    expect(problems).toEqual([]);
    expect(taxa.map(({ taxonRank }) => taxonRank)).toEqual(['species', 'genus', 'family']);
    expect(taxa[0]).toMatchObject({
      vernacularName: null,
      redListCategory: 'NE',
      countedSingly: true,
      frequency: null,
      sensitivity: null,
    });
  });

  test('may hold a genus with several qualifiers, each once', () => {
    const rows = ['Sterna,sp.', 'Sterna,hirundo/paradisaea', 'Sterna,sp.'];
    const list = read('scientificName,identificationQualifier', ...rows);
    expect(list.taxa.map((taxon) => taxon.identificationQualifier)).toEqual([
      'sp.',
      'hirundo/paradisaea',
    ]);
    expect(list.problems).toEqual([
      'trees, line 4: Sterna sp. stands in the list twice, first in line 2.',
    ]);
  });

  test('holds names in other languages, by their tags', () => {
    const { taxa } = read(
      'scientificName,vernacularName,vernacularName:cy,vernacularName:gd',
      'Taxus baccata,Yew,Ywen | Ywen Ewropeaidd,',
    );
    expect(taxa[0]?.namesIn).toEqual({ cy: ['Ywen', 'Ywen Ewropeaidd'] });
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
    ['semicolons', [HEADER, PINE, YEW].join('\n').replaceAll(',', ';')],
    ['tabs', [HEADER, PINE, YEW].join('\n').replaceAll(',', '\t')],
    ['a header in capitals', `${HEADER.toUpperCase()}\n${PINE}\n${YEW}`],
    ['the prefix of Darwin Core', `${HEADER.replaceAll(/(^|,)/g, '$1dwc:')}\n${PINE}\n${YEW}`],
    [
      'the addresses of the terms',
      `${HEADER.replaceAll(/(^|,)/g, '$1http://rs.tdwg.org/dwc/terms/')}\n${PINE}\n${YEW}`,
    ],
    [
      'every cell in quotes',
      [HEADER, PINE, YEW].map((line) => `"${line.split(',').join('","')}"`).join('\n'),
    ],
  ])('may have %s', (_, csv) => {
    const list = readSpeciesList(TREES, csv);
    expect(list.problems).toEqual([]);
    expect(list.taxa.map((taxon) => taxon.vernacularName)).toEqual(['Scots Pine', 'Yew']);
  });

  test.each([
    ['a wrong category', PINE.replace('LC', 'XX'), /line 3: redListCategory: "XX".* EX EW CR/],
    ['no scientific name', PINE.replace('Pinus sylvestris', ''), /line 3: scientificName: /],
    ['a frequency past the scale', PINE.replace(',1,', ',5,'), /line 3: frequency: "5"/],
    ['a word for true', PINE.replace('false', 'nay'), /line 3: countedSingly: "nay".*true/],
    ['an unknown sensitivity', `${PINE}secret`, /line 3: sensitivity: "secret"/],
    ['a cell too many', `${PINE},`, /line 3: 17 cells, where the first line has 16/],
    ['a cell too few', PINE.slice(0, -1), /line 3: 15 cells/],
    ['a comma outside quotes', PINE.replace('Scots', 'Scots, or Baltic,'), /line 3: 18 cells/],
    [
      'an escape character',
      PINE.replace('Scots', 'Sc\u001b[31mots'),
      /line 3: .*control character/,
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
      'without scientific names',
      ['Latin,English', 'Taxus baccata,Yew'],
      /no column scientificName/,
    ],
    ['that is empty', [''], /the file is empty/],
    ['with a column twice', ['scientificName,scientificName', 'a b,c d'], /scientificName twice/],
    ['with a quote left open', [HEADER, PINE, '"Taxus'], /^trees: not a table: .* line 3/],
  ])('%s is told in one sentence', (_, lines, problem) => {
    expect(names(...lines)).toEqual([]);
    expect(read(...lines).problems).toEqual([expect.stringMatching(problem)]);
  });

  test('takes the categories of the Red List by their letters and their words', () => {
    const cells = ['VU', 'vu', 'Critically Endangered', 'least concern', ''];
    const rows = cells.map((cell, at) => `Pinus ${'abcde'[at]},${cell}`);
    const { taxa } = read('scientificName,redListCategory', ...rows);
    expect(taxa.map((taxon) => taxon.redListCategory)).toEqual(['VU', 'VU', 'CR', 'LC', 'NE']);
  });

  test('may call its columns as it likes', () => {
    const renamed = { Latin: 'scientificName', English: 'vernacularName' };
    const csv = 'Latin;English;Seen\nTaxus baccata;Yew;often';
    const list = readSpeciesList(TREES, csv, renamed);
    expect(list.problems).toEqual([]);
    expect(list.taxa[0]).toMatchObject({ scientificName: 'Taxus baccata', vernacularName: 'Yew' });
    for (const wrong of [{ Lat: 'scientificName' }, { Latin: 'scientific' }])
      expect(readSpeciesList(TREES, csv, wrong as Record<string, string>).problems).toHaveLength(1);
  });
});
