import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { curable, type Finding, told } from './finding.ts';
import { type FoundFile, filesBelow } from './folder-files.ts';
import { isStale, readLock } from './lock-file.ts';
import { momentIn } from './moment-name.ts';
import { readPlaces } from './places.ts';
import { readSettings, SETTINGS_FILE } from './settings.ts';
import { readVisit } from './visit-file.ts';

/** What lies in a notebook folder. */
const OURS = new Set([
  'visits',
  'states',
  'locks',
  'set-aside',
  'lists',
  SETTINGS_FILE,
  'places.json',
  'letters.json',
]);
const VISIT_ID = /^[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}$/i;
const LEFTOVER = /(^|\/)\.[^/]*\.tmp$/;
/** A temporary file this young may be that of a save which runs now, in milliseconds. */
const SAVING = 60_000;

/** Is a file what an interrupted save left behind, or that of a save which may still run? */
export function isTemporary({ name }: FoundFile): boolean {
  return LEFTOVER.test(name);
}

/** What interrupted saves left behind, among `files`; `now` in epoch milliseconds. */
export function leftoverFindings(files: readonly FoundFile[], now: number): Finding[] {
  return files
    .filter((file) => isTemporary(file) && now - file.modified > SAVING)
    .map(({ name }) =>
      curable(name, 'was left behind by a save that was interrupted', {
        do: 'set aside',
        id: null,
      }),
    );
}

/** Everything in the notebook folder that is none of the program's. */
export async function strangeFindings(notebook: string): Promise<Finding[]> {
  const names = (await readdir(notebook)).filter((name) => !OURS.has(name) && !LEFTOVER.test(name));
  return names.sort().map((name) => {
    const words = 'is nothing of Tussock';
    return told(name, words, 'It is left alone.', false);
  });
}

export async function settingsFindings(notebook: string): Promise<Finding[]> {
  const { faults } = await readSettings(notebook);
  return faults.map(({ line, words }) =>
    told(SETTINGS_FILE, line === null ? `can't be read: ${words}` : `line ${line}: ${words}`, ''),
  );
}

export async function placesFindings(notebook: string): Promise<Finding[]> {
  const { problem } = await readPlaces(notebook);
  if (problem === null) return [];
  // The problem names the file with its folder.
  return [told('places.json', problem.slice(problem.indexOf("can't")), '')];
}

/** Locks whose holders are gone, and what among them is none. */
export async function lockFindings(notebook: string): Promise<Finding[]> {
  const findings: Finding[] = [];
  for (const file of await filesBelow(notebook, 'locks')) {
    if (isTemporary(file)) continue;
    const id = /^locks\/([^/]*)\.json$/.exec(file.name)?.[1] ?? '';
    if (!VISIT_ID.test(id)) {
      findings.push(told(file.name, 'is no lock', 'Move it elsewhere if you like.', false));
      continue;
    }
    const lock = await readLock(file.path);
    if (lock !== null && (await isStale(lock)))
      findings.push(
        curable(file.name, 'is the lock of a program that is gone', { do: 'unlock', id }),
      );
  }
  return findings;
}

/** Kept states that can't be read, and what among them is none. */
export async function stateFindings(notebook: string): Promise<Finding[]> {
  const findings: Finding[] = [];
  for (const file of await filesBelow(notebook, 'states')) {
    if (isTemporary(file)) continue;
    const [, id = '', name = ''] = file.name.split('/');
    if (!VISIT_ID.test(id) || momentIn(name.replace(/\.json$/, '')) === null) {
      findings.push(told(file.name, 'is no kept state', 'Move it elsewhere if you like.', false));
      continue;
    }
    const read = await readVisit(join(notebook, file.name));
    if ('problem' in read)
      findings.push(
        told(
          file.name,
          `can't be read: ${read.problem}`,
          'Earlier and later states are not touched by it; delete it if you like.',
        ),
      );
  }
  return findings;
}
