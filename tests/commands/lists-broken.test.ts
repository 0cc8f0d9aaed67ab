import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import type { SpeciesList } from '../../src/taxa/species-list.ts';
import { freshFolder } from '../notebook/visits.ts';
import { listsIn, TABLE } from './lists-in.ts';
import { onlyVisit, told } from './run.ts';

let notebook: string;
let { lists, adding, ownList, field } = listsIn('');
beforeEach(() => {
  notebook = freshFolder();
  ({ lists, adding, ownList, field } = listsIn(notebook));
});

describe('a list with escape sequences', () => {
  const ESCAPE = '\u001b]0;owned\u0007';
  const CONTROL = /(?!\n)\p{Cc}/u;

  test('is left out row by row, and told without them', async () => {
    const ran = await adding(
      `scientificName,vernacularName,vernacularName:cy,family,${ESCAPE}\n` +
        `Arctia caja,Garden${ESCAPE} Tiger,,,\nArctia villica,x,Teigr${ESCAPE},,\n` +
        `Arctia ${ESCAPE},x,,,\nSaturnia pavonia,Emperor,,${ESCAPE},\nSaturnia pyri,Peacock,,,${ESCAPE}\n`,
    );
    expect(ran.complaints).toHaveLength(4);
    expect((await ownList('own-moths')).taxa).toHaveLength(1);
    expect(ran.out + ran.complaints.join('')).not.toMatch(CONTROL);
    expect(await readFile(join(notebook, 'lists/own-moths.json'), 'utf8')).not.toMatch(/\\u00/);
  });

  test('in its headings, its name, region or group does not reach the terminal', async () => {
    const bad = await adding(`Latin${ESCAPE}\nArctia caja`);
    const ran = await adding(TABLE, '--name', `a${ESCAPE}`, '--region', ESCAPE, '--group', ESCAPE);
    expect(ran.code).toBe(0);
    const shown = await lists();
    const unknown = await lists('use', ESCAPE);
    for (const { out, complaints } of [bad, ran, shown, unknown])
      expect(out + complaints.join('')).not.toMatch(CONTROL);
  });

  test('put into the notebook by hand does not reach the terminal', async () => {
    await adding(TABLE);
    const list = await ownList('own-moths');
    for (const taxon of list.taxa) taxon.vernacularName = `Tiger${ESCAPE}`;
    await writeFile(join(notebook, 'lists/own-moths.json'), JSON.stringify(list));
    const logged = await field('arctia caja', 'tiger');
    expect(logged.answers.join(' ')).toContain('Tiger');
    expect(logged.out + logged.complaints.join('')).not.toMatch(CONTROL);
  });
});

describe('what was broken by hand', () => {
  test.each([
    ['half a list', 'lists: [own-moths'],
    ['another thing', '- own-moths'],
    ['a quotation mark too few', 'mine: 7\nlists: "own-moths\n'],
    ['a tab', 'mine:\n\tlists: own-moths\n'],
  ])('settings of %s are told and never written over', async (_, text) => {
    const path = join(notebook, 'settings.yaml');
    await writeFile(path, text);
    const logged = await field('mallard 2');
    expect(logged).toMatchObject({ code: 0 });
    expect(logged.complaints).toEqual([expect.stringMatching(/settings\.yaml line \d: .+usual/)]);
    expect(told(await onlyVisit(notebook))).toEqual(['Mallard 2']);
    for (const args of [['use'], ['use', 'north-america'], ['languages', '--shown', 'en']]) {
      const ran = await lists(...args);
      expect(ran).toMatchObject({ code: 3, answers: [] });
      expect(ran.complaints).toEqual([expect.stringMatching(/settings\.yaml line \d: /)]);
    }
    expect((await lists()).code).toBe(0);
    expect(await readFile(path, 'utf8')).toBe(text);
  });

  test('a folder in place of the settings is told too', async () => {
    await mkdir(join(notebook, 'settings.yaml'));
    const ran = await lists('use', 'north-america');
    expect(ran).toMatchObject({ code: 3, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining('it is a folder')]);
  });

  test.each<[string, (list: SpeciesList) => unknown]>([
    ['half a file', (list) => JSON.stringify(list).slice(0, -20)],
    ['null', () => null],
    ['a taxon that is null', (list) => ({ ...list, taxa: [null] })],
    ['a list of another name', (list) => ({ ...list, name: 'britain-ireland-birds' })],
    ['no group', ({ group: _, ...list }) => list],
    ['a number for a name', (list) => withFirst(list, { vernacularName: 7 })],
    ['an unknown category', (list) => withFirst(list, { redListCategory: 'XX' })],
    ['an unknown sensitivity', (list) => withFirst(list, { sensitivity: 'secret' })],
    ['no qualifier', (list) => withFirst(list, { identificationQualifier: undefined })],
    ['no rank', (list) => withFirst(list, { taxonRank: '' })],
    ['names that are no list', (list) => withFirst(list, { otherEnglishNames: [3] })],
    ['names in no language', (list) => withFirst(list, { namesIn: 'cy' })],
  ])(
    'a list of %s is told, stays as it is and keeps nothing else from being used',
    async (_, broken) => {
      await adding(TABLE);
      const whole = { ...(await ownList('own-moths')), name: 'own-others' };
      await writeFile(join(notebook, 'lists/own-others.json'), JSON.stringify(whole));
      const path = join(notebook, 'lists/own-moths.json');
      const wrong = broken(await ownList('own-moths'));
      const text = typeof wrong === 'string' ? wrong : JSON.stringify(wrong);
      await writeFile(path, text);
      const logged = await field('mallard 2', 'garden tiger 1');
      expect(logged.complaints[0]).toMatch(
        /own-moths\.json can't be read \(.+\)\. Add the list again/,
      );
      expect(told(await onlyVisit(notebook))).toEqual(['Mallard 2', 'Garden Tiger 1']);
      expect(await readFile(path, 'utf8')).toBe(text);
    },
  );

  test('a broken list called settings does not keep lists from being chosen', async () => {
    await adding(TABLE, '--name', 'settings');
    await writeFile(join(notebook, 'lists/own-settings.yaml'), '{');
    expect((await lists('use', 'north-america')).code).toBe(0);
    expect((await lists('languages', '--shown', 'en')).code).toBe(0);
  });
});

function withFirst(list: SpeciesList, over: object): unknown {
  return {
    ...list,
    taxa: list.taxa.map((taxon, at) => (at === 0 ? { ...taxon, ...over } : taxon)),
  };
}
