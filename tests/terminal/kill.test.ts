import { availableParallelism } from 'node:os';
import { expect, test } from 'vitest';
import { PROGRAM, run } from '../commands/run.ts';
import { freshFolder } from '../notebook/visits.ts';
import { age, killed, summed, type Toll } from './killing.ts';

/** Notebooks, and how often the program is killed in each. */
const LIVES = 20;
const KILLS = 10;
const SEED = 20261114;

test(`${LIVES * KILLS} kills at random moments lose no entry that the screen had called saved`, {
  timeout: 600_000,
}, async () => {
  const notebooks = Array.from({ length: LIVES }, freshFolder);
  const waiting = [...notebooks.entries()];
  const tolls: Toll[] = [];
  const atOnce = Math.min(4, availableParallelism() + 1);
  await Promise.all(
    Array.from({ length: atOnce }, async () => {
      for (let next = waiting.pop(); next; next = waiting.pop())
        tolls.push(await killed(PROGRAM, next[1], KILLS, SEED + next[0]));
    }),
  );
  const toll = summed(tolls);
  expect(toll).toMatchObject({ runs: LIVES * KILLS, lost: 0, unreadable: 0 });
  // Else the kills came before anything was said to be saved, or when nothing was being saved.
  expect(toll.shown).toBeGreaterThan(LIVES * KILLS);
  expect(toll.leftovers + toll.ahead).toBeGreaterThan(0);
  for (const notebook of notebooks.slice(0, 4)) {
    await age(notebook);
    const { code, answers } = await run(['check', '--mend'], { notebook });
    expect(answers.at(-1)).toBe('The notebook is whole.');
    expect(code).toBe(0);
  }
});
