/** From a key's byte to the frame that shows it, at the pace of a slow, a quick and a racing hand. */
import { join } from 'node:path';
import { inFolder, linesOf, ROOT, shipped, visitOf, writeVisits } from './invented.ts';
import { figure, median, printTable, quantile, times } from './measure.ts';
import { ECHO, echoed, type Pace, type Paced, typedAtPace } from './pace.ts';
import { inTerminal, type Size } from './terminal.ts';

const ENTRIES = 200;
const SIZES: readonly Size[] = [
  { columns: 80, rows: 24 },
  { columns: 120, rows: 40 },
];
/** Keys a second and how many are measured; the slowest pace gets the fewest, for the run to end in time. */
const PACES: readonly Pace[] = [
  { rate: 4, keys: 20 },
  { rate: 40, keys: 200 },
  { rate: 100, keys: 300 },
];
/** The first keys meet code that has never run: they are told apart. */
const WARM_UP: Pace = { rate: 20, keys: 40 };
const HOUR = 3_600_000;
const TUSSOCK = join(ROOT, 'dist', 'tussock.js');

interface Measured {
  size: Size;
  pace: Pace;
  tussock: Paced;
  echo: Paced;
}

/** Tussock and the floor by turns, so that the machine is as busy for one as for the other. */
async function measured(size: Size, folder: string): Promise<Measured[]> {
  const notebook = join(folder, `${size.columns}`);
  const { taxa } = await shipped();
  const visit = visitOf(linesOf(taxa, ENTRIES, 0), Date.now() - 4 * HOUR, false);
  await writeVisits(notebook, [visit]);
  const echo = inTerminal(['-e', ECHO], size, folder);
  await echo.seen(/ready/);
  const tussock = inTerminal([TUSSOCK, '--notebook', notebook], size, folder);
  await tussock.seen(/type a name/);
  const runs: Measured[] = [];
  for (const pace of [WARM_UP, ...PACES])
    runs.push({
      size,
      pace,
      tussock: await typedAtPace(tussock, size, pace),
      echo: await echoed(echo, { ...pace, keys: Math.ceil(pace.keys / 2) }),
    });
  await tussock.leave();
  await echo.leave();
  return runs;
}

function row({ size, pace, tussock, echo }: Measured): string[] {
  const at = (share: number) => quantile(tussock.waits, share);
  const floor = median(echo.waits);
  return [
    `${size.columns}x${size.rows}`,
    pace === WARM_UP ? `first, ${pace.rate}` : String(pace.rate),
    String(pace.keys),
    ...[0.5, 0.95, 0.99, 1].map((share) => figure(at(share))),
    figure(floor),
    times(at(0.5), floor),
    (tussock.bytes / pace.keys).toFixed(0),
  ];
}

await inFolder(async (folder) => {
  const runs: Measured[] = [];
  for (const size of SIZES) runs.push(...(await measured(size, folder)));
  const isFirst = ({ pace }: Measured) => pace === WARM_UP;
  printTable(
    `Key to frame in ms, a visit of ${ENTRIES} entries open; names and counts typed and logged.`,
    ['', 'keys/s', 'keys', 'p50', 'p95', 'p99', 'most', 'echo p50', '/ echo', 'bytes/key'],
    [...runs.filter((run) => !isFirst(run)), ...runs.filter(isFirst)].map(row),
  );
});
