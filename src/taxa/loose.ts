import Fuse from 'fuse.js';
import type { Match, Query } from './match.ts';
import { lettersOf } from './names.ts';
import type { IndexedName, TaxonIndex } from './taxon-index.ts';

/** Fits of guesses: a word end that was typed exactly, and the most that likeness can come to. */
const LOOSE = { wordEnd: 78, likeness: 20 } as const;
/** Shortest end of a word that is looked for: `hawk`, `finch`, `shank`. */
const LEAST_END = 4;
/** Length of the stretches by which candidates are found. */
const STRETCH = 3;
/** How many candidates fuse.js is given: it takes some 10 ms a thousand names for a long query. */
const MOST_CANDIDATES = 60;

/** First English names with a word that ends as typed. */
export function endMatches({ joined, letters, words }: Query, index: TaxonIndex): Match[] {
  if (words.length > 1 || joined.length < LEAST_END) return [];
  const ending = index.words.filter(
    (word, at) => (letters & ~(index.wordLetters[at] ?? 0)) === 0 && word.text.endsWith(joined),
  );
  return ending
    .flatMap((word) => word.names)
    .filter((name) => name.kind === 'vernacular' && name.of === 'species')
    .map((name) => ({ how: 'loose', score: LOOSE.wordEnd, name }));
}

/** Names that are like the query, by fuse.js among those that share most stretches of letters with it. */
export function looseMatches({ words }: Query, index: TaxonIndex): Match[] {
  const fuse = new Fuse(candidatesFor(words, index), {
    keys: ['text'],
    includeScore: true,
    ignoreLocation: true,
    ignoreDiacritics: true,
    threshold: 0.4,
  });
  return fuse.search(words.join(' ')).map(({ item, score }) => ({
    how: 'loose',
    score: LOOSE.likeness * (1 - (score ?? 1)),
    name: item,
  }));
}

function candidatesFor(words: readonly string[], index: TaxonIndex): IndexedName[] {
  const wanted = stretchesOf(words).map((text) => ({ text, letters: lettersOf(text) }));
  const shared = new Map<IndexedName, number>();
  index.words.forEach((word, at) => {
    const lacking = ~(index.wordLetters[at] ?? 0);
    let count = 0;
    for (const { text, letters } of wanted)
      if ((letters & lacking) === 0 && word.text.includes(text)) count += 1;
    if (count === 0) return;
    for (const name of word.names) shared.set(name, (shared.get(name) ?? 0) + count);
  });
  return [...shared]
    .sort(([, one], [, two]) => two - one)
    .slice(0, MOST_CANDIDATES)
    .map(([name]) => name);
}

function stretchesOf(words: readonly string[]): string[] {
  const all = words.flatMap((word) =>
    Array.from({ length: Math.max(0, word.length - STRETCH + 1) }, (_, at) =>
      word.slice(at, at + STRETCH),
    ),
  );
  return [...new Set(all)];
}
