import { FORMAT_VERSION } from './visit.ts';

type Fields = Record<string, unknown>;

/**
 * Steps from each format to the next, on data as parsed and not yet checked: each changes what its
 * format lacks and leaves the rest, bad parts too, for the check to name.
 */
const STEPS: Record<number, (visit: Fields) => Fields> = {
  1: widened,
};

/** A visit's data brought up to today's format, step by step. Another format is left as it is. */
export function migrated(data: unknown): unknown {
  let now = data;
  while (isFields(now) && typeof now.formatVersion === 'number') {
    const { formatVersion } = now;
    const step = formatVersion < FORMAT_VERSION ? STEPS[formatVersion] : undefined;
    if (!step) return now;
    now = { ...step(now), formatVersion: formatVersion + 1 };
  }
  return now;
}

/** What 2 has and 1 had not: unsaid, or nothing. */
const SINCE_2 = {
  visit: { highest: [], conflicts: [] },
  taxon: { identificationQualifier: null, establishmentMeans: null },
  entry: { position: null, heading: null },
  place: { uncertainty: null, habitat: null, protection: null },
  weather: { windSpeed: null, visibility: null },
  effort: { track: null },
};

/** 1 to 2: the new fields, also in the values before each change. */
function widened(visit: Fields): Fields {
  const changes = listOf(visit.changes, (change) => {
    if (!isFields(change)) return change;
    const { part, before } = change;
    return { ...change, before: widenedPart(String(part), before) };
  });
  const parts = Object.fromEntries(
    ['place', 'weather', 'effort'].map((part) => [part, widenedPart(part, visit[part])]),
  );
  const entries = listOf(visit.entries, (entry) => widenedPart('entry', entry));
  return { ...SINCE_2.visit, ...visit, ...parts, entries, changes };
}

function widenedPart(part: string, value: unknown): unknown {
  if (part === 'weather') return listOf(value, (reading) => withFields(SINCE_2.weather, reading));
  if (part === 'place') return withFields(SINCE_2.place, value);
  if (part === 'effort') return withFields(SINCE_2.effort, value);
  if (part !== 'entry' || !isFields(value)) return value;
  return withFields(SINCE_2.entry, { ...value, taxon: withFields(SINCE_2.taxon, value.taxon) });
}

function withFields(fields: Fields, value: unknown): unknown {
  return isFields(value) ? { ...fields, ...value } : value;
}

function listOf(list: unknown, change: (item: unknown) => unknown): unknown {
  return Array.isArray(list) ? list.map(change) : list;
}

function isFields(data: unknown): data is Fields {
  return typeof data === 'object' && data !== null && !Array.isArray(data);
}
