import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { mkdir, readdir, stat, utimes, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import { lockVisit } from '../../src/notebook/lock.ts';
import { type Holder, lockPath, processMark, readLock } from '../../src/notebook/lock-file.ts';
import { freshFolder, idOf } from './visits.ts';

const ID = idOf(1);
const TAKER = fileURLToPath(new URL('./lock-taker.ts', import.meta.url));

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});
afterEach(() => {
  vi.useRealTimers();
});

async function taken() {
  const lock = await lockVisit(notebook, ID);
  if (!('heldBy' in lock)) onTestFinished(() => lock.release());
  return lock;
}

/** Puts a lock there as another program would have left it. */
async function left(holder: Partial<Holder>, minutesAgo = 0, id = ID): Promise<void> {
  const whole: Holder = {
    process: process.pid,
    host: hostname(),
    began: '2026-11-14T07:40:00.000Z',
    processMark: await processMark(process.pid),
    token: idOf(99),
    ...holder,
  };
  await put(JSON.stringify(whole), minutesAgo, id);
}

async function put(text: string, minutesAgo: number, id = ID): Promise<void> {
  const path = lockPath(notebook, id);
  await mkdir(join(notebook, 'locks'), { recursive: true });
  await writeFile(path, text);
  const then = Date.now() / 1000 - minutesAgo * 60;
  await utimes(path, then, then);
}

/** The number of a process that has ended. */
async function goneProcess(): Promise<number> {
  const child = spawn(process.execPath, ['-e', '']);
  await new Promise((resolve) => child.on('close', resolve));
  return child.pid ?? 0;
}

describe('a visit', () => {
  test('is taken once, and again after it was released', async () => {
    const first = await taken();
    if ('heldBy' in first) throw new Error('It was held.');
    expect(await taken()).toMatchObject({ heldBy: { process: process.pid, host: hostname() } });
    first.release();
    expect(await taken()).toHaveProperty('release');
  });

  test('leaves no file when it is released, and takes none that is not its own', async () => {
    const lock = await taken();
    if ('heldBy' in lock) throw new Error('It was held.');
    await left({ token: idOf(7) });
    lock.release();
    expect((await readLock(lockPath(notebook, ID)))?.holder?.token).toBe(idOf(7));
    const other = await lockVisit(notebook, idOf(2));
    if ('heldBy' in other) throw new Error('It was held.');
    other.release();
    expect(await readdir(join(notebook, 'locks'))).toEqual([`${ID}.json`]);
  });

  test('stays held as long as its program says so every half minute', async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    await taken();
    const path = lockPath(notebook, ID);
    await utimes(path, 1000, 1000);
    await vi.advanceTimersByTimeAsync(30_000);
    await vi.waitFor(async () =>
      expect((await stat(path)).mtimeMs).toBeGreaterThan(Date.now() - 60_000),
    );
  });

  test('is not locked, and that is no failure, where nothing can be written', async () => {
    await writeFile(join(notebook, 'locks'), 'in the way');
    expect(await taken()).toHaveProperty('release');
    expect(await taken()).toHaveProperty('release');
  });
});

describe('a lock holds nothing any more', () => {
  test('where its process is gone', async () => {
    await left({ process: await goneProcess() });
    expect(await taken()).toHaveProperty('release');
  });

  test.runIf(process.platform === 'linux')(
    'where its number was given to another process since',
    async () => {
      await left({ processMark: '1' });
      expect(await taken()).toHaveProperty('release');
    },
  );

  test('where another machine has been silent for ten minutes', async () => {
    await left({ host: 'another', process: 1 }, 11);
    expect(await taken()).toHaveProperty('release');
  });

  test('where its file is broken and old', async () => {
    await put('{', 11);
    expect(await taken()).toHaveProperty('release');
  });
});

describe('a lock holds', () => {
  test.each<[string, Partial<Holder>, number]>([
    ['while its process runs, however old', {}, 60 * 24],
    ['while another machine has spoken lately', { host: 'another', process: 1 }, 9],
    ['while the system has no mark of the process', { processMark: null }, 60],
  ])('%s', async (_, holder, minutesAgo) => {
    await left(holder, minutesAgo);
    expect(await taken()).toMatchObject({ heldBy: { token: idOf(99) } });
  });

  test('while a file that can not be understood is new', async () => {
    await put('', 1);
    expect(await taken()).toEqual({ heldBy: null });
  });
});

const RACES = Array.from({ length: 20 }, (_, at) => idOf(at + 1));
const PROGRAMS = 5;

interface Taker {
  child: ChildProcessWithoutNullStreams;
  /** Resolves with what it says next, a line. */
  says(): Promise<string>;
}

function taker(ids: readonly string[]): Taker {
  const child = spawn(process.execPath, [TAKER, notebook, ...ids]);
  onTestFinished(() => void child.kill());
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  return { child, says: async () => (await lines.next()).value ?? 'nothing' };
}

/** What each of several programs says of each visit, where all begin at once. */
async function raced(): Promise<string[][]> {
  const takers = Array.from({ length: PROGRAMS }, () => taker(RACES));
  await Promise.all(takers.map((each) => each.says()));
  for (const { child } of takers) child.stdin.write('go');
  const said = await Promise.all(takers.map((each) => each.says()));
  return said.map((line) => line.split(' '));
}

describe('of several programs that try at once exactly one has the visit', () => {
  test.each(['stale', 'no'])('where %s locks stand', async (kind) => {
    if (kind === 'stale') {
      const process = await goneProcess();
      for (const id of RACES) await left({ process }, 0, id);
    }
    const said = await raced();
    for (const [at, id] of RACES.entries()) {
      const answers = said.map((each) => each[at]);
      expect(answers.filter((answer) => answer === 'won')).toHaveLength(1);
      const holder = (await readLock(lockPath(notebook, id)))?.holder;
      expect(new Set(answers)).toEqual(new Set(['won', String(holder?.process)]));
    }
    expect((await readdir(join(notebook, 'locks'))).sort()).toEqual(
      RACES.map((id) => `${id}.json`),
    );
  });

  test('and a program that was killed leaves a lock that the next one takes', async () => {
    const { child, says } = taker([ID]);
    expect(await says()).toBe('ready');
    child.stdin.write('go');
    expect(await says()).toBe('won');
    expect(await taken()).toMatchObject({ heldBy: { process: child.pid } });
    const ended = new Promise((resolve) => child.on('exit', resolve));
    child.kill('SIGKILL');
    await ended;
    expect(await taken()).toHaveProperty('release');
  });

  test('and a program that leaves takes its lock away', async () => {
    const { child, says } = taker([ID]);
    await says();
    child.stdin.write('go');
    expect(await says()).toBe('won');
    const ended = new Promise((resolve) => child.on('exit', resolve));
    child.stdin.end();
    await ended;
    expect(await readdir(notebook)).toEqual([]);
  });
});
