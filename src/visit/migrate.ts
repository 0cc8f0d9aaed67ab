import { FORMAT_VERSION } from './visit.ts';

type Fields = Record<string, unknown>;

/**
 * Steps from each format to the next, on data as parsed and not yet checked: each changes what its
 * format lacks and leaves the rest, bad parts too, for the check to name.
 */
const STEPS: Record<number, (visit: Fields) => Fields> = {
  1: qualified,
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

/**
 * 2 says what a name leaves open (it left nothing open before) and whether the taxon is native, and
 * keeps conflicts of two copies.
 */
function qualified(visit: Fields): Fields {
  const changes = listOf(visit.changes, (change) =>
    isFields(change) && change.part === 'entry'
      ? { ...change, before: withQualifier(change.before) }
      : change,
  );
  return { ...visit, entries: listOf(visit.entries, withQualifier), changes, conflicts: [] };
}

function withQualifier(entry: unknown): unknown {
  if (!isFields(entry) || !isFields(entry.taxon)) return entry;
  return {
    ...entry,
    taxon: {
      identificationQualifier: null,
      establishmentMeans: null,
      ...entry.taxon,
    },
  };
}

function listOf(list: unknown, change: (item: unknown) => unknown): unknown {
  return Array.isArray(list) ? list.map(change) : list;
}

function isFields(data: unknown): data is Fields {
  return typeof data === 'object' && data !== null && !Array.isArray(data);
}
