import { randomBytes } from 'node:crypto';
import { chmod, link, mkdir, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** Mode bits of a new file, less those that the user's umask takes away. */
const NEW_FILE = 0o666;

/** What tells one state of a file from another without reading it. */
export interface FileMark {
  inode: number;
  size: number;
  modified: number;
}

/** The mark of a file, or null where there is none. */
export async function markOf(path: string): Promise<FileMark | null> {
  try {
    const { ino, size, mtimeMs } = await stat(path);
    return { inode: ino, size, modified: mtimeMs };
  } catch (error) {
    if (isCode(error, 'ENOENT')) return null;
    throw error;
  }
}

/**
 * Writes a file so that a kill or a power cut leaves either the old text or the new, whole: a
 * temporary file beside it, flushed, then renamed over it, then the folder flushed. Mode bits stay,
 * and a link keeps pointing where it did. Rejects with the system's error; the old text stands then.
 */
export async function replaceDurably(path: string, text: string): Promise<void> {
  const target = await realpath(path).catch(() => path);
  const stands = await stat(target).catch(() => null);
  const mode = stands === null ? NEW_FILE : stands.mode & 0o7777;
  await withTemporary(target, text, mode, async (temporary) => {
    if (stands !== null) await chmod(temporary, mode);
    await rename(temporary, target);
  });
}

/**
 * Writes a new file with the same care, and never over another: false where the name is taken.
 * Folders on the way are made.
 */
export async function createDurably(path: string, text: string): Promise<boolean> {
  await makeFolder(dirname(path));
  let made = true;
  await withTemporary(path, text, NEW_FILE, async (temporary) => {
    made = await moveToFree(temporary, path);
  });
  return made;
}

/** Gives a file another name unless that is taken; true when moved. Durable like a write. */
export async function moveDurably(from: string, to: string): Promise<boolean> {
  await makeFolder(dirname(to));
  const moved = await moveToFree(from, to);
  if (moved) {
    await flushFolder(dirname(to));
    if (dirname(to) !== dirname(from)) await flushFolder(dirname(from));
  }
  return moved;
}

async function withTemporary(
  path: string,
  text: string,
  mode: number,
  place: (temporary: string) => Promise<void>,
): Promise<void> {
  const mark = randomBytes(4).toString('hex');
  const temporary = join(dirname(path), `.${basename(path)}.${mark}.tmp`);
  try {
    const file = await open(temporary, 'wx', mode);
    try {
      await file.writeFile(text, 'utf8');
      await file.sync();
    } finally {
      await file.close();
    }
    await place(temporary);
    await flushFolder(dirname(path));
  } finally {
    await rm(temporary, { force: true });
  }
}

/** A link fails where the name is taken, which a rename does not; some file systems have no links. */
async function moveToFree(from: string, to: string): Promise<boolean> {
  try {
    await link(from, to);
    await rm(from);
    return true;
  } catch (error) {
    if (isCode(error, 'EEXIST')) return false;
    if (!isCode(error, 'EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EXDEV')) throw error;
    if (await markOf(to)) return false;
    await rename(from, to);
    return true;
  }
}

/**
 * Makes a folder with what lies on the way, one by one: where a parent can't hold folders, Node's own
 * recursive way may try for ever. Each new name is flushed too, or a power cut takes it with all it holds.
 */
export async function makeFolder(path: string): Promise<void> {
  if (await isFolder(path)) return;
  const parent = dirname(path);
  if (parent !== path) await makeFolder(parent);
  try {
    await mkdir(path);
  } catch (error) {
    // Another program may have made it meanwhile.
    if (!(await isFolder(path))) throw error;
  }
  await flushFolder(parent);
}

async function isFolder(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isDirectory();
  } catch (error) {
    if (isCode(error, 'ENOENT')) return false;
    throw error;
  }
}

/** A rename lasts only when its folder is flushed. Windows has no such call and flushes by itself. */
async function flushFolder(path: string): Promise<void> {
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

export function isCode(error: unknown, ...codes: string[]): boolean {
  return error instanceof Error && 'code' in error && codes.includes(String(error.code));
}
