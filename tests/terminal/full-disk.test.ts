import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmdirSync, truncateSync, writeFileSync } from 'node:fs';
import { open, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { onlyVisit, told } from '../commands/run.ts';
import { freshFolder } from '../notebook/visits.ts';
import { begin, COMMAND, type Journey } from './terminal.ts';

/** The ways to a small disk of one's own; both need the rights of an administrator. */
const WAYS = { tmpfs, loop };
const WAY = (['tmpfs', 'loop'] as const).find((way) => {
  const folder = mkdtempSync(join(tmpdir(), 'tussock-disk-'));
  const unmount = WAYS[way](folder);
  unmount?.();
  rmdirSync(folder);
  return unmount !== null;
});
if (WAY === undefined)
  console.warn(
    'NO SMALL DISK CAN BE MOUNTED HERE: the full disk is tried by a limit on the size of files alone. Run the tests as an administrator to try it for real.',
  );

function works(command: string, ...args: string[]): boolean {
  return spawnSync(command, args, { stdio: 'ignore' }).status === 0;
}

function unmounting(folder: string): () => void {
  // Lazily: a program that is killed may hold it a moment longer.
  return () => void works('umount', '-l', folder);
}

function tmpfs(folder: string): (() => void) | null {
  return works('mount', '-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', folder)
    ? unmounting(folder)
    : null;
}

function loop(folder: string): (() => void) | null {
  const image = join(mkdtempSync(join(tmpdir(), 'tussock-image-')), 'image');
  writeFileSync(image, '');
  truncateSync(image, 4 * 1024 ** 2);
  return works('mkfs.ext4', '-q', '-F', image) && works('mount', '-o', 'loop', image, folder)
    ? unmounting(folder)
    : null;
}

function smallDisk(): string {
  const folder = freshFolder();
  const unmount = WAY ? WAYS[WAY](folder) : null;
  if (unmount === null) throw new Error('The small disk that was there before is there no more.');
  onTestFinished(unmount);
  return folder;
}

/** Fills a disk to its last byte; resolves with what makes room again. */
async function filled(folder: string): Promise<() => Promise<void>> {
  const path = join(folder, 'filler');
  const file = await open(path, 'w');
  try {
    for (let size = 65_536; size >= 1; )
      await file.write('x'.repeat(size)).catch(() => {
        size = Math.floor(size / 2);
      });
  } finally {
    await file.close();
  }
  return () => rm(path);
}

async function logged(journey: Journey, lines: string[]): Promise<void> {
  for (const line of lines) journey.send(`${line}\r`);
  await journey.shows(/entr(?:y|ies), all saved/);
}

describe.skipIf(WAY === undefined)(`on a full disk (${WAY})`, () => {
  test('NOT SAVED is said, the file stays whole, the visit goes elsewhere, and all is saved once there is room', async () => {
    const disk = smallDisk();
    const stick = freshFolder();
    const journey = begin({ notebook: disk });
    await journey.shows('log>');
    await logged(journey, ['tuf 12', 'mal 3']);
    const makeRoom = await filled(disk);
    const words = 'by the raft '.repeat(400);
    for (const line of [`wren: ${words}`, 'coot 4', 'tuf 5']) journey.send(`${line}\r`);
    await journey.shows(
      /5 entries, 3 NOT SAVED[\s\S]*NOT SAVED: the disk is full: free some space/,
    );
    expect(told(await onlyVisit(disk))).toEqual(['Tufted Duck 12', 'Mallard 3']);
    journey.send(`\u001bo${stick}\r`);
    await journey.shows(/NOT SAVED[\s\S]*The visit up to now is also in/);
    const [copy = ''] = await readdir(stick);
    const elsewhere = told(JSON.parse(await readFile(join(stick, copy), 'utf8')));
    expect(elsewhere).toHaveLength(5);
    await makeRoom();
    await journey.shows(/5 entries, all saved/);
    expect(journey.screen()).not.toContain('NOT SAVED');
    journey.send('\u001bq');
    expect((await journey.ends()).code).toBe(0);
    expect(told(await onlyVisit(disk))).toEqual(elsewhere);
  });

  test('the program opens, and saves what was logged meanwhile once there is room', async () => {
    const disk = smallDisk();
    const makeRoom = await filled(disk);
    const journey = begin({ notebook: disk });
    await journey.shows('log>');
    for (const line of ['tuf 12', 'mal 3']) journey.send(`${line}\r`);
    await journey.shows('NOT SAVED: the disk is full');
    await makeRoom();
    await journey.shows(/2 entries, all saved/);
    expect(told(await onlyVisit(disk))).toEqual(['Tufted Duck 12', 'Mallard 3']);
  });

  test('what can not be saved stands in the terminal after leaving, and what was saved stays whole', async () => {
    const disk = smallDisk();
    const journey = begin({ notebook: disk, columns: 160 });
    await journey.shows('log>');
    await logged(journey, ['tuf 12']);
    await filled(disk);
    journey.send(`coot 4: ${'on the ice '.repeat(400)}\r`);
    await journey.shows('NOT SAVED: the disk is full');
    journey.send('\u001bq');
    expect((await journey.ends()).code).toBe(3);
    expect(journey.sent()).toMatch(/NOT SAVED: the disk is full[\s\S]*coot/i);
    expect(told(await onlyVisit(disk))).toEqual(['Tufted Duck 12']);
  });
});

const LIMITS = process.platform === 'linux' && works('prlimit', '--version');
if (!LIMITS) console.warn('THERE IS NO prlimit HERE: a limit on the size of files is not tried.');

test.skipIf(!LIMITS)(
  'past a limit on the size of files NOT SAVED is said, the file stays whole, and all is saved once the limit goes',
  async () => {
    const notebook = freshFolder();
    // In blocks of 512 bytes (POSIX, ulimit).
    const script = `ulimit -S -f 16; exec ${COMMAND}`;
    const journey = begin({ notebook, instead: ['/bin/sh', '-c', script] });
    await journey.shows('log>');
    await logged(journey, ['tuf 12']);
    const long = 'by the raft '.repeat(400);
    for (const line of [`wren: ${long}`, `coot 4: ${long}`]) journey.send(`${line}\r`);
    await journey.shows(/NOT SAVED: the file would be larger/);
    const whole = told(await onlyVisit(notebook));
    expect(whole[0]).toBe('Tufted Duck 12');
    expect(whole.length).toBeLessThan(3);
    expect(works('prlimit', '--pid', String(journey.pid), '--fsize=unlimited')).toBe(true);
    await journey.shows(/3 entries, all saved/);
    expect(await onlyVisit(notebook)).toMatchObject({ entries: [{}, {}, {}] });
  },
);
