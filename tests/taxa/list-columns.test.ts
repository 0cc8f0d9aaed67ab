import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readHeader, readRenamed } from '../../src/taxa/list-columns.ts';
import { readSpeciesList } from '../../src/taxa/species-list.ts';
import { RED_LIST_CATEGORIES } from '../../src/visit/entry.ts';

const OWN = { name: 'own-list', region: 'own', group: 'list' };

describe('a header', () => {
  // The names and the namespace of the terms: Darwin Core (TDWG), Quick Reference Guide.
  test.each([
    ['scientificName', { column: 'scientificName' }],
    ['SCIENTIFICNAME', { column: 'scientificName' }],
    [' dwc:scientificName ', { column: 'scientificName' }],
    ['DWC:SCIENTIFICNAME', { column: 'scientificName' }],
    ['http://rs.tdwg.org/dwc/terms/scientificName', { column: 'scientificName' }],
  ])('may call the name %j', (heading, column) => {
    expect(readHeader([heading])).toMatchObject({ columns: [column] });
  });

  // Language tags: RFC 5646, the same in any case by section 2.1.1.
  test.each([
    ['vernacularName:cy', { language: 'cy' }],
    ['vernacularName:pt-BR', { language: 'pt-br' }],
    ['dwc:vernacularName:gsw', { language: 'gsw' }],
    ['vernacularName:zh-Hant-TW', { language: 'zh-hant-tw' }],
    ['vernacularName:en', { column: 'vernacularName' }],
    ['vernacularName:', null],
    ['vernacularName:welsh', null],
    ['vernacularName:c', null],
    ['Seen', null],
    ['', null],
    ['constructor', null],
    ['__proto__', null],
    ['hasOwnProperty', null],
  ])('with the column %j', (heading, column) => {
    expect(readHeader(['scientificName', heading])).toMatchObject({
      columns: [{ column: 'scientificName' }, column],
    });
  });

  test('may have columns of its own twice, and no column of ours', () => {
    expect(readHeader(['scientificName', 'Seen', 'Seen', ''])).not.toHaveProperty('problem');
    for (const twice of [
      ['scientificName', 'dwc:ScientificName'],
      ['scientificName', 'vernacularName', 'vernacularName:en'],
      ['scientificName', 'vernacularName:cy', 'vernacularName:CY'],
    ])
      expect(readHeader(twice)).toEqual({
        problem: expect.stringContaining(`${twice.at(-1)} twice`),
      });
  });

  test('tells which columns it has not', () => {
    const header = readHeader(['scientificName', 'family']);
    expect(header).toHaveProperty('missing');
    expect('missing' in header && header.missing).toContain('vernacularName');
    expect('missing' in header && header.missing).not.toContain('family');
  });

  test('may be renamed by words that every object has', () => {
    const renamed = { constructor: 'scientificName' } as unknown as Record<string, string>;
    expect(readHeader(['constructor'], renamed)).toMatchObject({
      columns: [{ column: 'scientificName' }],
    });
  });
});

describe('what columns mean', () => {
  test.each([
    ['Latin=scientificName', { Latin: 'scientificName' }],
    [
      ' Latin name = scientificName , English=vernacularName',
      { 'Latin name': 'scientificName', English: 'vernacularName' },
    ],
    ['', null],
    ['Latin', null],
    ['Latin=', null],
    ['=scientificName', null],
    ['Latin=scientificName,', null],
    ['Latin=scientificName=x', null],
  ])('is read from %j', (words, renamed) => {
    expect(readRenamed(words)).toEqual(renamed);
  });
});

const CELLS = fc.oneof(
  fc.constantFrom(
    'Pica pica',
    'constructor',
    '__proto__',
    'toString',
    '"',
    '" ',
    '\u00a0',
    '\u001b[31m',
    ' | ',
    '5" shell',
    'VU',
    'Larus sp.',
    'true',
    '×',
    '9',
  ),
  fc.string({ unit: 'binary', maxLength: 8 }),
  fc.string({ unit: 'grapheme', maxLength: 8 }),
);
const HEADINGS = fc.constantFrom(
  'scientificName',
  'vernacularName',
  'vernacularName:cy',
  'redListCategory',
  'countedSingly',
  'frequency',
  'sensitivity',
  'identificationQualifier',
  'constructor',
  'Seen',
);

describe('a list of anything', () => {
  test('is read without a throw', () => {
    const lines = fc.array(fc.array(fc.oneof(HEADINGS, CELLS), { maxLength: 5 }), { maxLength: 6 });
    const texts = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc
        .tuple(lines, fc.constantFrom(',', ';', '\t'), fc.constantFrom('\n', '\r\n', '\r'))
        .map(([rows, separator, end]) => rows.map((row) => row.join(separator)).join(end)),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const list = readSpeciesList(OWN, text);
        expect(list.taxa.length === 0 || list.taxa[0]?.scientificName !== '').toBe(true);
        for (const problem of list.problems) expect(problem).toMatch(/^own-list[,:] /);
      }),
      { numRuns: 500 },
    );
  });

  test('takes or tells every row that is not empty, and takes only what an entry can keep', () => {
    const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;
    const tables = fc
      .uniqueArray(HEADINGS, { minLength: 1, maxLength: 6 })
      .chain((headings) =>
        fc.tuple(
          fc.constant(['scientificName', ...headings.filter((name) => name !== 'scientificName')]),
          fc.array(fc.array(CELLS, { minLength: 1, maxLength: 7 }), { maxLength: 8 }),
        ),
      );
    fc.assert(
      fc.property(tables, ([headings, rows]) => {
        // An empty row is one without a letter: what the reader's own word for white space is.
        const filled = rows.filter((row) => row.some((cell) => cell.trim() !== ''));
        const csv = [headings, ...filled].map((row) => row.map(quoted).join(',')).join('\n');
        const { taxa, problems } = readSpeciesList(OWN, csv);
        expect(taxa.length + problems.length).toBe(filled.length);
        for (const taxon of taxa) {
          expect(taxon.scientificName.trim()).not.toBe('');
          expect(taxon.taxonRank).not.toBe('');
          expect(typeof taxon.countedSingly).toBe('boolean');
          expect(RED_LIST_CATEGORIES).toContain(taxon.redListCategory);
          for (const names of Object.values(taxon.namesIn ?? {}))
            expect(names.every((name) => name.trim() !== '')).toBe(true);
          expect(JSON.stringify(taxon)).not.toMatch(/\\u00[01]/);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('numbers its lines as an editor does, also behind cells of several lines', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const csv = [
        'scientificName,frequency,Seen',
        'Pica pica,1,"by the',
        'gate"',
        '',
        'Pica nuttalli,9,',
        'Corvus corax,9,"over',
        'the hill"',
        ',1,',
      ].join(end);
      const { taxa, problems } = readSpeciesList(OWN, csv);
      expect(taxa.map(({ scientificName }) => scientificName)).toEqual(['Pica pica']);
      expect(problems.map((problem) => problem.replace(/: .*/, ''))).toEqual([
        'own-list, line 5',
        'own-list, line 6',
        'own-list, line 8',
      ]);
    }
  });

  test('leaves out rows of separators only, as spreadsheets write them at the end', () => {
    const { taxa, problems } = readSpeciesList(OWN, 'scientificName;family\nPica pica;\n;\n ; \n');
    expect({ taxa: taxa.length, problems }).toEqual({ taxa: 1, problems: [] });
  });

  test('tells a control character with its column, also in names of other languages', () => {
    const csv = 'scientificName,vernacularName:cy\nPica pica,Pi\u001b[2Jogen\n"Pica\nnuttalli",x';
    expect(readSpeciesList(OWN, csv).problems).toEqual([
      expect.stringMatching(/^own-list, line 2: vernacularName:cy: "Pi\\u001b\[2Jogen" holds/),
      expect.stringMatching(/^own-list, line 3: scientificName: "Pica\\nnuttalli" holds/),
    ]);
  });

  // Darwin Core: identificationQualifier stands apart from scientificName.
  test.each([
    ['Larus sp.', 'Larus', 'sp.', 'genus'],
    ['Larus spp', 'Larus', 'sp.', 'genus'],
    ['Laridae indet.', 'Laridae', 'indet.', 'family'],
    ['Rubus fruticosus L. agg.', 'Rubus fruticosus', 'agg.', 'speciesAggregate'],
    ['Rubus fruticosus agg', 'Rubus fruticosus', 'agg.', 'speciesAggregate'],
    ['sp.', 'sp.', null, 'genus'],
    ['Pica\u00a0pica', 'Pica pica', null, 'species'],
  ])('sets %j apart', (written, scientificName, identificationQualifier, taxonRank) => {
    expect(readSpeciesList(OWN, `scientificName\n${written}`).taxa).toEqual([
      expect.objectContaining({ scientificName, identificationQualifier, taxonRank }),
    ]);
  });
});
