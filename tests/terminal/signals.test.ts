import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { beforeEach, describe, expect, test } from 'vitest';
import { onlyVisit, told } from '../commands/run.ts';
import { freshFolder } from '../notebook/visits.ts';
import { begin, COMMAND, type Journey } from './terminal.ts';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

const LINES = Array.from({ length: 12 }, (_, at) => `tuf ${at + 1}`);
const TYPED = LINES.map((line) => `${line}\r`).join('');
const TOLD = LINES.map((line) => line.replace('tuf', 'Tufted Duck'));

/** The program in a shell that tells its exit code and the terminal's modes afterwards. */
function inShell(): Journey {
  const script = `trap : INT TERM HUP; ${COMMAND}; echo "code $?"; stty -a`;
  return begin({ notebook, columns: 160, instead: ['/bin/sh', '-c', script] });
}

async function expectLeft(): Promise<void> {
  expect(told(await onlyVisit(notebook))).toEqual(TOLD);
  expect(await readdir(notebook)).not.toContain('locks');
}

describe('a burst that is still being saved is on disk, the terminal restored and the lock gone', () => {
  test.each([
    ['SIGHUP', 129],
    ['SIGTERM', 143],
    ['SIGINT', 130],
  ] as const)('after %s', async (signal, code) => {
    const journey = inShell();
    await journey.shows('log>');
    journey.send(TYPED);
    await journey.shows('12 entries');
    journey.signal(signal);
    const screen = await journey.shows(/code \d+[\s\S]*icanon/);
    expect(screen).toContain(`code ${code}`);
    expect(screen.split(/[\s;]+/)).toEqual(expect.arrayContaining(['icanon', 'echo', 'isig']));
    expect(journey.terminal.buffer.active.type).toBe('normal');
    expect(journey.terminal.modes.bracketedPasteMode).toBe(false);
    await expectLeft();
  });

  test('after two signals at once', async () => {
    const journey = inShell();
    await journey.shows('log>');
    journey.send(TYPED);
    await journey.shows('12 entries');
    journey.signal('SIGTERM');
    journey.signal('SIGINT');
    await journey.shows(/code 1(?:43|30)[\s\S]*icanon/);
    expect(journey.terminal.buffer.active.type).toBe('normal');
    await expectLeft();
  });

  test('after its terminal was closed', async () => {
    const journey = begin({ notebook });
    await journey.shows('log>');
    journey.send(TYPED);
    await journey.shows('12 entries');
    journey.hangUp();
    await journey.ends();
    await expectLeft();
  });
});

test.skipIf(!existsSync('/bin/bash'))(
  'a burst with Ctrl-Z behind it is all saved once the program goes on, and meanwhile nobody else has the visit',
  async () => {
    const journey = begin({
      notebook,
      instead: ['/bin/bash', '--norc', '-i'],
      environment: { PS1: 'shell$ ' },
    });
    await journey.shows('shell$');
    journey.send(`${COMMAND}\r`);
    await journey.shows('log>');
    const [first = '', ...others] = LINES.map((line) => `${line}\r`);
    journey.send(first);
    await journey.shows('1 entry, all saved');
    journey.send(`${others.join('')}\u001a`);
    await journey.shows(/Stopped[\s\S]*shell\$\s*$/);
    // It still runs, though it sleeps: nobody else may log into its visit.
    const other = begin({ notebook });
    await other.shows('read only');
    expect(other.screen()).toContain('open in another program');
    other.send('\u001bq');
    await other.ends();
    journey.send('fg\r');
    await journey.shows(/12 entries, all saved/);
    journey.send('\u001bq');
    await journey.shows(/12 entries, 1 species[\s\S]*shell\$\s*$/);
    await expectLeft();
  },
);
