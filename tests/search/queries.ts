import { readdirSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { parse } from 'csv-parse/sync';

/**
 * What an observer types and what is meant by it. `hand`: written down from what British birders type and
 * say (common practice, no source), without a look at what the search finds; `generated`: drawn from
 * the list once by `generate.ts`. Each kind of query has a file of its own in `queries/`.
 */
export interface Pair {
  typed: string;
  /** The English names that it stands for, as in the list. */
  means: readonly string[];
  /** It fits several species equally: those named, or more than can be named. */
  several: boolean;
  kind: string;
  made: 'hand' | 'generated';
}

const FOLDER = new URL('queries/', import.meta.url);

/** All pairs, those written by hand first. */
export const pairs: readonly Pair[] = ['hand', 'generated'].flatMap((made) =>
  readdirSync(FOLDER)
    .filter((file) => file.startsWith(`${made}-`))
    .toSorted()
    .flatMap((file) => pairsIn(file, made as Pair['made'])),
);

function pairsIn(file: string, made: Pair['made']): Pair[] {
  const kind = basename(file, '.csv')
    .slice(made.length + 1)
    .replaceAll('-', ' ');
  const rows: Record<string, string>[] = parse(readFileSync(new URL(file, FOLDER), 'utf8'), {
    columns: true,
  });
  return rows.map(({ typed = '', means = '', several = '' }) => ({
    typed,
    means: means.split(' | '),
    several: several === 'yes',
    kind,
    made,
  }));
}
