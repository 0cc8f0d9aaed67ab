import { randomUUID } from 'node:crypto';
import type { Visit } from '../visit/visit.ts';
import { DISK, type Disk } from './disk.ts';
import { createDurably, type FileMark, markOf, moveDurably, sameMark } from './durable-file.ts';
import { stateKeeper } from './states.ts';
import { newerWords, type OpenedVisit, visitDatabase, visitText } from './visit-file.ts';
import { visitPath } from './visit-name.ts';

/** Saves one visit. `save` resolves when the visit is flushed to disk, with its file. */
export interface VisitStore {
  save(visit: Visit): Promise<Saved>;
}

export interface Saved {
  path: string;
  /** The file in which another program's state of the visit was left, if that came to light. */
  leftAlone: string | null;
}

const MOST_COPIES = 999;

/**
 * The store of one visit in a notebook folder. The first save makes the file, under a name that is
 * free; later ones replace it, and its name follows the place when that is given or changed. A file
 * that another program changed meanwhile is let be, and the visit goes on in one of its own, under an
 * id of its own: two states of one visit must not hide each other. The state that a save replaces is
 * kept. A visit of a newer version is refused.
 */
export function visitStore(
  notebook: string,
  opened: OpenedVisit | null,
  disk: Disk = DISK,
): VisitStore {
  let file: { path: string; mark: FileMark | null; belongs: string } | null = opened && {
    path: opened.path,
    mark: opened.mark,
    belongs: visitPath(notebook, opened.visit),
  };
  let splitOff: string | null = null;
  /** What a save tried to put where: one that failed at its last step has done so all the same. */
  let tried: { path: string; visit: Visit } | null = null;
  const keep = stateKeeper(notebook, disk);

  async function didStand(): Promise<boolean> {
    if (tried === null || (await markOf(tried.path, disk)) === null) return false;
    return (await disk.readFile(tried.path, 'utf8')) === visitText(tried.visit);
  }

  async function create(visit: Visit): Promise<string> {
    for (let copy = 1; copy <= MOST_COPIES; copy += 1) {
      const path = visitPath(notebook, visit, copy);
      tried = { path, visit };
      if (await createDurably(path, visitText(visit), disk)) return path;
      tried = null;
    }
    throw new Error(`every name up to ${visitPath(notebook, visit, MOST_COPIES)} is taken`);
  }

  /** Where the place gives the file another name, it is moved there; its path. */
  async function follow(from: string, visit: Visit): Promise<string> {
    for (let copy = 1; copy <= MOST_COPIES; copy += 1) {
      const to = visitPath(notebook, visit, copy);
      if (to === from) return to;
      tried = { path: to, visit };
      if (await moveDurably(from, to, disk)) return to;
    }
    return from;
  }

  async function write(visit: Visit): Promise<string> {
    const belongs = visitPath(notebook, visit);
    if (file === null) {
      const path = await create(visit);
      file = { path, mark: await markOf(path, disk), belongs };
      return path;
    }
    const at = file;
    if (at.mark !== null) await keep(visit.id, at.path, at.mark.modified);
    tried = { path: at.path, visit };
    await visitDatabase(at.path, visit, disk).write();
    at.mark = await markOf(at.path, disk);
    if (at.belongs === belongs) return at.path;
    // The visit is on disk: a name that can't be given now is tried again at the next save.
    const path = await follow(at.path, visit).catch(() => null);
    if (path !== null) file = { path, mark: at.mark, belongs };
    return path ?? at.path;
  }

  /** Looks whether the file is as this program left it; the file of another program's state, if not. */
  async function lookForOthers(): Promise<string | null> {
    const now = file && (await markOf(file.path, disk));
    if (file !== null && sameMark(now, file.mark)) return null;
    if (tried !== null && (await didStand())) {
      const belongs = file?.belongs ?? visitPath(notebook, tried.visit);
      file = { path: tried.path, mark: await markOf(tried.path, disk), belongs };
      return null;
    }
    const theirs = now === null ? null : (file?.path ?? null);
    if (theirs !== null) splitOff = randomUUID();
    file = null;
    return theirs;
  }

  return {
    async save(visit) {
      const newer = newerWords(visit);
      if (newer !== null) throw new Error(`it ${newer}`);
      const leftAlone = await lookForOthers();
      const state = splitOff === null ? visit : { ...visit, id: splitOff };
      return { path: await write(state), leftAlone };
    },
  };
}
