import { mkdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { freshFolder } from '../notebook/visits.ts';
import { fileNames, onlyVisit, run, told } from './run.ts';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

function field(input: string, ...args: string[]) {
  return run(['field', '--stdin', ...args], { notebook, input });
}

describe('field --stdin', () => {
  test('answers each line in order and logs exactly those', async () => {
    const { code, answers, complaints } = await field(
      'tufted d 12\nMallard 3m 2f\n2 grey heron: by the sluice\nkingfisher?\ntufted d 0\n',
    );
    expect({ code, complaints }).toEqual({ code: 0, complaints: [] });
    expect(
      answers.map((line) =>
        line
          .replace(/\d\d:\d\d/, 'time')
          .split('  ')
          .slice(0, 4),
      ),
    ).toEqual([
      ['1', 'time', 'Tufted Duck', '12'],
      ['2', 'time', 'Mallard', '5'],
      ['3', 'time', 'Grey Heron', '2'],
      ['4', 'time', 'Kingfisher?', '1'],
      ['5', 'time', 'Tufted Duck', 'none'],
    ]);
    const visit = await onlyVisit(notebook);
    expect(told(visit)).toEqual([
      'Tufted Duck 12',
      'Mallard 5 3m 2f',
      'Grey Heron 2 (by the sluice)',
      'Kingfisher 1',
      'Tufted Duck 0',
    ]);
    expect(visit.entries.map((entry) => entry.number)).toEqual([1, 2, 3, 4, 5]);
    expect(visit.changes).toHaveLength(5);
  });

  test('keeps a line that it can not take as unnamed, and tells its number and the reason', async () => {
    const { code, answers, complaints } = await field(
      [
        'zzqxv 3',
        '',
        'gull',
        'tufted d 4',
        '5 tufted d 12: asleep',
        'tufted d 5 9m',
        '12',
        ': small',
      ].join('\n'),
    );
    expect(code).toBe(1);
    expect(answers).toHaveLength(7);
    expect(complaints).toEqual([
      'tussock: line 1: "zzqxv" is no name in the lists. Kept unnamed as entry 1.',
      expect.stringMatching(
        /line 3: "gull" fits .+, .+, .+ and more: write more of the name\. Kept unnamed as entry 2\.$/,
      ),
      'tussock: line 5: Two counts, 5 and 12: keep one. Kept unnamed as entry 4.',
      'tussock: line 6: The parts add up to 9, more than the count of 5. Kept unnamed as entry 5.',
      'tussock: line 7: There is a count and no name. Kept unnamed as entry 6.',
      'tussock: line 8: There is a description and no name. Kept unnamed as entry 7.',
    ]);
    const visit = await onlyVisit(notebook);
    expect(told(visit)).toEqual([
      '"zzqxv" 3',
      '"gull" present',
      'Tufted Duck 4',
      '"5 tufted d 12: asleep" present',
      '"tufted d 5 9m" present',
      '"" 12',
      '"" present (small)',
    ]);
    expect(visit.entries.map((entry) => entry.typed)[3]).toBe('5 tufted d 12: asleep');
  });

  test('takes lines of any system: CRLF, a byte order mark, empty ones, a last one without an end', async () => {
    const { code, answers } = await field('\ufefftufted d 12\r\n\r\n   \r\nmallard 3\r\n\r\nwren');
    expect({ code, answers: answers.length }).toEqual({ code: 0, answers: 3 });
    expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12', 'Mallard 3', 'Wren 1']);
  });

  test('makes no file for no lines', async () => {
    expect(await field('\n\n')).toMatchObject({ code: 0, answers: [], complaints: [] });
    expect(await fileNames(notebook)).toEqual([]);
  });

  test('goes on in the open visit, and counts on', async () => {
    await field('tufted d 12\n');
    const { answers } = await field('mallard\n');
    expect(answers[0]).toMatch(/^2 {2}/);
    expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12', 'Mallard 1']);
  });

  test('takes the place with its coordinates and goes by its clock', async () => {
    const { code } = await field('tufted d\n', '--place', 'Sallow Mere 51.12N, 2.85W');
    expect(code).toBe(0);
    expect((await fileNames(notebook))[0]).toMatch(/^\d{4}\/[\d-]{10}-sallow-mere\.json$/);
    expect((await onlyVisit(notebook)).place).toEqual({
      name: 'Sallow Mere',
      position: { latitude: 51.12, longitude: -2.85 },
      verbatimCoordinates: '51.12N, 2.85W',
      uncertainty: null,
      habitat: null,
      protection: null,
      timeZone: 'Europe/London',
    });
  });

  test('gives coordinates to the open visit that had none', async () => {
    await field('tufted d\n', '--place', 'Sallow Mere');
    await field('wren\n', '--place', 'sallow mere 51.12, -2.85');
    const visit = await onlyVisit(notebook);
    expect(visit.place).toMatchObject({ name: 'Sallow Mere', position: { latitude: 51.12 } });
    expect(visit.changes.map((change) => change.part)).toEqual(['entry', 'place', 'entry']);
  });

  test.each([
    ['Sallow Mere 91.2, 2.85', 'Latitude 91.2 is past 90'],
    ['Sallow Mere 51.2, 182.85', 'Longitude 182.85 is past 180'],
    ['51.2, 2.85', 'Put a name before 51.2, 2.85'],
    ['', 'A place needs a name'],
  ])('refuses the place %j in a sentence and logs nothing', async (place, sentence) => {
    const ran = await field('tufted d 12\n', '--place', place);
    expect(ran).toMatchObject({ code: 2, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining(`tussock: --place: ${sentence}`)]);
    expect(await fileNames(notebook)).toEqual([]);
  });

  test('tells of a broken file of today, leaves it as it is and logs into another', async () => {
    const today = new Date().toISOString().slice(0, 10);
    const broken = join(notebook, 'visits', today.slice(0, 4), `${today}-visit.json`);
    await mkdir(join(broken, '..'), { recursive: true });
    const bytes = Buffer.from('{"format": "tussock-visit", "entries": [\u001b[31m\xff', 'latin1');
    await writeFile(broken, bytes);
    const { code, complaints } = await field('tufted d 12\n');
    expect(code).toBe(0);
    expect(complaints).toEqual([expect.stringContaining(`${broken} can't be read (`)]);
    expect(complaints.join()).not.toContain('\u001b');
    expect(await readFile(broken)).toEqual(bytes);
    expect(await fileNames(notebook)).toHaveLength(2);
  });

  test('shows control characters of a line as dots, and keeps them in the file', async () => {
    const { out, complaints } = await field('\u001b]0;owned\u0007bird\n');
    expect(out).toContain('·]0;owned·bird');
    expect(out + complaints.join()).not.toContain('\u001b');
    expect((await onlyVisit(notebook)).entries[0]?.typed).toBe('\u001b]0;owned\u0007bird');
  });

  test('says which line could not be saved and ends with 3', async () => {
    await mkdir(join(notebook, 'visits'));
    const year = new Date().getUTCFullYear();
    await symlink(join(notebook, 'nothing', 'there'), join(notebook, 'visits', String(year)));
    const ran = await field('\ntufted d 12\nwren\n');
    expect(ran).toMatchObject({ code: 3, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining('line 2 could not be saved: ')]);
  });

  test('logs every line although nobody reads the answers any more', async () => {
    const input = Array.from({ length: 20 }, (_, at) => (at % 2 ? 'zzqxv' : `tufted d ${at}`)).join(
      '\n',
    );
    const ran = await run(['field', '--stdin'], { notebook, input, hangUp: true });
    expect(ran.code).toBe(1);
    expect((await onlyVisit(notebook)).entries).toHaveLength(20);
  });

  test('reads lines by itself where the terminal can show no screen', async () => {
    const ran = await run([], { notebook, input: 'tufted d 12\n', environment: { TERM: 'dumb' } });
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    expect(ran.out).not.toContain('\u001b');
    expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12']);
  });

  test('logs a walk that is typed in later at its own times, and goes on with it', async () => {
    const lines = '@2026-03-02 07:55\ntufted duck 12\n@08:10\nwren\n';
    const { code } = await field(lines, '--when', '2026-03-02 07:40', '--place', 'Sallow Mere');
    expect(code).toBe(0);
    await field('@2026-03-02 08:20\nrobin\n', '--when', '2026-03-02 07:40');
    const visit = await onlyVisit(notebook);
    expect(visit.start).toBe('2026-03-02T07:40:00+00:00');
    expect(visit.entries.map(({ time }) => time)).toEqual([
      '2026-03-02T07:55:00+00:00',
      '2026-03-02T08:10:00+00:00',
      '2026-03-02T08:20:00+00:00',
    ]);
    expect(visit.effort.pauses).toEqual([]);
  });

  test.each(['25:00', 'tomorrow 07:40', '2026-02-30 07:00'])(
    'refuses --when "%s" in a sentence',
    async (when) => {
      const ran = await field('wren\n', '--when', when);
      expect(ran).toMatchObject({ code: 2, answers: [] });
      expect(await fileNames(notebook)).toEqual([]);
    },
  );
});
