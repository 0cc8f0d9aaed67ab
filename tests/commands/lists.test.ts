import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { freshFolder } from '../notebook/visits.ts';
import { listsIn, TABLE } from './lists-in.ts';
import { onlyVisit, run, told } from './run.ts';

let notebook: string;
let { lists, adding, settings, field } = listsIn('');
beforeEach(() => {
  notebook = freshFolder();
  ({ lists, adding, settings, field } = listsIn(notebook));
});

describe('lists', () => {
  test('shows what is there, what is in use and where names come from', async () => {
    const ran = await lists();
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    expect(ran.out).toMatch(/^\* britain-ireland-birds +\d+ +\d+$/m);
    expect(ran.out).toMatch(/^ {2}north-america-birds +\d+ +\d+$/m);
    expect(ran.out).toMatch(/^In use: 10 lists, \d+ taxa, those of the region for UTC/m);
    expect(ran.answers.at(-1)).toBe('Names are shown in en, searched in en.');
    expect(await readdir(notebook)).not.toContain('settings.yaml');
  });

  test('shows those of the other region in the New World', async () => {
    const ran = await run(['lists'], { notebook, environment: { TZ: 'America/Chicago' } });
    expect(ran.out).toMatch(/^\* north-america-birds/m);
    expect(ran.out).toMatch(/^ {2}britain-ireland-birds/m);
  });

  test('check finds nothing wrong with those that ship, and tells what is wrong with others', async () => {
    expect(await lists('check')).toMatchObject({ code: 0, complaints: [] });
    await writeFile(join(notebook, '🦉.csv'), `${TABLE}\n,x\n`);
    const ran = await lists('check', '🦉.csv');
    expect(ran).toMatchObject({ code: 1, answers: ['1 list, 2 taxa: 1 faults.'] });
    expect(ran.complaints).toEqual([expect.stringContaining('line 4: scientificName: ')]);
    expect(await lists('check', 'gone.csv')).toMatchObject({
      code: 1,
      complaints: ["tussock: gone.csv can't be read: it is not there."],
    });
  });
});

describe('lists use', () => {
  test('chooses lists and regions, and gives the choice back to the place', async () => {
    await adding(TABLE);
    const ran = await lists('use', 'britain-ireland-birds', 'own', 'own-moths');
    expect(ran).toMatchObject({
      code: 0,
      answers: ['In use from the next start on: britain-ireland-birds, own-moths.'],
    });
    expect((await lists()).out).toMatch(/^In use: 2 lists, \d+ taxa, as chosen/m);
    await lists('use', 'north-america');
    expect((await lists()).out).toMatch(/^In use: 9 lists,/m);
    expect(await lists('use')).toMatchObject({ code: 0 });
    expect(await settings()).toEqual(['lists: by place']);
    expect((await lists()).out).toMatch(/^In use: 11 lists, \d+ taxa, those of the region/m);
  });

  test('refuses a list that is not there and leaves the choice as it was', async () => {
    await lists('use', 'north-america-birds');
    const before = await settings();
    const ran = await lists('use', 'britain-ireland-birds', 'wombats');
    expect(ran).toMatchObject({ code: 2, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining('no list or region wombats')]);
    expect(await settings()).toEqual(before);
  });

  test('names a chosen list that is gone, at every start', async () => {
    const mine = '# of mine\nlists: [own-gone, britain-ireland-birds] # for now\nmine: 7\n';
    await writeFile(join(notebook, 'settings.yaml'), mine);
    const logged = await field('mallard');
    expect(logged.complaints).toEqual([expect.stringContaining('list own-gone is not there')]);
    expect(told(await onlyVisit(notebook))).toEqual(['Mallard 1']);
    await lists('use', 'britain-ireland-birds');
    expect(await readFile(join(notebook, 'settings.yaml'), 'utf8')).toBe(
      mine.replace('own-gone, ', ''),
    );
  });
});

describe('lists languages', () => {
  const WELSH = 'scientificName,vernacularName:cy,vernacularName:pt-BR\nPica pica,Pioden,Pega';

  test('shows names in one and finds them in several', async () => {
    await adding(WELSH);
    expect((await lists()).answers.at(-1)).toContain('the lists in use also have cy, pt-br.');
    expect(await lists('languages', '--shown', 'cy', '--searched', 'cy, en')).toMatchObject({
      code: 0,
      answers: ['Names are shown in cy and searched in cy, en from the next start on.'],
    });
    expect((await field('magpie 2', 'pioden 3', 'mallard 4')).code).toBe(0);
    expect(told(await onlyVisit(notebook))).toEqual(['Pioden 2', 'Pioden 3', 'Mallard 4']);
  });

  test('takes a tag in any case', async () => {
    await adding(WELSH);
    expect(await lists('languages', '--shown', 'pt-BR')).toMatchObject({ code: 0 });
    expect(await settings()).toContain('languages.shown: pt-br');
    const path = join(notebook, 'settings.yaml');
    const text = await readFile(path, 'utf8');
    await writeFile(path, `\ufeff${text.replaceAll('pt-br', 'pt-BR')}`);
    expect((await lists()).complaints).toEqual([]);
  });

  test('refuses one in which no list has names', async () => {
    const ran = await lists('languages', '--shown', 'cy');
    expect(ran).toMatchObject({ code: 2, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining('No list in use has names in "cy"')]);
    expect(await readdir(notebook)).not.toContain('settings.yaml');
  });
});
