import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { beforeEach, describe, expect, test } from 'vitest';
import { visitText } from '../../src/notebook/visit-file.ts';
import { freshFolder, visitOf } from '../notebook/visits.ts';
import { keep } from './kept.ts';
import { type Ran, run } from './run.ts';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

function exported(...args: string[]) {
  return run(['export', ...args], { notebook });
}

/** The words of each row, as a spreadsheet would read them. */
function rows({ out }: Ran): string[] {
  const table: Record<string, string>[] = parse(out, { columns: true, record_delimiter: '\r\n' });
  return table.map((row) => row.verbatimIdentification ?? '');
}

const MORNING = '2026-11-14T08:00:00+00:00';
const EVENING = '2026-11-14T17:30:00+00:00';

describe('export', () => {
  test('prints the rows of a visit file and nothing else', async () => {
    const path = await keep(notebook, visitOf({ logged: ['brown bird', 'grey bird'] }));
    const ran = await exported(path);
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    expect(rows(ran)).toEqual(['brown bird', 'grey bird']);
  });

  test.each([
    '2026-11-14-sallow-mere',
    '2026-11-14-sallow-mere.json',
    'visits/2026/2026-11-14-sallow-mere.json',
  ])('finds %s', async (name) => {
    await keep(notebook, visitOf());
    const ran = await exported(name);
    expect(ran.code).toBe(0);
    expect(rows(ran)).toEqual(['brown bird']);
  });

  test('--last takes the visit of the last day', async () => {
    await keep(notebook, visitOf({ id: 2, start: '2025-12-31T08:00:00+00:00', logged: ['older'] }));
    await keep(notebook, visitOf({ id: 3, start: '2026-01-01T08:00:00+00:00', logged: ['newer'] }));
    expect(rows(await exported('--last'))).toEqual(['newer']);
  });

  test('--last takes the later of two visits of a day, whatever their places are called', async () => {
    await keep(
      notebook,
      visitOf({ id: 2, start: MORNING, place: 'Withy Lane', logged: ['morning'] }),
    );
    await keep(
      notebook,
      visitOf({ id: 3, start: EVENING, place: 'Alder Carr', logged: ['evening'] }),
    );
    expect(rows(await exported('--last'))).toEqual(['evening']);
  });

  test('--last takes the last of many visits to one place on one day', async () => {
    for (let copy = 1; copy <= 11; copy += 1) {
      const start = `2026-11-14T${String(6 + copy).padStart(2, '0')}:00:00+00:00`;
      await keep(notebook, visitOf({ id: copy, start, logged: [`visit ${copy}`] }), copy);
    }
    expect(rows(await exported('--last'))).toEqual(['visit 11']);
  });

  test('--last gives out no earlier visit for one of that day that can not be read', async () => {
    await keep(notebook, visitOf({ id: 2, start: MORNING }));
    const broken = join(notebook, 'visits', '2026', '2026-11-14-zander-pool.json');
    await writeFile(broken, '{"format":');
    const ran = await exported('--last');
    expect(ran).toMatchObject({ code: 1, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining(`${broken} can't be read (`)]);
  });

  test('--last is not held up by an older file that can not be read, but tells of it', async () => {
    await keep(notebook, visitOf({ id: 2, start: MORNING }));
    await writeFile(join(notebook, 'visits', '2026', '2026-01-01-visit.json'), '');
    const ran = await exported('--last');
    expect(ran.code).toBe(0);
    expect(rows(ran)).toEqual(['brown bird']);
    expect(ran.complaints).toEqual([expect.stringContaining('2026-01-01-visit.json')]);
  });

  test.each<[string[], string]>([
    [[], 'Say which visits: tussock export FILE, or --last, '],
    [['--last', 'some-file'], 'Choose the visits in one way: '],
  ])('with %j asks which visits', async (args, words) => {
    const ran = await exported(...args);
    expect(ran).toMatchObject({ code: 2, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining(words)]);
  });

  test.each([[['--last']], [['2026-01-01-nowhere']], [['none.json']]])(
    'with %j and no such visit says so',
    async (args) => {
      const ran = await exported(...args);
      expect(ran).toMatchObject({ code: 1, answers: [] });
      expect(ran.complaints).toEqual([expect.stringMatching(/^tussock: There is no visit /)]);
    },
  );

  test.each([
    ['cut off', visitText(visitOf()).slice(0, 300), 'not whole JSON'],
    ['empty', '', 'the file is empty'],
    ['of another kind', '{"rows": []}', 'it is not a visit'],
    ['of a newer program', '{"formatVersion": 99}', 'a newer Tussock'],
  ])('of a file that is %s says why and leaves it', async (_, text, why) => {
    const path = join(notebook, 'walk.json');
    await writeFile(path, text);
    const ran = await exported(path);
    expect(ran).toMatchObject({ code: 1, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining(why)]);
    expect(await readFile(path, 'utf8')).toBe(text);
  });

  test('withholds the place of a threatened species and says so; --exact gives it', async () => {
    const place = 'Sallow Mere 51.12345, -2.85432';
    const input = 'common pochard 3\n';
    await run(['field', '--stdin', '--place', place], { notebook, input });
    const ran = await exported('--last');
    expect(ran.out).not.toMatch(/51\.12345|Sallow Mere/);
    expect(ran.complaints).toEqual([expect.stringContaining('--exact writes them')]);
    const exact = await exported('--last', '--exact');
    expect(exact.out).toMatch(/Sallow Mere,,51\.12345,-2\.85432/);
    expect(exact.complaints).toEqual([expect.stringContaining('Exact places: for your own use')]);
  });
});
