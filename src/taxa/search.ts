import { endMatches, looseMatches } from './loose.ts';
import { fitOf, type How, type Match, type Query, queryOf } from './match.ts';
import { nearMatches } from './near.ts';
import type { Taxon } from './taxon.ts';
import type { TaxonIndex } from './taxon-index.ts';

/** A suggestion: how surely the words are this name, and why. */
export interface Hit {
  taxon: Taxon;
  /** The name that matched, where it is not the one shown. */
  matched: string;
  how: How;
  /** Fit of the words alone, without what is expected here. */
  fit: number;
  rank: number;
}

/** What is expected of a taxon here and now, from 0 to 20; added to the fit of the words. */
export type Prior = (taxon: Taxon) => number;

const LEAST_FOR_SLIPS = 4;
/** How far the best fit must stand above the next to be taken without a look. */
const CLEAR_LEAD = 10;
/** Words in order, whole initials and a code fit so well; starts run together do not. */
const LEAST_CLEAR = 80;

/**
 * The taxa that the words can mean, best first: by how the words fit, then by what is expected at
 * this place in this season. Misspelt names come only where no name fits as typed. The two that fit
 * best are always among the hits, or `clearHit` could not see that words are ambiguous.
 */
export function search(index: TaxonIndex, words: string, prior: Prior, limit = 8): Hit[] {
  const query = queryOf(words);
  if (query.joined === '') return [];
  return ranked(matchesOf(query, index), prior, limit);
}

function matchesOf(query: Query, index: TaxonIndex): Match[] {
  const named = namedMatches(query, index);
  if (named.length === 0 && query.joined.length >= LEAST_FOR_SLIPS) {
    const near = nearMatches(query, index);
    named.push(...(near.length > 0 ? near : looseMatches(query, index)));
  }
  return [...named, ...endMatches(query, index)];
}

function namedMatches(query: Query, index: TaxonIndex): Match[] {
  const matches: Match[] = [];
  for (let at = 0; at < index.names.length; at += 1) {
    if ((query.letters & ~(index.nameLetters[at] ?? 0)) !== 0) continue;
    const name = index.names[at];
    const score = name ? fitOf(query, name) : null;
    if (name && score !== null) matches.push({ how: 'named', score, name });
  }
  return matches;
}

function ranked(matches: readonly Match[], prior: Prior, limit: number): Hit[] {
  const best = new Map<Taxon, Match>();
  for (const match of matches) {
    const before = best.get(match.name.taxon);
    if (!before || match.score > before.score) best.set(match.name.taxon, match);
  }
  const hits = [...best].map(
    ([taxon, { how, name, score }]): Hit => ({
      taxon,
      matched: name.text,
      how,
      fit: score,
      rank: score + prior(taxon),
    }),
  );
  const kept = new Set([
    ...foremost(hits, 2, (hit) => hit.fit),
    ...foremost(hits, limit, (hit) => hit.rank),
  ]);
  return [...kept].slice(0, limit).sort((one, two) => two.rank - one.rank);
}

/** The first few by a value, highest first; of equal ones the earlier. Cheaper than sorting thousands. */
function foremost<Item>(
  items: readonly Item[],
  limit: number,
  worth: (item: Item) => number,
): Item[] {
  const found: { item: Item; value: number }[] = [];
  for (const item of items) {
    const value = worth(item);
    const last = found.at(-1);
    if (last && found.length === limit && value <= last.value) continue;
    const at = found.findLastIndex((other) => other.value >= value) + 1;
    found.splice(at, 0, { item, value });
    if (found.length > limit) found.pop();
  }
  return found.map(({ item }) => item);
}

/**
 * The one hit that the words name without doubt, or null: for input that nobody watches. A lead in
 * what is expected does not count, or a rare bird would be written down as a common one.
 */
export function clearHit(hits: readonly Hit[]): Hit | null {
  const [best, ...others] = [...hits].sort((one, two) => two.fit - one.fit);
  if (!best || best.how === 'loose') return null;
  if (best.how === 'named' && best.fit < LEAST_CLEAR) return null;
  return others.every((other) => best.fit - other.fit >= CLEAR_LEAD) ? best : null;
}
