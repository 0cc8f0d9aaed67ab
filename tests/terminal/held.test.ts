import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { onlyVisit, told } from '../commands/run.ts';
import { freshFolder } from '../notebook/visits.ts';
import { begin } from './terminal.ts';

test('a visit that another program has open can be read, and is logged into by one alone', async () => {
  const notebook = freshFolder();
  const first = begin({ notebook });
  await first.shows('log>');
  first.send('tuf 12\r');
  await first.shows(/1 entry.*all saved/);

  const second = begin({ notebook });
  await second.shows(
    new RegExp(`open in another program \\(process ${first.pid}\\s[\\s\\S]*You\\s+can\\s+read`),
  );
  expect(second.screen()).toMatch(/1 entry, read only[\s\S]*Tufted Duck/);
  second.send('wren\r');
  await second.shows(/log> wren[\s\S]*open in another program/);
  second.send('\u001bu');
  await second.shows(/open in another program/);
  second.send('\u001bq');
  expect((await second.ends()).code).toBe(0);

  first.send('mallard 3\r');
  await first.shows(/2 entries.*all saved/);
  first.send('\u001bq');
  await first.ends();
  expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12', 'Mallard 3']);
  expect(await readdir(notebook)).not.toContain('locks');
});

test.each(['SIGKILL', 'SIGTERM'] as const)(
  'a program that is ended by %s keeps nobody from going on',
  async (signal) => {
    const notebook = freshFolder();
    const first = begin({ notebook });
    await first.shows('log>');
    first.send('tuf 12\r');
    await first.shows(/1 entry.*all saved/);
    first.signal(signal);
    await first.ends();
    expect((await readdir(notebook)).includes('locks')).toBe(signal === 'SIGKILL');
    const second = begin({ notebook });
    await second.shows(/goes on[\s\S]*/);
    second.send('mallard 3\r');
    await second.shows(/2 entries.*all saved/);
  },
);

test('a visit that can not be saved in its place is written whole where the user says', async () => {
  const notebook = freshFolder();
  const stick = freshFolder();
  const journey = begin({ notebook });
  await journey.shows('log>');
  await writeFile(join(notebook, 'visits'), 'in the way');
  journey.send('tuf 12\r');
  await journey.shows('NOT SAVED');
  journey.send(`\u001bo${stick}\r`);
  await journey.shows(/NOT SAVED[\s\S]*The visit up to now is also in/);
  const [name = ''] = await readdir(stick);
  expect(told(JSON.parse(await readFile(join(stick, name), 'utf8')))).toEqual(['Tufted Duck 12']);
  await rm(join(notebook, 'visits'));
  await mkdir(join(notebook, 'visits'));
  await journey.shows(/1 entry.*all saved/);
  expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12']);
});
