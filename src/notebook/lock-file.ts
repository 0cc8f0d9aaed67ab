import { readFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import * as z from 'zod';
import type { Visit } from '../visit/visit.ts';
import { DISK, type Disk } from './disk.ts';
import { isCode } from './durable-file.ts';

/** Who holds a visit, as its lock file says. */
const Holder = z.looseObject({
  process: z.number().int().positive(),
  host: z.string(),
  /** When the program began, RFC 3339 in UTC. */
  began: z.iso.datetime(),
  /** The system's own mark of when the process began, where it gives one; else null. */
  processMark: z.string().nullable(),
  token: z.uuid(),
});
export type Holder = z.infer<typeof Holder>;

/** A lock as found; `holder` is null where its file can't be understood. */
export interface FoundLock {
  holder: Holder | null;
  /** When it was last refreshed, epoch milliseconds. */
  refreshed: number;
}

/** Another machine's lock that was not refreshed for so long, in milliseconds, holds nothing. */
const GONE_AFTER = 10 * 60_000;

export function lockPath(notebook: string, id: Visit['id']): string {
  return join(notebook, 'locks', `${id}.json`);
}

/** The lock at a path; null where there is none. */
export async function readLock(path: string, disk: Disk = DISK): Promise<FoundLock | null> {
  try {
    const { mtimeMs } = await disk.stat(path);
    const text = await disk.readFile(path, 'utf8');
    return { holder: holderIn(text), refreshed: mtimeMs };
  } catch (error) {
    if (isCode(error, 'ENOENT')) return null;
    return { holder: null, refreshed: Date.now() };
  }
}

export function holderIn(text: string): Holder | null {
  try {
    return Holder.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

/** Does nobody hold the visit any more? A process of this machine is asked; others must be silent long enough. */
export async function isStale({ holder, refreshed }: FoundLock): Promise<boolean> {
  if (holder === null || holder.host !== hostname()) return Date.now() - refreshed > GONE_AFTER;
  if (!isRunning(holder.process)) return true;
  const mark = await processMark(holder.process);
  // The number may have been given to another process since.
  return mark !== null && holder.processMark !== null && mark !== holder.processMark;
}

function isRunning(processId: number): boolean {
  try {
    return process.kill(processId, 0);
  } catch (error) {
    return !isCode(error, 'ESRCH');
  }
}

/**
 * When a process began, in clock ticks since the machine did: field 22 of `/proc/<pid>/stat` (proc(5)).
 * Null where the system has no such file.
 */
export async function processMark(processId: number): Promise<string | null> {
  const text = await readFile(`/proc/${processId}/stat`, 'utf8').catch(() => '');
  // The name, field 2, stands in brackets and may hold blanks and brackets itself.
  return text.slice(text.lastIndexOf(')') + 2).split(' ')[22 - 3] ?? null;
}
