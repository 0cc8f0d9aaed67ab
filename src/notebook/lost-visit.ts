import { open, readdir } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { keptStates } from './states.ts';
import { visitPath } from './visit-name.ts';

const ID = /[\da-f]{8}-[\da-f]{4}-[\da-f]{4}-[\da-f]{4}-[\da-f]{12}/i;
const FIRST_BYTES = 1024;

/**
 * The visit that a broken file held, and its newest kept state that can be read (below the notebook).
 * The id is looked for at the head of the file, where it is written; else that visit is meant whose
 * state belongs under this name, if there is but one. `taken` are the visits that other files hold.
 */
export async function newestState(
  notebook: string,
  path: string,
  taken: ReadonlySet<string>,
): Promise<{ id: string | null; state: string | null }> {
  const written =
    new RegExp(`"id":\\s*"(${ID.source})"`, 'i').exec(await headOf(path))?.[1] ?? null;
  if (written !== null && taken.has(written)) return { id: written, state: null };
  const kept = (await readdir(join(notebook, 'states')).catch(() => [])).filter(
    (name) => ID.test(name) && !taken.has(name),
  );
  const candidates = written === null ? kept : kept.filter((id) => id === written);
  const found: { id: string; state: string }[] = [];
  for (const id of candidates) {
    const newest = (await keptStates(notebook, id)).find(({ read }) => 'visit' in read);
    if (newest === undefined || !('visit' in newest.read)) continue;
    if (written !== null || plainName(visitPath(notebook, newest.read.visit)) === plainName(path))
      found.push({ id, state: relative(notebook, newest.path) });
  }
  const [only] = found;
  return found.length === 1 && only !== undefined ? only : { id: written, state: null };
}

/** Without the number of a further visit of that day and place. */
function plainName(path: string): string {
  return path.replace(/(-\d+)?\.json$/, '');
}

async function headOf(path: string): Promise<string> {
  const file = await open(path, 'r').catch(() => null);
  if (file === null) return '';
  try {
    const { bytesRead, buffer } = await file.read(Buffer.alloc(FIRST_BYTES), 0, FIRST_BYTES, 0);
    return buffer.toString('utf8', 0, bytesRead);
  } finally {
    await file.close();
  }
}
