import { type IPty, spawn } from '@lydell/node-pty';
import { clock } from './measure.ts';

export interface Size {
  columns: number;
  rows: number;
}

/** A program in a pty of its own, with all that it has written. */
export interface Program {
  /** When it was spawned, by `clock`. */
  spawned: number;
  /** Everything written so far. */
  text(): string;
  write(bytes: string): void;
  /** Calls back at each read from the pty with the time at which it came, until the returned is called. */
  listen(listener: (chunk: string, at: number) => void): () => void;
  /** Resolves with the time at which `mark` stood in what was written since the last `seen`; rejects after 20 s. */
  seen(mark: RegExp): Promise<number>;
  /** Resolves with the time of its end, after at most 5 s by SIGKILL. */
  ended(): Promise<number>;
  /** Asks it to leave, and waits for its end. */
  leave(): Promise<void>;
}

const MOST_WAIT = 20_000;

/** Runs a script with this Node, in a terminal of a known kind with `home` for its own files. */
export function inTerminal(args: readonly string[], size: Size, home: string): Program {
  const environment = { PATH: process.env.PATH ?? '', HOME: home, TERM: 'xterm-256color' };
  const spawned = clock();
  const pty: IPty = spawn(process.execPath, [...args], {
    cols: size.columns,
    rows: size.rows,
    cwd: home,
    env: { ...environment, LANG: 'C.UTF-8', TZ: 'Europe/London' },
  });
  let written = '';
  let looked = 0;
  const listeners = new Set<(chunk: string, at: number) => void>();
  pty.onData((chunk) => {
    const at = clock();
    written += chunk;
    for (const listener of listeners) listener(chunk, at);
  });
  const end = new Promise<number>((resolve) => {
    pty.onExit(() => resolve(clock()));
  });
  const ended = () => {
    const stop = setTimeout(() => pty.kill('SIGKILL'), 5000);
    return end.finally(() => clearTimeout(stop));
  };
  return {
    spawned,
    text: () => written,
    write: (bytes) => pty.write(bytes),
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    ended,
    seen: (mark) =>
      new Promise((resolve, reject) => {
        const look = (_: string, at: number) => {
          if (!mark.test(written.slice(looked))) return;
          looked = written.length;
          listeners.delete(look);
          clearTimeout(timer);
          resolve(at);
        };
        const timer = setTimeout(
          () => reject(new Error(`${mark} did not come: ${JSON.stringify(written.slice(-2000))}`)),
          MOST_WAIT,
        );
        listeners.add(look);
        look('', clock());
      }),
    async leave() {
      pty.kill('SIGTERM');
      await ended();
    },
  };
}
