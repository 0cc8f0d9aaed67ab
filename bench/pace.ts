import headless from '@xterm/headless';
import { clock, pause } from './measure.ts';
import type { Program, Size } from './terminal.ts';

/** The floor: a program that sends every byte back as it comes. */
export const ECHO = `process.stdin.setRawMode(true);
process.stdin.on('data', (bytes) => process.stdout.write(bytes));
process.stdout.write('ready');`;

/** Keys a second, and how many of them. */
export interface Pace {
  rate: number;
  keys: number;
}

/** The wait of each key in milliseconds, and the bytes that came in answer to all. */
export interface Paced {
  waits: number[];
  bytes: number;
}

/** Names as a hand types them, each with a count and Enter; no two states in a row look alike. */
const TYPED = [
  'mallard24\r',
  'tuf12\r',
  'coot61\r',
  'gbbg3\r',
  'wigeon~120\r',
  'heron1\r',
  'ltt10\r',
];
const PROMPT = 'log> ';
/** How long the last keys may take to be answered. */
const MOST_WAIT = 5000;

/** A key, and what the entry line says once it is answered. */
interface Step {
  key: string;
  shows: string;
}

function steps(count: number): Step[] {
  const all = Array.from({ length: count }, (_, round) => TYPED[round % TYPED.length] ?? '')
    .flatMap((line) =>
      [...line].map((key, place) => ({ key, shows: key === '\r' ? '' : line.slice(0, place + 1) })),
    )
    .slice(0, count);
  // A stretch ends on an empty line, so that the next begins on one.
  const last = all.at(-1);
  if (last && last.shows !== '') all[all.length - 1] = { key: '\r', shows: '' };
  return all;
}

/** Presses a key at each beat and hands each moment over. Beats are kept: a late one is not made up for by waiting on. */
async function press(pace: Pace, each: (place: number) => void): Promise<void> {
  const begun = clock();
  for (let place = 0; place < pace.keys; place += 1) {
    const due = begun + (place * 1000) / pace.rate;
    await pause(Math.max(0, due - clock()));
    each(place);
  }
}

/**
 * Types names at a pace and watches the entry line of the screen: a key is answered by the first read
 * from the pty after which its line stands there, or that of a key behind it.
 */
export function typedAtPace(program: Program, size: Size, pace: Pace): Promise<Paced> {
  const wanted = steps(pace.keys);
  return watchedAtPace(program, size, pace, {
    key: (place) => wanted[place]?.key ?? '',
    answered(screen, pressed, before) {
      const shown = entryLine(screen, size);
      const fits = (step: Step, place: number) =>
        place >= before && place < pressed && step.shows === shown;
      return shown === null ? before : wanted.findIndex(fits) + 1;
    },
  });
}

/** What is pressed, and how many of the keys pressed so far a screen answers; `before` have been. */
export interface Watched {
  key(place: number): string;
  answered(screen: headless.Terminal, pressed: number, before: number): number;
}

/** Presses keys at a pace and looks at the screen behind each read from the pty. */
export async function watchedAtPace(
  program: Program,
  size: Size,
  pace: Pace,
  watched: Watched,
): Promise<Paced> {
  const pressed: number[] = [];
  const waits: number[] = [];
  const screen = new headless.Terminal({
    cols: size.columns,
    rows: size.rows,
    allowProposedApi: true,
  });
  let bytes = 0;
  const look = (at: number) => {
    const answered = watched.answered(screen, pressed.length, waits.length);
    while (waits.length < answered) waits.push(at - (pressed[waits.length] ?? at));
  };
  await new Promise<void>((resolve) => screen.write(program.text(), resolve));
  const stop = program.listen((chunk, at) => {
    bytes += Buffer.byteLength(chunk);
    screen.write(chunk, () => look(at));
  });
  await press(pace, (place) => {
    pressed.push(clock());
    program.write(watched.key(place));
  });
  await answered(waits, pace.keys);
  stop();
  return { waits, bytes };
}

/** The rows of a screen, without the blanks behind. */
export function rowsOf(screen: headless.Terminal, size: Size): string[] {
  const { active } = screen.buffer;
  return Array.from(
    { length: size.rows },
    (_, row) => active.getLine(active.baseY + row)?.translateToString(true) ?? '',
  );
}

function entryLine(screen: headless.Terminal, size: Size): string | null {
  for (const text of rowsOf(screen, size)) {
    if (!text.startsWith(PROMPT.trimEnd())) continue;
    const typed = text.slice(PROMPT.length);
    // Behind an empty line stands what the notebook holds, two gaps away.
    return typed.startsWith('  ') ? '' : typed;
  }
  return null;
}

/** The same keys to a program that sends each byte back. */
export async function echoed(program: Program, pace: Pace): Promise<Paced> {
  const pressed: number[] = [];
  const waits: number[] = [];
  let bytes = 0;
  const stop = program.listen((chunk, at) => {
    bytes += chunk.length;
    for (const _ of chunk) waits.push(at - (pressed[waits.length] ?? at));
  });
  await press(pace, () => {
    pressed.push(clock());
    program.write('x');
  });
  await answered(waits, pace.keys);
  stop();
  return { waits, bytes };
}

async function answered(waits: readonly number[], keys: number): Promise<void> {
  const end = clock() + MOST_WAIT;
  while (waits.length < keys) {
    if (clock() > end) throw new Error(`Only ${waits.length} of ${keys} keys were answered.`);
    await pause(20);
  }
}
