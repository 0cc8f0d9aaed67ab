import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { openPromise } from 'yauzl';
import { visitText } from '../../src/notebook/visit-file.ts';
import { visitPath } from '../../src/notebook/visit-name.ts';
import type { Visit } from '../../src/visit/visit.ts';

/** Keeps a visit in a notebook under its own name; its path. */
export async function keep(notebook: string, visit: Visit, copy = 1): Promise<string> {
  const path = visitPath(notebook, visit, copy);
  await mkdir(join(path, '..'), { recursive: true });
  await writeFile(path, visitText(visit));
  return path;
}

/** The visit with its taxa from the lists that come with the program, which tell their groups. */
export function ofShippedLists(visit: Visit): Visit {
  const entries = visit.entries.map((entry) => ({
    ...entry,
    taxon: entry.taxon && { ...entry.taxon, list: `britain-ireland-${entry.taxon.list}` },
  }));
  return { ...visit, entries };
}

/** The files of a zip by their names, read by another library; their checksums are checked. */
export async function unzipped(path: string): Promise<Record<string, string>> {
  const zip = await openPromise(path);
  const files: Record<string, string> = {};
  for await (const entry of zip.eachEntry())
    files[entry.fileName] = await text(await zip.openReadStreamPromise(entry));
  return files;
}

/** The raw bytes of a file, as Latin letters. */
export function bytesOf(path: string): Promise<string> {
  return readFile(path, 'latin1');
}
