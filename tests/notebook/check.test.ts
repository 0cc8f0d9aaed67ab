import { mkdir, readdir, readFile, utimes, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { checkNotebook } from '../../src/notebook/check.ts';
import { mend } from '../../src/notebook/mend.ts';
import { visitText } from '../../src/notebook/visit-file.ts';
import { visitStore } from '../../src/notebook/visit-store.ts';
import { FORMAT_VERSION, type Visit } from '../../src/visit/visit.ts';
import { freshFolder, idOf, logging, visitOf } from './visits.ts';

const NOW = Date.UTC(2026, 10, 15, 9);
const MERE = 'visits/2026/2026-11-14-sallow-mere.json';
const COPY = 'visits/2026/2026-11-14-sallow-mere (1).json';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

/** Writes a file of the notebook as if an hour ago. */
async function put(name: string, content: string | Visit): Promise<void> {
  const path = join(notebook, name);
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, typeof content === 'string' ? content : visitText(content));
  await utimes(path, NOW / 1000 - 3600, NOW / 1000 - 3600);
}

async function found(): Promise<string[]> {
  const findings = await checkNotebook(notebook, NOW);
  return findings.map(({ path, what, fault }) => `${fault ? '' : '('}${path} ${what}`);
}

/** Mends all that can be mended; what was said, without the folders' times. */
async function mended(): Promise<string[]> {
  const said: string[] = [];
  for (const finding of await checkNotebook(notebook, NOW))
    if (finding.cure !== null) said.push(await mend(notebook, finding, NOW));
  return said;
}

async function held(name: string): Promise<Visit> {
  return JSON.parse(await readFile(join(notebook, name), 'utf8'));
}

async function setAside(): Promise<string[]> {
  return (await readdir(join(notebook, 'set-aside')).catch(() => [])).sort();
}

describe('a whole notebook', () => {
  test('gives no finding, with states, lists and settings in it', async () => {
    const store = visitStore(notebook, null);
    for (const visit of [visitOf(), logging(visitOf(), 'owl')]) await store.save(visit);
    await put('lists/own-moths.json', '{}');
    await put('settings.yaml', '# mine\nunits.wind: kn\n');
    await put('set-aside/20261114T074105.123Z-walk.json', 'whatever');
    expect(await found()).toEqual([]);
  });

  test('is empty, too', async () => {
    expect(await found()).toEqual([]);
  });
});

describe('a finding is told with its file and what it is', () => {
  test.each<[string, string, string | Visit, string]>([
    [
      'a cut file',
      MERE,
      '{"format":',
      "can't be read: it is not whole JSON: it breaks off in line 1",
    ],
    ['a deep file', MERE, '['.repeat(300), "can't be read: it is nested more than 200 levels"],
    ['a wrong part', MERE, '{"formatVersion":2}', "can't be read: it is not a visit, at format"],
    [
      'another date',
      'visits/2026/2026-11-13-sallow-mere.json',
      visitOf(),
      'is named by another date than that of its start, 2026-11-14',
    ],
    [
      'another year',
      'visits/2025/2026-11-14-sallow-mere.json',
      visitOf(),
      'is named by another date',
    ],
    ['no date', 'visits/2026/walk.json', visitOf(), 'is not read as a visit'],
    ['no year', 'visits/walk/2026-11-14-walk.json', visitOf(), 'is not read as a visit'],
    [
      'a number twice',
      MERE,
      { ...visitOf(), entries: [...visitOf().entries, ...visitOf().entries] },
      'two entries bear the number 1',
    ],
    [
      'a leftover',
      'visits/2026/.2026-11-14-visit.json.0badcafe.tmp',
      '{',
      'was left behind by a save that was interrupted',
    ],
    ['a leftover of settings', '.settings.yaml.0badcafe.tmp', '{', 'was left behind by a save'],
    [
      'broken settings',
      'settings.yaml',
      'mine: 7\nunits.wind: x\n',
      'line 2: units.wind "x" is no unit',
    ],
    [
      'a broken state',
      `states/${idOf(1)}/20261114T074105.123Z.json`,
      '{',
      "can't be read: it is not whole",
    ],
  ])('%s', async (_, name, content, what) => {
    await put(name, content);
    expect(await found()).toContainEqual(expect.stringContaining(`${name} ${what}`));
  });

  test.each<[string, string | Visit, string]>([
    ['visits/2026/notes.txt', 'text', 'is no visit'],
    ['songs.mp3', '', 'is nothing of Tussock'],
    ['visits/2026/2026-11-14-walk (1).json', visitOf(), 'is named as a second copy'],
    [
      MERE,
      { ...visitOf(), formatVersion: (FORMAT_VERSION + 1) as never },
      'was written by a newer',
    ],
    [MERE, visitOf({ end: '2026-11-14T07:00:00+00:00' }), 'it ends at 07:00, before it starts'],
    ['locks/mine.json', '', 'is no lock'],
    [`states/${idOf(1)}/notes.json`, '', 'is no kept state'],
  ])('%s is worth a look only', async (name, content, what) => {
    await put(name, content);
    expect(await found()).toEqual([expect.stringContaining(`(${name} ${what}`)]);
    expect(await mended()).toEqual([]);
  });
});

describe('mending', () => {
  test('puts the newest state that can be read in the place of a broken file, and keeps that', async () => {
    const store = visitStore(notebook, null);
    const states = [visitOf(), logging(visitOf(), 'owl')];
    states.push(logging(states[1] ?? visitOf(), 'hare'));
    for (const visit of states) await store.save(visit);
    const half = visitText(states[2] ?? visitOf()).slice(0, 900);
    await put(MERE, half);
    const said = await mended();
    expect(said).toEqual([
      expect.stringMatching(/moved to set-aside\/.*; its state states\/.* stands in its place\.$/),
    ]);
    expect(await held(MERE)).toEqual(states[1]);
    const [aside = ''] = await setAside();
    expect(await readFile(join(notebook, 'set-aside', aside), 'utf8')).toBe(half);
    expect(await found()).toEqual([]);
    expect(await mended()).toEqual([]);
  });

  test('finds the state of a file that holds nothing by where it belongs', async () => {
    const store = visitStore(notebook, null);
    for (const visit of [visitOf(), logging(visitOf(), 'owl')]) await store.save(visit);
    await put(MERE, '\0'.repeat(500));
    await mended();
    expect(await held(MERE)).toEqual(visitOf());
  });

  test('sets a broken file aside alone where no state of it is kept, or another file holds the visit', async () => {
    await put(MERE, '{');
    expect(await mended()).toEqual([expect.stringMatching(/moved to set-aside\/[^;]*$/)]);
    const store = visitStore(notebook, null);
    for (const visit of [visitOf(), logging(visitOf(), 'owl')]) await store.save(visit);
    await put(COPY, visitText(visitOf()).slice(0, 300));
    expect(await mended()).toHaveLength(1);
    expect(await readdir(join(notebook, 'visits', '2026'))).toEqual([
      '2026-11-14-sallow-mere.json',
    ]);
    expect(await found()).toEqual([]);
  });

  test('sets the shorter of two copies aside where the other goes on from it', async () => {
    const longer = logging(visitOf(), 'owl');
    await put(MERE, visitOf());
    await put(COPY, longer);
    expect(await found()).toEqual([expect.stringContaining(`${MERE} is an earlier state`)]);
    await mended();
    expect(await held(COPY)).toEqual(longer);
    expect(await setAside()).toHaveLength(1);
    expect(await mended()).toEqual([]);
  });

  test('of two that are the same keeps the one in its place', async () => {
    await put(MERE, visitOf());
    await put('visits/2026/2026-11-14-sallow-mere - Copy.json', visitOf());
    await mended();
    expect(await readdir(join(notebook, 'visits', '2026'))).toEqual([
      '2026-11-14-sallow-mere.json',
    ]);
    expect(await found()).toEqual([]);
  });

  test('leaves two copies that each have something of their own', async () => {
    await put(MERE, logging(visitOf(), 'owl'));
    await put(COPY, logging(visitOf(), 'hare'));
    const before = await found();
    expect(before).toEqual([expect.stringContaining('each has what the other has not')]);
    expect(await mended()).toEqual([]);
    expect(await found()).toEqual(before);
  });

  test('moves what saves left behind, but not what a save may be writing now', async () => {
    const leftover = 'visits/2026/.2026-11-14-visit.json.0badcafe.tmp';
    await put(leftover, 'half');
    await utimes(join(notebook, leftover), NOW / 1000, NOW / 1000);
    expect(await found()).toEqual([]);
    await put(leftover, 'half');
    await mended();
    expect(await setAside()).toEqual(['20261115T090000.000Z-.2026-11-14-visit.json.0badcafe.tmp']);
    expect(await found()).toEqual([]);
  });

  test('removes the lock of a program that is gone, and leaves a visit that another holds', async () => {
    const holder = { host: 'another', began: '2026-11-14T07:40:00.000Z', processMark: null };
    const lock = JSON.stringify({ ...holder, process: 12, token: idOf(9) });
    await put(`locks/${idOf(2)}.json`, lock);
    const now = Date.now();
    await utimes(join(notebook, 'locks', `${idOf(2)}.json`), now / 1000 - 660, now / 1000 - 660);
    await put(`locks/${idOf(1)}.json`, lock);
    await utimes(join(notebook, 'locks', `${idOf(1)}.json`), now / 1000, now / 1000);
    await put(MERE, visitText(visitOf()).slice(0, 300));
    const said = await mended();
    expect(said).toEqual([
      expect.stringContaining(
        'left as it is: the visit is open in another program (process 12 on another, since 07:40 UTC)',
      ),
      `locks/${idOf(2)}.json: removed.`,
    ]);
    expect(await setAside()).toEqual([]);
    expect(await readdir(join(notebook, 'locks'))).toEqual([`${idOf(1)}.json`]);
  });

  test.each([
    ['that a newer version wrote', { ...visitOf(), formatVersion: 99, entries: 'otherwise' }],
    ['that a newer version wrote and that fits', { ...visitOf(), formatVersion: 99 }],
  ])('never touches a visit %s', async (_, visit) => {
    await put(MERE, JSON.stringify(visit));
    expect(await mended()).toEqual([]);
    expect(await held(MERE)).toEqual(visit);
  });
});
