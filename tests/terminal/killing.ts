import { readdir, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { spawn } from '@lydell/node-pty';
import xterm from '@xterm/headless';
import fc from 'fast-check';
import { readVisits, visitFiles } from '../../src/notebook/notebook.ts';
import type { Visit } from '../../src/visit/visit.ts';

/** What is typed in one run of the program until it is killed; times in milliseconds. */
interface Plan {
  /** The kill waits until the screen shows so many new entries as saved; null: it comes while the program starts. */
  saved: number | null;
  /** And then so long. */
  delay: number;
  /**
   * How long to wait behind each line, and not for its entry where `hasty`; and whether a place is given
   * too, which renames the file.
   */
  lines: { wait: number; hasty: boolean; place: boolean }[];
}

/** What kills came to. */
export interface Toll {
  runs: number;
  /** Entries that a screen had shown as saved. */
  shown: number;
  /** Of these, those that no file held afterwards, or not as they were typed. */
  lost: number;
  /** Runs after which a visit file could not be read. */
  unreadable: number;
  /** Entries that were on disk before any screen had shown them as saved. */
  ahead: number;
  /** Temporary files that interrupted saves left behind. */
  leftovers: number;
}

const COLUMNS = 80;
const ROWS = 24;
const PATIENCE = 20_000;

const plans: fc.Arbitrary<Plan> = fc.record({
  saved: fc.integer({ min: 0, max: 3 }).map((saved) => (saved === 0 ? null : saved)),
  delay: fc.integer({ min: 0, max: 80 }),
  lines: fc.array(
    fc.record({
      wait: fc.integer({ min: 0, max: 50 }),
      hasty: fc.integer({ min: 0, max: 3 }).map((quarter) => quarter === 0),
      place: fc.integer({ min: 0, max: 9 }).map((tenth) => tenth === 0),
    }),
    { minLength: 30, maxLength: 30, size: 'max' },
  ),
});

function lineOf(entry: number): string {
  return `tuf ${entry + 1}`;
}

/**
 * Kills the program again and again while entries are typed into one notebook. After each kill, whatever
 * a screen had called saved must be there, in a file that can be read. The same seed makes the same plans.
 */
export async function killed(
  program: string,
  notebook: string,
  runs: number,
  seed: number,
): Promise<Toll> {
  const toll: Toll = { runs: 0, shown: 0, lost: 0, unreadable: 0, ahead: 0, leftovers: 0 };
  let onDisk = 0;
  for (const plan of fc.sample(plans, { seed, numRuns: runs })) {
    const shown = await killedOnce(program, notebook, plan, onDisk);
    const { visits, problems } = await readVisits(await visitFiles(notebook));
    const held = heldIn(visits.map(({ visit }) => visit));
    toll.runs += 1;
    toll.shown += Math.max(0, shown - onDisk);
    toll.lost += Math.max(0, Math.max(shown, onDisk) - held);
    toll.ahead += Math.max(0, held - Math.max(shown, onDisk));
    toll.unreadable += problems.length > 0 ? 1 : 0;
    onDisk = held;
  }
  toll.leftovers = (await leftovers(notebook)).length;
  return toll;
}

/** How many entries stand in the one visit, as they were typed. */
function heldIn(visits: readonly Visit[]): number {
  const entries = visits.length === 1 ? (visits[0]?.entries ?? []) : [];
  const wrong = entries.findIndex(({ typed, struck }, at) => typed !== lineOf(at) || struck);
  return wrong < 0 ? entries.length : wrong;
}

/** Runs the program and kills it; the most entries that its screen called saved at any time. */
async function killedOnce(
  program: string,
  notebook: string,
  plan: Plan,
  from: number,
): Promise<number> {
  const child = spawn(process.execPath, [program], {
    name: 'xterm-256color',
    cols: COLUMNS,
    rows: ROWS,
    cwd: notebook,
    env: { PATH: process.env.PATH ?? '', TZ: 'UTC', TUSSOCK_NOTEBOOK: notebook },
  });
  const terminal = new xterm.Terminal({ cols: COLUMNS, rows: ROWS, allowProposedApi: true });
  let saved = 0;
  let running = true;
  let logged = 0;
  const watchers = new Set<() => void>();
  child.onData((data) =>
    terminal.write(data, () => {
      // Within a synchronized update (DEC mode 2026) half a frame stands there.
      if (terminal.modes.synchronizedOutputMode) return;
      const screen = textOf(terminal);
      saved = Math.max(saved, savedOn(screen));
      logged = Number(/(\d+) entr(?:y|ies), /.exec(screen)?.[1] ?? 0);
      for (const look of watchers) look();
    }),
  );
  const ended = new Promise<void>((resolve) => {
    child.onExit(() => {
      running = false;
      terminal.write('', resolve);
    });
  });
  const late = new AbortController();
  const patience = wait(PATIENCE, undefined, { signal: late.signal }).catch(() => {});
  const until = (comes: () => boolean) => {
    const seen = new Promise<void>((tell) => watchers.add(() => comes() && tell()));
    return Promise.race([seen, ended, patience]);
  };
  const typing = (async () => {
    for (const [at, line] of plan.lines.entries()) {
      if (!running) return;
      const place = line.place ? `/place Sallow Mere ${from + at}\r` : '';
      child.write(`${place}${lineOf(from + at)}\r`);
      // On a busy machine the lines would else pile up, and be saved as one.
      if (!line.hasty && plan.saved !== null) await until(() => logged > from + at);
      await wait(line.wait);
    }
  })();
  const { saved: wanted } = plan;
  if (wanted !== null) await until(() => saved >= from + wanted);
  await wait(wanted === null ? plan.delay * 10 : plan.delay);
  // What it has written up to now counts as shown, read or not.
  if (running) process.kill(child.pid, 'SIGKILL');
  running = false;
  await Promise.all([typing, ended]);
  late.abort();
  terminal.dispose();
  return saved;
}

/** The highest number of an entry that a screen calls saved, by its sum or by its row. */
function savedOn(screen: string): number {
  const all = Number(/(\d+) entr(?:y|ies), all saved/.exec(screen)?.[1] ?? 0);
  const rows = screen.match(/^ +\d+ \d\d:\d\d .*$/gm) ?? [];
  const saved = rows
    .filter((row) => !row.includes('saving'))
    .map((row) => Number.parseInt(row, 10));
  return Math.max(all, ...saved);
}

function textOf(terminal: xterm.Terminal): string {
  const { active } = terminal.buffer;
  return Array.from({ length: ROWS }, (_, row) =>
    active.getLine(active.viewportY + row)?.translateToString(true),
  ).join('\n');
}

/** The temporary files in a notebook. */
async function leftovers(notebook: string): Promise<string[]> {
  const files = await readdir(notebook, { recursive: true });
  return files.filter((file) => file.endsWith('.tmp')).map((file) => join(notebook, file));
}

/** Makes temporary files look as if the saves that left them could not run any more. */
export async function age(notebook: string): Promise<void> {
  const then = Date.now() / 1000 - 3600;
  for (const file of await leftovers(notebook)) await utimes(file, then, then);
}

export function summed(tolls: readonly Toll[]): Toll {
  return tolls.reduce((sum, toll) => ({
    runs: sum.runs + toll.runs,
    shown: sum.shown + toll.shown,
    lost: sum.lost + toll.lost,
    unreadable: sum.unreadable + toll.unreadable,
    ahead: sum.ahead + toll.ahead,
    leftovers: sum.leftovers + toll.leftovers,
  }));
}
