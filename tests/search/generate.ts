/** Draws the generated queries from the list and writes them: `node tests/search/generate.ts`. */
import { writeFileSync } from 'node:fs';
import { stringify } from 'csv-stringify/sync';
import { isSpecies } from '../../src/visit/entry.ts';
import { birds } from '../taxa/birds.ts';
import { type Named, named, type Pick, pairOf, RULES } from './draw.ts';
import type { Pair } from './queries.ts';

const SEED = 20261114;
const EACH: Record<string, number> = {
  prefix: 45,
  'word starts': 45,
  initials: 20,
  code: 30,
  scientific: 35,
  middle: 20,
  'other name': 30,
  'one edit': 60,
  'two edits': 45,
};
/** How often a species of frequency 1 to 4 is drawn: what is met is what is typed. */
const WEIGHTS = [8, 5, 2, 1];

/** Numbers that look drawn by lot, the same for the same seed (the xorshift of Marsaglia 2003). */
function lots(seed: number): Pick {
  let state = seed;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

const typedBefore = new Set<string>();

function drawn(kind: string, count: number, all: readonly Named[], pick: Pick): Pair[] {
  const urn = all.flatMap((bird) =>
    Array.from({ length: WEIGHTS[bird.frequency - 1] ?? 1 }, () => bird),
  );
  const pairs: Pair[] = [];
  while (pairs.length < count) {
    const meant = urn[pick(urn.length)];
    const typed = meant ? RULES[kind]?.make(meant, pick) : null;
    const pair = meant && typed ? pairOf(kind, typed, meant, all) : null;
    if (!pair || typedBefore.has(pair.typed)) continue;
    typedBefore.add(pair.typed);
    pairs.push(pair);
  }
  return pairs;
}

const all = birds.taxa.filter(isSpecies).map(named);
const pick = lots(SEED);
for (const [kind, count] of Object.entries(EACH)) {
  const rows = drawn(kind, count, all, pick).map(({ typed, means, several }) => [
    typed,
    means.join(' | '),
    several ? 'yes' : '',
  ]);
  const file = new URL(`queries/generated-${kind.replaceAll(' ', '-')}.csv`, import.meta.url);
  writeFileSync(file, stringify([['typed', 'means', 'several'], ...rows]));
}
