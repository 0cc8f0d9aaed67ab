/**
 * The cost of a save beside a bare append and fsync of one line, and what a slow disk does to the word
 * "saved" and to the keys: nothing to the keys.
 */
import { appendFile, type FileHandle, open, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { DISK, type Disk } from '../src/notebook/disk.ts';
import { saveQueue } from '../src/notebook/save-queue.ts';
import { visitText } from '../src/notebook/visit-file.ts';
import { visitStore } from '../src/notebook/visit-store.ts';
import { stamp } from '../src/visit/time.ts';
import { updateVisit } from '../src/visit/update.ts';
import type { Visit } from '../src/visit/visit.ts';
import { inFolder, linesOf, shipped, visitOf, ZONE } from './invented.ts';
import { clock, figure, median, pause, printTable, quantile, times } from './measure.ts';

const ENTRIES = [10, 60, 1000];
const ROUNDS = 40;
const START = Date.UTC(2026, 0, 17, 9, 30);
/** Added to every flush of a slow disk, in milliseconds. */
const SLOW = 50;
/** Within so many milliseconds of the key an entry is to be called saved. */
const TOLD_WITHIN = 200;
const KEYS = 30;
const STROKES = { rate: 100, seconds: 10, species: 14 };

async function timed(work: () => Promise<unknown>): Promise<number> {
  const begun = clock();
  await work();
  return clock() - begun;
}

async function appendFlushed(path: string): Promise<void> {
  const file = await open(path, 'a');
  try {
    await file.writeFile('tuf 12\n');
    await file.sync();
  } finally {
    await file.close();
  }
}

/** The real disk with some milliseconds added to every flush, and a count of them. */
function slowDisk(wait: number): { disk: Disk; flushes(): number } {
  let flushes = 0;
  const slow = (file: FileHandle) =>
    new Proxy(file, {
      get(of, name: keyof FileHandle) {
        const value: unknown = of[name];
        if (name !== 'sync') return typeof value === 'function' ? value.bind(of) : value;
        return async () => {
          flushes += 1;
          if (wait > 0) await pause(wait);
          await of.sync();
        };
      },
    });
  const opened = async (...given: Parameters<Disk['open']>) => slow(await DISK.open(...given));
  return { disk: { ...DISK, open: opened }, flushes: () => flushes };
}

function logged(visit: Visit, key: number): Visit {
  const last = visit.entries.at(-1);
  if (last === undefined) throw new Error('The visit has no entry.');
  const time = stamp(START + key * 1000, ZONE);
  return updateVisit(visit, { do: 'log', id: crypto.randomUUID(), time, observation: last });
}

/** A save and the bare append in turn, round by round, so that the disk is as busy for one as for the other. */
async function costOf(notebook: string, start: Visit): Promise<string[]> {
  const { disk, flushes } = slowDisk(0);
  const store = visitStore(notebook, null, disk);
  let visit = start;
  await store.save(visit);
  const before = flushes();
  const saves: number[] = [];
  const bare: number[] = [];
  const texts: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    visit = logged(visit, round);
    saves.push(await timed(() => store.save(visit)));
    bare.push(await timed(() => appendFlushed(join(notebook, 'bare.txt'))));
    texts.push(await timed(async () => visitText(visit)));
  }
  const [save, floor] = [median(saves), median(bare)];
  const [save95, floor95] = [quantile(saves, 0.95), quantile(bare, 0.95)];
  return [
    String(start.entries.length),
    String(Math.round(Buffer.byteLength(visitText(visit)) / 1024)),
    figure((flushes() - before) / ROUNDS),
    figure(save),
    figure(save95),
    figure(floor),
    figure(floor95),
    times(save, floor),
    times(save95, floor95),
    figure(median(texts)),
  ];
}

/** Keys one by one, each when the one before is called saved: how long until its own entry is. */
async function toldOn(notebook: string, start: Visit, wait: number): Promise<Told> {
  let tell = () => {};
  const { disk } = slowDisk(wait);
  const queue = saveQueue(visitStore(notebook, null, disk), {
    saved: () => tell(),
    failed: (_, why) => {
      throw new Error(why);
    },
  });
  let visit = start;
  const told: number[] = [];
  const keys: number[] = [];
  for (let key = -1; key < KEYS; key += 1) {
    const begun = clock();
    const saved = new Promise<void>((resolve) => {
      tell = resolve;
    });
    visit = logged(visit, key);
    queue.add(visit);
    const added = clock() - begun;
    await saved;
    // The first makes the file and its folders.
    if (key < 0) continue;
    keys.push(added);
    told.push(clock() - begun);
  }
  return { told, keys };
}

interface Told {
  told: number[];
  keys: number[];
}

/** Strokes of a tally at a steady pace; the path of each key, and whether all are on disk at the end. */
async function strokes(notebook: string, start: Visit, wait: number): Promise<string[]> {
  const { disk } = slowDisk(wait);
  let saves = 0;
  let path = '';
  const queue = saveQueue(visitStore(notebook, null, disk), {
    saved: (_, saved) => {
      saves += 1;
      path = saved.path;
    },
    failed: (_, why) => {
      throw new Error(why);
    },
  });
  let visit = start;
  const keys: number[] = [];
  const begun = clock();
  const all = STROKES.rate * STROKES.seconds;
  for (let stroke = 0; stroke < all; stroke += 1) {
    await pause(Math.max(0, begun + (stroke * 1000) / STROKES.rate - clock()));
    const pressed = clock();
    const entry = visit.entries[stroke % STROKES.species];
    const value = entry?.count.kind === 'exact' ? entry.count.value + 1 : 1;
    const time = stamp(START + stroke * 10, ZONE);
    visit = updateVisit(visit, {
      do: 'recount',
      number: entry?.number ?? 0,
      time,
      count: { kind: 'exact', value },
    });
    queue.add(visit);
    keys.push(clock() - pressed);
  }
  const end = clock();
  await queue.idle();
  const rest = clock() - end;
  const onDisk: Visit = JSON.parse(await readFile(path, 'utf8'));
  const made = onDisk.changes.length - start.changes.length;
  if (made !== all) process.exitCode = 1;
  const [middle, late] = [median(keys), quantile(keys, 0.95)];
  return [`+${wait} ms`, `${made} of ${all}`, String(saves), ...[middle, late, rest].map(figure)];
}

await inFolder(async (folder) => {
  const { taxa } = await shipped();
  const of = (entries: number) => visitOf(linesOf(taxa, entries, 0), START, false);
  await appendFile(join(folder, 'warm.txt'), 'warm');
  const costs: string[][] = [];
  for (const entries of ENTRIES) costs.push(await costOf(join(folder, `${entries}`), of(entries)));
  printTable(
    `Save of one entry more in ms, of ${ROUNDS} saves, beside an append and fsync of one line; "to text" keeps keys waiting.`,
    ['entries', 'KiB', 'flushes', 'save', 'p95', 'bare', 'p95', 'save/bare', 'p95/p95', 'to text'],
    costs,
  );

  const told: string[][] = [];
  for (const wait of [0, SLOW]) {
    const { told: waits, keys } = await toldOn(join(folder, `told-${wait}`), of(1000), wait);
    const late = waits.filter((each) => each > TOLD_WITHIN).length;
    told.push([
      `+${wait} ms`,
      ...[median(waits), quantile(waits, 0.95), Math.max(...waits)].map(figure),
      `${late} of ${waits.length}`,
      figure(median(keys)),
      figure(quantile(keys, 0.95)),
    ]);
  }
  printTable(
    'From a key to "saved" at 1,000 entries in ms, by what is added to each flush, and the part of the key itself.',
    ['disk', 'saved', 'p95', 'most', `over ${TOLD_WITHIN}`, 'key', 'p95'],
    told,
  );

  const tallied: string[][] = [];
  for (const wait of [0, SLOW])
    tallied.push(await strokes(join(folder, `strokes-${wait}`), of(STROKES.species), wait));
  printTable(
    `${STROKES.rate} strokes a second for ${STROKES.seconds} s over ${STROKES.species} species: the path of a key in ms, and what is left to save behind the last.`,
    ['disk', 'strokes on disk', 'saves', 'key', 'p95', 'rest'],
    tallied,
  );
});
