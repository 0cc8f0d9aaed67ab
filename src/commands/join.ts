import { readdir, readFile, realpath } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { createDurably, isCode } from '../notebook/durable-file.ts';
import { readVisits, visitFiles } from '../notebook/notebook.ts';
import { reasonWords } from '../notebook/reason.ts';
import { newerWords, type OpenedVisit, readVisit } from '../notebook/visit-file.ts';
import { visitStore } from '../notebook/visit-store.ts';
import { joinVisits, unsound } from '../visit/join.ts';
import { alike } from '../visit/join-canonical.ts';
import { joinedWords, newConflicts, several, visitWords } from '../visit/join-words.ts';
import type { Visit } from '../visit/visit.ts';
import { alone } from './alone.ts';
import { EXIT, Refusal } from './refusal.ts';

interface Answers {
  answer(line: string): void;
  complain(line: string): void;
}

/** What a run did, for its last line. */
interface Tally {
  visits: number;
  joined: number;
  lists: number;
  conflicts: number;
  /** Files that could not be read, joined or written as they should. */
  left: number;
}

/**
 * Brings the visits and own species lists of another copy of the notebook into this one; the other is
 * only read. Whatever can't be read is told and left. Returns the exit code: 1 if there was any.
 */
export async function joinNotebook(
  notebook: string,
  otherNamed: string,
  io: Answers,
): Promise<number> {
  const other = await otherFolder(notebook, otherNamed);
  const tally: Tally = { visits: 0, joined: 0, lists: 0, conflicts: 0, left: 0 };
  const tell = (words: string) => {
    tally.left += 1;
    io.complain(words);
  };
  const files = await readingOther(other, () => visitFiles(other));
  const lists = await readingOther(other, () => listFiles(other));
  if (files.length === 0 && lists.length === 0)
    throw new Refusal(
      EXIT.notTaken,
      `${other} holds no visits and no species lists: name the folder in which visits stands.`,
    );
  const ours = await readVisits(await visitFiles(notebook));
  for (const { words } of ours.problems) tell(words);
  const pathOf = new Map(ours.visits.map(({ visit, path }) => [visit.id, path]));
  for (const file of files) {
    const theirs = await soundVisit(file, tell);
    if (theirs === null) continue;
    const path = pathOf.get(theirs.visit.id);
    const saved = await unlessHeld(notebook, theirs.visit, tell, async () => {
      const mine = path === undefined ? null : await soundVisit(path, tell);
      // A visit that is here and can't be joined must not come a second time.
      if (path !== undefined && mine === null) return null;
      return bring(notebook, mine, theirs.visit, tally, { ...io, complain: tell });
    });
    if (saved !== null) pathOf.set(theirs.visit.id, saved);
  }
  for (const name of lists)
    await bringList(notebook, other, name, tally, { ...io, complain: tell });
  io.answer(summary(tally));
  return tally.left > 0 ? EXIT.notTaken : EXIT.done;
}

/** Does work on a visit; null, and a sentence, where another program has it open: the others may come all the same. */
async function unlessHeld(
  notebook: string,
  visit: Visit,
  tell: (words: string) => void,
  work: () => Promise<string | null>,
): Promise<string | null> {
  let begun = false;
  return alone(notebook, visit, () => {
    begun = true;
    return work();
  }).catch((error: unknown) => {
    if (begun || !(error instanceof Refusal)) throw error;
    tell(`${visitWords(visit)} was not joined. ${error.message}`);
    return null;
  });
}

/** Another folder that is there and is not the notebook itself, whatever links lead to it. */
async function otherFolder(notebook: string, named: string): Promise<string> {
  const other = await realpath(resolve(named)).catch((error: unknown) => {
    const why = isCode(error, 'ENOENT') ? 'it is not there' : reasonWords(error);
    throw new Refusal(EXIT.notTaken, `The notebook ${named} can't be read: ${why}.`);
  });
  if (other === (await realpath(notebook)))
    throw new Refusal(EXIT.usage, `${named} is this notebook itself: name another copy of it.`);
  return other;
}

async function readingOther<T>(other: string, read: () => Promise<T>): Promise<T> {
  return read().catch((error: unknown) => {
    throw new Refusal(EXIT.notTaken, `${other} can't be read: ${reasonWords(error)}.`);
  });
}

/** A visit that can be joined, read anew; null, and a sentence, for any other. */
async function soundVisit(
  path: string,
  tell: (words: string) => void,
): Promise<OpenedVisit | null> {
  const read = await readVisit(path);
  if ('problem' in read) {
    tell(`${path} can't be read (${read.problem}). It is left as it is.`);
    return null;
  }
  const newer = newerWords(read.visit);
  const why = unsound(read.visit);
  if (newer !== null) tell(`${path} ${newer}`);
  else if (why !== null) tell(`${path} can't be joined: ${why}. It is left as it is.`);
  else return read;
  return null;
}

/** Writes what another copy of a visit brings; the path where it was written, null where nothing is new. */
async function bring(
  notebook: string,
  mine: OpenedVisit | null,
  theirs: Visit,
  tally: Tally,
  io: Answers,
): Promise<string | null> {
  const joined = mine === null ? theirs : joinVisits(mine.visit, theirs);
  if (mine !== null && alike(joined, mine.visit)) return null;
  const { path, leftAlone } = await visitStore(notebook, mine)
    .save(joined)
    .catch((error: unknown) => {
      throw new Refusal(
        EXIT.notebook,
        `${visitWords(theirs)} could not be saved: ${reasonWords(error)}. It and what comes after it are not in the notebook yet: mend that and join again.`,
      );
    });
  if (leftAlone !== null)
    io.complain(`Another program changed ${leftAlone} meanwhile; what was joined is in ${path}.`);
  if (mine === null) {
    tally.visits += 1;
    const entries = several(joined.entries.length, 'entry', 'entries');
    io.answer(`${visitWords(joined)}: a new visit, ${entries}`);
  } else {
    tally.joined += 1;
    tally.conflicts += newConflicts(mine.visit, joined).length;
    for (const line of joinedWords(mine.visit, theirs, joined)) io.answer(line);
  }
  return path;
}

async function listFiles(folder: string): Promise<string[]> {
  const names = await readdir(join(folder, 'lists')).catch((error: unknown) => {
    if (isCode(error, 'ENOENT')) return [];
    throw error;
  });
  return names.filter((name) => /^[^.].*\.json$/.test(name)).sort();
}

/** Copies an own species list that is not here; one of the same name stays ours. */
async function bringList(
  notebook: string,
  other: string,
  name: string,
  tally: Tally,
  io: Answers,
): Promise<void> {
  if ((await listFiles(notebook)).includes(name)) return;
  const path = join(other, 'lists', name);
  const text = await readFile(path, 'utf8').catch((error: unknown) => {
    io.complain(`${path} can't be read (${reasonWords(error)}). It is left as it is.`);
    return null;
  });
  if (text === null) return;
  if (!isList(text)) {
    io.complain(`${path} can't be read (it is not a species list). It is left as it is.`);
    return;
  }
  const made = await createDurably(join(notebook, 'lists', name), text).catch((error: unknown) => {
    throw new Refusal(EXIT.notebook, `The list ${name} could not be saved: ${reasonWords(error)}.`);
  });
  if (!made) return;
  tally.lists += 1;
  io.answer(`The species list ${name.replace(/\.json$/, '')} came.`);
}

function isList(text: string): boolean {
  try {
    const list: { name?: unknown; taxa?: unknown } | null = JSON.parse(text);
    return typeof list?.name === 'string' && Array.isArray(list.taxa);
  } catch {
    return false;
  }
}

function summary({ visits, joined, lists, conflicts }: Tally): string {
  const news = [
    visits === 0 ? '' : several(visits, 'new visit', 'new visits'),
    joined === 0 ? '' : `${several(joined, 'visit', 'visits')} joined`,
    lists === 0 ? '' : several(lists, 'new species list', 'new species lists'),
    conflicts === 0 ? '' : several(conflicts, 'conflict', 'conflicts'),
  ].filter((words) => words !== '');
  if (news.length === 0) return 'Nothing new.';
  const settle = ' Both values are kept: change what should not stand.';
  return `${news.join(', ')}.${conflicts === 0 ? '' : settle}`;
}
