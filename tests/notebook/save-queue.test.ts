import { afterEach, describe, expect, test, vi } from 'vitest';
import { saveQueue } from '../../src/notebook/save-queue.ts';
import type { VisitStore } from '../../src/notebook/visit-store.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { logging, visitOf } from './visits.ts';

/** The store's twin in memory: each save takes a tick, and fails while it is told to. */
function memoryStore() {
  const written: Visit[] = [];
  const store: VisitStore & { written: Visit[]; tries: number; failing: string | null } = {
    written,
    tries: 0,
    failing: null,
    async save(visit) {
      store.tries += 1;
      await new Promise((resolve) => setImmediate(resolve));
      if (store.failing !== null) throw new Error(store.failing);
      written.push(visit);
      return { path: 'visit.json', leftAlone: null };
    },
  };
  return store;
}

function queueOver(store: VisitStore) {
  const told: string[] = [];
  const queue = saveQueue(store, {
    saved: (visit) => told.push(`saved ${visit.entries.length}`),
    failed: (visit, why) => told.push(`failed ${visit.entries.length}: ${why}`),
  });
  return { queue, told };
}

/** States of a visit with 1, 2, 3 … entries. */
function states(most: number): Visit[] {
  const made = [visitOf()];
  while (made.length < most) made.push(logging(made.at(-1) ?? visitOf(), 'owl'));
  return made;
}

afterEach(() => {
  vi.useRealTimers();
});

describe('a queue of saves', () => {
  test('writes a burst of a hundred states in two saves, the last state last', async () => {
    const store = memoryStore();
    const { queue, told } = queueOver(store);
    for (const visit of states(100)) queue.add(visit);
    await queue.idle();
    expect(told).toEqual(['saved 1', 'saved 100']);
    expect(store.written.at(-1)?.entries).toHaveLength(100);
  });

  test('writes what comes while it saves, and never two at a time', async () => {
    let running = 0;
    const store = memoryStore();
    const save = store.save;
    store.save = async (visit) => {
      running += 1;
      expect(running).toBe(1);
      const saved = await save(visit);
      running -= 1;
      return saved;
    };
    const { queue, told } = queueOver(store);
    for (const visit of states(40)) {
      queue.add(visit);
      if (visit.entries.length % 3 === 0) await new Promise((resolve) => setImmediate(resolve));
    }
    await queue.idle();
    expect(told.at(-1)).toBe('saved 40');
    expect(told.filter((words) => words.startsWith('failed'))).toEqual([]);
  });

  test('a state that comes at any step after a save is saved too', async () => {
    const [one, two] = states(2);
    if (!one || !two) throw new Error('Two states are needed.');
    for (let steps = 0; steps < 12; steps += 1) {
      const store: VisitStore = { save: async () => ({ path: 'visit.json', leftAlone: null }) };
      const { queue, told } = queueOver(store);
      queue.add(one);
      for (let step = 0; step < steps; step += 1) await null;
      queue.add(two);
      await new Promise((resolve) => setImmediate(resolve));
      expect(told.at(-1), `after ${steps} steps`).toBe('saved 2');
    }
  });

  test('is idle at once where nothing was added', async () => {
    const { queue, told } = queueOver(memoryStore());
    await queue.idle();
    expect(told).toEqual([]);
  });

  test('tells a failure and tries again until it succeeds, without another key', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const store = memoryStore();
    store.failing = 'ENOSPC: no space left on device';
    const { queue, told } = queueOver(store);
    queue.add(visitOf());
    await vi.waitFor(() => expect(told).toEqual([`failed 1: ${store.failing}`]));
    vi.advanceTimersByTime(1900);
    expect(store.tries).toBe(1);
    vi.advanceTimersByTime(200);
    await vi.waitFor(() => expect(told).toHaveLength(2));
    store.failing = null;
    vi.advanceTimersByTime(2000);
    await vi.waitFor(() => expect(told.at(-1)).toBe('saved 1'));
    expect(store.tries).toBe(3);
    expect(vi.getTimerCount()).toBe(0);
  });

  test('saves the newest state after a failure, as soon as it comes', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const store = memoryStore();
    store.failing = 'EIO';
    const { queue, told } = queueOver(store);
    const [one, two] = states(2);
    queue.add(one ?? visitOf());
    await vi.waitFor(() => expect(told).toHaveLength(1));
    store.failing = null;
    queue.add(two ?? visitOf());
    await queue.idle();
    expect(told).toEqual(['failed 1: EIO', 'saved 2']);
    expect(vi.getTimerCount()).toBe(0);
  });

  test('tries what failed once more when it is asked to come to rest', async () => {
    const store = memoryStore();
    store.failing = 'EIO';
    const { queue, told } = queueOver(store);
    queue.add(visitOf());
    await queue.idle();
    store.failing = null;
    await queue.idle();
    expect(told).toEqual(['failed 1: EIO', 'saved 1']);
  });

  test('comes to rest where the disk stays full', async () => {
    const store = memoryStore();
    store.failing = 'ENOSPC';
    const { queue, told } = queueOver(store);
    queue.add(visitOf());
    await queue.idle();
    await queue.idle();
    expect(told).toEqual(['failed 1: ENOSPC', 'failed 1: ENOSPC']);
    expect(store.written).toEqual([]);
  });

  test('takes a store that fails before it begins', async () => {
    const store = memoryStore();
    const save = store.save;
    store.save = () => {
      throw new Error('EMFILE');
    };
    const { queue, told } = queueOver(store);
    queue.add(visitOf());
    await queue.idle();
    store.save = save;
    await queue.idle();
    expect(told[0]).toBe('failed 1: EMFILE');
    expect(told.at(-1)).toBe('saved 1');
  });
});
