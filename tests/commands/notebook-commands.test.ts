import { spawn } from 'node:child_process';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import { lockVisit } from '../../src/notebook/lock.ts';
import { visitText } from '../../src/notebook/visit-file.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { freshFolder, logging, visitOf } from '../notebook/visits.ts';
import { fileNames, onlyVisit, PROGRAM, run } from './run.ts';

const MERE = '2026-11-14-sallow-mere';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

async function put(visit: Visit | string, name = `visits/2026/${MERE}.json`): Promise<void> {
  const path = join(notebook, name);
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, typeof visit === 'string' ? visit : visitText(visit));
}

/** Holds the visit as another program would, to the end of the test. */
async function hold(): Promise<void> {
  const lock = await lockVisit(notebook, visitOf().id);
  if ('heldBy' in lock) throw new Error('It is held already.');
  onTestFinished(() => lock.release());
}
const WHO = `process ${process.pid} on ${hostname()}, since`;

const tussock = (...args: string[]) => run(args, { notebook });
const lines = (input: string) => run(['field', '--stdin'], { notebook, input });

describe('tussock check', () => {
  test('says that a notebook is whole', async () => {
    await put(visitOf());
    expect(await tussock('check')).toMatchObject({ code: 0, answers: ['The notebook is whole.'] });
  });

  test('tells one finding a line with the way out, mends, and then finds nothing new', async () => {
    await put(visitOf());
    await put('{', 'visits/2026/2026-11-15-withy-lane.json');
    await put('{', 'lists/own-moths.json');
    const before = await tussock('check');
    expect(before.code).toBe(1);
    expect(before.answers).toEqual([
      "visits/2026/2026-11-15-withy-lane.json: can't be read: it is not whole JSON: it breaks off in line 1. tussock check --mend moves it to set-aside; no earlier state of it is kept.",
      expect.stringMatching(/^lists\/own-moths\.json: can't be read/),
      '2 faults.',
    ]);
    expect((await fileNames(notebook)).length).toBe(2);
    const mended = await tussock('check', '--mend');
    expect(mended.answers[0]).toMatch(/withy-lane\.json: moved to set-aside\/.*\.$/);
    expect(mended).toMatchObject({ code: 1, answers: { length: 3 } });
    const again = await tussock('check', '--mend');
    expect(again.answers).toEqual(mended.answers.slice(1));
  });

  test('ends well where something is only worth a look', async () => {
    await put('text', 'notes.txt');
    const { code, answers } = await tussock('check');
    expect(code).toBe(0);
    expect(answers.at(-1)).toBe('No fault, 1 worth a look.');
  });

  test('sends no control character of a file to the terminal', async () => {
    const harm = '\u001b[2J\u0007\u202e';
    await put(visitOf(), `visits/2026/2026-11-13-${harm}.json`);
    const broken = JSON.stringify({ ...visitOf(), start: harm, [harm]: 1, timeZone: harm });
    await put(broken, 'visits/2026/2026-11-12-walk.json');
    const { out } = await tussock('check');
    expect(out).not.toMatch(/[^\P{Cc}\n]|\u202e/u);
    expect(out).toContain('2026-11-13-·[2J··');
  });

  test('refuses a notebook that is not there', async () => {
    const missing = join(notebook, 'missing');
    expect((await tussock('check', '--notebook', missing)).code).toBe(3);
  });
});

describe('tussock states', () => {
  test('lists what a walk kept, newest first, and brings one back as a save', async () => {
    await lines('tuf 12\nmal 3\nwren\n');
    const name = (await fileNames(notebook))[0]?.slice(5) ?? '';
    const listed = await tussock('states', name);
    expect(listed.answers).toEqual([
      'Now: 3 entries, 3 changes',
      expect.stringMatching(
        /^ {2}1 {2}\d{4}-\d\d-\d\d \d\d:\d\d:\d\d {2}2 entries, 2 changes, \d+ KiB$/,
      ),
      expect.stringMatching(/^ {2}2 {2}.* {2}1 entry, 1 change, \d+ KiB$/),
      'tussock states VISIT --bring-back NUMBER makes one of them the visit again.',
    ]);
    const back = await tussock('states', name, '--bring-back', '2');
    expect(back.answers[0]).toMatch(
      /is again as it was on .*: 1 entry, 1 change; before, 3 entries, 3 changes\. What stood is kept as a state\.$/,
    );
    expect((await onlyVisit(notebook)).entries).toHaveLength(1);
    const after = await tussock('states', name);
    expect(after.answers[1]).toContain('3 entries, 3 changes');
    await tussock('states', name, '--bring-back', '1');
    expect((await onlyVisit(notebook)).entries).toHaveLength(3);
  });

  test.each(['0', '3', 'one'])('refuses the number %s', async (number) => {
    await lines('tuf 12\nmal 3\nwren\n');
    const name = (await fileNames(notebook))[0]?.slice(5) ?? '';
    const { code, complaints } = await tussock('states', name, '--bring-back', number);
    expect(code).toBe(2);
    expect(complaints).toEqual([`tussock: There is no state ${number}: give one from 1 to 2.`]);
  });

  test('tells a state that can not be read, and does not bring it back', async () => {
    await put(logging(visitOf(), 'owl'));
    await put('{', `states/${visitOf().id}/20261114T074105.000Z.json`);
    const { answers } = await tussock('states', MERE);
    expect(answers[1]).toMatch(
      /^ {2}1 {2}2026-11-14 07:41:05 {2}can't be read: it is not whole JSON/,
    );
    expect((await tussock('states', MERE, '--bring-back', '1')).code).toBe(1);
    expect((await onlyVisit(notebook)).entries).toHaveLength(2);
  });
});

describe('tussock remove', () => {
  test('sets a visit aside whole and says where', async () => {
    await put(visitOf());
    const { code, answers } = await tussock('remove', MERE);
    expect(code).toBe(0);
    const [aside = ''] = await readdir(join(notebook, 'set-aside'));
    expect(aside).toMatch(/^\d{8}T\d{6}\.\d{3}Z-2026-11-14-sallow-mere\.json$/);
    expect(answers[0]).toContain(join(notebook, 'set-aside', aside));
    expect(await readFile(join(notebook, 'set-aside', aside), 'utf8')).toBe(visitText(visitOf()));
    expect(await fileNames(notebook)).toEqual([]);
  });

  test('moves no file that is none of the visits, whatever leads to it', async () => {
    await put(visitOf());
    await put(visitOf(), 'elsewhere.json');
    for (const name of ['elsewhere.json', `../../${notebook}/elsewhere.json`, 'missing'])
      expect((await tussock('remove', name)).code).toBe(1);
    expect(await readdir(notebook)).toContain('elsewhere.json');
  });
});

describe('a visit that another program holds', () => {
  test('is neither removed nor brought back to a state', async () => {
    await put(visitOf());
    await put(visitOf({ logged: [] }), `states/${visitOf().id}/20261114T074105.000Z.json`);
    await hold();
    for (const args of [
      ['remove', MERE],
      ['states', MERE, '--bring-back', '1'],
    ]) {
      const { code, complaints } = await tussock(...args);
      expect(code).toBe(3);
      expect(complaints[0]).toContain(`This visit is open in another program (${WHO}`);
    }
    expect(await onlyVisit(notebook)).toEqual(visitOf());
  });

  test('takes no lines, and can be logged into again once that program is gone', async () => {
    const first = spawn(process.execPath, [PROGRAM, 'field', '--stdin'], {
      env: { PATH: process.env.PATH ?? '', TZ: 'UTC', TUSSOCK_NOTEBOOK: notebook },
    });
    onTestFinished(() => void first.kill());
    first.stdin.write('tuf 12\n');
    await vi.waitFor(async () => expect(await fileNames(notebook)).toHaveLength(1), 20_000);
    const second = await lines('mallard 3\n');
    expect(second.code).toBe(3);
    expect(second.complaints).toEqual([
      expect.stringMatching(
        `This visit is open in another program \\(process ${first.pid} on .*, since \\d\\d:\\d\\d UTC\\)\\. Leave that first; nothing was logged\\.`,
      ),
    ]);
    const ended = new Promise((resolve) => first.on('close', resolve));
    first.stdin.end();
    await ended;
    expect((await lines('mallard 3\n')).code).toBe(0);
    expect((await onlyVisit(notebook)).entries).toHaveLength(2);
    expect(await readdir(notebook)).not.toContain('locks');
  });
});

describe('a visit of a newer version', () => {
  const newer = () =>
    JSON.stringify({
      ...visitOf({ start: new Date().toISOString().slice(0, 19).concat('+00:00') }),
      formatVersion: 99,
    });

  test('is exported with a word on it, takes no lines, and stays as it is', async () => {
    const text = newer();
    const name = JSON.parse(text).start.slice(0, 10);
    await put(text, `visits/${name.slice(0, 4)}/${name}-sallow-mere.json`);
    const exported = await tussock('export', '--last');
    expect(exported.code).toBe(0);
    expect(exported.out).toContain('brown bird');
    expect(exported.complaints).toContainEqual(
      expect.stringContaining('was written by a newer Tussock (format 99;'),
    );
    const logged = await lines('tuf\n');
    expect(logged.code).toBe(3);
    expect(logged.complaints[0]).toContain('was written by a newer Tussock');
    expect(JSON.stringify(await onlyVisit(notebook))).toBe(text);
  });
});
