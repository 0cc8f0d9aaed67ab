import { plainWords } from '../../src/taxa/names.ts';
import type { Taxon } from '../../src/taxa/taxon.ts';
import { editsBetween, slip } from './edits.ts';
import type { Pair } from './queries.ts';

/** A number from 0 to one less than `below`. */
export type Pick = (below: number) => number;

/** The names of a species in the forms that the rules need. */
export interface Named {
  name: string;
  words: string[];
  joined: string;
  code: string;
  initials: string;
  latin: string[];
  others: string[][];
  /** 1 common to 4 rare. */
  frequency: number;
}

export function named(taxon: Taxon): Named {
  const name = taxon.vernacularName ?? '';
  const words = plainWords(name);
  return {
    name,
    words,
    joined: words.join(''),
    code: codeOf(name, words),
    initials: words.map((word) => word[0]).join(''),
    latin: plainWords(taxon.scientificName),
    others: taxon.otherEnglishNames.map(plainWords),
    frequency: taxon.frequency ?? 3,
  };
}

/** By the rule of Klimkiewicz & Robbins (1978), as in Pyle & DeSante (2003). */
function codeOf(name: string, words: readonly string[]): string {
  const endsHyphened = /^\S+ [^\s-]+-\S+$/.test(name);
  const shares = [[4], [2, 2], endsHyphened ? [2, 1, 1] : [1, 1, 2], [1, 1, 1, 1]];
  const lengths = shares[Math.min(words.length, 4) - 1] ?? [];
  return lengths.map((length, at) => words[at]?.slice(0, length) ?? '').join('');
}

/** Do the parts start words in their order? */
function startsOf(words: readonly string[], parts: readonly string[]): boolean {
  let from = 0;
  return parts.every((part) => {
    const at = words.findIndex((word, place) => place >= from && word.startsWith(part));
    from = at + 1;
    return at !== -1;
  });
}

const asTyped = (typed: string, { words, joined }: Named) =>
  startsOf(words, typed.split(' ')) || joined.startsWith(typed.replaceAll(' ', ''));
const starts = (words: readonly string[], pick: Pick) =>
  words.map((word) => word.slice(0, 2 + pick(3))).join(' ');

/** How to make a query of a species, and which other species it fits in the same way. */
interface Rule {
  make: (bird: Named, pick: Pick) => string | null;
  fits: (typed: string, bird: Named) => boolean;
}

const slipped = (count: number): Rule => ({
  make: ({ words, joined }, pick) => {
    const name = words.join(' ');
    if (joined.length < (count === 1 ? 5 : 8)) return null;
    let typed = name;
    for (let made = 0; made < count; made += 1) {
      // One slip in twelve is in the first letter, as first letters are seldom missed.
      const place = pick(12) === 0 ? 0 : 1 + pick(typed.length - 1);
      typed = slip(typed, place, pick);
    }
    return editsBetween(typed, name) === count && !name.startsWith(typed) ? typed : null;
  },
  fits: (typed, bird) => asTyped(typed, bird) || editsBetween(typed, bird.words.join(' ')) <= count,
});

export const RULES: Record<string, Rule> = {
  prefix: {
    make: ({ words }, pick) =>
      words
        .join(' ')
        .slice(0, 3 + pick(4))
        .trim(),
    fits: asTyped,
  },
  'word starts': {
    make: ({ words }, pick) => (words.length < 2 ? null : starts(words, pick)),
    fits: asTyped,
  },
  initials: {
    make: ({ words, initials }) => (words.length < 3 ? null : initials),
    fits: (typed, bird) => bird.initials === typed || asTyped(typed, bird),
  },
  code: {
    make: ({ code }) => (code.length < 4 ? null : code),
    fits: (typed, bird) => [bird.code, bird.initials].includes(typed) || asTyped(typed, bird),
  },
  scientific: {
    make: ({ latin }, pick) => {
      const way = pick(4);
      if (way === 0) return latin.at(-1) ?? null;
      if (way === 1) return latin[0]?.slice(0, 5 + pick(4)) ?? null;
      return starts(latin, pick);
    },
    fits: (typed, bird) => startsOf(bird.latin, typed.split(' ')) || asTyped(typed, bird),
  },
  middle: {
    make: ({ words }, pick) => {
      const word = words[pick(words.length)] ?? '';
      const length = 4 + pick(3);
      const from = pick(3) === 0 ? 1 + pick(3) : word.length - length;
      return from < 1 || from + length > word.length ? null : word.slice(from, from + length);
    },
    fits: (typed, { words }) => words.some((word) => word.includes(typed)),
  },
  'other name': {
    make: ({ others }, pick) => {
      const words = others[pick(others.length)];
      if (!words) return null;
      return pick(2) === 0 ? words.join(' ') : starts(words, pick);
    },
    fits: (typed, bird) =>
      asTyped(typed, bird) || bird.others.some((words) => startsOf(words, typed.split(' '))),
  },
  'one edit': slipped(1),
  'two edits': slipped(2),
};

/** Most species that a query may fit equally; one that fits more says too little. */
const MOST_FITTING = 5;

/**
 * The pair of a query that was made of a species. It stands for several where the query fits others as
 * common in the same way, or any at all by the name that is shown where the one meant needs another
 * reading; rarer ones do not make it doubtful. Null where it fits too many to say much.
 */
export function pairOf(
  kind: string,
  typed: string,
  meant: Named,
  all: readonly Named[],
): Pair | null {
  const shown = asTyped(typed, meant);
  const fitting = all.filter((bird) => {
    if (bird === meant) return false;
    if (!shown && asTyped(typed, bird)) return true;
    return bird.frequency <= meant.frequency && RULES[kind]?.fits(typed, bird) === true;
  });
  if (fitting.length >= MOST_FITTING) return null;
  const means = [meant, ...fitting].map(({ name }) => name);
  return { typed, means, several: fitting.length > 0, kind, made: 'generated' };
}
