import { chmod, mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { type OpenedVisit, readVisit, visitText } from '../../src/notebook/visit-file.ts';
import { type VisitStore, visitStore } from '../../src/notebook/visit-store.ts';
import { FORMAT_VERSION, type Visit } from '../../src/visit/visit.ts';
import { freshFolder, logging, moved, visitOf } from './visits.ts';

let notebook: string;
let year: string;
let store: VisitStore;

beforeEach(() => {
  notebook = freshFolder();
  year = join(notebook, 'visits', '2026');
  store = visitStore(notebook, null);
});

async function held(name: string): Promise<Visit> {
  return JSON.parse(await readFile(join(year, name), 'utf8'));
}

async function opened(path: string): Promise<OpenedVisit> {
  const read = await readVisit(path);
  if ('problem' in read) throw new Error(read.problem);
  return read;
}

const MERE = '2026-11-14-sallow-mere.json';
const MERE_2 = '2026-11-14-sallow-mere-2.json';
const NOWHERE = '2026-11-14-visit.json';

describe('a store of one visit', () => {
  test('makes nothing before the first save', async () => {
    expect(await readdir(notebook)).toEqual([]);
  });

  test('writes each state whole, into one file', async () => {
    let visit = visitOf();
    for (let count = 0; count < 3; count += 1) {
      const saved = await store.save(visit);
      expect(saved).toEqual({ path: join(year, MERE), leftAlone: null });
      expect(await held(MERE)).toEqual(visit);
      visit = logging(visit, `bird ${count}`);
    }
    expect(await readdir(year)).toEqual([MERE]);
  });

  test('takes the next free name where another visit has its own', async () => {
    const other = visitText(visitOf({ id: 7 }));
    await mkdir(year, { recursive: true });
    await writeFile(join(year, MERE), other);
    const { path } = await store.save(visitOf());
    expect(path).toBe(join(year, MERE_2));
    expect(await readFile(join(year, MERE), 'utf8')).toBe(other);
    expect(await held(MERE_2)).toEqual(visitOf());
  });

  test('keeps its file where the name is taken and it bears a number already', async () => {
    await mkdir(year, { recursive: true });
    await writeFile(join(year, MERE), 'other');
    await store.save(visitOf());
    const again = visitStore(notebook, await opened(join(year, MERE_2)));
    const { path } = await again.save(logging(visitOf(), 'owl'));
    expect(path).toBe(join(year, MERE_2));
    expect((await readdir(year)).sort()).toEqual([MERE_2, MERE]);
  });

  test('gives the file the name of the place as soon as there is one, and of another later', async () => {
    const visit = visitOf({ place: null });
    expect((await store.save(visit)).path).toBe(join(year, NOWHERE));
    expect((await store.save(moved(visit, 'Sallow Mere'))).path).toBe(join(year, MERE));
    expect(await readdir(year)).toEqual([MERE]);
    const later = moved(visit, 'Reed Lane');
    expect((await store.save(later)).path).toBe(join(year, '2026-11-14-reed-lane.json'));
    expect(await readdir(year)).toEqual(['2026-11-14-reed-lane.json']);
    expect(await held('2026-11-14-reed-lane.json')).toEqual(later);
  });

  test('gives a number to the name of a place that another file has', async () => {
    const visit = visitOf({ place: null });
    await store.save(visit);
    await writeFile(join(year, MERE), 'other');
    expect((await store.save(moved(visit, 'Sallow Mere'))).path).toBe(join(year, MERE_2));
    expect(await readFile(join(year, MERE), 'utf8')).toBe('other');
    expect((await readdir(year)).sort()).toEqual([MERE_2, MERE]);
  });

  test('goes on in a file that was opened, with its mode bits and unknown fields', async () => {
    await mkdir(year, { recursive: true });
    const path = join(year, MERE);
    await writeFile(path, JSON.stringify({ ...visitOf(), 'x-club': 'Ashwick Levels' }));
    await chmod(path, 0o600);
    const read = await opened(path);
    await visitStore(notebook, read).save(logging(read.visit, 'owl'));
    expect(await held(MERE)).toMatchObject({ 'x-club': 'Ashwick Levels', entries: [{}, {}] });
    expect((await stat(path)).mode & 0o777).toBe(0o600);
  });

  test('leaves a file alone that another program changed, and says so once', async () => {
    await store.save(visitOf());
    const theirs = visitText(logging(visitOf(), 'their owl'));
    await writeFile(join(year, MERE), theirs);
    const ours = logging(visitOf(), 'our owl');
    const saved = await store.save(ours);
    expect(saved).toEqual({ path: join(year, MERE_2), leftAlone: join(year, MERE) });
    expect(await readFile(join(year, MERE), 'utf8')).toBe(theirs);
    const held2 = await held(MERE_2);
    expect(held2).toEqual({ ...ours, id: held2.id });
    // Two states under one id would hide each other from whoever reads the notebook.
    expect(held2.id).not.toBe(ours.id);
    const next = await store.save(logging(ours, 'hare'));
    expect(next).toEqual({ path: join(year, MERE_2), leftAlone: null });
  });

  test('leaves a file alone that was changed between reading it and the first save', async () => {
    await store.save(visitOf());
    const read = await opened(join(year, MERE));
    await writeFile(join(year, MERE), 'theirs');
    const saved = await visitStore(notebook, read).save(logging(read.visit, 'owl'));
    expect(saved.leftAlone).toBe(join(year, MERE));
    expect(await readFile(join(year, MERE), 'utf8')).toBe('theirs');
  });

  test('two programs with one visit lose nothing of each other', async () => {
    await store.save(visitOf());
    const other = visitStore(notebook, await opened(join(year, MERE)));
    await store.save(logging(visitOf(), 'our owl'));
    await other.save(logging(visitOf(), 'their owl'));
    await store.save(logging(logging(visitOf(), 'our owl'), 'our hare'));
    const words = async (name: string) => (await held(name)).entries.map((entry) => entry.words);
    expect(await words(MERE)).toEqual(['brown bird', 'our owl', 'our hare']);
    expect(await words(MERE_2)).toEqual(['brown bird', 'their owl']);
  });

  test('makes its file again where it was removed, folder and all', async () => {
    await store.save(visitOf());
    await rm(join(notebook, 'visits'), { recursive: true });
    const visit = logging(visitOf(), 'owl');
    expect(await store.save(visit)).toEqual({ path: join(year, MERE), leftAlone: null });
    expect(await held(MERE)).toEqual(visit);
  });

  test('a save that fails rejects, and the next one carries everything', async () => {
    await writeFile(join(notebook, 'visits'), 'in the way');
    await expect(store.save(visitOf())).rejects.toThrow(/ENOTDIR|EEXIST/);
    await rm(join(notebook, 'visits'));
    expect((await store.save(visitOf())).path).toBe(join(year, MERE));
  });

  test('a name that can not be given is no failure, nor taken for the work of another program', async () => {
    const path = join(notebook, 'walk.json');
    const visit = visitOf({ place: null });
    await writeFile(path, visitText(visit));
    await writeFile(join(notebook, 'visits'), 'in the way');
    const kept = visitStore(notebook, await opened(path));
    const placed = moved(visit, 'Sallow Mere');
    expect(await kept.save(placed)).toEqual({ path, leftAlone: null });
    expect(JSON.parse(await readFile(path, 'utf8'))).toEqual(placed);
    await rm(join(notebook, 'visits'));
    const later = logging(placed, 'owl');
    expect(await kept.save(later)).toEqual({ path: join(year, MERE), leftAlone: null });
    expect(await held(MERE)).toEqual(later);
    expect((await readdir(dirname(path))).sort()).toEqual(['states', 'visits']);
  });

  test('refuses a visit of a newer version, and leaves its file as it is', async () => {
    const newer = { ...visitOf(), formatVersion: FORMAT_VERSION + 1, 'x-new': true };
    const path = join(year, MERE);
    await mkdir(year, { recursive: true });
    await writeFile(path, JSON.stringify(newer));
    const read = await opened(path);
    await expect(visitStore(notebook, read).save(logging(read.visit, 'owl'))).rejects.toThrow(
      'was written by a newer Tussock',
    );
    expect(JSON.parse(await readFile(path, 'utf8'))).toEqual(newer);
    expect(await readdir(notebook)).toEqual(['visits']);
  });
});
