import { markOf, sameMark } from '../notebook/durable-file.ts';
import { type Lock, lockVisit } from '../notebook/lock.ts';
import { holderWords } from '../notebook/lock-words.ts';
import { newerWords } from '../notebook/visit-file.ts';
import type { Place } from '../visit/place.ts';
import { zoneOf } from '../visit/visit.ts';
import { type Beginning, beginVisit } from './begin-visit.ts';

/** The visit to log into, this program's alone until it is released. */
export interface Hold extends Lock {
  beginning: Beginning;
  /** Why the visit can only be read, for a screen that shows it and for lines that log; null where it can be changed. */
  readOnly: { onScreen: string; forLines: string } | null;
}

/** Another program may save between our look at the notebook and our lock; then we look again. */
const LOOKS = 5;

/**
 * Begins a visit, or goes on with the open one, and takes it for this program. One that another program
 * holds, or that a newer version wrote, comes as it was left and can only be read.
 */
export async function holdVisit(
  notebook: string,
  asked: Place | null,
  now: number,
  timeZone: string,
  when: string | null = null,
): Promise<Hold> {
  for (let look = 1; ; look += 1) {
    const beginning = await beginVisit(notebook, asked, now, timeZone, when);
    const { opened, visit } = beginning;
    const asLeft = { ...beginning, visit: opened?.visit ?? visit };
    const nothing = { beginning: asLeft, release() {} };
    const newer = newerWords(visit);
    if (newer !== null) {
      const words = `This visit ${newer}`;
      return { ...nothing, readOnly: { onScreen: words, forLines: words } };
    }
    const lock = await lockVisit(notebook, visit.id);
    if ('heldBy' in lock) {
      const who = holderWords(lock.heldBy, zoneOf(visit));
      const open = `This visit is open in another program (${who}).`;
      const onScreen = `${open} You can read it here; leave the other program first to log.`;
      const forLines = `${open} Leave that first; nothing was logged.`;
      return { ...nothing, readOnly: { onScreen, forLines } };
    }
    const stands = opened === null || sameMark(await markOf(opened.path), opened.mark);
    if (stands || look === LOOKS) return { beginning, readOnly: null, release: lock.release };
    lock.release();
  }
}
