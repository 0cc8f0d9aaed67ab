import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { UnitsShown } from '../visit/units-shown.ts';
import { createDurably, isCode, replaceDurably } from './durable-file.ts';
import { reasonWords } from './reason.ts';
import { KEYS, type Key, type Observers, SETTINGS, type Values } from './settings-keys.ts';
import type { Fault, SettingsText } from './settings-text.ts';

export const SETTINGS_FILE = 'settings.yaml';

/** What the user chose for a notebook. */
export interface Settings {
  /** Names of the species lists in use; null: those for the region of the place, and all own ones. */
  lists: string[] | null;
  languages: { shown: string; searched: string[] };
  /** The steps of the count, rising. */
  groupSizes: readonly number[];
  observers: Observers;
  units: UnitsShown;
}

/** Where a value in force comes from. */
export type Origin = { from: 'usual' } | { from: 'file'; line: number } | { from: 'option' };

export interface SettingsRead {
  settings: Settings;
  values: Values;
  origins: Record<Key, Origin>;
  unknown: SettingsText['unknown'];
  faults: Fault[];
  /** Can the file be changed by a command? */
  whole: boolean;
  /** The file; it may not be there. */
  path: string;
  there: boolean;
}

/** Some editors put it before the text. */
const BYTE_ORDER_MARK = /^\ufeff/;

/**
 * The settings in force: an option of this run, else the file, else the usual. What can't be read in the
 * file is told among the faults, and the usual stands in its place.
 */
export async function readSettings(
  notebook: string,
  options: Partial<Values> = {},
): Promise<SettingsRead> {
  const path = join(notebook, SETTINGS_FILE);
  try {
    const text = await textOf(path);
    if (text === null) return { ...inForce(NOTHING, options), path, there: false };
    // The YAML library is loaded only where there is a file: a start does not wait for it.
    const { readSettingsText } = await import('./settings-text.ts');
    return { ...inForce(readSettingsText(text), options), path, there: true };
  } catch (error) {
    const faults = [{ line: null, words: reasonWords(error) }];
    return { ...inForce({ ...NOTHING, faults, whole: false }, options), path, there: true };
  }
}

const NOTHING: SettingsText = { values: {}, lines: {}, unknown: [], faults: [], whole: true };

async function textOf(path: string): Promise<string | null> {
  try {
    return (await readFile(path, 'utf8')).replace(BYTE_ORDER_MARK, '');
  } catch (error) {
    if (isCode(error, 'ENOENT')) return null;
    throw error;
  }
}

function inForce(read: SettingsText, options: Partial<Values>) {
  const usual = Object.fromEntries(KEYS.map((key) => [key, SETTINGS[key].usual])) as Values;
  const values: Values = { ...usual, ...read.values, ...options };
  const originOf = (key: Key): Origin => {
    if (key in options) return { from: 'option' };
    const line = key in read.values ? read.lines[key] : undefined;
    return line === undefined ? { from: 'usual' } : { from: 'file', line };
  };
  return {
    settings: settingsOf(values),
    values,
    origins: Object.fromEntries(KEYS.map((key) => [key, originOf(key)])) as Record<Key, Origin>,
    unknown: read.unknown,
    faults: read.faults,
    whole: read.whole,
  };
}

function settingsOf(values: Values): Settings {
  return {
    lists: values.lists,
    languages: { shown: values['languages.shown'], searched: values['languages.searched'] },
    groupSizes: values['group-sizes'],
    observers: values.observers,
    units: {
      temperature: values['units.temperature'],
      distance: values['units.distance'],
      wind: values['units.wind'],
    },
  };
}

/** One sentence a fault: the file, the line, what is wrong and what is done about it. */
export function faultsTold({ faults, whole, path }: SettingsRead): string[] {
  const stead = whole
    ? 'The usual value is used.'
    : 'The usual settings are used; mend it or move it away.';
  return faults.map(({ line, words }) =>
    line === null
      ? `${path} can't be read: ${words}. ${stead}`
      : `${path} line ${line}: ${words}. ${stead}`,
  );
}

/**
 * Writes settings into the file, durably, and leaves all else in it as it is; a first write makes a file
 * that tells of every setting. Rejects with a sentence or the system's error; the file then stays.
 */
export async function changeSettings(notebook: string, changes: Partial<Values>): Promise<void> {
  const path = join(notebook, SETTINGS_FILE);
  const { changedText, newSettingsText } = await import('./settings-change.ts');
  const old = await textOf(path);
  let text = old ?? newSettingsText();
  for (const key of KEYS) {
    const value = changes[key];
    if (value !== undefined) text = changedText(text, key, value);
  }
  if (text === old) return;
  if (old !== null || !(await createDurably(path, text))) await replaceDurably(path, text);
}
