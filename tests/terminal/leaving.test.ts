import { existsSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { visitText } from '../../src/notebook/visit-file.ts';
import { onlyVisit, run, told } from '../commands/run.ts';
import { freshFolder, logging, visitOf } from '../notebook/visits.ts';
import { begin, COMMAND, type Journey } from './terminal.ts';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

/** The program inside a shell that tells its exit code and the terminal's modes afterwards. */
function inShell(): Journey {
  const script = `trap : INT TERM HUP; echo before; ${COMMAND}; echo "code $?"; stty -a`;
  return begin({ notebook, columns: 200, instead: ['/bin/sh', '-c', script] });
}

/** What must hold once the program has been left: the terminal is as it was before. */
function expectRestored(journey: Journey, screen: string): void {
  expect(journey.terminal.buffer.active.type).toBe('normal');
  expect(journey.terminal.modes.bracketedPasteMode).toBe(false);
  expect(journey.sent().lastIndexOf('\u001b[?25h')).toBeGreaterThan(
    journey.sent().lastIndexOf('\u001b[?25l'),
  );
  const modes = screen.split(/[\s;]+/);
  for (const mode of ['icanon', 'echo', 'isig', 'icrnl', 'opost']) expect(modes).toContain(mode);
}

describe('the terminal is as it was and one line sums up', () => {
  test.each([
    ['Esc and q', (journey: Journey) => journey.send('\u001bq'), 0],
    ['/quit', (journey: Journey) => journey.send('/quit\r'), 0],
    ['Ctrl-C', (journey: Journey) => journey.send('\u0003'), 130],
    ['SIGTERM', (journey: Journey) => journey.signal('SIGTERM'), 143],
    ['SIGHUP', (journey: Journey) => journey.signal('SIGHUP'), 129],
    ['SIGINT', (journey: Journey) => journey.signal('SIGINT'), 130],
  ])('after %s', async (_, leave, code) => {
    const journey = inShell();
    await journey.shows('log>');
    journey.send('tuf 12\rmal 3\r');
    await journey.shows(/2 entries.*all saved/);
    expect(journey.terminal.buffer.active.type).toBe('alternate');
    leave(journey);
    const screen = await journey.shows(/code \d+[\s\S]*icanon/);
    const lines = screen.split('\n');
    expect(lines[0]).toBe('before');
    expect(lines[1]).toMatch(
      /^No place yet: 2 entries, 2 species, watched \d:\d\d, still open for 12 hours\. .*\.json$/,
    );
    expect(lines[2]).toBe(`code ${code}`);
    expectRestored(journey, screen);
  });

  test('after a visit in which nothing was logged', async () => {
    const journey = inShell();
    await journey.shows('log>');
    journey.send('\u001bq');
    const screen = await journey.shows(/code 0[\s\S]*icanon/);
    expect(screen.split('\n')[1]).toBe('Nothing was logged; no file was written.');
    expectRestored(journey, screen);
  });

  test('after a SIGTERM as soon as the terminal is changed at all', async () => {
    const journey = inShell();
    await journey.shows(() => journey.sent().includes('\u001b[?2004h'));
    journey.signal('SIGTERM');
    const screen = await journey.shows(/code 143[\s\S]*icanon/);
    expectRestored(journey, screen);
  });
});

test('a visit that was left for hours goes on with a pause, which is on disk', async () => {
  const start = new Date(Date.now() - 3 * 3_600_000).toISOString().replace(/\..*/, '+00:00');
  const visit = logging(visitOf({ start }), 'owl', start);
  const year = join(notebook, 'visits', start.slice(0, 4));
  await mkdir(year, { recursive: true });
  await writeFile(join(year, `${start.slice(0, 10)}-sallow-mere.json`), visitText(visit));
  const journey = begin({ notebook, columns: 120 });
  await journey.shows(/which counts as a pause/);
  await journey.shows('all saved');
  journey.send('\u001bq');
  expect((await journey.ends()).code).toBe(0);
  expect((await onlyVisit(notebook)).effort.pauses).toMatchObject([{ start }]);
});

test('a visit that is ended is summed up as ended, and the next start begins another', async () => {
  const first = begin({ notebook, columns: 160 });
  await first.shows('log>');
  first.send('tuf 12\r');
  await first.shows(/1 entry.*all saved/);
  first.send('\u001be1.5 km 2 people on foot\ryducks\r');
  await first.shows('The visit is ended: 1 entry, 1 species');
  first.send('\r');
  expect(await first.ends()).toEqual({ code: 0, signal: 0 });
  expect(first.screen()).toMatch(/1 entry, 1 species, watched 0:00, 1\.5 km, ended\. /);
  expect((await onlyVisit(notebook)).effort).toMatchObject({ distance: 1500, observers: 2 });
  const second = begin({ notebook });
  await second.shows('nothing logged yet');
});

test('control characters in a file reach the terminal neither on the screen nor after it', async () => {
  const now = new Date().toISOString();
  const visit = visitOf({ place: 'Sallow\u001b[31m Mere', start: now.replace(/\..*/, '+00:00') });
  const folder = join(notebook, 'visits', now.slice(0, 4));
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, `${now.slice(0, 10)}-sallow.json`), visitText(visit));
  const journey = begin({ notebook, columns: 160 });
  await journey.shows(/Sallow·\[31m Mere[\s\S]*1 entry/);
  journey.send('\u001bq');
  await journey.ends();
  expect(journey.screen()).toMatch(/^Sallow·\[31m Mere: 1 entry/);
  expect(journey.sent()).not.toContain('\u001b[31m Mere');
});

test('Ctrl-L draws the screen anew, also many times in one write', async () => {
  const journey = begin({ notebook });
  await journey.shows('log>');
  journey.send('tuf 12\r');
  await journey.shows(/1 entry.*all saved/);
  await journey.scribble('\u001b[2J\u001b[Hrubbish');
  journey.send('\u000c\u000c\u000c');
  await journey.shows((screen) => /1 entry.*all saved/.test(screen) && !/rubbish/.test(screen));
  journey.send('mal 3\r');
  await journey.shows(/2 entries.*all saved/);
});

test('Ctrl-Z without a shell to go back to says so and goes on, as after a stop from outside', async () => {
  const journey = begin({ notebook });
  await journey.shows('log>');
  journey.send('tuf 12\r\u001a');
  await journey.shows('There is no shell to go back to');
  journey.signal('SIGSTOP');
  journey.send('mal 3\r');
  journey.signal('SIGCONT');
  await journey.shows(/2 entries.*all saved/);
});

test.skipIf(!existsSync('/bin/bash'))(
  'Ctrl-Z goes back to the shell and fg draws the screen again, with a script between them too',
  async () => {
    const journey = begin({
      notebook,
      instead: ['/bin/bash', '--norc', '-i'],
      environment: { PS1: 'shell$ ' },
    });
    await journey.shows('shell$');
    // The command behind it keeps the shell between from giving way to the program.
    journey.send(`sh -c "${COMMAND}; true"\r`);
    await journey.shows('log>');
    journey.send('tuf 12\r');
    await journey.shows(/1 entry.*all saved/);
    for (const count of [2, 3]) {
      journey.send('\u001a');
      await journey.shows(/Stopped[\s\S]*shell\$\s*$/);
      expect(journey.terminal.buffer.active.type).toBe('normal');
      // The shell turns pasting on for itself; what counts is that the program turned it off.
      const left = journey.sent().slice(0, journey.sent().lastIndexOf('Stopped'));
      expect(left.lastIndexOf('\u001b[?2004l')).toBeGreaterThan(left.lastIndexOf('\u001b[?2004h'));
      journey.send(`echo back-$((${count} + 40))\r`);
      await journey.shows(`back-${count + 40}`);
      journey.send('fg\r');
      await journey.shows(new RegExp(`${count - 1} entr.*all saved`));
      expect(journey.terminal.buffer.active.type).toBe('alternate');
      journey.send(`mal ${count}\r`);
      await journey.shows(new RegExp(`${count} entries.*all saved`));
    }
    journey.send('\u0003');
    await journey.shows(/3 entries, 2 species[\s\S]*shell\$\s*$/);
    expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12', 'Mallard 2', 'Mallard 3']);
  },
);

test('a long table goes whole through a pipe that is started from a terminal', async () => {
  const words = 'long words '.repeat(120);
  const input = Array.from({ length: 60 }, (_, at) => `tuf ${at}: ${words}`).join('\n');
  await run(['field', '--stdin'], { notebook, input });
  const { out } = await run(['export', '--last'], { notebook });
  // A pipe of Linux holds 64 KiB: what is written past that waits for its reader.
  expect(out.length).toBeGreaterThan(70_000);
  const script = `${COMMAND} export --last | { sleep 1; wc -c; }`;
  const journey = begin({ notebook, instead: ['/bin/sh', '-c', script] });
  await journey.ends();
  expect(Number(journey.sent())).toBe(Buffer.byteLength(out));
});
