import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { DISK, type Disk } from './disk.ts';

/** Mode bits of a new file, less those that the user's umask takes away. */
const NEW_FILE = 0o666;

/** What tells one state of a file from another without reading it. */
export interface FileMark {
  inode: number;
  size: number;
  modified: number;
}

/** The mark of a file, or null where there is none. */
export async function markOf(path: string, disk: Disk = DISK): Promise<FileMark | null> {
  try {
    const { ino, size, mtimeMs } = await disk.stat(path);
    return { inode: ino, size, modified: mtimeMs };
  } catch (error) {
    if (isCode(error, 'ENOENT')) return null;
    throw error;
  }
}

/** Do two marks tell of one state of a file? Null is no file. */
export function sameMark(one: FileMark | null, two: FileMark | null): boolean {
  return one?.inode === two?.inode && one?.size === two?.size && one?.modified === two?.modified;
}

/**
 * Writes a file so that a kill or a power cut leaves either the old text or the new, whole: a
 * temporary file beside it, flushed, then renamed over it, then the folder flushed. Mode bits stay,
 * and a link keeps pointing where it did. Rejects with the system's error; the old text stands then,
 * or the new, whole, where only the last flush failed.
 */
export async function replaceDurably(path: string, text: string, disk: Disk = DISK): Promise<void> {
  const target = await disk.realpath(path).catch(unless(path));
  const stands = await disk.stat(target).catch(unless(null));
  const mode = stands === null ? NEW_FILE : stands.mode & 0o7777;
  await withTemporary(disk, { path: target, text, mode }, async (temporary) => {
    if (stands !== null) await disk.chmod(temporary, mode);
    await disk.rename(temporary, target);
  });
}

/**
 * Writes a new file with the same care, and never over another: false where the name is taken.
 * Folders on the way are made.
 */
export async function createDurably(
  path: string,
  text: string,
  disk: Disk = DISK,
): Promise<boolean> {
  await makeFolder(dirname(path), disk);
  let made = true;
  await withTemporary(disk, { path, text, mode: NEW_FILE }, async (temporary) => {
    made = (await nameToFree(disk, temporary, path)) !== 'taken';
  });
  return made;
}

/**
 * Gives a file another name unless that is taken; true when moved. Durable like a write: the new name
 * is flushed before the old one goes. Rejects with the system's error; the file stands then under one
 * of the names, or under both.
 */
export async function moveDurably(from: string, to: string, disk: Disk = DISK): Promise<boolean> {
  await makeFolder(dirname(to), disk);
  const named = await nameToFree(disk, from, to);
  if (named === 'taken') return false;
  try {
    await flushFolder(disk, dirname(to));
  } catch (error) {
    await (named === 'linked' ? disk.rm(to) : disk.rename(to, from)).catch(() => {});
    throw error;
  }
  if (named === 'linked') await disk.rm(from);
  // An old name that a power cut brings back is one name more, and nothing less.
  await flushFolder(disk, dirname(from)).catch(() => {});
  return true;
}

async function withTemporary(
  disk: Disk,
  { path, text, mode }: { path: string; text: string; mode: number },
  place: (temporary: string) => Promise<void>,
): Promise<void> {
  const mark = randomBytes(4).toString('hex');
  const temporary = join(dirname(path), `.${basename(path)}.${mark}.tmp`);
  try {
    const file = await disk.open(temporary, 'wx', mode);
    try {
      await file.writeFile(text, 'utf8');
      await file.sync();
    } finally {
      await file.close();
    }
    await place(temporary);
    await flushFolder(disk, dirname(path));
  } finally {
    // One that stays behind harms nothing, and the check of the notebook tells of it.
    await disk.rm(temporary, { force: true }).catch(() => {});
  }
}

/** A link fails where the name is taken, which a rename does not; some file systems have no links. */
async function nameToFree(
  disk: Disk,
  from: string,
  to: string,
): Promise<'linked' | 'renamed' | 'taken'> {
  try {
    await disk.link(from, to);
    return 'linked';
  } catch (error) {
    if (isCode(error, 'EEXIST')) return 'taken';
    if (!isCode(error, 'EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EXDEV')) throw error;
    if (await markOf(to, disk)) return 'taken';
    await disk.rename(from, to);
    return 'renamed';
  }
}

/**
 * Makes a folder with what lies on the way, one by one: where a parent can't hold folders, Node's own
 * recursive way may try for ever. Each new name is flushed too, or a power cut takes it with all it holds.
 */
export async function makeFolder(path: string, disk: Disk = DISK): Promise<void> {
  if (await isFolder(disk, path)) return;
  const parent = dirname(path);
  if (parent !== path) await makeFolder(parent, disk);
  try {
    await disk.mkdir(path);
  } catch (error) {
    // Another program may have made it meanwhile.
    if (!(await isFolder(disk, path))) throw error;
  }
  try {
    await flushFolder(disk, parent);
  } catch (error) {
    // It must not be found next time as if its name were flushed.
    await disk.rmdir(path).catch(() => {});
    throw error;
  }
}

async function isFolder(disk: Disk, path: string): Promise<boolean> {
  try {
    return (await disk.stat(path)).isDirectory();
  } catch (error) {
    if (isCode(error, 'ENOENT')) return false;
    throw error;
  }
}

/** A rename lasts only when its folder is flushed. Windows has no such call and flushes by itself. */
async function flushFolder(disk: Disk, path: string): Promise<void> {
  if (process.platform === 'win32') return;
  const folder = await disk.open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

/** The value where nothing is there; any other error stays one. */
function unless<T>(value: T): (error: unknown) => T {
  return (error) => {
    if (isCode(error, 'ENOENT')) return value;
    throw error;
  };
}

export function isCode(error: unknown, ...codes: string[]): boolean {
  return error instanceof Error && 'code' in error && codes.includes(String(error.code));
}
