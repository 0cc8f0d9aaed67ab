import { realpath } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { lockVisit } from '../notebook/lock.ts';
import { holderWords } from '../notebook/lock-words.ts';
import { type Visit, zoneOf } from '../visit/visit.ts';
import { EXIT, Refusal } from './refusal.ts';

/** Does work on a visit while no other program has it open. Refuses a visit that another holds. */
export async function alone<T>(notebook: string, visit: Visit, work: () => Promise<T>): Promise<T> {
  const lock = await lockVisit(notebook, visit.id);
  if ('heldBy' in lock)
    throw new Refusal(
      EXIT.notebook,
      `This visit is open in another program (${holderWords(lock.heldBy, zoneOf(visit))}). Leave that first; nothing was changed.`,
    );
  try {
    return await work();
  } finally {
    lock.release();
  }
}

/** Refuses a file that is none of the notebook's visits, whatever links lead to it. */
export async function refuseForeign(notebook: string, path: string): Promise<void> {
  const visits = await realpath(join(notebook, 'visits')).catch(() => null);
  if (visits !== null && (await realpath(path)).startsWith(visits + sep)) return;
  throw new Refusal(EXIT.notTaken, `${path} is no visit of the notebook ${notebook}.`);
}
