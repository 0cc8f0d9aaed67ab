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
 * that another program changed or took away meanwhile is let be, and the visit gets one of its own.
 */
export function visitStore(notebook: string, opened: OpenedVisit | null): VisitStore {
  let file: { path: string; mark: FileMark | null; belongs: string } | null = opened && {
    path: opened.path,
    mark: opened.mark,
    belongs: visitPath(notebook, opened.visit),
  };

  async function write(visit: Visit): Promise<string> {
    if (file === null) return create(notebook, visit);
    await visitDatabase(file.path, visit).write();
    return file.belongs === visitPath(notebook, visit)
      ? file.path
      : follow(notebook, file.path, visit);
  }

  return {
    async save(visit) {
      let leftAlone: string | null = null;
      if (file !== null) {
        const now = await markOf(file.path);
        if (!same(now, file.mark)) {
          leftAlone = now === null ? null : file.path;
          file = null;
        }
      }
      const path = await write(visit);
      file = { path, mark: await markOf(path), belongs: visitPath(notebook, visit) };
      return { path, leftAlone };
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
