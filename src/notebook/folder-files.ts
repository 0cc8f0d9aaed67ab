import { lstat, readdir } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { isCode } from './durable-file.ts';

/** A file below a notebook folder. */
export interface FoundFile {
  path: string;
  /** Below the notebook folder, with slashes on every system. */
  name: string;
  /** Epoch milliseconds. */
  modified: number;
}

/** All files in a folder of the notebook and below, by name. Links are not followed. */
export async function filesBelow(notebook: string, folder: string): Promise<FoundFile[]> {
  const at = join(notebook, folder);
  const entries = await readdir(at, { withFileTypes: true, recursive: true }).catch((error) => {
    if (isCode(error, 'ENOENT')) return [];
    throw error;
  });
  const files: FoundFile[] = [];
  for (const entry of entries) {
    if (entry.isDirectory()) continue;
    const path = join(entry.parentPath, entry.name);
    const name = relative(notebook, path).split('\\').join('/');
    const status = await lstat(path).catch(() => null);
    if (status !== null) files.push({ path, name, modified: status.mtimeMs });
  }
  return files.sort((one, two) => (one.name < two.name ? -1 : 1));
}

/** The files that lie in the notebook folder itself. */
export async function topFiles(notebook: string): Promise<FoundFile[]> {
  const files: FoundFile[] = [];
  for (const name of (await readdir(notebook)).sort()) {
    const path = join(notebook, name);
    const status = await lstat(path).catch(() => null);
    if (status?.isFile()) files.push({ path, name, modified: status.mtimeMs });
  }
  return files;
}
