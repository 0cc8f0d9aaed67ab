/** Keys an entry of the invented notebook, replayed visit by visit in the order of time. */
import { demoVisits } from '../demo-data/model/demo-visits.ts';
import { choicesOf } from '../src/screens/field/choices.ts';
import { newSession, type Session } from '../src/screens/field/session.ts';
import { lineOf } from '../src/screens/line.ts';
import { type Known, knownFrom } from '../src/taxa/known.ts';
import { fourLetterCode, initialsOf, plainWords } from '../src/taxa/names.ts';
import type { Taxon } from '../src/taxa/taxon.ts';
import type { TaxonIndex } from '../src/taxa/taxon-index.ts';
import { taxonKey } from '../src/visit/entry.ts';
import { epochOf } from '../src/visit/time.ts';
import type { Visit } from '../src/visit/visit.ts';
import { clock, mean, printTable } from './measure.ts';

/** Stages of the notebook: the first and last visit of each, from 1. */
const STAGES = [
  [1, 30],
  [31, 90],
  [91, 150],
  [1, 150],
] as const;
const GOAL = 4;
const DEAREST = 12;

/** What one entry cost: by the starts of its English name, and by the cheapest of all ways. */
interface Cost {
  visit: number;
  name: string;
  birds: boolean;
  byName: number;
  least: number;
}
type Looks = (text: string) => number;

/** Ways to type a name, letter by letter: as it is said, from any one word on, initials, code. */
function waysOf(name: string): string[] {
  const words = plainWords(name);
  return [...words, initialsOf(words), fourLetterCode(name).toLowerCase()];
}

/** The fewest keys with one way: letters, then Down until the species stands first, then Enter. */
function keysBy(way: string, looks: Looks, most: number): number {
  let best = most;
  for (let length = 1; length + 1 < best && length <= way.length; length += 1) {
    const text = way.slice(0, length);
    if (text.endsWith(' ')) continue;
    const down = looks(text);
    if (down !== -1) best = Math.min(best, length + down + 1);
  }
  return best;
}

/** The rows come from the screen's own `choicesOf`; only the handling of each key is left out. */
function sessionFor(visit: Visit, index: TaxonIndex, known: Known | null): Session {
  const session = newSession({
    visit,
    index,
    groups: {},
    placeAssumed: false,
    now: epochOf(visit.start),
    message: null,
    size: { columns: 80, rows: 24 },
    saved: { changes: 0, file: null },
  });
  return { ...session, known };
}

function costsOf(visit: Visit, at: number, index: TaxonIndex, known: Known | null): Cost[] {
  const start = sessionFor(visit, index, known);
  return visit.entries.flatMap(({ taxon, uncertain, struck, time }, place): Cost[] => {
    const name = taxon?.vernacularName;
    if (!(taxon && name) || uncertain || struck !== null) return [];
    const now = { ...visit, entries: visit.entries.slice(0, place) };
    const session = { ...start, visit: now, now: epochOf(time) };
    const key = taxonKey(taxon);
    const rows = new Map<string, number>();
    const looks: Looks = (text) => {
      const before = rows.get(text);
      if (before !== undefined) return before;
      const down = choicesOf({ ...session, drafts: { line: lineOf(text) } }).findIndex(
        (choice) => choice.kind === 'taxon' && taxonKey(choice.hit.taxon) === key,
      );
      rows.set(text, down);
      return down;
    };
    const said = name.toLowerCase();
    const byName = keysBy(said, looks, said.length + 9);
    const least = waysOf(name).reduce((most, way) => keysBy(way, looks, most), byName);
    return [{ visit: at + 1, name, birds: taxon.list.endsWith('-birds'), byName, least }];
  });
}

function meansOf(costs: readonly Cost[]): string[] {
  return [costs.map(({ byName }) => byName), costs.map(({ least }) => least)].map((keys) =>
    mean(keys).toFixed(2),
  );
}

/** Replays the notebook and prints the keys an entry. */
export function replay(taxa: readonly Taxon[], index: TaxonIndex): void {
  const begun = clock();
  const visits = demoVisits(taxa);
  const runs = [true, false].map((learns) => ({
    head: learns ? 'learned' : 'not learned',
    costs: visits.flatMap((visit, at) =>
      costsOf(visit, at, index, learns ? knownFrom(visits.slice(0, at)) : null),
    ),
  }));
  const row = (head: string, wanted: (cost: Cost) => boolean) => [
    head,
    String(runs[0]?.costs.filter(wanted).length),
    ...runs.flatMap(({ costs }) => meansOf(costs.filter(wanted))),
  ];
  printTable(
    `Keys an entry (name and count 1, Enter included): ${visits.length} visits of the invented notebook in order, ${taxa.length} taxa.\nName: starts of the English name; least: or of any one word, initials, code. Down where that is fewer.\nThe order is that of the Field screen (choicesOf), with what earlier visits and the visit so far tell.`,
    ['visits', 'entries', ...runs.flatMap(({ head }) => [`name, ${head}`, `least, ${head}`])],
    [
      ...STAGES.map(([first, last]) =>
        row(`${first}-${last}`, ({ visit }) => visit >= first && visit <= last),
      ),
      row('birds', ({ birds }) => birds),
      row('others', ({ birds }) => !birds),
    ],
  );
  const learned = runs[0]?.costs ?? [];
  console.log(
    `\ngoal: a mean of at most ${GOAL.toFixed(1)} keys, learned; by name and least: ${meansOf(learned).join(', ')}`,
  );
  printDearest(learned);
  console.log(`replayed in ${((clock() - begun) / 1000).toFixed(0)} s`);
}

/** The species on which most keys beyond the goal were spent in all. */
function printDearest(costs: readonly Cost[]): void {
  const spent = [...new Set(costs.map(({ name }) => name))].map((name) => {
    const keys = costs.filter((cost) => cost.name === name).map(({ byName }) => byName);
    return { name, keys, beyond: keys.reduce((sum, each) => sum + each - GOAL, 0) };
  });
  printTable(
    'Species that cost most keys beyond the goal, learned, by the English name.',
    ['species', 'entries', 'mean', 'beyond'],
    spent
      .toSorted((one, two) => two.beyond - one.beyond)
      .slice(0, DEAREST)
      .map(({ name, keys, beyond }) => [
        name,
        String(keys.length),
        mean(keys).toFixed(2),
        String(beyond),
      ]),
  );
}
