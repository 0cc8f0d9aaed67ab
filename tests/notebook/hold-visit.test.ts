import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { dirname } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { holdVisit } from '../../src/commands/hold-visit.ts';
import { lockPath } from '../../src/notebook/lock-file.ts';
import { visitText } from '../../src/notebook/visit-file.ts';
import { visitPath } from '../../src/notebook/visit-name.ts';
import { visitStore } from '../../src/notebook/visit-store.ts';
import { epochOf } from '../../src/visit/time.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { freshFolder, logging, visitOf } from './visits.ts';

/** What another program does between our look at the notebook and our lock. */
const between = vi.hoisted(() => ({ does: async () => {} }));
vi.mock('../../src/notebook/lock.ts', async (original) => {
  const real = await original<typeof import('../../src/notebook/lock.ts')>();
  return {
    ...real,
    lockVisit: async (...given: Parameters<typeof real.lockVisit>) => {
      await between.does();
      return real.lockVisit(...given);
    },
  };
});

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});
afterEach(() => {
  between.does = async () => {};
});

const PATH = () => visitPath(notebook, visitOf());
const held = () => holdVisit(notebook, null, epochOf(visitOf().start) + 60_000, 'Europe/London');

async function keep(visit: Visit): Promise<void> {
  await mkdir(dirname(PATH()), { recursive: true });
  await writeFile(PATH(), visitText(visit));
}

test('a visit that another program saved between our look and our lock is looked at again', async () => {
  await keep(visitOf());
  let looks = 0;
  between.does = async () => {
    looks += 1;
    if (looks < 3) await keep(logging(visitOf(), `owl ${looks}`));
  };
  const hold = await held();
  expect(looks).toBe(3);
  const { visit, opened } = hold.beginning;
  expect(visit.entries.map(({ words }) => words)).toEqual(['brown bird', 'owl 2']);
  const saved = await visitStore(notebook, opened).save(logging(visit, 'hare'));
  expect(saved).toEqual({ path: PATH(), leftAlone: null });
  hold.release();
});

test('a visit that is ended between our look and our lock is not gone on with', async () => {
  await keep(visitOf());
  between.does = async () => {
    between.does = async () => {};
    await keep({ ...visitOf(), end: visitOf().start });
  };
  const hold = await held();
  expect(hold.beginning.opened).toBeNull();
  expect(hold.beginning.visit.id).not.toBe(visitOf().id);
  hold.release();
});

test('a visit that never comes to rest is held all the same, and what the other wrote is left alone', async () => {
  await keep(visitOf());
  let looks = 0;
  between.does = async () => {
    looks += 1;
    await keep(logging(visitOf(), `owl ${looks}`));
  };
  const hold = await held();
  expect(looks).toBe(5);
  const theirs = await readFile(PATH(), 'utf8');
  const { visit, opened } = hold.beginning;
  const saved = await visitStore(notebook, opened).save(logging(visit, 'hare'));
  expect(saved.leftAlone).toBe(PATH());
  expect(await readFile(PATH(), 'utf8')).toBe(theirs);
  hold.release();
});

test('a visit that another program took between our look and our lock can be read only', async () => {
  await keep(visitOf());
  between.does = async () => {
    const path = lockPath(notebook, visitOf().id);
    await mkdir(dirname(path), { recursive: true });
    const holder = {
      process: process.ppid,
      host: hostname(),
      began: '2026-11-14T07:40:00.000Z',
      processMark: null,
      token: visitOf().id,
    };
    await writeFile(path, JSON.stringify(holder));
  };
  const { readOnly, beginning } = await held();
  expect(readOnly?.onScreen).toContain(`process ${process.ppid} on ${hostname()}`);
  expect(beginning.visit).toEqual(visitOf());
});
