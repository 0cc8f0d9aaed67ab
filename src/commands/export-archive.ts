import { createWriteStream } from 'node:fs';
import { mkdtemp, open, rename, rm, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { ZipFile } from 'yazl';
import { reasonWords } from '../notebook/reason.ts';
import { absentFrom } from '../outputs/absences.ts';
import { emlXml, type Metadata } from '../outputs/archive-eml.ts';
import { ARCHIVE_TABLES, type ArchiveTableName, metaXml } from '../outputs/archive-meta.ts';
import { archiveHead, archiveRows } from '../outputs/archive-rows.ts';
import { growingBox } from '../outputs/bounding-box.ts';
import { dateOf } from '../visit/time.ts';
import type { Chosen } from './export-chosen.ts';
import type { Beside } from './export-text.ts';
import { EXIT, Refusal } from './refusal.ts';

const NAMES = Object.keys(ARCHIVE_TABLES) as ArchiveTableName[];

/** Metadata but for what comes of the visits. */
export type ArchiveAbout = Omit<Metadata, 'span' | 'box'> & { made: Date };

/** Refuses a path at which something is. */
export async function refuseTaken(path: string): Promise<void> {
  const there = await stat(path).then(
    () => true,
    () => false,
  );
  if (there)
    throw new Refusal(
      EXIT.notTaken,
      `${path} is there already: name another file, or move it away.`,
    );
}

/**
 * Writes the chosen visits as a Darwin Core Archive. Its tables grow in a folder beside it, a visit at
 * a time, and the archive gets its name when it is whole.
 */
export async function writeArchive(
  path: string,
  chosen: AsyncIterable<Chosen>,
  beside: Beside,
  about: ArchiveAbout,
): Promise<void> {
  const target = resolve(path);
  const folder = await mkdtemp(join(dirname(target), '.tussock-archive-')).catch((error) => {
    throw new Refusal(EXIT.notTaken, `${target} can't be written: ${reasonWords(error)}.`);
  });
  try {
    const found = await writeTables(folder, chosen, beside);
    const eml = emlXml({ ...about, ...found });
    const whole = join(folder, 'archive.zip');
    await zip(whole, folder, { 'meta.xml': metaXml(), 'eml.xml': eml }, about.made);
    await refuseTaken(path);
    await rename(whole, target);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Writes the tables; gives what the metadata needs to know of all visits. */
async function writeTables(
  folder: string,
  chosen: AsyncIterable<Chosen>,
  { met, ...about }: Beside,
): Promise<Pick<Metadata, 'span' | 'box'>> {
  const files = await Promise.all(
    NAMES.map(async (name) => {
      const file = await open(join(folder, ARCHIVE_TABLES[name].file), 'w');
      await file.appendFile(archiveHead(ARCHIVE_TABLES[name]));
      return { name, file };
    }),
  );
  const box = growingBox();
  let span = null as Metadata['span'];
  try {
    for await (const { visit } of chosen) {
      const absent = met === null ? [] : absentFrom(visit, met, about.facts);
      const rows = archiveRows(visit, absent, about);
      for (const { name, file } of files) await file.appendFile(rows[name]);
      for (const spot of [visit.spot, ...visit.entries.map((entry) => entry.spot)])
        if (spot !== null) box.add(spot);
      const to = dateOf(visit.end ?? visit.start);
      const from = dateOf(visit.start);
      span = { from: span?.from ?? from, to: span && span.to > to ? span.to : to };
    }
  } finally {
    for (const { file } of files) await file.close();
  }
  return { span, box: box.box() };
}

async function zip(
  path: string,
  folder: string,
  texts: Record<string, string>,
  mtime: Date,
): Promise<void> {
  const archive = new ZipFile();
  const options = { mtime, mode: 0o100644 };
  for (const [name, text] of Object.entries(texts))
    archive.addBuffer(Buffer.from(text), name, options);
  for (const { file } of Object.values(ARCHIVE_TABLES))
    archive.addFile(join(folder, file), file, options);
  archive.end();
  const fault = new Promise<never>((_, reject) => archive.on('error', reject));
  await Promise.race([
    pipeline(archive.outputStream, createWriteStream(path, { flush: true })),
    fault,
  ]);
}
