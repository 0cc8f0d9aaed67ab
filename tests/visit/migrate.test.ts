import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { visitFrom } from '../../src/notebook/visit-file.ts';
import { migrated } from '../../src/visit/migrate.ts';
import { FORMAT_VERSION, Visit } from '../../src/visit/visit.ts';

const sample = (version: number) =>
  readFileSync(new URL(`./samples/format-${version}.json`, import.meta.url), 'utf8');
const VERSIONS = Array.from({ length: FORMAT_VERSION }, (_, at) => at + 1);

describe('a visit of an earlier format', () => {
  test.each(VERSIONS)('format %i has a kept sample that is read whole', (version) => {
    const text = sample(version);
    expect(JSON.parse(text).formatVersion).toBe(version);
    const read = visitFrom(text);
    if ('problem' in read) throw new Error(read.problem);
    expect(read.visit.formatVersion).toBe(FORMAT_VERSION);
    expect(read.visit.entries).toHaveLength(6);
    expect(read.visit.entries[0]).toMatchObject({
      typed: 'tuf 12: asleep by the raft',
      taxon: { scientificName: 'Aythya fuligula', identificationQualifier: null },
      count: { kind: 'exact', value: 12 },
    });
  });

  test('keeps fields that nobody knows, and its own values of those that are new', () => {
    const data = JSON.parse(sample(1));
    data.mine = { kept: true };
    data.entries[0].taxon.mine = 7;
    const now = migrated(data) as { mine: unknown; entries: { taxon: unknown }[] };
    expect(now.mine).toEqual({ kept: true });
    expect(now.entries[0]?.taxon).toMatchObject({ mine: 7, identificationQualifier: null });
    expect(Visit.safeParse(now).success).toBe(true);
  });

  test.each([
    null,
    [],
    'visit',
    { formatVersion: 'one' },
    { formatVersion: 99 },
    { formatVersion: 1, entries: 7 },
  ])('%j is left to the check', (data) => {
    expect(() => migrated(data)).not.toThrow();
    expect(Visit.safeParse(migrated(data)).success).toBe(false);
  });
});
