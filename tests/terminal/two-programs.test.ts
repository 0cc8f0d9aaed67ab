import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { readVisit, visitText } from '../../src/notebook/visit-file.ts';
import { visitPath } from '../../src/notebook/visit-name.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { fileNames, onlyVisit, run, told } from '../commands/run.ts';
import { freshFolder, logging, visitOf } from '../notebook/visits.ts';
import { begin, type Journey } from './terminal.ts';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

async function opened(words = 'tuf 12'): Promise<Journey> {
  const journey = begin({ notebook });
  await journey.shows('log>');
  journey.send(`${words}\r`);
  await journey.shows(/entr(?:y|ies), all saved/);
  return journey;
}

async function keep(folder: string, visit: Visit, copy = 1): Promise<void> {
  const path = visitPath(folder, visit, copy);
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, visitText(visit));
}

test('of two programs on one visit the second reads, says who logs, and logs once the first has left', async () => {
  const first = await opened();
  const second = begin({ notebook });
  await second.shows(new RegExp(`process ${first.pid}\\b`));
  second.send('wren\r');
  await second.shows(/read only[\s\S]*open in another program/);
  first.send('mallard 3\r');
  await first.shows(/2 entries, all saved/);
  first.send('\u001bq');
  expect((await first.ends()).code).toBe(0);
  second.send('\u001bq');
  expect((await second.ends()).code).toBe(0);
  const third = begin({ notebook });
  await third.shows(/2 entries, all saved/);
  third.send('wren\r');
  await third.shows(/3 entries, all saved/);
  third.send('\u001bq');
  await third.ends();
  expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12', 'Mallard 3', 'Wren 1']);
  expect(await readdir(notebook)).not.toContain('locks');
});

test('lines from standard input are refused while a screen has the visit, and taken when it has left', async () => {
  const first = await opened();
  const refused = await run(['field', '--stdin'], { notebook, input: 'wren\n' });
  expect(refused).toMatchObject({ code: 3, answers: [] });
  expect(refused.complaints[0]).toContain(`open in another program (process ${first.pid} on `);
  first.send('\u001bq');
  await first.ends();
  expect((await run(['field', '--stdin'], { notebook, input: 'wren\n' })).code).toBe(0);
  expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12', 'Wren 1']);
});

test('join leaves a visit that is open in a program, brings the others, and brings it later', async () => {
  const first = await opened();
  const [name = ''] = await fileNames(notebook);
  const read = await readVisit(`${notebook}/visits/${name}`);
  if ('problem' in read) throw new Error(read.problem);
  const there = freshFolder();
  await keep(there, logging(read.visit, 'their owl'));
  await keep(there, visitOf({ id: 2, logged: ['hare'] }));
  const held = await run(['join', there], { notebook });
  expect(held.code).toBe(1);
  expect(held.complaints).toEqual([
    expect.stringMatching(
      new RegExp(`was not joined\\. .*\\(process ${first.pid} on .*Leave that first`),
    ),
  ]);
  expect(held.answers.at(-1)).toBe('1 new visit.');
  first.send('mallard 3\r');
  await first.shows(/2 entries, all saved/);
  expect(first.screen()).not.toContain('Another program changed');
  first.send('\u001bq');
  await first.ends();
  expect(await run(['join', there], { notebook })).toMatchObject({ code: 0, complaints: [] });
  const joined = await readVisit(`${notebook}/visits/${name}`);
  if ('problem' in joined) throw new Error(joined.problem);
  expect(told(joined.visit).sort()).toEqual(['"their owl" 3', 'Mallard 3', 'Tufted Duck 12']);
});
