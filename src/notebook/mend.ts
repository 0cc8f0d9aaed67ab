import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createDurably } from './durable-file.ts';
import type { Cure, Finding } from './finding.ts';
import { lockVisit } from './lock.ts';
import { holderWords } from './lock-words.ts';
import { reasonWords } from './reason.ts';
import { setAside } from './set-aside.ts';

/**
 * Does what can be done about a finding without losing anything, and says so in a sentence that begins
 * with the file. A visit that another program holds is left.
 */
export async function mend(notebook: string, finding: Finding, now: number): Promise<string> {
  const { path, cure } = finding;
  if (cure === null) return `${path}: left as it is.`;
  const lock = cure.id === null ? null : await lockVisit(notebook, cure.id);
  if (lock !== null && 'heldBy' in lock)
    return `${path}: left as it is: the visit is open in another program (${holderWords(lock.heldBy)}). Leave that first.`;
  try {
    return `${path}: ${await cured(notebook, path, cure, now)}`;
  } catch (error) {
    return `${path}: could not be mended: ${reasonWords(error)}.`;
  } finally {
    lock?.release();
  }
}

async function cured(notebook: string, path: string, cure: Cure, now: number): Promise<string> {
  // Taking a stale lock clears it away.
  if (cure.do === 'unlock') return 'removed.';
  const from = join(notebook, path);
  const state = cure.do === 'restore' && cure.state !== null ? cure.state : null;
  // Read first: what can't be put in the file's place must not cost the file its place.
  const text = state === null ? null : await readFile(join(notebook, state), 'utf8');
  const to = await setAside(notebook, from, now);
  const moved = `moved to ${to.slice(notebook.length + 1)}`;
  if (text === null) return `${moved}.`;
  return (await createDurably(from, text))
    ? `${moved}; its state ${state} stands in its place.`
    : `${moved}; another file has taken its place.`;
}
