import type { Visit } from '../visit/visit.ts';
import { reasonWords } from './reason.ts';
import type { Saved, VisitStore } from './visit-store.ts';

export interface SaveQueue {
  /** Takes the latest state of the visit; never waits. */
  add(visit: Visit): void;
  /** Tries once more what could not be saved, and resolves when nothing runs any more. */
  idle(): Promise<void>;
}

/** What a queue tells: a state that is on disk, or one that could not be saved and why. */
export interface SaveReports {
  saved(visit: Visit, saved: Saved): void;
  failed(visit: Visit, why: string): void;
}

/** How long after a failure the newest state is tried again, in milliseconds. */
const RETRY_AFTER = 2000;

/**
 * Saves states of a visit one after another: at most one save runs and one state waits, the newest,
 * so that a burst of keys costs two writes. A failed state is tried again until one is saved.
 */
export function saveQueue(store: VisitStore, reports: SaveReports): SaveQueue {
  let waiting: Visit | null = null;
  let running: Promise<void> | null = null;
  let retry: NodeJS.Timeout | null = null;

  async function run(): Promise<void> {
    while (waiting) {
      const visit = waiting;
      waiting = null;
      try {
        reports.saved(visit, await store.save(visit));
      } catch (error) {
        reports.failed(visit, reasonWords(error));
        waiting ??= visit;
        retry = setTimeout(start, RETRY_AFTER);
        // A full disk must not keep the program from being left.
        retry.unref();
        return;
      }
    }
  }

  function start(): void {
    if (retry) clearTimeout(retry);
    retry = null;
    running ??= run().finally(() => {
      running = null;
      // A state that came between the last look and now would otherwise wait for the next key.
      if (waiting && !retry) start();
    });
  }

  return {
    add(visit) {
      waiting = visit;
      start();
    },
    async idle() {
      if (waiting) start();
      while (running) await running;
    },
  };
}
