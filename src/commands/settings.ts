import Fuse from 'fuse.js';
import { faultsTold, type Origin, readSettings, SETTINGS_FILE } from '../notebook/settings.ts';
import {
  BY_PLACE,
  isKey,
  KEYS,
  type Key,
  readValue,
  type Values,
  valueText,
} from '../notebook/settings-keys.ts';
import { changeOrRefuse } from './change-settings.ts';
import { EXIT, Refusal } from './refusal.ts';

interface Answers {
  answer(line: string): void;
  complain(line: string): void;
}

const NO_NAMES = 'a visit keeps the number: its format has no room for names';

/**
 * Shows every setting in force, its value and where that comes from, and the file. Returns the exit
 * code: 1 where something in the file can't be read.
 */
export async function showSettings(
  notebook: string,
  options: Partial<Values>,
  io: Answers,
): Promise<number> {
  const read = await readSettings(notebook, options);
  for (const fault of faultsTold(read)) io.complain(fault);
  for (const { key, line } of read.unknown)
    io.complain(`${read.path} line ${line}: ${key} is no setting, and is kept.${nearWords(key)}`);
  const rows = KEYS.map((key) => [
    key,
    shownValue(key, read.values),
    originWords(read.origins[key]),
  ]);
  const wide = (column: number) => Math.max(...rows.map((row) => row[column]?.length ?? 0));
  const [keys, values] = [wide(0), wide(1)];
  for (const [key = '', value = '', origin] of rows)
    io.answer(`${key.padEnd(keys)}  ${value.padEnd(values)}  ${origin}`);
  io.answer(read.there ? read.path : `${read.path} (not there yet: tussock settings set makes it)`);
  return read.faults.length === 0 ? EXIT.done : EXIT.notTaken;
}

function shownValue(key: Key, values: Values): string {
  const text = valueText(key, values[key]);
  const { names } = values.observers;
  return key === 'observers' && names.length > 0 ? `${text} (${names.length}; ${NO_NAMES})` : text;
}

function originWords(origin: Origin): string {
  return origin.from === 'file' ? `${SETTINGS_FILE} line ${origin.line}` : origin.from;
}

/** The known key that is most like a word, as a question; empty where none is like it. */
function nearWords(word: string): string {
  const [near] = new Fuse(KEYS, { threshold: 0.35, ignoreLocation: true }).search(word);
  return near ? ` Did you mean ${near.item}?` : '';
}

/** Sets one setting in the notebook's file. Refuses what is no setting or no value for it. */
export async function setSetting(
  notebook: () => Promise<string>,
  word: string,
  written: string,
  io: Answers,
): Promise<void> {
  const { key, value } = checked(word, written);
  const folder = await notebook();
  if (key === 'lists' || key.startsWith('languages.')) {
    // What the lists hold decides which of these can be chosen.
    const { chooseLanguages, chooseLists } = await import('./lists.ts');
    const words = written.split(/[,\s]+/).filter((each) => each !== '');
    if (key === 'lists') return chooseLists(folder, written === BY_PLACE ? [] : words, io);
    const option = key === 'languages.shown' ? 'shown' : 'searched';
    return chooseLanguages(folder, { [option]: written }, io);
  }
  await changeOrRefuse(folder, await readSettings(folder), { [key]: value });
  const { values } = await readSettings(folder);
  io.answer(`From the next start on, ${key}: ${shownValue(key, values)}`);
}

/** Settings for one run, each written `KEY=VALUE`. Refuses what is none. */
export function askedSettings(texts: readonly string[]): Partial<Values> {
  return Object.fromEntries(
    texts.map((text) => {
      const at = text.indexOf('=');
      if (at < 0)
        throw new Refusal(EXIT.usage, `--with "${text}": write KEY=VALUE, such as units.wind=kn.`);
      const { key, value } = checked(text.slice(0, at).trim(), text.slice(at + 1));
      return [key, value];
    }),
  );
}

function checked(word: string, written: string): { key: Key; value: Values[Key] } {
  if (!isKey(word))
    throw new Refusal(
      EXIT.usage,
      `${word} is no setting.${nearWords(word)} They are ${KEYS.join(', ')}.`,
    );
  const read = readValue(word, written.trim());
  if ('problem' in read) throw new Refusal(EXIT.usage, `${word} "${written}" ${read.problem}.`);
  return { key: word, value: read.value };
}
