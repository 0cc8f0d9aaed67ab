/** Exit codes after a signal, 128 and its number, as shells count them (POSIX). */
const SIGNAL_CODES = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const;

export interface Ending {
  /** Resolves with the exit code once the screen is to be left; rejects where a bug ends it. */
  left: Promise<number>;
  leave(code: number): void;
  fail(error: unknown): void;
}

/**
 * Listens for everything that ends the screen from outside: signals, a terminal that goes away, and
 * bugs. Call it before the terminal is changed, so that nothing ends the program between the two.
 */
export function listenForEnding(): Ending {
  let leave: Ending['leave'] = () => {};
  let fail: Ending['fail'] = () => {};
  const left = new Promise<number>((resolve, reject) => {
    leave = resolve;
    fail = reject;
  });
  // It may fail before anybody waits for it.
  left.catch(() => {});
  for (const signal of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const)
    process.on(signal, () => leave(SIGNAL_CODES[signal]));
  // A terminal that is gone may tell it here alone.
  for (const event of ['end', 'error']) process.stdin.on(event, () => leave(SIGNAL_CODES.SIGHUP));
  // A write past a limit on the size of files fails with an error of its own. Ink would end the program.
  if (process.platform !== 'win32') process.on('SIGXFSZ', () => {});
  process.on('uncaughtException', fail);
  return { left, leave, fail };
}
