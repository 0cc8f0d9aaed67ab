import type { First } from '../../taxa/known.ts';
import type { RedListCategory } from '../../visit/entry.ts';
import { MONTHS } from './days.ts';

/**
 * What is asked of the visits. Of one kind any may hold, of several kinds all must; an empty set asks
 * nothing. Words must all stand in the name or the description of an entry.
 */
export interface Query {
  /** Of `taxonKey`. */
  taxa: ReadonlySet<string>;
  /** Of `placeKey`. */
  places: ReadonlySet<string>;
  years: ReadonlySet<number>;
  /** From 1. */
  months: ReadonlySet<number>;
  /** `YYYY-MM` or `YYYY-MM-DD`, to the length given. */
  dates: ReadonlySet<string>;
  /** As `GroupOf` names them. */
  groups: ReadonlySet<string>;
  categories: ReadonlySet<RedListCategory>;
  firsts: ReadonlySet<First>;
  unnamed: boolean;
  words: readonly string[];
}

/** One run of words as it was understood. */
export type Part =
  | { kind: 'taxa'; said: string; keys: readonly string[]; names: readonly string[] }
  | { kind: 'place'; said: string; keys: readonly string[]; names: readonly string[] }
  | { kind: 'year'; said: string; year: number }
  | { kind: 'month'; said: string; month: number }
  | { kind: 'date'; said: string; date: string }
  | { kind: 'group'; said: string; group: string }
  | { kind: 'category'; said: string; categories: readonly RedListCategory[] }
  | { kind: 'first'; said: string; first: First }
  | { kind: 'unnamed'; said: string }
  | { kind: 'word'; said: string };

/** The query that parts come to. */
export function queryFrom(parts: readonly Part[]): Query {
  const gather = <Value>(values: (part: Part) => readonly Value[]) =>
    new Set(parts.flatMap(values));
  return {
    taxa: gather((part) => (part.kind === 'taxa' ? part.keys : [])),
    places: gather((part) => (part.kind === 'place' ? part.keys : [])),
    years: gather((part) => (part.kind === 'year' ? [part.year] : [])),
    months: gather((part) => (part.kind === 'month' ? [part.month] : [])),
    dates: gather((part) => (part.kind === 'date' ? [part.date] : [])),
    groups: gather((part) => (part.kind === 'group' ? [part.group] : [])),
    categories: gather((part) => (part.kind === 'category' ? part.categories : [])),
    firsts: gather((part) => (part.kind === 'first' ? [part.first] : [])),
    unnamed: parts.some(({ kind }) => kind === 'unnamed'),
    words: parts.flatMap((part) => (part.kind === 'word' ? part.said : [])),
  };
}

/** How a part was understood, to show beside the answer. */
export function partWords(part: Part): string {
  switch (part.kind) {
    case 'taxa':
    case 'place':
      return part.names.join(' or ');
    case 'month':
      return MONTHS[part.month - 1] ?? part.said;
    case 'group':
      return part.group;
    case 'category':
      return part.categories.join(' or ');
    case 'word':
      return `the word "${part.said}"`;
    case 'year':
    case 'date':
    case 'first':
    case 'unnamed':
      return part.said;
  }
}
