/** Time until a visit is flushed to disk, beside a plain write of the same bytes with and without a flush. */
import { open, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { visitText } from '../src/notebook/visit-file.ts';
import { visitStore } from '../src/notebook/visit-store.ts';
import type { Visit } from '../src/visit/visit.ts';
import { inFolder, linesOf, shipped, visitOf } from './invented.ts';
import { clock, figure, median, printTable, quantile, times } from './measure.ts';

const ENTRIES = [60, 400];
const ROUNDS = 40;
const START = Date.UTC(2026, 0, 17, 9, 30);

async function timed(work: () => Promise<unknown>): Promise<number> {
  const begun = clock();
  await work();
  return clock() - begun;
}

async function writeFlushed(path: string, text: string): Promise<void> {
  const file = await open(path, 'w');
  try {
    await file.writeFile(text);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** The three ways in turn, round by round, so that the disk is as busy for one as for the others. */
async function measured(notebook: string, visit: Visit): Promise<string[]> {
  const store = visitStore(notebook, null);
  await store.save(visit);
  const text = visitText(visit);
  const saves: number[] = [];
  const flushed: number[] = [];
  const plain: number[] = [];
  const texts: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    saves.push(await timed(() => store.save(visit)));
    flushed.push(await timed(() => writeFlushed(join(notebook, 'flushed.json'), text)));
    plain.push(await timed(() => writeFile(join(notebook, 'plain.json'), text)));
    texts.push(await timed(async () => visitText(visit)));
  }
  const save = median(saves);
  return [
    String(visit.entries.length),
    String(Math.round(Buffer.byteLength(text) / 1024)),
    figure(save),
    figure(quantile(saves, 0.95)),
    figure(median(texts)),
    figure(median(flushed)),
    times(save, median(flushed)),
    figure(median(plain)),
    times(save, median(plain)),
  ];
}

await inFolder(async (folder) => {
  const { taxa } = await shipped();
  const rows: string[][] = [];
  for (const entries of ENTRIES)
    rows.push(
      await measured(join(folder, `${entries}`), visitOf(linesOf(taxa, entries, 0), START, false)),
    );
  printTable(
    `Durable save of a visit in ms, medians of ${ROUNDS}; "to text" is the part of it that keeps keys waiting.`,
    ['entries', 'KiB', 'save', 'p95', 'to text', 'write + fsync', '/ it', 'writeFile', '/ it'],
    rows,
  );
});
