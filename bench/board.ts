/** From a stroke's byte to the frame that has it in the total, late in a long tally; and what that costs on disk. */
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { keepLetters } from '../src/notebook/letters.ts';
import { visitText } from '../src/notebook/visit-file.ts';
import { type Board, LETTERS } from '../src/screens/board/board.ts';
import { struck } from '../src/screens/board/tally.ts';
import type { Taxon } from '../src/taxa/taxon.ts';
import { isSpecies, taxonKey } from '../src/visit/entry.ts';
import { placeKey } from '../src/visit/place.ts';
import { stamp } from '../src/visit/time.ts';
import type { Visit } from '../src/visit/visit.ts';
import { inFolder, ROOT, SALLOW_MERE, shipped, visitOf, writeVisits, ZONE } from './invented.ts';
import { clock, figure, median, printTable, quantile, times } from './measure.ts';
import { ECHO, echoed, type Pace, type Paced, rowsOf, watchedAtPace } from './pace.ts';
import { inTerminal, type Program, type Size } from './terminal.ts';

const SPECIES = 14;
const STROKES = 2000;
/** A fresh flock after so many. */
const FLOCK = 100;
const HOUR = 3_600_000;
const SIZES: readonly Size[] = [
  { columns: 80, rows: 24 },
  { columns: 120, rows: 40 },
];
const PACES: readonly Pace[] = [
  { rate: 40, keys: 200 },
  { rate: 100, keys: 300 },
];
const WARM_UP: Pace = { rate: 20, keys: 40 };
const BACKSPACE = '\u007f';
const TUSSOCK = join(ROOT, 'dist', 'tussock.js');

interface Measured {
  size: Size;
  what: string;
  pace: Pace;
  tussock: Paced;
  echo: Paced;
}

/** A visit of one hour, with strokes over some species and a flock now and then. */
function tallied(taxa: readonly Taxon[]): { visit: Visit; letters: Record<string, Taxon> } {
  const species = taxa
    .filter((taxon) => taxon.class === 'Aves' && taxon.frequency === 1 && isSpecies(taxon))
    .slice(0, SPECIES);
  const letters = Object.fromEntries(species.map((taxon, at) => [LETTERS[at] ?? '', taxon]));
  const start = Date.now() - HOUR;
  let visit = visitOf([], start, false);
  const board: Board = {
    taxa: letters,
    step: 1,
    flockAfter: 0,
    flockSince: visit.start,
    last: null,
    passing: null,
  };
  for (let at = 0; at < STROKES; at += 1) {
    if (at % FLOCK === 0) board.flockAfter = visit.entries.length;
    const taxon = species[(at * 5) % species.length];
    const time = stamp(start + (at * HOUR) / STROKES, ZONE);
    if (taxon) visit = struck(visit, board, taxon, { time, at: time, id: randomUUID() });
  }
  return { visit, letters };
}

/** How many birds the Board's rule says; null while it can't be read. */
function inAll(rows: readonly string[]): number | null {
  const said = /(\d+) in all/.exec(rows.join('\n'))?.[1];
  return said === undefined ? null : Number(said);
}

/** Strokes that add one, or keys that take one back: the sum on the screen tells how many are in. */
async function struckAtPace(
  program: Program,
  size: Size,
  pace: Pace,
  way: 'more' | 'back',
  from: number,
): Promise<Paced> {
  return watchedAtPace(program, size, pace, {
    key: (place) => (way === 'back' ? BACKSPACE : (LETTERS[(place * 3) % SPECIES] ?? '')),
    answered(screen, pressed, before) {
      const sum = inAll(rowsOf(screen, size));
      if (sum === null) return before;
      return Math.min(pressed, way === 'more' ? sum - from : from - sum);
    },
  });
}

async function measured(size: Size, folder: string, visit: Visit): Promise<Measured[]> {
  const notebook = join(folder, `${size.columns}`);
  const echo = inTerminal(['-e', ECHO], size, folder);
  await echo.seen(/ready/);
  const tussock = inTerminal([TUSSOCK, '--notebook', notebook], size, folder);
  await tussock.seen(/type a name/);
  tussock.write('\u001bb');
  await tussock.seen(/in all, all saved/);
  const runs: Measured[] = [];
  let sum = visit.changes.length;
  const run = async (pace: Pace, way: 'more' | 'back', what: string) => {
    const paced = await struckAtPace(tussock, size, pace, way, sum);
    sum += way === 'more' ? pace.keys : -pace.keys;
    const floor = await echoed(echo, { ...pace, keys: Math.ceil(pace.keys / 2) });
    runs.push({ size, what, pace, tussock: paced, echo: floor });
  };
  await run(WARM_UP, 'more', 'first strokes');
  for (const pace of PACES) await run(pace, 'more', 'strokes');
  for (const pace of PACES) await run(pace, 'back', 'taken back');
  await tussock.leave();
  await echo.leave();
  return runs;
}

function row({ size, what, pace, tussock, echo }: Measured): string[] {
  const at = (share: number) => quantile(tussock.waits, share);
  const floor = median(echo.waits);
  return [
    `${size.columns}x${size.rows}`,
    what,
    String(pace.rate),
    String(pace.keys),
    ...[0.5, 0.95, 0.99, 1].map((share) => figure(at(share))),
    figure(floor),
    times(at(0.5), floor),
    times(at(0.95), floor),
    (tussock.bytes / pace.keys).toFixed(0),
  ];
}

function fileRow(visit: Visit): string[] {
  const begun = clock();
  const text = visitText(visit);
  const took = clock() - begun;
  const bytes = Buffer.byteLength(text);
  const entries = Buffer.byteLength(visitText({ ...visit, changes: [] }));
  return [
    String(visit.entries.length),
    String(visit.changes.length),
    String(Math.round(bytes / 1024)),
    times(bytes, entries),
    ((bytes - entries) / visit.changes.length).toFixed(0),
    figure(took),
  ];
}

await inFolder(async (folder) => {
  const { visit, letters } = tallied((await shipped()).taxa);
  printTable(
    `The file of a visit after ${STROKES} strokes over ${SPECIES} species.`,
    ['entries', 'changes', 'KiB', '/ entries alone', 'bytes/stroke', 'to text, ms'],
    [fileRow(visit)],
    0,
  );
  const layout = Object.entries(letters).map(([letter, taxon]) => [letter, taxonKey(taxon)]);
  const runs: Measured[] = [];
  for (const size of SIZES) {
    const notebook = join(folder, `${size.columns}`);
    await writeVisits(notebook, [visit]);
    await keepLetters(notebook, placeKey(SALLOW_MERE.name), Object.fromEntries(layout));
    runs.push(...(await measured(size, folder, visit)));
  }
  printTable(
    `Stroke to frame in ms, a visit with ${STROKES} strokes open on the Board.`,
    [
      '',
      '',
      'keys/s',
      'keys',
      'p50',
      'p95',
      'p99',
      'most',
      'echo p50',
      '/ it',
      'p95 / it',
      'bytes/key',
    ],
    runs.map(row),
    2,
  );
});
