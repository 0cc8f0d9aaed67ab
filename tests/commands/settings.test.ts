import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { KEYS } from '../../src/notebook/settings-keys.ts';
import { freshFolder } from '../notebook/visits.ts';
import { onlyVisit, run, told } from './run.ts';

let notebook: string;
let path: string;
beforeEach(() => {
  notebook = freshFolder();
  path = join(notebook, 'settings.yaml');
});

const settings = (...args: string[]) => run(['settings', ...args], { notebook });
const field = (input: string, ...args: string[]) =>
  run(['field', '--stdin', ...args], { notebook, input });
const text = () => readFile(path, 'utf8');

describe('settings', () => {
  test('shows every one in a line with where it comes from, and the file', async () => {
    const ran = await settings();
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    expect(ran.answers.slice(0, -1).map((line) => line.split(/\s+/)[0])).toEqual(KEYS);
    expect(ran.answers).toContain('units.wind          Beaufort                  usual');
    expect(ran.answers.at(-1)).toContain(`${path} (not there yet`);
    expect(await readdir(notebook)).toEqual([]);
  });

  test('names the line of the file, and an option of this run before it', async () => {
    await writeFile(path, '# mine\nunits.wind: kn\ngroup-sizes: [1, 5]\n');
    const ran = await settings(
      '--with',
      'units.wind=mph',
      '--with',
      'observers=Wren Alder, Jo Marsh',
    );
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    expect(ran.out).toMatch(/^units\.wind +mph +option$/m);
    expect(ran.out).toMatch(/^group-sizes +1, 5 +settings\.yaml line 3$/m);
    expect(ran.out).toMatch(
      /^observers +Wren Alder, Jo Marsh \(2; .*no room for names\) +option$/m,
    );
    expect(ran.answers.at(-1)).toBe(path);
    expect(await text()).toBe('# mine\nunits.wind: kn\ngroup-sizes: [1, 5]\n');
  });

  test('tells unknown keys with the nearest known one, and faults with their line', async () => {
    await writeFile(path, 'unit.wnd: kn\nmine: 7\nobservers: 0\n');
    const ran = await settings();
    expect(ran.code).toBe(1);
    expect(ran.complaints).toEqual([
      expect.stringContaining('line 3: observers "0" tells of no observers: write none, '),
      expect.stringContaining(
        'line 1: unit.wnd is no setting, and is kept. Did you mean units.wind?',
      ),
      expect.stringMatching(/line 2: mine is no setting, and is kept\.$/),
    ]);
  });

  test('shows nothing of the file that the terminal would obey', async () => {
    await writeFile(path, 'observers: "\\e]0;owned\\a"\n"\\e[31m": x\n');
    const ran = await settings();
    expect(ran.out + ran.complaints.join('')).not.toMatch(/(?!\n)\p{Cc}/u);
  });
});

describe('settings set', () => {
  test('makes the file, then changes one line of it and keeps the rest', async () => {
    expect(await settings('set', 'group-sizes', '1,5,10')).toMatchObject({
      code: 0,
      answers: ['From the next start on, group-sizes: 1, 5, 10'],
    });
    await writeFile(path, `${await text()}# of mine\nmine: 7\n`);
    const before = await text();
    expect((await settings('set', 'units.wind', 'KN')).code).toBe(0);
    expect((await settings('set', 'group-sizes', '2', '4')).code).toBe(0);
    expect((await text()).split('\n').filter((line) => line !== 'units.wind: kn')).toEqual(
      before.replace('[1, 5, 10]', '[2, 4]').split('\n'),
    );
  });

  test('mends a value that is wrong', async () => {
    await writeFile(path, 'observers: 0 # us\n');
    expect((await settings('set', 'observers', '2')).code).toBe(0);
    expect(await text()).toBe('observers: 2 # us\n');
  });

  test('chooses lists and languages as tussock lists does', async () => {
    expect((await settings('set', 'lists', 'north-america-birds')).code).toBe(0);
    expect(await text()).toContain('\nlists: [north-america-birds]\n');
    expect((await settings('set', 'lists', 'by', 'place')).code).toBe(0);
    expect(await text()).toContain('\nlists: by place\n');
    expect(await settings('set', 'lists', 'wombats')).toMatchObject({ code: 2 });
    expect(await settings('set', 'languages.shown', 'cy')).toMatchObject({ code: 2 });
    expect((await run(['lists', 'use', 'britain-ireland-birds'], { notebook })).code).toBe(0);
    expect((await text()).match(/^lists: .*/gm)).toEqual(['lists: [britain-ireland-birds]']);
  });

  test.each([
    [['group-sizes', '5,2'], 'group-sizes "5,2" do not rise: write each size once'],
    [['wind', 'kn'], 'wind is no setting. Did you mean units.wind? They are lists, '],
    [['__proto__', '1'], '__proto__ is no setting.'],
    [['observers', '0'], 'observers "0" tells of no observers: write none'],
    [['units.wind'], "missing required argument 'value'"],
  ])('refuses %j and makes nothing', async (args, words) => {
    const away = join(notebook, 'away');
    const ran = await settings('set', ...args, '--notebook', away);
    expect(ran).toMatchObject({ code: 2, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining(words)]);
    expect(await readdir(notebook)).toEqual([]);
  });

  test('never writes over a file that can not be read, nor a folder', async () => {
    await writeFile(path, 'lists: [own-moths');
    const ran = await settings('set', 'units.wind', 'kn');
    expect(ran).toMatchObject({ code: 3, answers: [] });
    expect(ran.complaints).toEqual([expect.stringMatching(/line 1: .+mend it or move it away/)]);
    expect(await text()).toBe('lists: [own-moths');
    const other = join(notebook, 'other');
    await mkdir(join(other, 'settings.yaml'), { recursive: true });
    const refused = await settings('set', 'units.wind', 'kn', '--notebook', other);
    expect(refused).toMatchObject({ code: 3, complaints: [expect.stringContaining('a folder')] });
  });
});

describe('the notebook of a command within a command', () => {
  test.each([
    ['settings', ['set', 'units.wind', 'kn']],
    ['lists', ['use', 'north-america-birds']],
  ])('is the one named, before or behind the words of %s', async (command, words) => {
    for (const [folder, args] of [
      ['before', ['--notebook', 'before', ...words]],
      ['behind', [...words, '--notebook', 'behind']],
    ] as const) {
      expect((await run([command, ...args], { notebook })).code).toBe(0);
      expect(await readdir(join(notebook, folder))).toEqual(['settings.yaml']);
    }
    expect((await readdir(notebook)).sort()).toEqual(['before', 'behind']);
  });
});

describe('a visit', () => {
  test('begins with the usual observers, and one that goes on keeps its own', async () => {
    await settings('set', 'observers', 'Wren Alder, Jo Marsh');
    await field('mallard 2');
    expect((await onlyVisit(notebook)).effort.observers).toBe(2);
    await field('mallard 3', '--with', 'observers=5');
    const visit = await onlyVisit(notebook);
    expect([visit.effort.observers, visit.changes.length]).toEqual([2, 2]);
  });

  test('takes those of an option before those of the file', async () => {
    await writeFile(path, 'observers: 2\n');
    await field('mallard 2', '--with', 'observers=5');
    expect((await onlyVisit(notebook)).effort.observers).toBe(5);
    expect(await text()).toBe('observers: 2\n');
  });

  test('goes on with the usual settings where some are wrong, and tells them', async () => {
    await writeFile(path, 'observers: many, of us, \nunits.wind: x\ngroup-sizes: [3]\n');
    const ran = await field('mallard 2');
    expect(ran.code).toBe(0);
    expect(ran.complaints).toEqual([
      expect.stringContaining('settings.yaml line 2: units.wind "x" is no unit for this: write '),
      expect.stringContaining('settings.yaml line 3: group-sizes "[3]" are no group sizes: write '),
    ]);
    expect(told(await onlyVisit(notebook))).toEqual(['Mallard 2']);
  });

  test('is not begun where an option can not be understood', async () => {
    for (const [option, words] of [
      ['units.wind', 'write KEY=VALUE, such as units.wind=kn'],
      ['units.wind=x', 'units.wind "x" is no unit for this'],
      ['wind=kn', 'Did you mean units.wind?'],
    ] as const) {
      const ran = await field('mallard 2', '--with', option);
      expect(ran).toMatchObject({ code: 2, answers: [] });
      expect(ran.complaints).toEqual([expect.stringContaining(words)]);
    }
    expect(await readdir(notebook)).toEqual([]);
  });
});
