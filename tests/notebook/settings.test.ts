import { mkdir, readdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { changeSettings, faultsTold, readSettings } from '../../src/notebook/settings.ts';
import { KEYS, SETTINGS, type Values } from '../../src/notebook/settings-keys.ts';
import { freshFolder } from './visits.ts';

let notebook: string;
let path: string;
beforeEach(() => {
  notebook = freshFolder();
  path = join(notebook, 'settings.yaml');
});

const USUAL = Object.fromEntries(KEYS.map((key) => [key, SETTINGS[key].usual]));
const OTHER: Partial<Values> = {
  lists: ['own-moths'],
  'group-sizes': [1, 5, 10],
  observers: { number: 2, names: [] },
  'units.wind': 'kn',
};
const OPTION: Partial<Values> = {
  lists: null,
  'group-sizes': [2, 4],
  observers: { number: 9, names: [] },
  'units.wind': 'mph',
};

describe('the settings in force', () => {
  test('without a file are the usual ones, and none is made', async () => {
    const read = await readSettings(notebook);
    expect(read).toMatchObject({ values: USUAL, faults: [], there: false, whole: true });
    expect(new Set(Object.values(read.origins).map(({ from }) => from))).toEqual(
      new Set(['usual']),
    );
    expect(await readdir(notebook)).toEqual([]);
  });

  test('are an option, else the line of the file, else the usual', async () => {
    const keys = fc.subarray(Object.keys(OTHER) as (keyof typeof OTHER)[]);
    const only = (all: Partial<Values>, some: readonly (keyof typeof OTHER)[]) =>
      Object.fromEntries(some.map((key) => [key, all[key]])) as Partial<Values>;
    await fc.assert(
      fc.asyncProperty(keys, keys, async (inFile, asked) => {
        await writeFile(path, '# mine\n');
        await changeSettings(notebook, only(OTHER, inFile));
        const read = await readSettings(notebook, only(OPTION, asked));
        expect(read.values).toEqual({ ...USUAL, ...only(OTHER, inFile), ...only(OPTION, asked) });
        const lines = (await readFile(path, 'utf8')).split('\n');
        for (const key of KEYS) {
          const origin = read.origins[key];
          const from = (asked as string[]).includes(key)
            ? 'option'
            : (inFile as string[]).includes(key)
              ? 'file'
              : 'usual';
          expect(origin.from).toBe(from);
          if (origin.from === 'file') expect(lines[origin.line - 1]).toMatch(`${key}: `);
        }
      }),
      { numRuns: 50 },
    );
  });

  test('keep what is right of a file beside what is wrong, and tell the rest', async () => {
    await writeFile(path, '\ufeff# mine\ngroup-sizes: [5, 2]\nunits.wind: kn\n');
    const read = await readSettings(notebook);
    expect(read.values).toEqual({ ...USUAL, 'units.wind': 'kn' });
    expect(faultsTold(read)).toEqual([
      `${path} line 2: group-sizes "[5,2]" do not rise: write each size once, the smallest first, such as [1, 5, 10]. The usual value is used.`,
    ]);
  });

  test.each([
    ['half a file', 'units.wind: "kn'],
    ['no settings', '[1, 2]'],
    ['bytes of something else', '\u0000\u0001\ufffd'],
  ])('are the usual ones where there is %s', async (_, text) => {
    await writeFile(path, text);
    const read = await readSettings(notebook);
    expect(read).toMatchObject({ values: USUAL, whole: false });
    expect(faultsTold(read)).toEqual([
      expect.stringMatching(/settings\.yaml line \d+: .+ The usual settings are used; mend it/),
    ]);
  });

  test('are the usual ones where a folder stands in the way', async () => {
    await mkdir(path);
    const read = await readSettings(notebook);
    expect(read).toMatchObject({ values: USUAL, whole: false });
    expect(faultsTold(read)[0]).toContain("can't be read: it is a folder. The usual settings");
  });
});

describe('a change of settings', () => {
  test('makes a file that tells of every setting', async () => {
    await changeSettings(notebook, { 'units.wind': 'kn' });
    const text = await readFile(path, 'utf8');
    for (const key of KEYS) expect(text).toContain(`\n# ${key}: `);
    expect(text.split('\n').filter((line) => /^[^#]/.test(line))).toEqual(['units.wind: kn']);
    expect(await readdir(notebook)).toEqual(['settings.yaml']);
  });

  test('goes into the file that a link leads to', async () => {
    await writeFile(join(notebook, 'elsewhere.yaml'), 'mine: 7 # of mine\n');
    await symlink(join(notebook, 'elsewhere.yaml'), path);
    await changeSettings(notebook, { observers: { number: 2, names: [] } });
    expect(await readFile(join(notebook, 'elsewhere.yaml'), 'utf8')).toBe(
      'mine: 7 # of mine\nobservers: 2\n',
    );
  });

  test('that changes nothing does not touch the file', async () => {
    await writeFile(path, 'units.wind:   kn\n\n\n# mine');
    await changeSettings(notebook, {});
    expect(await readFile(path, 'utf8')).toBe('units.wind:   kn\n\n\n# mine');
  });
});
