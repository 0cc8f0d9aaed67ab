import { newerWords } from '../notebook/visit-file.ts';
import { type Firsts, firstsInOrder } from '../outputs/firsts.ts';
import { type GivenVisit, givenVisit, ofGroup } from '../outputs/given-visit.ts';
import type { ListFacts } from '../outputs/list-facts.ts';
import type { First } from '../taxa/known.ts';
import { placeKey } from '../visit/place.ts';
import { dateOf, epochOf } from '../visit/time.ts';
import type { Visit } from '../visit/visit.ts';
import type { Choice } from './export-options.ts';
import { latestVisit, type Unread, visitsInOrder } from './export-visits.ts';
import { visitNamed } from './named-visit.ts';

/** A visit as it may be given out, and which of its entries are firsts. */
export interface Chosen {
  visit: GivenVisit;
  firstOf(number: number): First | null;
}

/** How visits are given out. */
export interface Giving {
  facts: ListFacts;
  exact: boolean;
  group: string | null;
  /** Whether firsts are wanted: then the visits that were not chosen are looked at too. */
  firsts: boolean;
}

/** Reads the chosen visits, in the order of time, as often as it is called. */
export type Source = (complain: (words: string) => void) => AsyncGenerator<Chosen>;

/** The visits that are chosen. Refuses where the one that was named, or the last, is not to be had. */
export async function sourceOf(
  notebook: string,
  paths: readonly string[],
  choice: Choice,
  giving: Giving,
): Promise<Source> {
  const single = await singleVisit(notebook, paths, choice);
  const fits = (visit: Visit) => single === null && fitsChoice(visit, choice);
  return async function* source(complain) {
    const firsts = firstsInOrder(giving.exact);
    const unread: Unread = ({ words }) => complain(words);
    const behind = single === null || giving.firsts;
    for await (const visit of behind ? visitsInOrder(paths, unread) : []) {
      if (fits(visit)) yield chosenFrom(visit, firsts, giving, complain);
      if (giving.firsts && isBefore(visit, single)) firsts.learn(visit);
    }
    if (single !== null) yield chosenFrom(single, firsts, giving, complain);
  };
}

async function singleVisit(
  notebook: string,
  paths: readonly string[],
  choice: Choice,
): Promise<Visit | null> {
  if ('file' in choice) return (await visitNamed(notebook, choice.file)).visit;
  return 'last' in choice ? latestVisit(notebook, paths) : null;
}

function fitsChoice(visit: Visit, choice: Choice): boolean {
  if (!('from' in choice)) return false;
  const date = dateOf(visit.start);
  const { from, to, place } = choice;
  if ((from !== null && date < from) || (to !== null && date > to)) return false;
  return place === null || (visit.place !== null && placeKey(visit.place.name) === placeKey(place));
}

function isBefore(visit: Visit, single: Visit | null): boolean {
  if (single === null) return true;
  return visit.id !== single.id && epochOf(visit.start) < epochOf(single.start);
}

/** A visit as it is given out; `complain` is told of one that a newer program wrote. */
export function chosenFrom(
  visit: Visit,
  firsts: Firsts,
  { facts, exact, group, firsts: wanted }: Giving,
  complain: (words: string) => void,
): Chosen {
  const newer = newerWords(visit);
  if (newer !== null) complain(`The visit of ${dateOf(visit.start)} ${newer}`);
  const given = givenVisit(visit, facts, exact);
  const numbers = new Map<number, First>();
  for (const entry of wanted ? visit.entries : []) {
    const first = firsts.of(visit, entry);
    if (first !== null) numbers.set(entry.number, first);
  }
  return {
    visit: group === null ? given : ofGroup(given, group, facts),
    firstOf: (number) => numbers.get(number) ?? null,
  };
}
