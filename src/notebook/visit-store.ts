import { randomUUID } from 'node:crypto';
import type { Visit } from '../visit/visit.ts';
import { createDurably, type FileMark, markOf, moveDurably } from './durable-file.ts';
import { type OpenedVisit, visitDatabase, visitText } from './visit-file.ts';
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
 * id of its own: two states of one visit must not hide each other.
 */
export function visitStore(notebook: string, opened: OpenedVisit | null): VisitStore {
  let file: { path: string; mark: FileMark | null; belongs: string } | null = opened && {
    path: opened.path,
    mark: opened.mark,
    belongs: visitPath(notebook, opened.visit),
  };

  let splitOff: string | null = null;

  async function write(visit: Visit): Promise<string> {
    const belongs = visitPath(notebook, visit);
    if (file === null) {
      const path = await create(notebook, visit);
      file = { path, mark: await markOf(path), belongs };
      return path;
    }
    const at = file;
    await visitDatabase(at.path, visit).write();
    at.mark = await markOf(at.path);
    if (at.belongs === belongs) return at.path;
    // The visit is on disk: a name that can't be given now is tried again at the next save.
    const path = await follow(notebook, at.path, visit).catch(() => null);
    if (path !== null) file = { path, mark: at.mark, belongs };
    return path ?? at.path;
  }

  return {
    async save(visit) {
      let leftAlone: string | null = null;
      if (file !== null) {
        const now = await markOf(file.path);
        if (!same(now, file.mark)) {
          leftAlone = now === null ? null : file.path;
          if (leftAlone !== null) splitOff = randomUUID();
          file = null;
        }
      }
      const state = splitOff === null ? visit : { ...visit, id: splitOff };
      return { path: await write(state), leftAlone };
    },
  };
}

async function create(notebook: string, visit: Visit): Promise<string> {
  for (let copy = 1; copy <= MOST_COPIES; copy += 1) {
    const free = visitPath(notebook, visit, copy);
    if (await createDurably(free, visitText(visit))) return free;
  }
  throw new Error(`every name up to ${visitPath(notebook, visit, MOST_COPIES)} is taken`);
}

async function follow(notebook: string, from: string, visit: Visit): Promise<string> {
  for (let copy = 1; copy <= MOST_COPIES; copy += 1) {
    const to = visitPath(notebook, visit, copy);
    if (to === from || (await moveDurably(from, to))) return to;
  }
  return from;
}

function same(one: FileMark | null, two: FileMark | null): boolean {
  return one?.inode === two?.inode && one?.size === two?.size && one?.modified === two?.modified;
}
