import { mkdtempSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { onTestFinished } from 'vitest';
import type { Count } from '../../src/visit/count.ts';
import { type Entry, type Observation, RED_LIST_CATEGORIES } from '../../src/visit/entry.ts';
import { stamp } from '../../src/visit/time.ts';
import { updateVisit } from '../../src/visit/update.ts';
import { newVisit, type Visit } from '../../src/visit/visit.ts';
import { COMPASS, PRECIPITATION, VISIBILITY } from '../../src/visit/weather.ts';

/** A folder of its own for one test, taken away afterwards. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'tussock-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** Ids of invented visits, one for each number. */
export function idOf(number: number): string {
  return `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`;
}

function seen(words: string): Observation {
  const count: Count = { kind: 'exact', value: 3 };
  return {
    typed: `3 ${words}`,
    taxon: null,
    words,
    uncertain: false,
    count,
    parts: [],
    description: null,
    position: null,
    heading: null,
  };
}

interface Given {
  id?: number;
  place?: string | null;
  start?: string;
  end?: string | null;
  /** Words of entries, one a minute from the start. */
  logged?: string[];
}

/** A visit of invented facts, made by the program's own rules. */
export function visitOf(given: Given = {}): Visit {
  const { id = 1, place = 'Sallow Mere', start = '2026-11-14T07:41:05+00:00' } = given;
  const named = place === null ? null : placeOf(place);
  const empty = newVisit({ id: idOf(id), timeZone: 'Europe/London', start, place: named });
  const logged = (given.logged ?? ['brown bird']).reduce(
    (visit, words) => logging(visit, words, start),
    empty,
  );
  return { ...logged, end: given.end ?? null };
}

export function logging(visit: Visit, words: string, time = visit.start): Visit {
  const id = idOf(1000 + visit.entries.length);
  return updateVisit(visit, { do: 'log', time, id, observation: seen(words) });
}

export function placeOf(name: string): NonNullable<Visit['place']> {
  return {
    name,
    position: null,
    verbatimCoordinates: null,
    uncertainty: null,
    habitat: null,
    protection: null,
    timeZone: null,
  };
}

export function moved(visit: Visit, place: string | null): Visit {
  const value = place === null ? null : placeOf(place);
  return updateVisit(visit, { do: 'set', time: visit.start, part: 'place', value });
}

/** Fields that no version of the program knows: another version's, or another program's. */
const strange = fc.dictionary(fc.stringMatching(/^x-[a-z]{1,8}$/), fc.jsonValue(), { maxKeys: 2 });
function loose<T extends object>(model: { [Key in keyof T]: fc.Arbitrary<T[Key]> }) {
  return fc.tuple(fc.record(model), strange).map(([known, more]) => ({ ...more, ...known }) as T);
}

const zones = fc.constantFrom('Europe/London', 'Asia/Kathmandu', 'America/St_Johns', 'UTC');
const moments = fc
  .tuple(fc.integer({ min: 0, max: 4_000_000_000 }), zones)
  .map(([seconds, zone]) => stamp(seconds * 1000, zone));
const whole = fc.integer({ min: 0, max: 9_999_999 });
const words = fc.string({ unit: 'binary', maxLength: 12 });
const filled = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 });
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });

const counts = fc.oneof(
  fc
    .constantFrom('exact' as const, 'at least' as const, 'about' as const)
    .chain((kind) =>
      loose<{ kind: typeof kind; value: number }>({ kind: fc.constant(kind), value: whole }),
    ),
  loose({ kind: fc.constant('range' as const), low: whole, high: whole }),
  loose({ kind: fc.constant('present' as const) }),
);
const positions = loose({
  latitude: fc.double({ min: -90, max: 90, noNaN: true }),
  longitude: fc.double({ min: -180, max: 180, noNaN: true }),
});
const places = loose<NonNullable<Visit['place']>>({
  name: filled,
  position: orNull(positions),
  verbatimCoordinates: orNull(words),
  uncertainty: orNull(fc.integer({ min: 1, max: 9999 })),
  habitat: orNull(words),
  protection: orNull(fc.constantFrom('protected' as const, 'private')),
  timeZone: orNull(zones),
});
const taxa = loose<NonNullable<Entry['taxon']>>({
  scientificName: filled,
  identificationQualifier: orNull(filled),
  vernacularName: orNull(words),
  taxonRank: filled,
  establishmentMeans: orNull(filled),
  redListCategory: fc.constantFrom(...RED_LIST_CATEGORIES),
  redListSource: orNull(words),
  sensitivity: orNull(fc.constantFrom('low', 'medium', 'high', 'extreme')),
  list: filled,
});
const parts = loose({ letter: fc.constantFrom('m' as const, 'f', 'j', 'a'), value: whole });
const entries = loose<Entry>({
  id: fc.uuid(),
  number: fc.integer({ min: 1, max: 99_999 }),
  time: moments,
  struck: orNull(moments),
  typed: words,
  taxon: orNull(taxa),
  words,
  uncertain: fc.boolean(),
  count: counts,
  parts: fc.array(parts, { maxLength: 3 }),
  description: orNull(words),
  position: orNull(positions),
  heading: orNull(fc.constantFrom(...COMPASS)),
});
const weather = loose<Visit['weather'][number]>({
  time: moments,
  verbatim: filled,
  temperature: orNull(fc.integer({ min: -40, max: 45 })),
  windForce: orNull(fc.integer({ min: 0, max: 12 })),
  windSpeed: orNull(fc.integer({ min: 0, max: 60 })),
  windFrom: orNull(fc.constantFrom(...COMPASS)),
  cloud: orNull(fc.integer({ min: 0, max: 9 })),
  precipitation: orNull(fc.constantFrom(...PRECIPITATION)),
  visibility: orNull(fc.constantFrom(...VISIBILITY)),
  remarks: orNull(words),
});
const efforts = loose<Visit['effort']>({
  pauses: fc.array(loose({ start: moments, end: orNull(moments) }), { maxLength: 2 }),
  distance: orNull(fc.double({ min: 0, max: 1e6, noNaN: true })),
  observers: orNull(fc.integer({ min: 1, max: 50 })),
  method: orNull(words),
  track: fc.constant(null),
  complete: orNull(fc.boolean()),
  groups: orNull(fc.array(words, { maxLength: 2 })),
});
const about = {
  time: moments,
  undoes: orNull(whole),
  redoes: orNull(whole),
  reason: orNull(words),
};
const changes = fc.oneof(
  loose({ ...about, part: fc.constant('entry'), number: whole, before: orNull(entries) }),
  loose({ ...about, part: fc.constant('place'), before: orNull(places) }),
  loose({ ...about, part: fc.constant('effort'), before: efforts }),
  loose({ ...about, part: fc.constant('description'), before: orNull(words) }),
  loose({ ...about, part: fc.constant('end'), before: orNull(moments) }),
) as fc.Arbitrary<Visit['changes'][number]>;

/** Any visit that a file may hold, with fields that this version does not know. */
export const anyVisit = loose<Visit>({
  format: fc.constant('tussock-visit'),
  formatVersion: fc.constant(2),
  id: fc.uuid(),
  timeZone: zones,
  start: moments,
  end: orNull(moments),
  place: orNull(places),
  weather: fc.array(weather, { maxLength: 2 }),
  effort: efforts,
  description: orNull(words),
  highest: fc.array(filled, { maxLength: 2 }),
  entries: fc.array(entries, { maxLength: 3 }),
  changes: fc.array(changes, { maxLength: 3 }),
  conflicts: fc.constant([]),
});
