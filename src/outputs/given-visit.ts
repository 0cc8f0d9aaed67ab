import { METHODS } from '../visit/effort.ts';
import type { EntryTaxon } from '../visit/entry.ts';
import { type Total, totals } from '../visit/sums.ts';
import { epochOf, type Stamp } from '../visit/time.ts';
import { type Visit, watched, zoneOf } from '../visit/visit.ts';
import type { Weather } from '../visit/weather.ts';
import { type GivenEntry, givenEntries } from './given-entry.ts';
import { type GivenPlace, givenPlace, givenText } from './given-place.ts';
import { type Hiding, hidingOf, WITHHELD } from './hiding.ts';
import { groupOf, type ListFacts } from './list-facts.ts';

/** What went into a visit, as it may be given out. */
interface GivenEffort {
  /** Minutes watched, to a whole one; null while the visit has no end. */
  minutes: number | null;
  /** Metres. */
  distance: number | null;
  observers: number | null;
  method: string;
  complete: boolean | null;
  groups: string[] | null;
}

/** A sum of a taxon in a visit, with the taxon. */
export interface GivenTotal extends Total {
  taxon: EntryTaxon;
}

/** A reading of the weather as it may be given out. */
export type GivenWeather = Omit<Weather, 'verbatim'>;

/**
 * A visit as it may be given out. Every output is made of this and of nothing else, so that what is
 * withheld here can come out by no other way.
 */
export interface GivenVisit extends GivenPlace {
  id: string;
  start: Stamp;
  end: Stamp | null;
  /** IANA zone by whose clocks it goes; only for reckoning, it is not to be given out. */
  zone: string;
  /** Why and how far the place is hidden; null where it is not. */
  hiding: Hiding | null;
  description: string;
  weather: GivenWeather[];
  effort: GivenEffort;
  entries: GivenEntry[];
  totals: GivenTotal[];
}

/**
 * The visit as it may be given out: unless `exact` is asked for, a hidden place takes with it all that
 * was written by hand, since no check finds every way in which words can tell a place.
 */
export function givenVisit(visit: Visit, facts: ListFacts, exact: boolean): GivenVisit {
  const hiding = exact ? null : hidingOf(visit);
  const place = givenPlace(visit, hiding);
  const byNumber = new Map(visit.entries.map((entry) => [entry.number, entry]));
  return {
    ...place,
    id: visit.id,
    start: visit.start,
    end: visit.end,
    zone: zoneOf(visit),
    hiding,
    description: givenText(visit.description, hiding),
    weather: visit.weather.map((reading) => ({
      ...pickWeather(reading),
      remarks: givenText(reading.remarks, hiding) || null,
    })),
    effort: givenEffort(visit, facts, hiding),
    entries: givenEntries(visit, place.spot, hiding, exact),
    totals: totals(visit).flatMap((total) => {
      const taxon = byNumber.get(total.entries[0] ?? -1)?.taxon ?? null;
      return taxon === null ? [] : { ...total, taxon };
    }),
  };
}

/** The visit with the entries of one group alone, which the lists tell; unnamed ones have none. */
export function ofGroup(visit: GivenVisit, group: string, facts: ListFacts): GivenVisit {
  const isOf = ({ taxon }: { taxon: EntryTaxon | null }) =>
    taxon !== null && groupOf(facts, taxon) === group.toLowerCase();
  return { ...visit, entries: visit.entries.filter(isOf), totals: visit.totals.filter(isOf) };
}

/** The reading that held at a moment: the last before it, else the first of the visit. */
export function weatherAt({ weather }: GivenVisit, time: Stamp): GivenWeather | null {
  const moment = epochOf(time);
  return weather.findLast((reading) => epochOf(reading.time) <= moment) ?? weather[0] ?? null;
}

function pickWeather(reading: Weather): Omit<GivenWeather, 'remarks'> {
  const { time, temperature, windForce, windSpeed, windFrom, cloud, precipitation, visibility } =
    reading;
  return { time, temperature, windForce, windSpeed, windFrom, cloud, precipitation, visibility };
}

function givenEffort(visit: Visit, facts: ListFacts, hiding: Hiding | null): GivenEffort {
  const { distance, observers, method, complete, groups } = visit.effort;
  const known = new Set([...facts.groups.values()].map((group) => group.toLowerCase()));
  const isPlain = (METHODS as readonly string[]).includes(method ?? '');
  const minutes =
    visit.end === null ? null : Math.round(watched(visit, epochOf(visit.end)) / 60_000);
  return {
    minutes,
    distance,
    observers,
    method: isPlain ? (method ?? '') : givenText(method, hiding),
    complete,
    groups:
      groups?.map((group) =>
        hiding === null || known.has(group.toLowerCase()) ? group : WITHHELD,
      ) ?? null,
  };
}
