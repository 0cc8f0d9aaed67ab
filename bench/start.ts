/** From spawn to the first frame and to the first key that is answered, beside Node and a bare Ink program. */
import { join } from 'node:path';
import { bareInk } from './bare-ink.ts';
import { inFolder, ROOT, shipped, weeklyVisits, writeVisits } from './invented.ts';
import { clock, figure, median, pause, printTable, quantile, times } from './measure.ts';
import { inTerminal, type Program } from './terminal.ts';

const ROUNDS = 9;
const HOME_SIZE = { columns: 80, rows: 24 };
const NOTEBOOK = { visits: 500, entries: 40 };
/** Milliseconds between the keys that are pressed while a notebook is read. */
const KEY_GAP = 40;

/** A program that draws a frame and answers a key, with what stands on the screen then. */
interface Subject {
  name: string;
  args: string[];
  frame: RegExp;
  answer: RegExp;
  /** Milliseconds, one of each kind a round. */
  toFrame: number[];
  toEarlyKey: number[];
  toKey: number[];
}

const TUSSOCK = join(ROOT, 'dist', 'tussock.js');

function tussock(name: string, notebook: string): Subject {
  return {
    name,
    args: [TUSSOCK, '--notebook', notebook],
    frame: /type a name/,
    // The last row of the suggestions, whatever the notebook ranks first.
    answer: /"m" in your words/,
    toFrame: [],
    toEarlyKey: [],
    toKey: [],
  };
}

async function round(subject: Subject, home: string): Promise<void> {
  const patient = inTerminal(subject.args, HOME_SIZE, home);
  subject.toFrame.push((await patient.seen(subject.frame)) - patient.spawned);
  const pressed = clock();
  patient.write('m');
  subject.toKey.push((await patient.seen(subject.answer)) - pressed);
  await patient.leave();
  const hasty = inTerminal(subject.args, HOME_SIZE, home);
  hasty.write('m');
  subject.toEarlyKey.push((await hasty.seen(subject.answer)) - hasty.spawned);
  await hasty.leave();
}

async function nodeAlone(home: string): Promise<number> {
  const program = inTerminal(['-e', '0'], HOME_SIZE, home);
  return (await program.ended()) - program.spawned;
}

/** Presses a key and takes it back, again and again, until the notebook is read: each key's wait. */
async function keysWhileRead(
  subject: Subject,
  home: string,
): Promise<{ waits: number[]; read: number }> {
  const program: Program = inTerminal(subject.args, HOME_SIZE, home);
  await program.seen(subject.frame);
  const waits: number[] = [];
  let read = Number.NaN;
  program.listen((_, at) => {
    if (Number.isNaN(read) && program.text().includes('earlier visits')) read = at;
  });
  while (Number.isNaN(read)) {
    for (const [key, answer] of [
      ['m', subject.answer],
      ['\u007f', subject.frame],
    ] as const) {
      const pressed = clock();
      program.write(key);
      waits.push((await program.seen(answer)) - pressed);
      await pause(KEY_GAP);
    }
  }
  await program.leave();
  return { waits, read: read - program.spawned };
}

await inFolder(async (folder) => {
  const { taxa } = await shipped();
  const empty = join(folder, 'empty');
  const full = join(folder, 'full');
  await writeVisits(full, weeklyVisits(taxa, NOTEBOOK, Date.now()));
  const bare: Subject = {
    name: 'bare Ink program',
    args: [await bareInk(folder)],
    frame: /ready/,
    answer: /typed m/,
    toFrame: [],
    toEarlyKey: [],
    toKey: [],
  };
  const large = tussock(`tussock, ${NOTEBOOK.visits} visits of ${NOTEBOOK.entries}`, full);
  const subjects = [bare, tussock('tussock, empty notebook', empty), large];
  const alone: number[] = [];
  await nodeAlone(folder);
  for (let count = 0; count < ROUNDS; count += 1) {
    alone.push(await nodeAlone(folder));
    for (const subject of subjects) await round(subject, folder);
  }
  const floor = median(alone);
  printTable(
    `Start in a pty of 80x24: medians of ${ROUNDS} runs in ms, and the least, which other programs' turns lengthen less.`,
    [
      '',
      'first frame',
      'least',
      '/ node',
      '/ bare',
      'least / least',
      'key at spawn answered',
      '/ bare',
      'key after frame',
    ],
    [
      ['node -e 0, to its end', figure(floor), figure(Math.min(...alone)), '1.00x'],
      ...subjects.map(({ name, toFrame, toEarlyKey, toKey }) => [
        name,
        figure(median(toFrame)),
        figure(Math.min(...toFrame)),
        times(median(toFrame), floor),
        times(median(toFrame), median(bare.toFrame)),
        times(Math.min(...toFrame), Math.min(...bare.toFrame)),
        figure(median(toEarlyKey)),
        times(median(toEarlyKey), median(bare.toEarlyKey)),
        figure(median(toKey)),
      ]),
    ],
  );
  const { waits, read } = await keysWhileRead(large, folder);
  console.log(
    `\n${large.name}: known ${figure(read)} ms after spawn (${times(read, floor)} node); ${waits.length} keys meanwhile, answered in p50 ${figure(median(waits))}, p95 ${figure(quantile(waits, 0.95))}, longest ${figure(Math.max(...waits))} ms`,
  );
});
