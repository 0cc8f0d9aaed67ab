import { taxonKey } from '../visit/entry.ts';
import { placeKey } from '../visit/place.ts';
import { dateOf, type Stamp } from '../visit/time.ts';
import type { Visit } from '../visit/visit.ts';
import type { Known } from './known.ts';
import type { Prior } from './search.ts';
import type { Taxon } from './taxon.ts';
import type { TaxonIndex } from './taxon-index.ts';

/** Share of visits that meet a taxon of each frequency, before the notebook tells; not from a source. */
const REGIONAL = { 1: 0.3, 2: 0.08, 3: 0.015, 4: 0.0025 } as const;
/** Of a list that does not say how common its taxa are: they must not stand above those of lists that do. */
const UNSAID = REGIONAL[3];

/** A visit on the other side of the year tells this much of today; less and less up to so many days away. */
const SEASON = { least: 0.08, days: 60 } as const;
/** A visit tells half as much after so many years. */
const HALF_LIFE = 4;
/** How many visits what is expected in the region weighs, beside the notebook's own. */
const REGION_WEIGHT = 2;
/** How many visits what was seen at all places weighs, beside those to this place. */
const ELSEWHERE_WEIGHT = 1;

/** How many species of a list a visit meets before the notebook tells: most people log birds most. */
const USUAL_RATE = { birds: 12, others: 1 } as const;
/** A short list is met less often: no more than this part of the sum of its shares. */
const MOST_OF_SUM = 0.02;
/** How many visits the entries of today weigh, in what is logged of each list: a walk has its subject. */
const TODAY_WEIGHT = 8;

/** The scale of `Prior`: a taxon of every visit gets the most, one of `LEAST_SHARE` of them nothing. */
const MOST = 20;
const LEAST_SHARE = 1e-4;

/** When and where something is looked for. */
export interface Occasion {
  /** The key of the place; null for none. */
  place: string | null;
  /** Local date. */
  date: string;
  /** How many species of each list today's visit has so far. */
  today: ReadonlyMap<string, number>;
}

/** A visit at a moment as the occasion of a search. */
export function occasionOf(visit: Visit, now: Stamp): Occasion {
  const seen = new Map<string, string>();
  for (const { taxon, struck } of visit.entries)
    if (taxon !== null && struck === null) seen.set(taxonKey(taxon), taxon.list);
  const today = new Map<string, number>();
  for (const list of seen.values()) today.set(list, (today.get(list) ?? 0) + 1);
  return { place: visit.place && placeKey(visit.place.name), date: dateOf(now), today };
}

/**
 * What to expect on an occasion, from 0 to 20: the logarithm of the share of visits that meet a taxon,
 * since words and expectation then add up as chances multiply (Bayes). The share is that at this place
 * in this season, drawn towards that of all places, which is drawn towards what is usual in the region,
 * each the more the fewer visits there are:
 *
 *     regional = share of its frequency x species of its list a visit / sum of such shares in the list
 *     all      = (met + 2 regional) / (weight + 2)
 *     here     = (met here + all) / (weight here + 1)
 *     prior    = 20 (1 - ln here / ln 0.0001)
 *
 * A visit weighs 1 on the day of the year, less with the days to it around the year (0.08 from 60 days
 * on), halved every four years. Species of a list a visit: 12 birds, 1 of others (of a short list
 * less), as two visits would
 * tell, then the notebook's own, with today's as eight visits. The numbers are the project's own, tried
 * on an invented notebook.
 */
export function priorFor(index: TaxonIndex, known: Known | null, occasion: Occasion): Prior {
  const { all, here, logged } = sharesFor(index, known, occasion);
  const { sums } = listsOf(index);
  const { today } = occasion;
  const todays = today.size === 0 ? 0 : TODAY_WEIGHT;
  const scales = new Map(
    [...sums].map(([list, { sum, rate }]) => {
      const met = (logged.get(list) ?? 0) + REGION_WEIGHT * rate + todays * (today.get(list) ?? 0);
      return [list, met / (all.weight + REGION_WEIGHT + todays) / sum];
    }),
  );
  const expected = (taxon: Taxon) => {
    const key = taxonKey(taxon);
    const regional = Math.min(1, regionalShare(taxon) * (scales.get(taxon.list) ?? 1));
    const everywhere =
      ((all.met.get(key) ?? 0) + REGION_WEIGHT * regional) / (all.weight + REGION_WEIGHT);
    const share =
      ((here.met.get(key) ?? 0) + ELSEWHERE_WEIGHT * everywhere) / (here.weight + ELSEWHERE_WEIGHT);
    return Math.max(0, MOST * (1 - Math.log(share) / Math.log(LEAST_SHARE)));
  };
  // One letter fits thousands of taxa, and the next key asks for the same ones again.
  const before = new Map<Taxon, number>();
  return (taxon) => {
    const value = before.get(taxon) ?? expected(taxon);
    before.set(taxon, value);
    return value;
  };
}

function regionalShare({ frequency }: Taxon): number {
  return frequency === null ? UNSAID : (REGIONAL[frequency as keyof typeof REGIONAL] ?? UNSAID);
}

/** What the lists of an index hold: each taxon's list, and of each list the sum of its shares and its usual rate. */
interface Lists {
  listOf: Map<string, string>;
  sums: Map<string, { sum: number; rate: number }>;
}
const listsKnown = new WeakMap<TaxonIndex, Lists>();

function listsOf(index: TaxonIndex): Lists {
  const before = listsKnown.get(index);
  if (before) return before;
  const lists: Lists = { listOf: new Map(), sums: new Map() };
  for (const { taxon } of index.names) {
    const key = taxonKey(taxon);
    if (lists.listOf.has(key)) continue;
    lists.listOf.set(key, taxon.list);
    const { sum } = lists.sums.get(taxon.list) ?? { sum: 0 };
    const shares = sum + regionalShare(taxon);
    const rate =
      taxon.class === 'Aves' ? USUAL_RATE.birds : Math.min(USUAL_RATE.others, MOST_OF_SUM * shares);
    lists.sums.set(taxon.list, { sum: shares, rate });
  }
  listsKnown.set(index, lists);
  return lists;
}

/** The shares of visits, weighed by season and age, that met each taxon (by `taxonKey`). */
interface Shares {
  weight: number;
  met: Map<string, number>;
}

interface Reckoned {
  all: Shares;
  here: Shares;
  /** How many species of each list the visits have, weighed likewise. */
  logged: Map<string, number>;
}
interface LastReckoned {
  of: readonly unknown[];
  reckoned: Reckoned;
}
/** The visits are gone through once for a place and a date, not at every key. */
const lastReckoned = new WeakMap<Known, LastReckoned>();

function sharesFor(index: TaxonIndex, known: Known | null, { place, date }: Occasion): Reckoned {
  if (known === null) return { all: nothing(), here: nothing(), logged: new Map() };
  const before = lastReckoned.get(known);
  const of = [index, place, date];
  if (before && of.every((part, at) => part === before.of[at])) return before.reckoned;
  const reckoned = reckon(listsOf(index), known, place, date);
  lastReckoned.set(known, { of, reckoned });
  return reckoned;
}

function nothing(): Shares {
  return { weight: 0, met: new Map() };
}

function reckon({ listOf }: Lists, known: Known, place: string | null, date: string): Reckoned {
  const [all, here, logged] = [nothing(), nothing(), new Map<string, number>()];
  for (const record of known.records) {
    const weight = weightOf(record.date, date);
    add(all, record.taxa, weight);
    if (place !== null && record.place === place) add(here, record.taxa, weight);
    for (const key of record.taxa) {
      const list = listOf.get(key);
      if (list !== undefined) logged.set(list, (logged.get(list) ?? 0) + weight);
    }
  }
  return { all, here, logged };
}

function add(shares: Shares, taxa: Iterable<string>, weight: number): void {
  shares.weight += weight;
  for (const key of taxa) shares.met.set(key, (shares.met.get(key) ?? 0) + weight);
}

/** How much a visit on one date tells of another: by the season, and by the years between. */
function weightOf(then: string, now: string): number {
  const apart = Math.abs(dayOfYear(then) - dayOfYear(now));
  const days = Math.min(apart, YEAR - apart);
  const season = Math.max(SEASON.least, 1 - ((1 - SEASON.least) * days) / SEASON.days);
  const years = Math.abs(Number(now.slice(0, 4)) - Number(then.slice(0, 4)));
  return season * 0.5 ** (years / HALF_LIFE);
}

const YEAR = 365;
const MONTH_STARTS = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334] as const;

/** Days since New Year; a leap day is taken for the first of March. */
function dayOfYear(date: string): number {
  return (MONTH_STARTS[Number(date.slice(5, 7)) - 1] ?? 0) + Number(date.slice(8, 10)) - 1;
}
