/** Kills the built program a thousand times while entries are typed, and tells what was lost: nothing may be. */
import { mkdir } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { killed, summed, type Toll } from '../tests/terminal/killing.ts';
import { inFolder, ROOT } from './invented.ts';
import { clock, printTable } from './measure.ts';

const [runs = 1000, seed = 1] = process.argv.slice(2).map(Number);
/** Kills in one notebook's life. */
const KILLS = 10;

await inFolder(async (folder) => {
  const lives = Array.from({ length: Math.ceil(runs / KILLS) }, (_, life) => life);
  const tolls: Toll[] = [];
  const begun = clock();
  const work = async () => {
    for (let life = lives.pop(); life !== undefined; life = lives.pop()) {
      const notebook = join(folder, String(life));
      await mkdir(notebook);
      tolls.push(await killed(join(ROOT, 'dist', 'tussock.js'), notebook, KILLS, seed + life));
    }
  };
  await Promise.all(Array.from({ length: Math.max(2, availableParallelism()) }, work));
  const toll = summed(tolls);
  const seconds = Math.round((clock() - begun) / 1000);
  printTable(
    `Kills at random moments while entries are typed, in ${seconds} s; seed ${seed}.`,
    ['', 'runs', 'shown as saved', 'lost', 'unreadable', 'on disk before shown', 'left .tmp'],
    [
      [
        'SIGKILL',
        ...[toll.runs, toll.shown, toll.lost, toll.unreadable, toll.ahead, toll.leftovers].map(
          String,
        ),
      ],
    ],
  );
  if (toll.lost > 0 || toll.unreadable > 0) process.exitCode = 1;
});
