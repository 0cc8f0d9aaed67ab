/** Time of one search, by kind of query, on the shipped lists and on a list of ten thousand taxa. */
import { priorFor } from '../src/taxa/expected.ts';
import { knownFrom } from '../src/taxa/known.ts';
import { plainWords } from '../src/taxa/names.ts';
import { type Hit, search } from '../src/taxa/search.ts';
import type { Taxon } from '../src/taxa/taxon.ts';
import { indexTaxa } from '../src/taxa/taxon-index.ts';
import { placeKey } from '../src/visit/place.ts';
import { SALLOW_MERE, shipped, weeklyVisits } from './invented.ts';
import { manyTaxa, QUERIES } from './many-taxa.ts';
import { clock, figure, median, printTable, quantile, times } from './measure.ts';
import { namesOf } from './queries.ts';

const SIZE = 10_000;
/** Each query is timed so often; its fastest time counts, so that other programs' turns do not. */
const REPEATS = 3;
const NOTEBOOK = { visits: 100, entries: 40 };
const DAY = { epoch: Date.UTC(2026, 0, 17, 9, 30), date: '2026-01-17' };

/** Milliseconds of the fastest of some runs. */
function fastest(work: () => unknown): number {
  const runs = Array.from({ length: REPEATS }, () => {
    const begun = clock();
    work();
    return clock() - begun;
  });
  return Math.min(...runs);
}

/** The floor: which names start so, by a plain scan. */
function scan(names: readonly string[], query: string): number {
  let found = 0;
  for (const name of names) if (name.startsWith(query)) found += 1;
  return found;
}

/** What the hits show the search to have done: by the names as typed, by slips, by guesses, or nothing. */
function stepOf(hits: readonly Hit[]): string {
  return hits[0]?.how ?? 'none';
}

function tally(steps: readonly string[]): string {
  return ['named', 'near', 'loose', 'none']
    .map((step) => [step, steps.filter((each) => each === step).length] as const)
    .filter(([, count]) => count > 0)
    .map(([step, count]) => `${count} ${step}`)
    .join(', ');
}

function rowsOf(title: string, taxa: readonly Taxon[]): string[][] {
  const index = indexTaxa(taxa);
  const prior = priorFor(index, known, occasion);
  const names = taxa.flatMap(namesOf).map((name) => plainWords(name).join(''));
  return Object.entries(QUERIES).map(([kind, make]) => {
    const queries = make(taxa);
    const steps = queries.map((query) => stepOf(search(index, query, prior)));
    const waits = queries.map((query) => fastest(() => search(index, query, prior)));
    const floor = median(queries.map((query) => fastest(() => scan(names, query))));
    return [
      title,
      kind,
      tally(steps),
      figure(median(waits)),
      figure(quantile(waits, 0.95)),
      figure(Math.max(...waits)),
      figure(floor),
      times(median(waits), floor),
    ];
  });
}

const { taxa } = await shipped();
const visits = weeklyVisits(taxa, NOTEBOOK, DAY.epoch);
const known = knownFrom(visits);
const occasion = { place: placeKey(SALLOW_MERE.name), date: DAY.date, today: new Map() };
const many = manyTaxa(taxa, SIZE);
printTable(
  `One search in ms, with what ${NOTEBOOK.visits} visits know; scan: startsWith over the same names.`,
  ['taxa', 'query', 'found by', 'p50', 'p95', 'most', 'scan p50', '/ scan'],
  [...rowsOf(`${taxa.length} shipped`, taxa), ...rowsOf(`${many.length} made up`, many)],
  3,
);
