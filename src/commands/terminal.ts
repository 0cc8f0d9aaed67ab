import { StringDecoder } from 'node:string_decoder';
import { setTimeout as wait } from 'node:timers/promises';
import { FULL_SIZE } from '../screens/field/frame.ts';
import { cutKeys, type Key, waitFor } from '../screens/keyboard.ts';
import type { Size } from '../screens/paint.ts';

const PASTE_ON = '\u001b[?2004h';
const PASTE_OFF = '\u001b[?2004l';

/** The least terminal in which the entry line can be read at all. */
const LEAST: Size = { columns: 20, rows: 4 };

/** Wipes the screen and goes to its first place, without touching the scrollback. */
export const WIPE = '\u001b[H\u001b[J';

/** Why this terminal can't show a screen, with what to do instead; null when it can. */
export function terminalProblem(): string | null {
  if (!process.stdin.isTTY || !process.stdout.isTTY)
    return 'The Field screen needs a terminal. To log lines from a file or a pipe: tussock field --stdin < lines.txt';
  const size = sizeNow();
  if (size.columns < LEAST.columns || size.rows < LEAST.rows)
    return `This window is ${sizeWords(size)}; the Field screen needs at least ${sizeWords(LEAST)}, and shows all at ${sizeWords(FULL_SIZE)}.`;
  return null;
}

function sizeWords({ columns, rows }: Size): string {
  return `${columns}x${rows}`;
}

/** The size of the terminal; one that does not know its size says 0. */
export function sizeNow(): Size {
  return { columns: process.stdout.columns || 80, rows: process.stdout.rows || 24 };
}

export interface RawInput {
  /** Hands over the keys typed so far, and every key from now on. */
  listen(onKey: (key: Key) => void): void;
  pause(): void;
  resume(): void;
}

/** Takes the keyboard at once, so that what is typed while the program starts is not lost. */
export function rawInput(): RawInput {
  const early: Key[] = [];
  let onKey = (key: Key) => {
    early.push(key);
  };
  const decoder = new StringDecoder('utf8');
  let rest = '';
  let waiting: NodeJS.Timeout | undefined;
  const take = (text: string, ended: boolean) => {
    clearTimeout(waiting);
    const cut = cutKeys(rest + text, ended);
    rest = cut.rest;
    if (rest !== '') waiting = setTimeout(() => take('', true), waitFor(rest));
    for (const key of cut.keys) onKey(key);
  };
  const resume = () => {
    process.stdin.setRawMode(true);
    process.stdout.write(PASTE_ON);
    process.stdin.resume();
  };
  process.stdin.on('data', (bytes: Buffer) => take(decoder.write(bytes), false));
  resume();
  return {
    listen(listener) {
      onKey = listener;
      for (const key of early.splice(0)) listener(key);
    },
    pause() {
      process.stdout.write(PASTE_OFF);
      process.stdin.setRawMode(false);
      process.stdin.pause();
    },
    resume,
  };
}

/** How long a job that nobody stops waits for its stop, in milliseconds. */
const STOP_WAIT = 100;

/**
 * Stops the program as Ctrl-Z does and resolves once it goes on; false where nothing stopped it: no
 * shell that could bring it back has started it, or the system (Windows) has no such thing.
 */
export async function stopJob(input: RawInput): Promise<boolean> {
  if (process.platform === 'win32') return false;
  input.pause();
  let goneOn = false;
  const goOn = () => {
    goneOn = true;
  };
  process.once('SIGCONT', goOn);
  // To the whole job, or npm and scripts around the program would keep the terminal; and SIGTSTP, as
  // the system leaves that one out where no shell is there to go back to.
  process.kill(0, 'SIGTSTP');
  await wait(STOP_WAIT);
  process.removeListener('SIGCONT', goOn);
  input.resume();
  // Ink draws from where the cursor stands.
  process.stdout.write('\r\n');
  return goneOn;
}
