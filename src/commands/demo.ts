import { mkdtemp, readdir, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { demoVisits } from '../../demo-data/model/demo-visits.ts';
import { createDurably, isCode } from '../notebook/durable-file.ts';
import { openNotebook } from '../notebook/notebook.ts';
import { reasonWords } from '../notebook/reason.ts';
import { visitText } from '../notebook/visit-file.ts';
import { visitPath } from '../notebook/visit-name.ts';
import type { Visit } from '../visit/visit.ts';
import { chooseLists } from './lists.ts';
import { shippedLists } from './lists-in-use.ts';
import { EXIT, Refusal } from './refusal.ts';

interface Io {
  answer(line: string): void;
  complain(line: string): void;
}

const REGION = 'britain-ireland';

/**
 * Makes the invented notebook in a folder, or in a new one among the temporary files, and says so.
 * Returns the folder. Refuses one that holds anything but an invented notebook made before.
 */
export async function makeDemo(
  named: string | undefined,
  { answer, complain }: Io,
): Promise<string> {
  const visits = demoVisits((await shippedLists(REGION)).flatMap(({ taxa }) => taxa));
  const folder = named === undefined ? await newFolder() : resolve(named);
  if (named !== undefined) await refuseOther(folder, visits);
  const problem = await openNotebook(folder, true);
  if (problem !== null) throw new Refusal(EXIT.notebook, problem);
  try {
    // Side by side: each waits for the disk.
    await Promise.all(
      visits.map((visit) => createDurably(visitPath(folder, visit), visitText(visit))),
    );
  } catch (error) {
    throw new Refusal(
      EXIT.notebook,
      `The invented notebook can't be written into ${folder}: ${reasonWords(error)}. Name another folder with --folder DIR.`,
    );
  }
  // Else a machine in the New World would offer its own region's species here.
  await chooseLists(folder, [REGION], { answer: () => {}, complain });
  answer(`${visits.length} visits in ${folder}`);
  answer(
    'All in it is invented: the people, the places and what was seen. Only the species are real.',
  );
  answer(`Look back in it: tussock almanac --notebook "${folder}"`);
  answer('It is yours to try things in; delete the folder when you have done.');
  return folder;
}

async function newFolder(): Promise<string> {
  return mkdtemp(join(tmpdir(), 'tussock-demo-')).catch((error: unknown) => {
    throw new Refusal(
      EXIT.notebook,
      `No folder can be made in ${tmpdir()}: ${reasonWords(error)}. Name one with --folder DIR.`,
    );
  });
}

/** Invented visits must never come to lie among true ones. */
async function refuseOther(folder: string, [first]: readonly Visit[]): Promise<void> {
  const names = await readdir(folder).catch((error: unknown) => {
    if (isCode(error, 'ENOENT')) return [];
    throw new Refusal(
      EXIT.notebook,
      `${folder} can't be read: ${reasonWords(error)}. Name another folder.`,
    );
  });
  const madeBefore = first !== undefined && (await isThere(visitPath(folder, first)));
  if (names.length > 0 && !madeBefore)
    throw new Refusal(
      EXIT.notTaken,
      `${folder} is not empty, and invented visits must not lie among others: name a new folder.`,
    );
}

function isThere(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}
