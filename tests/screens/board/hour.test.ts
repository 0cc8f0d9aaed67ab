import { expect, test } from 'vitest';
import { letterOf } from '../../../src/screens/board/board.ts';
import { totals } from '../../../src/visit/sums.ts';
import { epochOf } from '../../../src/visit/time.ts';
import { press } from '../field/drive.ts';
import { opened, PaperTally } from './model.ts';

const SPECIES = 'asdfghjklqwert';
const STROKES = 2000;

/** Keys of an hour at the lake: the same at each run, and no two alike stretches. */
function hourOfKeys(): string[] {
  let state = 20261114;
  // The generator of Park and Miller (1988), "Random number generators: good ones are hard to find".
  const below = (many: number) => {
    state = (state * 48271) % 2147483647;
    return state % many;
  };
  const keys: string[] = [];
  for (let strokes = 0; strokes < STROKES; ) {
    const chance = below(100);
    const letter = SPECIES[below(SPECIES.length)] ?? 'a';
    if (chance < 4) keys.push(' ');
    else if (chance < 14) keys.push(String(1 + below(7)));
    else if (chance < 17) keys.push('<backspace>');
    else if (chance < 18) keys.push(below(2) ? '~' : '+');
    else {
      keys.push(chance < 24 ? letter.toUpperCase() : letter);
      strokes += 1;
    }
  }
  return keys;
}

test('an hour of 2,000 strokes over 14 species has the totals, flocks and times of a tally on paper', () => {
  const paper = new PaperTally(SPECIES);
  let at = opened();
  for (const key of hourOfKeys()) {
    at = { ...at, now: at.now + 700 };
    at = press(at, key).session;
    paper.press(key, at.now);
  }
  const hour = 3_600_000;
  expect(at.now - epochOf(at.visit.start)).toBeGreaterThan(hour);
  const taxa = at.board?.taxa ?? {};
  const counted = totals(at.visit).map(({ key, count, entries }) => [
    letterOf(taxa, key) ?? key,
    { ...count, flocks: entries.length },
  ]);
  const wanted = [...SPECIES].map((letter) => [letter, paper.total(letter)]);
  expect(Object.fromEntries(counted)).toEqual(Object.fromEntries(wanted));
  const flocks = at.visit.entries.flatMap(({ taxon, time, struck }) =>
    taxon === null || struck !== null
      ? []
      : [[letterOf(taxa, taxon.scientificName), epochOf(time)]],
  );
  const seconds = (time: number) => time - (time % 1000);
  expect(flocks).toEqual(paper.standing().map(({ letter, time }) => [letter, seconds(time)]));
});
