import { type Match, matchTaxon } from './match.ts';
import { plainWords } from './names.ts';
import { looseMatches, nearMatches } from './near.ts';
import type { Taxon } from './taxon.ts';
import type { IndexedTaxon, TaxonIndex } from './taxon-index.ts';

/** A suggestion: how surely the words are this name, and why. */
export interface Hit {
  taxon: Taxon;
  /** The name that matched, where it is not the one shown. */
  matched: string;
  /** `named`: as typed; `near`: but for a slip or two; `loose`: a guess that is never taken by itself. */
  how: 'named' | 'near' | 'loose';
  /** Fit of the words alone, without what is expected here. */
  fit: number;
  rank: number;
}

/** What is expected of a taxon here and now, from 0 to 20; added to the fit of the words. */
export type Prior = (taxon: Taxon) => number;

const LEAST_FOR_SLIPS = 4;
/** How far the best fit must stand above the next to be taken without a look. */
const CLEAR_LEAD = 10;

/**
 * The taxa that the words can mean, best first: by how the words fit, then by what is expected at
 * this place in this season. Misspelt names come only where no name fits as typed.
 */
export function search(index: TaxonIndex, words: string, prior: Prior, limit = 8): Hit[] {
  const query = plainWords(words);
  if (query.length === 0) return [];
  const named = index.taxa.flatMap((indexed): [IndexedTaxon, Match][] => {
    const match = matchTaxon(query, indexed);
    return match ? [[indexed, match]] : [];
  });
  if (named.length > 0) return ranked(named, 'named', prior, limit);
  if (query.join('').length < LEAST_FOR_SLIPS) return [];
  const near = nearMatches(query, index);
  if (near.length > 0) return ranked(near, 'near', prior, limit);
  return ranked(looseMatches(query, index), 'loose', prior, limit);
}

function ranked(
  matches: [IndexedTaxon, Match][],
  how: Hit['how'],
  prior: Prior,
  limit: number,
): Hit[] {
  return matches
    .map(([{ taxon }, match]) => ({
      taxon,
      matched: match.name.text,
      how,
      fit: match.score,
      rank: match.score + prior(taxon),
    }))
    .sort((one, two) => two.rank - one.rank)
    .slice(0, limit);
}

/**
 * The one hit that the words name without doubt, or null: for input that nobody watches. A lead in
 * what is expected does not count, or a rare bird would be written down as a common one.
 */
export function clearHit(hits: readonly Hit[]): Hit | null {
  const [best, ...others] = [...hits].sort((one, two) => two.fit - one.fit);
  if (!best || best.how === 'loose') return null;
  return others.every((other) => best.fit - other.fit >= CLEAR_LEAD) ? best : null;
}
