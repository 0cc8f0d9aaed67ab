/** How few keys log each line of a walk, new and walked before, and each entry of an invented notebook. */
import { randomUUID } from 'node:crypto';
import { choicesOf } from '../src/screens/field/choices.ts';
import { newSession, type Session } from '../src/screens/field/session.ts';
import { updateField } from '../src/screens/field/update.ts';
import type { Key } from '../src/screens/keyboard.ts';
import { knownFrom } from '../src/taxa/known.ts';
import type { Taxon } from '../src/taxa/taxon.ts';
import { countText, GROUP_SIZES } from '../src/visit/count.ts';
import { SALLOW_MERE, shipped, visitOf, ZONE } from './invented.ts';
import { mean, printTable } from './measure.ts';
import { queriesFor, startsOf } from './queries.ts';
import { replay } from './replay.ts';
import { WALK } from './walk.ts';

const WALKED = Date.UTC(2026, 0, 17, 9, 30);
const WEEK_BEFORE = Date.UTC(2026, 0, 10, 9, 30);
/** What the project promises of one line, Enter included. */
const PROMISE = { name: 'Tufted Duck', count: '12', keys: 7 };

/** A wanted entry: the taxon and its count in the form in which it is typed. */
interface Wanted {
  taxon: Taxon;
  count: string;
}

/** A way to log an entry: what is typed, then how often Down and Right, then Enter. */
interface Way {
  text: string;
  down: number;
  right: number;
}

const { taxa, index, groups } = await shipped();
const wanted = WALK.map(({ name, count }): Wanted => {
  const taxon = taxa.find((each) => each.vernacularName === name);
  if (!taxon) throw new Error(`The shipped lists have no ${name}.`);
  return { taxon, count };
});

function sessionAt(known: Session['known']): Session {
  const visit = visitOf([], WALKED, false);
  const session = newSession({
    visit,
    index,
    groups,
    placeAssumed: false,
    now: WALKED,
    message: null,
    size: { columns: 80, rows: 24 },
    saved: { changes: 0, file: null },
  });
  return known === null ? session : updateField(session, { kind: 'known', known }).session;
}

function press(session: Session, keys: readonly Key[]): Session {
  return keys.reduce(
    (before, key) =>
      updateField(before, { kind: 'key', key, now: WALKED, id: randomUUID() }).session,
    session,
  );
}

function textKeys(text: string): Key[] {
  return [...text].map((letter) => ({ name: 'text', text: letter }));
}

function repeated(name: 'down' | 'right', often: number): Key[] {
  return Array.from({ length: often }, () => ({ name }));
}

function keysOf(way: Way): Key[] {
  return [
    ...textKeys(way.text),
    ...repeated('down', way.down),
    ...repeated('right', way.right),
    { name: 'enter' },
  ];
}

function keyCount(way: Way): number {
  return keysOf(way).length;
}

/** The ways to give a count behind a query: nothing for one, digits glued or apart, group sizes by Right. */
function withCount(query: string, count: string, down: number): Way[] {
  const steps = GROUP_SIZES.indexOf(Number(count));
  const glued = /\p{L}{2}$/u.test(query) ? [{ text: `${query}${count}`, down, right: 0 }] : [];
  const stepped = steps === -1 ? [] : [{ text: query, down, right: steps }];
  return [...stepped, ...glued, { text: `${query} ${count}`, down, right: 0 }];
}

/** The first of the queries, shortest first, by which the least keys log the entry; null without any. */
function leastWay(
  start: Session,
  { taxon, count }: Wanted,
  queries: readonly string[],
): Way | null {
  let best: Way | null = null;
  for (const query of queries) {
    if (best !== null && query.length + 1 >= keyCount(best)) break;
    const down = choicesOf(press(start, textKeys(query))).findIndex(
      (choice) => choice.kind === 'taxon' && choice.hit.taxon === taxon,
    );
    if (down === -1) continue;
    for (const way of withCount(query, count, down))
      if (best === null || keyCount(way) < keyCount(best)) best = way;
  }
  return best;
}

/** By the start of the name as it is said, until it stands first; the count behind a gap. */
function plainWay(start: Session, { taxon, count }: Wanted): Way | null {
  for (const text of startsOf(taxon)) {
    const [first] = choicesOf(press(start, textKeys(text)));
    if (first?.kind === 'taxon' && first.hit.taxon === taxon)
      return { text: count === '1' ? text : `${text} ${count}`, down: 0, right: 0 };
  }
  return null;
}

/** Presses the keys on the session as it stands; a sentence where another entry comes of it. */
function logged(session: Session, { taxon, count }: Wanted, way: Way): [Session, string | null] {
  const after = press(session, keysOf(way));
  const entry = after.visit.entries.at(-1);
  const right =
    after.visit.entries.length === session.visit.entries.length + 1 &&
    entry?.taxon?.scientificName === taxon.scientificName &&
    countText(entry.count) === count;
  const got = entry
    ? `${entry.taxon?.vernacularName ?? entry.words} ${countText(entry.count)}`
    : '';
  return [
    after,
    right ? null : `${wayText(way)} logs "${got}", not "${taxon.vernacularName} ${count}"`,
  ];
}

function wayText(way: Way): string {
  return [
    way.text,
    way.down === 0 ? '' : `Down ${way.down}`,
    way.right === 0 ? '' : `Right ${way.right}`,
  ]
    .filter((part) => part !== '')
    .join(', ');
}

const problems: string[] = [];

/** Walks the whole walk in one visit; the ways taken, in its order. */
function walk(known: Session['known'], find: (start: Session, each: Wanted) => Way | null): Way[] {
  let session = sessionAt(known);
  return wanted.flatMap((each) => {
    const way = find(session, each);
    if (way === null) {
      problems.push(`no keys were found that log ${each.taxon.vernacularName} ${each.count}`);
      return [];
    }
    const [after, problem] = logged(session, each, way);
    session = after;
    if (problem !== null) problems.push(problem);
    return [way];
  });
}

const lastWeek = knownFrom([
  visitOf(
    wanted.map(({ taxon, count }) => ({ taxon, typed: `${taxon.vernacularName} ${count}` })),
    WEEK_BEFORE,
    true,
  ),
]);
const least = (start: Session, each: Wanted) => leastWay(start, each, queriesFor(each.taxon));
const columns = [
  { head: 'new notebook', ways: walk(null, least) },
  { head: 'walked before', ways: walk(lastWeek, least) },
  { head: 'name, new', ways: walk(null, plainWay) },
  { head: 'name, before', ways: walk(lastWeek, plainWay) },
];

const meanOf = (ways: readonly Way[]) => mean(ways.map(keyCount)).toFixed(2);
printTable(
  `Keys a line, Enter included: ${WALK.length} lines of an invented winter walk at ${SALLOW_MERE.name} (${ZONE}).\nLeast: the shortest of name parts, initials and codes; name: as it is said, until it stands first.`,
  ['wanted', ...columns.flatMap(({ head }) => [head, 'keys'])],
  [
    ...wanted.map(({ taxon, count }, place) => [
      `${taxon.vernacularName} ${count}`,
      ...columns.flatMap(({ ways }) => {
        const way = ways[place];
        return way ? [wayText(way), String(keyCount(way))] : ['-', '-'];
      }),
    ]),
    ['mean', ...columns.flatMap(({ ways }) => ['', meanOf(ways)])],
  ],
);
const promised = wanted.findIndex(
  ({ taxon, count }) => taxon.vernacularName === PROMISE.name && count === PROMISE.count,
);
const took = columns.map(({ head, ways }) => {
  const way = ways[promised];
  return `${head} ${way ? keyCount(way) : '-'}`;
});
console.log(
  `\na ${PROMISE.name} x${PROMISE.count}: at most ${PROMISE.keys} keys are promised; ${took.join(', ')}`,
);
replay(taxa, index);
for (const problem of problems) console.error(`WRONG LOG: ${problem}`);
if (problems.length > 0) process.exitCode = 1;
