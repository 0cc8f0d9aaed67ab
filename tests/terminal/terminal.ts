import { spawn } from '@lydell/node-pty';
import xterm from '@xterm/headless';
import { onTestFinished } from 'vitest';
import { PROGRAM } from '../commands/run.ts';

/** How long a journey waits for what it expects before it fails, in milliseconds. */
const PATIENCE = 20_000;

interface Start {
  notebook: string;
  args?: string[];
  environment?: Record<string, string>;
  columns?: number;
  rows?: number;
  /** Another program than Tussock, such as a shell, with its arguments. */
  instead?: [string, ...string[]];
}

/** The built program in a pseudo-terminal, with a terminal emulator that reads its screen. */
export interface Journey {
  pid: number;
  /** Writes bytes as the keyboard would, in one write. */
  send(bytes: string): void;
  /** Resolves with the screen as soon as it shows the text or fits the test; rejects with the screen. */
  shows(want: string | RegExp | ((screen: string) => boolean)): Promise<string>;
  /** Resolves when the program has ended and its last output is on the screen. */
  ends(): Promise<{ code: number; signal: number }>;
  screen(): string;
  resize(columns: number, rows: number): void;
  /** Sends a signal to the program, and to what else belongs to its job. */
  signal(name: NodeJS.Signals): void;
  /** Puts bytes on the screen that the program has not sent; resolves once they stand there. */
  scribble(bytes: string): Promise<void>;
  /** Closes the terminal, as a window that is closed does. */
  hangUp(): void;
  /** Every byte that the program has sent so far. */
  sent(): string;
  terminal: xterm.Terminal;
}

/** The program's own command line, for a shell. */
export const COMMAND = `'${process.execPath}' '${PROGRAM}'`;

export function begin(start: Start): Journey {
  const { notebook, args = [], environment = {}, columns = 80, rows = 24 } = start;
  const [file, ...rest] = start.instead ?? [process.execPath, PROGRAM, ...args];
  const child = spawn(file, rest, {
    name: environment.TERM ?? 'xterm-256color',
    cols: columns,
    rows,
    cwd: notebook,
    env: { PATH: process.env.PATH ?? '', TZ: 'UTC', TUSSOCK_NOTEBOOK: notebook, ...environment },
  });
  const terminal = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true });
  let sent = '';
  let running = true;
  const watchers = new Set<() => void>();
  const changed = () => {
    for (const watcher of watchers) watcher();
  };
  child.onData((data) => {
    sent += data;
    terminal.write(data, changed);
  });
  const ended = new Promise<{ code: number; signal: number }>((resolve) => {
    child.onExit(({ exitCode, signal }) => {
      running = false;
      terminal.write('', () => resolve({ code: exitCode, signal: signal ?? 0 }));
    });
  });
  onTestFinished(() => {
    if (running) child.kill('SIGKILL');
    terminal.dispose();
  });
  const screen = () => screenOf(terminal).join('\n');

  return {
    pid: child.pid,
    terminal,
    screen,
    ends: () => withPatience(ended, () => `The program did not end:\n${screen()}`),
    sent: () => sent,
    send: (bytes) => child.write(bytes),
    scribble: (bytes) => new Promise((done) => terminal.write(bytes, done)),
    hangUp: () => (child as unknown as { destroy(): void }).destroy(),
    signal: (name) => process.kill(-child.pid, name),
    resize(wide, high) {
      terminal.resize(wide, high);
      child.resize(wide, high);
    },
    shows(want) {
      const fits =
        typeof want === 'function'
          ? want
          : (shown: string) => (typeof want === 'string' ? shown.includes(want) : want.test(shown));
      let watcher = () => {};
      const seen = new Promise<string>((resolve) => {
        watcher = () => {
          // Within a synchronized update (DEC mode 2026) half a frame stands there.
          if (terminal.modes.synchronizedOutputMode) return;
          const shown = screen();
          if (fits(shown)) resolve(shown);
        };
        watchers.add(watcher);
        watcher();
      });
      return withPatience(seen, () => `${want} never stood on the screen:\n${screen()}`).finally(
        () => watchers.delete(watcher),
      );
    },
  };
}

/** Rows of the buffer that is shown, from its first visible row, without the blanks behind. */
function screenOf(terminal: xterm.Terminal): string[] {
  const { active } = terminal.buffer;
  return Array.from({ length: terminal.rows }, (_, row) =>
    (active.getLine(active.viewportY + row)?.translateToString(true) ?? '').trimEnd(),
  );
}

function withPatience<T>(promise: Promise<T>, complaint: () => string): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(complaint())), PATIENCE);
  });
  return Promise.race([promise, late]).finally(() => clearTimeout(timer));
}
