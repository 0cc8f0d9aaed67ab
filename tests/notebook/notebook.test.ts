import { mkdir, readFile, stat, symlink, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  notebookFolder,
  openNotebook,
  readVisits,
  visitFiles,
} from '../../src/notebook/notebook.ts';
import { visitText } from '../../src/notebook/visit-file.ts';
import { freshFolder, logging, visitOf } from './visits.ts';

describe('the folder of a notebook', () => {
  test('is the option, else the environment, else the place for such data', () => {
    const environment = { TUSSOCK_NOTEBOOK: '/from/environment' };
    expect(notebookFolder('named', environment)).toBe(resolve('named'));
    expect(notebookFolder(undefined, environment)).toBe('/from/environment');
    expect(notebookFolder(undefined, {})).toMatch(/tussock/);
    expect(notebookFolder(undefined, { TUSSOCK_NOTEBOOK: '' })).toBe(notebookFolder(undefined, {}));
  });

  test('is made where it is missing, with what lies on the way', async () => {
    const folder = join(freshFolder(), 'field', 'notebook');
    expect(await openNotebook(folder, true)).toBeNull();
    expect(await visitFiles(folder)).toEqual([]);
  });

  test.each([
    ['is a file', 'file'],
    ['lies below a file', 'file/notebook'],
    ['has a file in the place of its visits', 'filled'],
    ['is a link to nothing', 'dangling'],
    ['has a name that no disk takes', 'x'.repeat(300)],
  ])('that %s gives a sentence with the way out', async (_, name) => {
    const folder = freshFolder();
    await writeFile(join(folder, 'file'), 'text');
    await mkdir(join(folder, 'filled'));
    await writeFile(join(folder, 'filled', 'visits'), 'text');
    await symlink(join(folder, 'nothing', 'here'), join(folder, 'dangling'));
    const problem = await openNotebook(join(folder, name), true);
    expect(problem).toContain(`The notebook ${join(folder, name)} can't be used: `);
    expect(problem).toContain('Name another folder with --notebook DIR or TUSSOCK_NOTEBOOK');
    expect(await readFile(join(folder, 'file'), 'utf8')).toBe('text');
  });
});

describe('the visit files of a notebook', () => {
  test('a folder that is not there is not made where nothing is to be written', async () => {
    const missing = join(freshFolder(), 'missing');
    expect(await openNotebook(missing, false)).toContain(`There is no notebook ${missing} yet.`);
    await expect(stat(missing)).rejects.toThrow('ENOENT');
  });

  test('come by year and date, and what is none of them is passed over', async () => {
    const folder = freshFolder();
    const visits = join(folder, 'visits');
    const put = async (...path: string[]) => {
      await mkdir(join(visits, ...path.slice(0, -1)), { recursive: true });
      await writeFile(join(visits, ...path), '{}');
    };
    await put('2026', '2026-02-01-reed-lane.json');
    await put('2025', '2025-12-31-sallow-mere.json');
    await put('2026', '2026-01-30-visit.json');
    await put('2026', '.2026-01-30-visit.json.0badcafe.tmp');
    await put('2026', '2026-01-30-visit.json.bak');
    await put('2026', 'notes.json');
    await put('drafts', '2026-01-30-visit.json');
    await put('2026-03-01-loose.json');
    expect(await visitFiles(folder)).toEqual([
      join(visits, '2025', '2025-12-31-sallow-mere.json'),
      join(visits, '2026', '2026-01-30-visit.json'),
      join(visits, '2026', '2026-02-01-reed-lane.json'),
    ]);
  });

  test('that are broken are told one by one, and the good ones among them are read', async () => {
    const folder = freshFolder();
    const [good, cut, other] = ['good', 'cut', 'other'].map((name) => join(folder, `${name}.json`));
    const cutText = visitText(visitOf({ id: 2 })).slice(0, -40);
    await writeFile(good ?? '', visitText(visitOf()));
    await writeFile(cut ?? '', cutText);
    await writeFile(other ?? '', '[1, 2]');
    const read = await readVisits([cut ?? '', good ?? '', other ?? '', join(folder, 'gone.json')]);
    expect(read.visits.map(({ path }) => path)).toEqual([good]);
    expect(read.problems.map(({ path }) => path)).toEqual([cut, other, join(folder, 'gone.json')]);
    for (const { path, words } of read.problems) {
      expect(words).toContain(`${path} can't be read (`);
      expect(words).toMatch(/\)\. It is left as it is\.$/);
    }
    expect(await readFile(cut ?? '', 'utf8')).toBe(cutText);
  });

  test.each(['longer first', 'shorter first'])(
    'that hold one visit twice give the one with more changes, %s',
    async (order) => {
      const folder = freshFolder();
      const [short, long] = [join(folder, 'short.json'), join(folder, 'long.json')];
      await writeFile(short, visitText(visitOf()));
      await writeFile(long, visitText(logging(visitOf(), 'owl')));
      const paths = order === 'longer first' ? [long, short] : [short, long];
      const { visits, problems } = await readVisits(paths);
      expect(visits.map(({ path }) => path)).toEqual([long]);
      expect(problems).toEqual([]);
    },
  );
});
