import { mkdir, rm, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { checkNotebook } from '../../src/notebook/check.ts';
import { lockVisit } from '../../src/notebook/lock.ts';
import { lockPath } from '../../src/notebook/lock-file.ts';
import { readVisits, visitFiles } from '../../src/notebook/notebook.ts';
import { keptStates } from '../../src/notebook/states.ts';
import { visitStore } from '../../src/notebook/visit-store.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { type Fault, type FaultyDisk, faultyDisk } from './faulty-disk.ts';
import { freshFolder, idOf, logging, moved, visitOf } from './visits.ts';

let notebook: string;
let twoNames: number;
beforeEach(() => {
  notebook = freshFolder();
  twoNames = 0;
});

const CODES = ['ENOSPC', 'EIO', 'EACCES', 'EROFS'];

/** Five entries saved one by one, with a place that comes between and gives the file its name. */
const STATES: Visit[] = [];
for (const words of ['owl', 'hare', null, 'coot', 'teal', 'wren']) {
  const last = STATES.at(-1) ?? visitOf({ place: null, logged: [] });
  STATES.push(words === null ? moved(last, 'Sallow Mere') : logging(last, words));
}

async function locked(disk: FaultyDisk['disk']): Promise<void> {
  const lock = await lockVisit(notebook, idOf(1), disk);
  if ('heldBy' in lock) throw new Error('The lock is held by nobody but ourselves.');
  lock.release();
}

/** What a program that starts now finds: one visit, whole, or none yet. */
async function stands(): Promise<Visit | null> {
  const { visits, problems } = await readVisits(await visitFiles(notebook));
  expect(problems).toEqual([]);
  expect(visits.length).toBeLessThan(2);
  return visits[0]?.visit ?? null;
}

/** A name for a call that is the same in every run: without folders and random parts. */
function plain(call: string): string {
  return call.replace(notebook, '').replaceAll(/[\da-f]{8}(?:-[\da-f-]{27})?/g, '*');
}

async function callsOfAll(): Promise<string[]> {
  const { disk, calls } = faultyDisk(null);
  await locked(disk);
  const store = visitStore(notebook, null, disk);
  for (const state of STATES) await store.save(state);
  const names = calls.map(plain);
  await clean();
  return names;
}

async function clean(): Promise<void> {
  await rm(notebook, { recursive: true });
  await mkdir(notebook);
}

/** Each call of all saves with each fault, with the number of cases tried. */
async function eachCase(kinds: Fault['kind'][], codes: string[]): Promise<Fault[]> {
  const calls = await callsOfAll();
  return calls.flatMap((_, at) =>
    kinds.flatMap((kind) => codes.map((code) => ({ at, kind, code }))),
  );
}

async function savedThroughFault(fault: Fault): Promise<void> {
  const faulty = faultyDisk(fault);
  await locked(faulty.disk);
  const store = visitStore(notebook, null, faulty.disk);
  let before: Visit | null = null;
  for (const [at, state] of STATES.entries()) {
    const failed = await store.save(state).then(
      (saved) => {
        expect(saved.leftAlone).toBeNull();
        return false;
      },
      () => true,
    );
    const now = await stands();
    if (!failed) expect(now).toEqual(state);
    else expect([before, state]).toContainEqual(now);
    before = now;
    if (faulty.struck()) faulty.mend();
    if (!failed) continue;
    const call = plain(faulty.calls[fault.at] ?? '');
    if (fault.kind !== 'errors') expect(call).not.toMatch(/states|locks/);
    if (at === STATES.length - 1) {
      expect(await store.save(state)).toMatchObject({ leftAlone: null });
      expect(await stands()).toEqual(state);
    }
  }
  expect((await stands())?.place?.name).toBe('Sallow Mere');
  if ((await visitFiles(notebook)).length > 1) await expectCopy();
  for (const { read } of await keptStates(notebook, idOf(1)))
    expect(STATES).toContainEqual('visit' in read ? read.visit : read);
}

/** A move that broke off between its two names leaves both: the older state is known as a copy. */
async function expectCopy(): Promise<void> {
  twoNames += 1;
  const findings = await checkNotebook(notebook, Date.now());
  const ofVisits = findings.filter(({ path }) => path.startsWith('visits/'));
  expect(ofVisits).toMatchObject([{ cure: { do: 'set aside' } }]);
}

async function savedUntilCrash(fault: Fault): Promise<void> {
  const { disk } = faultyDisk(fault);
  const lock = await lockVisit(notebook, idOf(1), disk);
  const store = visitStore(notebook, null, disk);
  let saved: Visit | null = null;
  let next: Visit | null = null;
  try {
    for (const state of STATES) {
      next = state;
      await store.save(state);
      saved = state;
    }
  } catch {
    // The program has ended.
  }
  expect([saved, next]).toContainEqual(await stands());
  // Another program goes on, as after a start.
  const { visits } = await readVisits(await visitFiles(notebook));
  const last = STATES.at(-1) as Visit;
  const again = visitStore(notebook, visits[0] ?? null);
  expect(await again.save(last)).toMatchObject({ leftAlone: null });
  expect(await stands()).toEqual(last);
  if ('release' in lock) lock.release();
}

async function tried(faults: Fault[], one: (fault: Fault) => Promise<void>): Promise<number> {
  for (const fault of faults) {
    await one(fault).catch((error: Error) => {
      error.message = `${JSON.stringify(fault)}: ${error.message}`;
      throw error;
    });
    await clean();
  }
  expect(twoNames).toBeLessThan(faults.length / 20);
  return faults.length;
}

describe('five entries saved one by one, where any one call to the disk goes wrong', {
  timeout: 240_000,
}, () => {
  test('go through every step of a save, a move, a kept state and a lock', async () => {
    const steps = new Set((await callsOfAll()).map((call) => call.split(' ')[0]));
    const known = ['chmod', 'close', 'link', 'mkdir', 'open', 'realpath', 'rename', 'rm', 'stat'];
    expect([...steps].sort()).toEqual(expect.arrayContaining([...known, 'sync', 'write']));
  });

  test('stand whole as before or after when the call fails, and the next save keeps all', async () => {
    expect(await tried(await eachCase(['error'], CODES), savedThroughFault)).toBeGreaterThan(400);
  });

  test('are not taken for the work of another program when the call is done and fails all the same', async () => {
    const cases = await eachCase(['error after'], ['EIO']);
    expect(await tried(cases, savedThroughFault)).toBeGreaterThan(100);
  });

  test('stand whole when every call fails from there on, and the next save keeps all', async () => {
    const cases = await eachCase(['errors'], ['ENOSPC', 'EROFS']);
    expect(await tried(cases, savedThroughFault)).toBeGreaterThan(200);
  });

  test('stand whole as before or after when the program ends before the call or behind it', async () => {
    const cases = await eachCase(['crash', 'crash after'], ['EIO']);
    expect(await tried(cases, savedUntilCrash)).toBeGreaterThan(200);
  });
});

test('a fault while a stale lock is cleared away keeps nobody from opening, then or later', async () => {
  const path = lockPath(notebook, idOf(1));
  const stale = async () => {
    await mkdir(join(path, '..'), { recursive: true });
    const holder = {
      process: 2 ** 22 + 1,
      host: hostname(),
      began: '2026-11-14T07:40:00.000Z',
      processMark: null,
      token: idOf(99),
    };
    await writeFile(path, JSON.stringify(holder));
  };
  await stale();
  const { disk, calls } = faultyDisk(null);
  await locked(disk);
  expect(calls.some((call) => call.startsWith('rename'))).toBe(true);
  for (let at = 0; at < calls.length; at += 1) {
    await clean();
    await stale();
    const faulty = faultyDisk({ at, kind: 'error', code: 'EIO' });
    const lock = await lockVisit(notebook, idOf(1), faulty.disk);
    if ('release' in lock) lock.release();
    await rm(path, { force: true });
    await locked(faulty.disk);
  }
  expect(calls.length).toBeGreaterThan(10);
});
