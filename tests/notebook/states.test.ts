import { mkdir, readdir, readFile, rm, symlink, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { momentIn, momentName } from '../../src/notebook/moment-name.ts';
import { keptStates, stateKeeper } from '../../src/notebook/states.ts';
import { readVisit, visitText } from '../../src/notebook/visit-file.ts';
import { visitStore } from '../../src/notebook/visit-store.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { freshFolder, logging, moved, visitOf } from './visits.ts';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

/** States of one visit with 1, 2, 3 … entries. */
function growing(most: number): Visit[] {
  const made = [visitOf()];
  while (made.length < most) made.push(logging(made.at(-1) ?? visitOf(), 'owl'));
  return made;
}

async function entriesKept(): Promise<(number | null)[]> {
  const states = await keptStates(notebook, visitOf().id);
  return states.map(({ read }) => ('visit' in read ? read.visit.entries.length : null));
}

/** Saves, and sets the file back by so many seconds, as if the next save came later. */
async function savedInTurn(visits: readonly Visit[]): Promise<void> {
  for (const [at, visit] of visits.entries()) {
    const file = join(notebook, 'visits', '2026', '2026-11-14-sallow-mere.json');
    const read = await readVisit(file);
    const { path } = await visitStore(notebook, 'visit' in read ? read : null).save(visit);
    await utimes(path, 1_790_000_000 + at * 60, 1_790_000_000 + at * 60);
  }
}

describe('a save keeps the state that stood', () => {
  test('so that the visit before it can be read, and the file holds the new one', async () => {
    const store = visitStore(notebook, null);
    for (const visit of growing(3)) await store.save(visit);
    expect(await entriesKept()).toEqual([2, 1]);
  });

  test('by the time at which it was written, newest first', async () => {
    await savedInTurn(growing(3));
    const written = (await keptStates(notebook, visitOf().id)).map((state) => state.written);
    expect(written).toEqual([1_790_000_060_000, 1_790_000_000_000]);
  });

  test('and keeps ten of many: the five latest and others back to the first', async () => {
    await savedInTurn(growing(31));
    const kept = await entriesKept();
    expect(kept).toHaveLength(10);
    expect(kept.slice(0, 5)).toEqual([30, 29, 28, 27, 26]);
    expect(kept.at(-1)).toBe(1);
  });

  test('also when the file takes another name with the place', async () => {
    const store = visitStore(notebook, null);
    await store.save(visitOf({ place: null }));
    await store.save(moved(visitOf({ place: null }), 'Sallow Mere'));
    await store.save(logging(moved(visitOf({ place: null }), 'Sallow Mere'), 'owl'));
    expect(await entriesKept()).toEqual([1, 1]);
  });

  test('behind a link as well as in a plain file', async () => {
    const real = join(notebook, 'real.json');
    const path = join(notebook, 'visits', '2026', '2026-11-14-sallow-mere.json');
    await mkdir(join(path, '..'), { recursive: true });
    await writeFile(real, visitText(visitOf()));
    await symlink(real, path);
    const read = await readVisit(path);
    if ('problem' in read) throw new Error(read.problem);
    await visitStore(notebook, read).save(logging(read.visit, 'owl'));
    expect(await entriesKept()).toEqual([1]);
    expect(JSON.parse(await readFile(real, 'utf8')).entries).toHaveLength(2);
  });
});

describe('what can not be kept', () => {
  test('never fails a save', async () => {
    await writeFile(join(notebook, 'states'), 'in the way');
    const store = visitStore(notebook, null);
    for (const visit of growing(3)) await store.save(visit);
    await rm(join(notebook, 'states'));
    await store.save(growing(4)[3] ?? visitOf());
    expect(await entriesKept()).toEqual([3]);
  });

  test('is kept again after the folder was taken away', async () => {
    const store = visitStore(notebook, null);
    const [one, two, three, four] = growing(4);
    for (const visit of [one, two]) await store.save(visit ?? visitOf());
    await rm(join(notebook, 'states'), { recursive: true });
    await store.save(three ?? visitOf());
    await store.save(four ?? visitOf());
    expect(await entriesKept()).toEqual([3]);
  });

  test('twice is kept once: a save that is tried again adds no state', async () => {
    const path = join(notebook, 'visit.json');
    await writeFile(path, visitText(visitOf()));
    const keep = stateKeeper(notebook);
    for (let time = 0; time < 3; time += 1) await keep(visitOf().id, path, 1_790_000_000_000.25);
    expect(await readdir(join(notebook, 'states', visitOf().id))).toEqual([
      '20260921T141320.000Z.json',
    ]);
  });

  test('is told where a kept state can not be read', async () => {
    await savedInTurn(growing(3));
    const folder = join(notebook, 'states', visitOf().id);
    const [first = ''] = (await readdir(folder)).sort();
    await writeFile(join(folder, first), '{');
    await writeFile(join(folder, 'notes.json'), 'no state');
    expect(await entriesKept()).toEqual([2, null]);
  });
});

test('the name of a moment says the moment again, and sorts by it', () => {
  const moments = fc.integer({ min: 0, max: Date.UTC(9999, 11, 31) });
  fc.assert(
    fc.property(moments, moments, (one, two) => {
      expect(momentIn(momentName(one))).toBe(one);
      expect(momentName(one) < momentName(two)).toBe(one < two);
    }),
  );
  for (const name of ['', '2026-11-14', '20261399T000000.000Z', '20261114T074105.123Z.json'])
    expect(momentIn(name)).toBeNull();
});
