import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { manyTaxa } from '../../bench/many-taxa.ts';
import { freshFolder } from '../notebook/visits.ts';
import { birds } from '../taxa/birds.ts';
import { listsIn, TABLE } from './lists-in.ts';
import { onlyVisit, told } from './run.ts';

let notebook: string;
let { lists, adding, ownFiles, ownList, field } = listsIn('');
beforeEach(() => {
  notebook = freshFolder();
  ({ lists, adding, ownFiles, ownList, field } = listsIn(notebook));
});

const utf16 = (text: string) => Buffer.from(text, 'utf16le');
const ENCODED: [string, Uint8Array, string | null][] = [
  ['UTF-8', Buffer.from(TABLE), null],
  ['UTF-8 with a byte order mark', Buffer.from(`\ufeff${TABLE}`), null],
  ['UTF-16LE', utf16(TABLE), 'UTF-16'],
  ['UTF-16LE with a byte order mark', utf16(`\ufeff${TABLE}`), 'UTF-16'],
  ['UTF-16BE', utf16(TABLE).swap16(), 'UTF-16'],
  ['UTF-16BE with a byte order mark', utf16(`\ufeff${TABLE}`).swap16(), 'UTF-16'],
  ['Windows-1252', Buffer.from(TABLE, 'latin1'), 'Windows-1252'],
  ['semicolons', Buffer.from(TABLE.replaceAll(',', ';')), null],
  ['tabs', Buffer.from(TABLE.replaceAll(',', '\t')), null],
  ['CRLF', Buffer.from(TABLE.replaceAll('\n', '\r\n')), null],
];

describe('lists add', () => {
  test.each(ENCODED)('takes a table in %s', async (_, bytes, encoding) => {
    const ran = await adding(bytes);
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    expect(ran.answers).toEqual([
      ...(encoding === null ? [] : [`Read as ${encoding}.`]),
      'Added own-moths: 2 taxa. It is in use from the next start on.',
    ]);
    expect((await ownList('own-moths')).taxa.map((taxon) => taxon.vernacularName)).toEqual([
      'Garden Tiger',
      'Emperor é',
    ]);
    expect((await lists()).out).toMatch(/^\* own-moths +2 +0$/m);
  });

  test('tells every bad row with its line, its column and why, and takes the others', async () => {
    const ran = await adding(
      [
        'scientificName,vernacularName,redListCategory,frequency,Notes',
        'Arctia caja,Garden Tiger,LC,1,"on a wall',
        'by the gate"',
        ',Nameless,LC,1,',
        'Saturnia pavonia,Emperor,XX,1,',
        'Saturnia pavonia,Emperor,LC,often,',
        'Saturnia pavonia,Emperor,LC',
        'Arctia caja,Tiger,LC,1,',
        '"Saturnia\npavonia",Emperor,LC,1,',
        'Saturnia pyri,Great Peacock,LC,2,',
      ].join('\n'),
    );
    expect(ran.code).toBe(1);
    expect(ran.complaints).toEqual(
      [
        /line 4: scientificName: there is no scientific name/,
        /line 5: redListCategory: "XX" is not known: write one of EX EW CR/,
        /line 6: frequency: "often" is not known: write 1 \(common\)/,
        /line 7: 3 cells, where the first line has 5/,
        /line 8: Arctia caja stands in the list twice, first in line 2/,
        /line 9: scientificName: .*line end/,
      ].map((pattern) => expect.stringMatching(pattern)),
    );
    expect(ran.answers).toEqual([
      'Added own-moths: 2 taxa, 6 rows left out. It is in use from the next start on.',
    ]);
  });

  test('takes what its columns mean', async () => {
    const table = 'Latin;Name;Notes\nArctia caja L.;Garden Tiger;"a\nb"';
    const columns = 'Latin=scientificName,Name=vernacularName';
    expect(await adding(table, '--columns', columns)).toMatchObject({ code: 0, complaints: [] });
    expect((await ownList('own-moths')).taxa[0]).toMatchObject({
      scientificName: 'Arctia caja',
      vernacularName: 'Garden Tiger',
    });
  });

  test.each<[string, string, string[], number, RegExp]>([
    ['an empty file', '', [], 1, /holds no row that could be taken; nothing was added/],
    ['a header alone', 'scientificName', [], 1, /holds no row/],
    ['no scientific names', 'Latin\nArctia caja', [], 1, /no column scientificName.* --columns/],
    ['a quote left open', `${TABLE}\n"Arctia`, [], 1, /not a table: .*line 4/],
    ['columns of no form', TABLE, ['--columns', 'Latin'], 2, /--columns: write pairs/],
    ['a column it has not', TABLE, ['--columns', 'Latin=scientificName'], 1, /no column Latin/],
    ['a column of no list', TABLE, ['--columns', 'vernacularName=x'], 1, /x is no column/],
    ['a name without letters', TABLE, ['--name', '🦋'], 2, /gives no name/],
    ['a name of dots', TABLE, ['--name', '../..'], 2, /gives no name/],
  ])('with %s writes nothing', async (_, table, args, code, complaint) => {
    const ran = await adding(table, ...args);
    expect(ran).toMatchObject({ code, answers: [] });
    expect(ran.complaints.join(' ')).toMatch(complaint);
    expect(await readdir(notebook)).toEqual(['moths.csv']);
  });

  test.each([
    ['gone.csv', 1, "gone.csv can't be read: it is not there."],
    ['.', 1, ".can't"],
  ])('of %s, which can not be read, says so', async (file, code, words) => {
    const ran = await lists('add', file, '--name', 'x');
    expect(ran).toMatchObject({ code, answers: [] });
    expect(ran.complaints).toHaveLength(1);
    expect(ran.complaints[0]?.replace('. can', '.can')).toContain(words);
    expect(await ownFiles()).toEqual([]);
  });

  test('twice replaces the list, and a refused table leaves the old one', async () => {
    await adding(TABLE);
    expect((await adding('scientificName\nSaturnia pyri')).answers).toEqual([
      'Replaced own-moths: 1 taxa. It is in use from the next start on.',
    ]);
    expect((await adding('Latin\nArctia caja')).code).toBe(1);
    expect(await ownFiles()).toEqual(['own-moths.json']);
    expect((await ownList('own-moths')).taxa.map((taxon) => taxon.scientificName)).toEqual([
      'Saturnia pyri',
    ]);
  });

  // Names that Windows keeps for devices: Microsoft, Naming Files, Paths, and Namespaces.
  test.each([
    ['../../x', 'own-x'],
    ['..\\..\\x', 'own-x'],
    ['/etc/passwd', 'own-etc-passwd'],
    ['CON', 'own-con'],
    ['nul.txt', 'own-nul-txt'],
    ['🦋 moths 🦋', 'own-moths'],
    ['own-moths', 'own-moths'],
    ['Øyas fugler', 'own-øyas-fugler'],
    ['Été', 'own-ete'],
    ['ночные бабочки', 'own-ночные-бабочки'],
    ['蛾', 'own-蛾'],
    ['a:b*c?"<>|d.', 'own-a-b-c-d'],
    ['new\nline\u001b[31m', 'own-new-line-31m'],
    ['𠀀'.repeat(200), `own-${'𠀀'.repeat(50)}`],
    [`${'a'.repeat(49)} ${'b'.repeat(9)}`, `own-${'a'.repeat(49)}`],
  ])('by the name %j is called %s', async (given, name) => {
    const ran = await adding(TABLE, '--name', given);
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    expect(await ownFiles()).toEqual([`${name}.json`]);
    expect((await readdir(notebook)).sort()).toEqual(['lists', 'moths.csv']);
    expect((await ownList(name)).name).toBe(name);
  });

  test('says so where the folder of lists is a file, and a start goes on without it', async () => {
    await writeFile(join(notebook, 'lists'), 'mine');
    const ran = await adding(TABLE);
    expect(ran).toMatchObject({ code: 3, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining("own-moths.json can't be written: ")]);
    const logged = await field('mallard 3');
    expect(told(await onlyVisit(notebook))).toEqual(['Mallard 3']);
    expect(logged.complaints).toEqual([expect.stringContaining("lists can't be read: ")]);
    expect(await readFile(join(notebook, 'lists'), 'utf8')).toBe('mine');
  });

  test('of eleven thousand rows is found from by the next start', async () => {
    const species = birds.taxa.filter((taxon) => taxon.taxonRank === 'species');
    const many = manyTaxa(species, 11_000 + species.length).slice(species.length);
    const rows = many.map((taxon) => `${taxon.scientificName},"${taxon.vernacularName}"`);
    const ran = await adding(['scientificName,vernacularName', ...rows].join('\n'));
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    const latin = many.filter((_, at) => at % 2500 === 1).map((taxon) => taxon.scientificName);
    const logged = await field(...latin.map((name) => `2 ${name}`));
    expect(logged).toMatchObject({ code: 0, complaints: [] });
    const { entries } = await onlyVisit(notebook);
    expect(entries.map((entry) => entry.taxon?.scientificName)).toEqual(latin);
    expect(new Set(entries.map((entry) => entry.taxon?.list))).toEqual(new Set(['own-moths']));
  });

  test('of a shipped species again keeps its sensitivity and its category', async () => {
    await adding(
      'scientificName,vernacularName,redListCategory,establishmentMeans\nAquila chrysaetos,Big Eagle,LC,introduced\nAythya ferina,Red-headed Duck,LC,introduced',
    );
    await field('big eagle 1', 'red-headed duck 4');
    const { entries } = await onlyVisit(notebook);
    expect(entries.map(({ taxon }) => [taxon?.vernacularName, taxon?.sensitivity])).toEqual([
      ['Big Eagle', 'high'],
      ['Red-headed Duck', 'medium'],
    ]);
  });
});
