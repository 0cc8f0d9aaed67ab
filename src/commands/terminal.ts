import type { Size } from '../screens/field/frame.ts';
import { type Key, keyboard } from '../screens/keyboard.ts';

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
  const { columns, rows } = process.stdout;
  if (columns < LEAST.columns || rows < LEAST.rows)
    return `This window is ${columns}x${rows}; the Field screen needs at least ${LEAST.columns}x${LEAST.rows}, and shows all at 50x16.`;
  return null;
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
  const write = keyboard((key) => onKey(key));
  const resume = () => {
    process.stdin.setRawMode(true);
    process.stdout.write(PASTE_ON);
    process.stdin.resume();
  };
  process.stdin.on('data', write);
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

/** The size of the terminal, and every change of it. */
export function terminalSize(): { get(): Size; subscribe(listener: () => void): () => void } {
  const read = (): Size => ({
    columns: process.stdout.columns || 80,
    rows: process.stdout.rows || 24,
  });
  let size = read();
  const listeners = new Set<() => void>();
  process.stdout.prependListener('resize', () => {
    size = read();
    for (const listener of listeners) listener();
  });
  return {
    get: () => size,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
