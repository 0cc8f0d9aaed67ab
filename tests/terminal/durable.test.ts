import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, onTestFinished, test, vi } from 'vitest';
import { fileNames, onlyVisit, told } from '../commands/run.ts';
import { freshFolder } from '../notebook/visits.ts';
import { begin, COMMAND } from './terminal.ts';

test('a kill once all is said to be saved loses nothing, and undo goes on after the restart', async () => {
  const notebook = freshFolder();
  const first = begin({ notebook });
  await first.shows('log>');
  first.send('tuf 12\rmal 3: on the bank\r');
  await first.shows(/2 entries.*all saved/);
  first.signal('SIGKILL');
  expect((await first.ends()).signal).toBe(9);
  expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12', 'Mallard 3 (on the bank)']);

  const second = begin({ notebook });
  await second.shows(/2 entries.*all saved[\s\S]*Mallard[\s\S]*Tufted Duck/);
  second.send('\u001bu');
  await second.shows(/1 entry.*all saved/);
  second.send('wren\r');
  await second.shows(/2 entries.*all saved/);
  const visit = await onlyVisit(notebook);
  expect(visit.entries.map(({ number, struck }) => [number, struck === null])).toEqual([
    [1, true],
    [2, false],
    [3, true],
  ]);
});

test('a kill in the moment after the file holds the last line loses nothing', async () => {
  const notebook = freshFolder();
  const first = begin({ notebook });
  await first.shows('log>');
  first.send('tuf 12\r');
  await vi.waitFor(async () => expect((await onlyVisit(notebook)).entries).toHaveLength(1), {
    interval: 1,
    timeout: 5000,
  });
  first.signal('SIGKILL');
  await first.ends();
  const second = begin({ notebook });
  await second.shows(/1 entry.*all saved/);
  expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12']);
});

test.each([2, 11])(
  'a kill within a burst, at entry %d, leaves a whole file with all that was shown as saved',
  async (count) => {
    const notebook = freshFolder();
    const journey = begin({ notebook, rows: 50 });
    await journey.shows('log>');
    for (let at = 0; at < 30; at += 1) journey.send(`tuf ${at}\r`);
    await journey.shows((screen) => Number(/(\d+) entr(?:y|ies)/.exec(screen)?.[1] ?? 0) >= count);
    const rows = journey.screen().match(/^ +\d+ \d\d:\d\d .*$/gm) ?? [];
    const saved = rows.filter((row) => !row.includes('saving'));
    journey.signal('SIGKILL');
    await journey.ends();
    const names = await fileNames(notebook);
    const entries = names.length === 0 ? [] : (await onlyVisit(notebook)).entries;
    expect(entries.length).toBeGreaterThanOrEqual(saved.length);
    expect(entries.map(({ typed }) => typed)).toEqual(entries.map((_, at) => `tuf ${at}`));
  },
);

test('what can not be saved is said on the screen, tried again, and saved once it can be', async () => {
  const notebook = freshFolder();
  await writeFile(join(notebook, 'elsewhere'), 'in the way');
  const journey = begin({ notebook });
  await journey.shows('a new notebook');
  await rename(join(notebook, 'elsewhere'), join(notebook, 'visits'));
  journey.send('tuf 12\r');
  await journey.shows('NOT SAVED: a file stands in its way');
  await rm(join(notebook, 'visits'));
  journey.send('mal 3\r');
  await journey.shows(/2 entries.*all saved/);
  expect(journey.screen()).not.toContain('NOT SAVED');
  expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12', 'Mallard 3']);
});

test('what could not be saved stands in the terminal after leaving, and the exit code is 3', async () => {
  const notebook = freshFolder();
  await writeFile(join(notebook, 'elsewhere'), 'in the way');
  const journey = begin({ notebook, columns: 160 });
  await journey.shows('a new notebook');
  await rename(join(notebook, 'elsewhere'), join(notebook, 'visits'));
  journey.send('tuf 12: by the raft\rzzqxv\r');
  await journey.shows('NOT SAVED');
  journey.send('\u001bq');
  expect((await journey.ends()).code).toBe(3);
  expect(journey.terminal.buffer.active.type).toBe('normal');
  expect(journey.screen()).toMatch(
    /NOT SAVED[\s\S]*^ +1 \S+ 12 Tufted Duck: by the raft$[\s\S]*^ +2 \S+ zzqxv$/m,
  );
});

test('a file that another program changed meanwhile is left alone, and both states stand', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook });
  await journey.shows('log>');
  journey.send('tuf 12\r');
  await journey.shows(/1 entry.*all saved/);
  const [name = ''] = await fileNames(notebook);
  await writeFile(join(notebook, 'visits', name), 'theirs');
  journey.send('mal 3\r');
  await journey.shows(/Another program changed[\s\S]*left as it is/);
  await journey.shows(/2 entries.*all saved/);
  expect((await fileNames(notebook)).sort()).toEqual(
    [name.replace('.json', '-2.json'), name].sort(),
  );
});

test('the end of the terminal ends the program, with its last line saved', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook });
  await journey.shows('log>');
  journey.send('tuf 12\rmal 3\r');
  await journey.shows('Mallard');
  journey.hangUp();
  await journey.ends();
  expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12', 'Mallard 3']);
});

test.skipIf(process.platform !== 'linux')(
  'a terminal that goes away without a signal ends the program too',
  async () => {
    const notebook = freshFolder();
    // Of a session of its own, the program is not told of the hang-up by the system.
    const inner = `echo $$ > pid; ${COMMAND}; echo $? > left`;
    await writeFile(join(notebook, 'start.sh'), inner);
    const script = 'exec 3<&0; setsid sh start.sh <&3 & wait';
    const journey = begin({ notebook, instead: ['/bin/sh', '-c', script] });
    await journey.shows('log>');
    journey.send('tuf 12\r');
    await journey.shows(/1 entry.*all saved/);
    const session = Number(await readFile(join(notebook, 'pid'), 'utf8'));
    onTestFinished(() => {
      try {
        process.kill(-session, 'SIGKILL');
      } catch {
        // It has ended, as it should.
      }
    });
    journey.hangUp();
    await vi.waitFor(
      async () => expect(await readFile(join(notebook, 'left'), 'utf8')).toBe('129\n'),
      {
        timeout: 5000,
      },
    );
    expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12']);
  },
);
