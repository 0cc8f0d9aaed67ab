import { chmod, mkdir, readdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { visitText } from '../../src/notebook/visit-file.ts';
import { visitPath } from '../../src/notebook/visit-name.ts';
import { updateVisit, type VisitAction } from '../../src/visit/update.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { freshFolder, idOf, visitOf } from '../notebook/visits.ts';
import type { Deed } from '../visit/join-made.ts';
import { minutesIn, observed, placeOf } from '../visit/made.ts';
import { fileNames, onlyVisit, run } from './run.ts';

let here: string;
let there: string;
beforeEach(() => {
  here = freshFolder();
  there = freshFolder();
});

const bringing = (...args: string[]) => run(['join', ...args], { notebook: here });

async function write(path: string, text: string): Promise<string> {
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, text);
  return path;
}

function keep(notebook: string, visit: Visit, copy = 1): Promise<string> {
  return write(visitPath(notebook, visit, copy), visitText(visit));
}

function doing(visit: Visit, ...deeds: [number, Deed][]): Visit {
  return deeds.reduce<Visit>(
    (so, [minute, deed]) => updateVisit(so, { ...deed, time: minutesIn(minute) } as VisitAction),
    visit,
  );
}

const log = (id: number, words: string): Deed => ({
  do: 'log',
  id: idOf(id),
  observation: observed({ words, taxon: null }),
});
const describeAs = (value: string): Deed => ({ do: 'set', part: 'description', value });

/** Every file below a folder with its text, by name. */
async function contents(folder: string): Promise<Record<string, string>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
  const texts = await Promise.all(
    files.sort().map(async (file) => [file, await readFile(file, 'utf8')]),
  );
  return Object.fromEntries(texts);
}

const shared = visitOf();
const ours = doing(shared, [10, log(21, 'teal')], [30, describeAs('mist')]);
const theirs = doing(
  shared,
  [20, log(31, 'wren')],
  [21, log(32, 'robin')],
  [25, describeAs('sun')],
  [26, { do: 'set', part: 'place', value: placeOf({ name: 'Withy Drove', position: null }) }],
);

describe('join', () => {
  test('brings what the other copy logged, tells conflicts with both values, and keeps both', async () => {
    await keep(here, ours);
    await keep(there, theirs);
    const before = await contents(there);
    const ran = await bringing(there);
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    expect(ran.answers).toEqual([
      '2026-11-14 Withy Drove: 2 entries came, place changed, 1 conflict',
      '  wren, 2 in the other copy, has the number 4 now',
      '  description: "mist" stands, the other value is "sun"',
      '1 visit joined, 1 conflict. Both values are kept: change what should not stand.',
    ]);
    const joined = await onlyVisit(here);
    expect(joined.entries.map(({ number, words }) => `${number} ${words}`)).toEqual([
      '1 brown bird',
      '2 teal',
      '3 robin',
      '4 wren',
    ]);
    expect(joined.changes.map((change) => change.before)).toContain('sun');
    expect(await fileNames(here)).toEqual(['2026/2026-11-14-withy-drove.json']);
    expect(await contents(there)).toEqual(before);
  });

  test('twice changes nothing, and both ways round comes to the same visit', async () => {
    await keep(here, ours);
    await keep(there, theirs);
    await bringing(there);
    const once = await contents(here);
    const again = await bringing(there);
    expect(again).toMatchObject({ code: 0, complaints: [], answers: ['Nothing new.'] });
    expect(await contents(here)).toEqual(once);
    await run(['join', here], { notebook: there });
    expect(await onlyVisit(there)).toEqual(await onlyVisit(here));
    expect((await bringing(there)).answers).toEqual(['Nothing new.']);
  });

  test('writes visits that are not here under free names, into a notebook that was not there', async () => {
    await keep(there, visitOf({ id: 2, logged: ['wren', 'robin'] }), 2);
    await keep(there, visitOf({ id: 3, logged: ['coot'] }));
    const fresh = join(here, 'new', 'notebook');
    const ran = await bringing(there, '--notebook', fresh);
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    expect(ran.answers).toEqual([
      '2026-11-14 Sallow Mere: a new visit, 2 entries',
      '2026-11-14 Sallow Mere: a new visit, 1 entry',
      '2 new visits.',
    ]);
    expect(await fileNames(fresh)).toEqual(await fileNames(there));
    const visits = async (folder: string) =>
      Object.values(await contents(join(folder, 'visits')))
        .map((text): Visit => JSON.parse(text))
        .sort((one, two) => (one.id < two.id ? -1 : 1));
    expect(await visits(fresh)).toEqual(await visits(there));
  });

  test('puts both files of one visit in the other notebook together', async () => {
    await keep(there, ours);
    await keep(there, theirs, 2);
    const ran = await bringing(there);
    expect(ran.code).toBe(0);
    expect((await onlyVisit(here)).entries).toHaveLength(4);
    expect((await bringing(there)).answers).toEqual(['Nothing new.']);
  });

  test('leaves a visit that already has everything as it is, to the byte', async () => {
    const path = await keep(here, theirs);
    await write(path, JSON.stringify(theirs));
    await keep(there, shared);
    expect((await bringing(there)).answers).toEqual(['Nothing new.']);
    expect(await readFile(path, 'utf8')).toBe(JSON.stringify(theirs));
  });

  test('tells and leaves files that can not be read, on either side, and brings the others', async () => {
    const broken = [
      await write(join(here, 'visits/2026/2026-01-01-visit.json'), '{"format":'),
      await write(join(there, 'visits/2026/2026-01-02-visit.json'), ''),
      await write(join(there, 'lists/own-moths.json'), '[]'),
    ];
    await keep(there, theirs);
    const before = await contents(there);
    const ran = await bringing(there);
    expect(ran.code).toBe(1);
    expect(ran.complaints).toHaveLength(3);
    broken.forEach((path, at) => {
      expect(ran.complaints[at]).toContain(`${path} can't be read (`);
      expect(ran.complaints[at]).toMatch(/It is left as it is\.$/);
    });
    expect(ran.answers.at(-1)).toBe('1 new visit.');
    expect(await contents(there)).toEqual(before);
    expect(await readFile(broken[0] ?? '', 'utf8')).toBe('{"format":');
  });

  test('never puts a visit of a newer program or one with two entries of a number into another', async () => {
    await keep(here, ours);
    const newer = { ...theirs, formatVersion: 99 } as unknown as Visit;
    const twice = { ...theirs, entries: theirs.entries.map((entry) => ({ ...entry, number: 1 })) };
    const paths = [await keep(there, newer, 2), await keep(there, twice, 3)];
    const before = await contents(here);
    const ran = await bringing(there);
    expect(ran).toMatchObject({ code: 1, answers: ['Nothing new.'] });
    expect(ran.complaints[0]).toContain(`${paths[0]} was written by a newer Tussock`);
    expect(ran.complaints[1]).toContain(
      `${paths[1]} can't be joined: two of its entries have the number 1.`,
    );
    expect(await contents(here)).toEqual(before);
  });

  test('copies own species lists that are missing, and leaves those of the same name and the settings', async () => {
    const list = (name: string) =>
      JSON.stringify({ name, region: 'own', group: 'moths', taxa: [] });
    await write(join(here, 'lists/own-moths.json'), list('own-moths'));
    await write(join(here, 'settings.yaml'), 'ours');
    await write(join(there, 'settings.yaml'), 'theirs');
    await write(join(there, 'lists/own-moths.json'), `${list('own-moths')} `);
    await write(join(there, 'lists/own-beetles.json'), list('own-beetles'));
    const ran = await bringing(there);
    expect(ran).toMatchObject({ code: 0, complaints: [] });
    expect(ran.answers).toEqual(['The species list own-beetles came.', '1 new species list.']);
    expect(await readFile(join(here, 'lists/own-moths.json'), 'utf8')).toBe(list('own-moths'));
    expect(await readFile(join(here, 'lists/own-beetles.json'), 'utf8')).toBe(list('own-beetles'));
    expect(await readFile(join(here, 'settings.yaml'), 'utf8')).toBe('ours');
    expect((await bringing(there)).answers).toEqual(['Nothing new.']);
  });

  test('shows no control character of the other copy', async () => {
    await keep(here, shared);
    await keep(there, doing(shared, [20, describeAs('\u001b[2Jx')]));
    await keep(here, doing(shared, [25, describeAs('mist')]));
    expect((await bringing(there)).out).not.toContain('\u001b');
  });

  test('goes from a folder that may only be read', async () => {
    await keep(there, theirs);
    await chmod(there, 0o555);
    expect((await bringing(there)).code).toBe(0);
    await chmod(there, 0o755);
  });
});

describe('a folder that is no other copy', () => {
  test.each<[string, () => Promise<string>, number, string]>([
    ['the notebook itself', async () => here, 2, 'is this notebook itself'],
    [
      'a link to the notebook itself',
      async () => {
        await symlink(here, join(there, 'link'));
        return join(there, 'link');
      },
      2,
      'is this notebook itself',
    ],
    ['nothing', async () => join(there, 'none'), 1, "can't be read: it is not there."],
    ['an empty folder', async () => there, 1, 'name the folder in which visits stands'],
    [
      'a file',
      () => write(join(there, 'file'), 'text'),
      1,
      "can't be read: a file stands in its way",
    ],
  ])('%s is refused in a sentence', async (_, folder, code, words) => {
    await keep(here, ours);
    const before = await contents(here);
    const ran = await bringing(await folder());
    expect(ran).toMatchObject({ code, answers: [] });
    expect(ran.complaints).toEqual([expect.stringContaining(words)]);
    expect(await contents(here)).toEqual(before);
  });

  test('and no folder at all is wrong usage', async () => {
    expect(await bringing()).toMatchObject({ code: 2, answers: [] });
  });
});
