import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { beforeEach, describe, expect, test } from 'vitest';
import { freshFolder } from '../notebook/visits.ts';
import { fullVisit, hiddenVisit } from '../outputs/full.ts';
import { describedTables } from '../outputs/meta-structure.ts';
import { idOf, placeOf } from '../visit/made.ts';
import { keep, ofShippedLists, unzipped } from './kept.ts';
import { type Ran, run } from './run.ts';

let notebook: string;
beforeEach(async () => {
  notebook = freshFolder();
  await keep(notebook, fullVisit());
  await keep(notebook, ofShippedLists(hiddenVisit()));
  const lane = placeOf({ name: 'Withy Lane', protection: null });
  await keep(notebook, {
    ...fullVisit(),
    id: idOf(5),
    start: '2025-05-01T06:00:00+01:00',
    place: lane,
  });
});

const exported = (...args: string[]) => run(['export', ...args], { notebook });

function dates({ out }: Ran): string[] {
  const rows: Record<string, string>[] = parse(out, { columns: true, record_delimiter: '\r\n' });
  return [...new Set(rows.map((row) => (row.visitStart ?? '').slice(0, 10)))];
}

describe('export of many visits', () => {
  test.each<[string[], string[]]>([
    [['--all'], ['2025-05-01', '2026-11-14', '2026-11-15']],
    [
      ['--year', '2026'],
      ['2026-11-14', '2026-11-15'],
    ],
    [['--from', '2026-11-15'], ['2026-11-15']],
    [
      ['--to', '2026-11-14'],
      ['2025-05-01', '2026-11-14'],
    ],
    [['--from', '2025-05-01', '--to', '2025-05-01'], ['2025-05-01']],
    [['--place', 'withy  lane'], ['2025-05-01']],
    [['--year', '2026', '--group', 'Mammals'], ['2026-11-15']],
  ])('with %j takes those that fit, in the order of time', async (args, want) => {
    const ran = await exported(...args);
    expect(ran.code).toBe(0);
    expect(dates(ran)).toEqual(want);
  });

  test.each<[string[], RegExp]>([
    [['--year', '26'], /"26" is no year/],
    [['--from', '2026-13-01'], /"2026-13-01" is no date/],
    [['--from', '2026-02-02', '--to', '2026-01-01'], /--from 2026-02-02 is after --to 2026-01-01/],
    [['--year', '2026', '--from', '2026-01-01'], /--year, or --from and --to, not both/],
    [['--all', '--last'], /Choose the visits in one way/],
    [['--all', '--table', 'rows'], /no table "rows": choose entries, species, matrix/],
    [['--all', '--geojson', '--gpx'], /Choose one form/],
    [['--all', '--absences'], /--absences goes with --darwin-core or --archive/],
    [['--all', '--decimal', ';'], /no decimal sign/],
    [['--all', '--separator', 'x'], /can't separate cells/],
    [['--all', '--darwin-core', '--separator', ';'], /set by their standards/],
    [['--all', '--group', 'wombats'], /No list is of the group "wombats": choose birds, /],
    [['--all', '--archive', 'x.zip', '--licence', 'MIT'], /choose CC0-1.0, CC-BY-4.0/],
    [['--all', '--title', 'x'], /--title and --licence go with --archive/],
  ])('with %j says what to mend', async (args, words) => {
    const ran = await exported(...args);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.complaints).toEqual([expect.stringMatching(words)]);
  });

  test('of none says so and writes nothing', async () => {
    const ran = await exported('--year', '1999', '--geojson');
    expect(ran).toMatchObject({ code: 1, out: '' });
    expect(ran.complaints).toEqual([expect.stringMatching(/There is no visit in .* that fits\./)]);
  });

  test('tells of a file that can not be read, once, and of entries that have no name', async () => {
    await writeFile(join(notebook, 'visits', '2026', '2026-01-01-visit.json'), '');
    const ran = await exported('--all', '--darwin-core', '--absences');
    expect(ran.code).toBe(0);
    expect(ran.complaints).toHaveLength(3);
    expect(ran.complaints[0]).toContain('2026-01-01-visit.json');
    expect(ran.complaints[2]).toContain('3 entries without a name are left out');
  });

  test('takes a copy that was left under the name of another day for what it is', async () => {
    const copy = fullVisit();
    const text = `${JSON.stringify(copy)}\n`;
    await writeFile(join(notebook, 'visits', '2026', '2026-12-24-copy.json'), text);
    expect(dates(await exported('--all'))).toEqual(['2025-05-01', '2026-11-14', '2026-11-15']);
  });

  test('tells of an entry that two visits of a day hold', async () => {
    await keep(notebook, { ...fullVisit(), id: idOf(77) }, 2);
    const { complaints } = await exported('--year', '2026');
    expect(complaints[0]).toContain('hold the same entries, which are given out twice');
  });

  test.each([[], ['--table', 'species'], ['--table', 'matrix'], ['--darwin-core']])(
    'tells the columns of %j with a sentence each, and needs no notebook for it',
    async (...form) => {
      const ran = await run(['export', ...form, '--columns'], { notebook: freshFolder() });
      expect(ran).toMatchObject({ code: 0, complaints: [] });
      for (const line of ran.answers) expect(line).toMatch(/^[\w, ]+: .+\.$/);
    },
  );

  test('stops where the reader of a pipe hangs up', async () => {
    const ran = await run(['export', '--all'], { notebook, hangUp: true });
    expect(ran.code).toBe(0);
  });
});

test('absences are told of complete visits for what other visits have', async () => {
  await keep(notebook, {
    ...ofShippedLists(fullVisit()),
    id: idOf(6),
    start: '2026-11-17T08:00:00+00:00',
    entries: [],
  });
  const { out } = await exported('--from', '2026-11-15', '--darwin-core', '--absences');
  const rows: Record<string, string>[] = parse(out, { columns: true, record_delimiter: '\r\n' });
  const absent = rows.filter((row) => row.occurrenceID?.includes('#absent-'));
  expect(absent.map((row) => [row.scientificName, row.occurrenceStatus, row.locality])).toEqual([
    ['Anas platyrhynchos', 'absent', 'Sallow Mere'],
    ['Anas crecca', 'absent', 'Sallow Mere'],
  ]);
  const places = rows.map((row) => row.decimalLatitude);
  expect(new Set(places)).toEqual(new Set(['51.1', '51.12345']));
});

describe('export of an archive', () => {
  const args = (path: string) => ['--all', '--archive', path, '--by', 'Ashwick Levels naturalists'];

  test('can be read back whole, with who, when, where about and the licence', async () => {
    const path = join(notebook, 'log.zip');
    const ran = await exported(...args(path), '--licence', 'cc-by-4.0', '--title', 'A <field> log');
    expect(ran).toMatchObject({ code: 0, out: '' });
    const files = await unzipped(path);
    const tables = describedTables(files['meta.xml'] ?? '');
    expect(Object.keys(files).sort()).toEqual(
      ['meta.xml', 'eml.xml', ...tables.map(({ file }) => file)].sort(),
    );
    for (const { file, terms } of tables) {
      const rows: string[][] = parse(files[file] ?? '', { record_delimiter: '\r\n' });
      for (const row of rows) expect(row).toHaveLength(terms.length);
    }
    const occurrences: string[][] = parse(files['occurrence.csv'] ?? '');
    expect(occurrences).toHaveLength(1 + 6 + 7 + 6);
    expect(files['eml.xml']).toContain('<title>A &lt;field&gt; log</title>');
    expect(files['eml.xml']).toContain('<organizationName>Ashwick Levels naturalists<');
    expect(files['eml.xml']).toContain('creativecommons.org/licenses/by/4.0/');
    expect(files['eml.xml']).toContain('<westBoundingCoordinate>-3<');
    expect(files['eml.xml']).toContain('<calendarDate>2025-05-01<');
  });

  test('never writes over a file, and leaves nothing half made', async () => {
    const path = join(notebook, 'log.zip');
    await writeFile(path, 'mine');
    const ran = await exported(...args(path));
    expect(ran.code).toBe(1);
    expect(ran.complaints).toEqual([expect.stringContaining('is there already')]);
    const nowhere = await exported(...args(join(notebook, 'none', 'log.zip')));
    expect(nowhere.code).toBe(1);
    expect(nowhere.complaints).toEqual([expect.stringContaining("can't be written")]);
  });
});
