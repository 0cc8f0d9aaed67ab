import type { Known } from '../../taxa/known.ts';
import type { TaxonIndex } from '../../taxa/taxon-index.ts';
import { countShown } from '../../visit/count.ts';
import { clockOf } from '../../visit/time.ts';
import { type Answer, ask, narrowed } from '../asking/ask.ts';
import type { GroupOf } from '../asking/complete.ts';
import { dayInYear, yearOf } from '../asking/days.ts';
import type { VisitDigest } from '../asking/digest.ts';
import { type FirstRecord, firstRecords } from '../asking/firsts.ts';
import type { Query } from '../asking/query.ts';
import type { TaxonSearch } from '../asking/reading.ts';
import { type TaxonSeen, taxaSeen, threatenedSeen } from '../asking/taxa-seen.ts';
import { type TaxonPage, taxonPage } from '../asking/taxon-page.ts';
import { type SeenThisWeek, thisWeekBefore } from '../asking/this-week.ts';
import { type Found, unnamed } from '../asking/unnamed.ts';
import { runningTotals, type YearSoFar } from '../asking/year-page.ts';
import { type FigureTold, figuresTold } from './figures-told.ts';
import { type PlaceReport, placeReport } from './place-report.ts';

const MOST_PAGES = 3;

/** An entry to read. */
export interface EntryTold {
  date: string;
  /** Local time, `HH:MM`. */
  time: string;
  place: string | null;
  name: string;
  count: string;
  description: string | null;
}

/** Years beside each other, with their species up to one day of the year. */
export interface YearsTold {
  /** Those that were asked for; else this one. */
  asked: number[];
  /** `MM-DD`. */
  day: string;
  totals: YearSoFar[];
  /** Dates of the visits of the years asked for. */
  dates: string[];
  /** First in the notebook in these years. */
  firsts: FirstRecord[];
  threatened: TaxonSeen[];
}

/** All that is told to a question; what was not asked for is null or empty. Plain data. */
export interface Report {
  question: string;
  /** Local date on which it was asked. */
  today: string;
  understood: string[];
  notes: string[];
  sentence: string;
  /** Words that mean nothing in this notebook. */
  unknown: string[];
  species: TaxonPage[];
  places: PlaceReport[];
  years: YearsTold | null;
  taxa: TaxonSeen[] | null;
  firsts: FirstRecord[] | null;
  entries: EntryTold[] | null;
  /** Visits whose own description has the words. */
  described: { date: string; place: string | null; description: string }[];
  week: SeenThisWeek[] | null;
  /** Entries that wait for a name; told where nothing was asked. */
  unnamed: number | null;
  figures: FigureTold[] | null;
}

/** What a question is put to. */
export interface Asked {
  visits: readonly VisitDigest[];
  search: TaxonSearch;
  groupOf: GroupOf;
  index: TaxonIndex;
  known: Known;
  /** Local date. */
  today: string;
  figures: boolean;
}

/** What the visits tell to a question in words; without words, of this week and this year. */
export function reportOf(words: string, asked: Asked): Report {
  const { visits, groupOf, today } = asked;
  const answer = ask(words, visits, asked);
  const { query } = answer;
  const nothingAsked = answer.understood.length === 0;
  const ofEntries = query.unnamed || query.words.length > 0;
  const narrow = ofEntries || query.firsts.size > 0 || query.categories.size > 0;
  const pages = [...query.taxa]
    .flatMap((key) => taxonPage(answer.visits, key, groupOf) ?? [])
    .sort((one, two) => two.visitsWith - one.visitsWith);
  const ofPlaces = query.taxa.size === 0 && query.places.size > 0 && !narrow;
  const ofYears = query.taxa.size + query.places.size === 0 && !narrow && query.years.size > 0;
  const cut = pages.length - MOST_PAGES;
  return {
    question: words,
    today,
    understood: answer.understood,
    notes:
      cut > 0 ? [...answer.notes, `The ${MOST_PAGES} in most visits are shown.`] : answer.notes,
    sentence: answer.sentence,
    unknown: query.words.filter((word) => isUnknown(word, asked)),
    species: pages.slice(0, MOST_PAGES),
    places: ofPlaces ? placesTold(answer, asked) : [],
    years: nothingAsked || ofYears ? yearsTold(answer, asked) : null,
    taxa:
      nothingAsked || ofPlaces || ofEntries || query.firsts.size > 0
        ? null
        : taxaSeen(answer.visits),
    firsts: query.firsts.size > 0 ? firstsTold(answer, visits) : null,
    entries: ofEntries ? answer.found.map(entryTold).reverse() : null,
    described: answer.described.map(({ date, place, description }) => ({
      date,
      place: place?.name ?? null,
      description: description ?? '',
    })),
    week: nothingAsked ? thisWeekBefore(visits, today) : null,
    unnamed: nothingAsked ? unnamed(visits).length : null,
    figures: asked.figures ? figuresTold(answer.visits, query, pages, groupOf) : null,
  };
}

/** A word that no entry and no visit has, whatever else was asked. */
function isUnknown(word: string, asked: Asked): boolean {
  const { query, found, described } = ask(word, asked.visits, asked);
  return query.words.length > 0 && found.length + described.length === 0;
}

function placesTold({ query, visits }: Answer, asked: Asked): PlaceReport[] {
  const year = Math.max(...query.years, query.years.size === 0 ? yearOf(asked.today) : 0);
  const whole = query.years.size + query.months.size + query.dates.size + query.groups.size === 0;
  return [...query.places]
    .flatMap((key) => placeReport(key, visits, asked.visits, year, whole ? asked : null) ?? [])
    .slice(0, MOST_PAGES);
}

function yearsTold({ query, visits }: Answer, { visits: all, today, groupOf }: Asked): YearsTold {
  const now = yearOf(today);
  const asked = query.years.size === 0 ? [now] : [...query.years].sort();
  // The other years stand beside, narrowed in all but the year.
  const beside: Query = { ...query, years: new Set() };
  const day = asked.includes(now) ? dayInYear(today) : '12-31';
  const inYears = visits.filter(({ date }) => asked.includes(yearOf(date)));
  const keys = new Set(inYears.flatMap(({ seen }) => seen.map(({ key }) => key)));
  return {
    asked,
    day,
    totals: runningTotals(narrowed(all, beside, groupOf), day),
    dates: inYears.map(({ date }) => date),
    firsts: firstRecords(all).filter(
      ({ first, key, date }) => first === 'first' && keys.has(key) && asked.includes(yearOf(date)),
    ),
    threatened: threatenedSeen(inYears),
  };
}

function firstsTold({ query, found }: Answer, all: readonly VisitDigest[]): FirstRecord[] {
  const among = new Set(found.map(({ visit, entry }) => `${visit.id} ${entry.number}`));
  return firstRecords(all)
    .filter(({ first, visit, entry }) => query.firsts.has(first) && among.has(`${visit} ${entry}`))
    .reverse();
}

function entryTold({ visit, entry }: Found): EntryTold {
  return {
    date: visit.date,
    time: clockOf(entry.time).slice(0, 5),
    place: visit.place?.name ?? null,
    name: entry.uncertain ? `${entry.name}?` : entry.name,
    count: countShown(entry.count),
    description: entry.description,
  };
}
