import { plainWords } from '../../taxa/names.ts';
import { many, named } from '../figures/figure.ts';
import type { GroupOf } from './complete.ts';
import { monthOf, yearOf } from './days.ts';
import type { EntryDigest, VisitDigest } from './digest.ts';
import { firstRecords } from './firsts.ts';
import { namesKnown } from './names-known.ts';
import { partWords, type Query, queryFrom } from './query.ts';
import { readWords, type TaxonSearch } from './reading.ts';
import type { Found } from './unnamed.ts';

/** What the visits say to a query. */
export interface Answer {
  query: Query;
  /** How the words were understood, in the order typed. */
  understood: string[];
  /** What else they could have meant. */
  notes: string[];
  /** The visits of the place and the time asked for, cut down to what was asked for: their number is
   * what the visits with it are out of. */
  visits: VisitDigest[];
  /** The entries that fit, in the order of time. */
  found: Found[];
  /** Visits whose own description has all the words, where words were asked for. */
  described: VisitDigest[];
  /** The answer in a sentence. */
  sentence: string;
}

/** Asks visits in the order of time by any mix of words: `tern may`, `sallow 2025 threatened`. */
export function ask(
  words: string,
  visits: readonly VisitDigest[],
  { search, groupOf }: { search: TaxonSearch; groupOf: GroupOf },
): Answer {
  const { parts, notes } = readWords(words, namesKnown(visits, groupOf), search);
  const query = queryFrom(parts);
  const narrow = narrowed(visits, query, groupOf);
  const found = narrow.flatMap((visit) => visit.entries.map((entry) => ({ visit, entry })));
  const described =
    query.words.length === 0
      ? []
      : visitsOf(visits, query).filter(({ description }) =>
          hasWords(description ?? '', query.words),
        );
  const understood = parts.map(partWords);
  return {
    query,
    understood,
    notes,
    visits: narrow,
    found,
    described,
    sentence: sentenceOf(understood, narrow, found),
  };
}

/** The visits of the place and time of a query, each with only the entries and taxa that it asks for. */
export function narrowed(
  visits: readonly VisitDigest[],
  query: Query,
  groupOf: GroupOf,
): VisitDigest[] {
  const firsts = new Set(
    query.firsts.size === 0
      ? []
      : firstRecords(visits)
          .filter(({ first }) => query.firsts.has(first))
          .map(({ visit, entry }) => `${visit} ${entry}`),
  );
  return visitsOf(visits, query).map((visit) => {
    const entries = visit.entries.filter(
      (entry) =>
        fits(entry, query, groupOf) &&
        (query.firsts.size === 0 || firsts.has(`${visit.id} ${entry.number}`)),
    );
    const keys = new Set(entries.flatMap(({ key, uncertain }) => (uncertain ? [] : key)));
    return {
      ...visit,
      entries,
      seen: visit.seen.filter(({ key }) => keys.has(key)),
      notFound: visit.notFound.filter((key) => keys.has(key)),
    };
  });
}

function visitsOf(visits: readonly VisitDigest[], query: Query): VisitDigest[] {
  return visits.filter(
    ({ place, date }) =>
      (query.places.size === 0 || (place !== null && query.places.has(place.key))) &&
      (query.months.size === 0 || query.months.has(monthOf(date))) &&
      (query.years.size === 0 || query.years.has(yearOf(date))) &&
      (query.dates.size === 0 || [...query.dates].some((each) => date.startsWith(each))),
  );
}

function fits(entry: EntryDigest, query: Query, groupOf: GroupOf): boolean {
  const { key, taxon, name, description } = entry;
  return (
    (query.taxa.size === 0 || (key !== null && query.taxa.has(key))) &&
    (query.groups.size === 0 || (taxon !== null && query.groups.has(groupOf(taxon.list)))) &&
    (query.categories.size === 0 ||
      (taxon !== null && query.categories.has(taxon.redListCategory))) &&
    (!query.unnamed || key === null) &&
    hasWords(`${name} ${description ?? ''}`, query.words)
  );
}

/** Does a text have words that start with each of the words asked for? */
function hasWords(text: string, words: readonly string[]): boolean {
  if (words.length === 0) return true;
  const has = plainWords(text);
  return words.flatMap(plainWords).every((word) => has.some((each) => each.startsWith(word)));
}

function sentenceOf(
  understood: readonly string[],
  visits: readonly VisitDigest[],
  found: readonly Found[],
): string {
  const asked = understood.length === 0 ? 'Everything' : named(understood);
  if (visits.length === 0) return `${asked}: no visit was made there or then.`;
  const having = new Set(found.map(({ visit }) => visit.id)).size;
  const entries = found.length === 1 ? '1 entry' : `${found.length} entries`;
  return `${asked}: ${entries} in ${having} of ${many(visits.length, 'visit')}.`;
}
