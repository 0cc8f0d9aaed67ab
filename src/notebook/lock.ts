import { randomUUID } from 'node:crypto';
import { readFileSync, rmdirSync, rmSync } from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import type { Visit } from '../visit/visit.ts';
import { DISK, type Disk } from './disk.ts';
import { isCode } from './durable-file.ts';
import {
  type FoundLock,
  type Holder,
  holderIn,
  isStale,
  lockPath,
  processMark,
  readLock,
} from './lock-file.ts';

/** A visit that is this program's alone until it is released. */
export interface Lock {
  release(): void;
}

/** Often enough that another machine never takes the holder for gone, in milliseconds. */
const REFRESH = 30_000;
/** A claim to clear away a stale lock takes no longer than this, in milliseconds. */
const CLAIM_LASTS = 10_000;
const TRIES = 100;

/**
 * Takes a visit for this program, or tells who holds it. A lock whose holder is gone is cleared away.
 * Where no lock can be written (a disk that is read-only or full), there is none, and no failure.
 */
export async function lockVisit(
  notebook: string,
  id: Visit['id'],
  disk: Disk = DISK,
): Promise<Lock | { heldBy: Holder | null }> {
  const path = lockPath(notebook, id);
  const token = randomUUID();
  let found: FoundLock | null = null;
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const made = await make(disk, path, token);
    if (made === 'impossible') return { release() {} };
    if (made === 'made') return kept(disk, path, token);
    found = await readLock(path, disk);
    if (found === null) continue;
    // A disk may do what it says it could not.
    if (found.holder?.token === token) return kept(disk, path, token);
    if (!(await isStale(found))) break;
    await clear(disk, path, found);
  }
  return { heldBy: found?.holder ?? null };
}

/** A lock appears whole: another program must never read half of one. */
async function make(
  disk: Disk,
  path: string,
  token: string,
): Promise<'made' | 'taken' | 'impossible'> {
  const temporary = join(dirname(path), `.${token}.tmp`);
  const holder: Holder = {
    process: process.pid,
    host: hostname(),
    began: new Date(Date.now() - process.uptime() * 1000).toISOString(),
    processMark: await processMark(process.pid),
    token,
  };
  const text = `${JSON.stringify(holder, null, 2)}\n`;
  try {
    await disk.mkdir(dirname(path)).catch((error: unknown) => {
      if (!isCode(error, 'EEXIST')) throw error;
    });
    await disk.writeFile(temporary, text, { flag: 'wx' });
    try {
      await disk.link(temporary, path).catch((error: unknown) => {
        if (isCode(error, 'EEXIST', 'ENOENT')) throw error;
        return disk.writeFile(path, text, { flag: 'wx' });
      });
    } finally {
      await disk.rm(temporary, { force: true });
    }
    return 'made';
  } catch (error) {
    // Without ENOENT: whoever leaves last takes the empty folder away, and it is made anew.
    return isCode(error, 'EEXIST', 'ENOENT') ? 'taken' : 'impossible';
  }
}

function kept(disk: Disk, path: string, token: string): Lock {
  const ours = (text: string) => holderIn(text)?.token === token;
  const refreshing = setInterval(async () => {
    const now = new Date();
    if (ours(await disk.readFile(path, 'utf8').catch(() => '')))
      await disk.utimes(path, now, now).catch(() => {});
  }, REFRESH);
  refreshing.unref();
  const release = () => {
    clearInterval(refreshing);
    process.off('exit', release);
    try {
      if (!ours(readFileSync(path, 'utf8'))) return;
      rmSync(path);
      rmdirSync(dirname(path));
    } catch {
      // Other locks stand in the folder, or the disk is gone: a lock without its program is stale.
    }
  };
  process.on('exit', release);
  return { release };
}

/**
 * Clears a stale lock away. Of several programs that found it one may: the claim bears the token of the
 * stale lock, and who has the claim looks again. So a lock that was made since is never taken for it.
 */
async function clear(disk: Disk, path: string, stale: FoundLock): Promise<void> {
  const tokenOf = ({ holder }: FoundLock) => holder?.token ?? 'unreadable';
  const claim = join(dirname(path), `.${tokenOf(stale)}.claim.tmp`);
  if (!(await claimed(disk, claim))) return;
  try {
    const now = await readLock(path, disk);
    if (now === null || tokenOf(now) !== tokenOf(stale) || !(await isStale(now))) return;
    const away = join(dirname(path), `.${randomUUID()}.stale.tmp`);
    await disk.rename(path, away);
    // Whoever was stopped for long with a claim may have moved another's lock.
    const moved = await readLock(away, disk);
    if (moved !== null && tokenOf(moved) !== tokenOf(stale))
      await disk.link(away, path).catch(() => {});
    await disk.rm(away, { force: true });
  } catch {
    // It was left meanwhile, or may not be moved: the next look tells.
  } finally {
    await disk.rm(claim, { force: true }).catch(() => {});
  }
}

async function claimed(disk: Disk, claim: string): Promise<boolean> {
  try {
    await (await disk.open(claim, 'wx')).close();
    return true;
  } catch (error) {
    if (!isCode(error, 'EEXIST')) return false;
    const { mtimeMs } = await disk.stat(claim).catch(() => ({ mtimeMs: Date.now() }));
    if (Date.now() - mtimeMs > CLAIM_LASTS) await disk.rm(claim, { force: true }).catch(() => {});
    await wait(20);
    return false;
  }
}
