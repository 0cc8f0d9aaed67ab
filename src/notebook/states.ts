import { constants, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Visit } from '../visit/visit.ts';
import { DISK, type Disk } from './disk.ts';
import { isCode } from './durable-file.ts';
import { momentIn, momentName } from './moment-name.ts';
import { momentsToDrop } from './thinning.ts';
import { readVisit, type VisitRead } from './visit-file.ts';

/** Keeps the state of a visit that stands in a file since `written` (epoch milliseconds). */
export type StateKeeper = (id: Visit['id'], path: string, written: number) => Promise<void>;

/**
 * Keeps earlier states of visits as `states/<visit id>/<UTC time>.json`. A save must neither fail nor
 * wait because of them: nothing is flushed, and what can't be kept is let go.
 */
export function stateKeeper(notebook: string, disk: Disk = DISK): StateKeeper {
  let kept: { id: string; moments: number[] } | null = null;
  return async (id, path, written) => {
    try {
      if (kept?.id !== id) kept = { id, moments: await momentsIn(disk, notebook, id) };
      const moment = Math.floor(written);
      // A save that failed and is tried again finds its state kept.
      if (kept.moments.includes(moment)) return;
      await linkOrCopy(disk, path, statePath(notebook, id, moment));
      kept.moments = [...kept.moments, moment].sort((one, two) => one - two);
      const dropped = momentsToDrop(kept.moments);
      kept.moments = kept.moments.filter((each) => !dropped.includes(each));
      await Promise.all(dropped.map((each) => disk.rm(statePath(notebook, id, each))));
    } catch {
      kept = null;
    }
  };
}

/** One kept state: when it was written (epoch milliseconds), and what it holds. */
export interface KeptState {
  written: number;
  path: string;
  read: VisitRead;
}

/** The kept states of a visit, newest first; none where there are none. */
export async function keptStates(notebook: string, id: Visit['id']): Promise<KeptState[]> {
  const moments = await readdir(join(notebook, 'states', id)).then(momentsOf, (error: unknown) => {
    if (isCode(error, 'ENOENT')) return [];
    throw error;
  });
  const states: KeptState[] = [];
  for (const written of moments.reverse()) {
    const path = statePath(notebook, id, written);
    states.push({ written, path, read: await readVisit(path) });
  }
  return states;
}

function statePath(notebook: string, id: string, written: number): string {
  return join(notebook, 'states', id, `${momentName(written)}.json`);
}

function momentsOf(names: readonly string[]): number[] {
  return names
    .flatMap((name) => (name.endsWith('.json') ? (momentIn(name.slice(0, -5)) ?? []) : []))
    .sort((one, two) => one - two);
}

/** The moments kept so far; makes the folder that is to hold more. */
async function momentsIn(disk: Disk, notebook: string, id: string): Promise<number[]> {
  for (const folder of [join(notebook, 'states'), join(notebook, 'states', id)])
    await disk.mkdir(folder).catch((error: unknown) => {
      if (!isCode(error, 'EEXIST')) throw error;
    });
  return momentsOf(await disk.readdir(join(notebook, 'states', id)));
}

/** A save puts another file in the place of the old one, so a link to the old one costs no copy. */
async function linkOrCopy(disk: Disk, path: string, state: string): Promise<void> {
  // A link to a link would follow it to the new state.
  const file = await disk.realpath(path);
  try {
    await disk.link(file, state);
  } catch (error) {
    if (isCode(error, 'EEXIST', 'ENOENT')) throw error;
    await disk.copyFile(file, state, constants.COPYFILE_EXCL);
  }
}
