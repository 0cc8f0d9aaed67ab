import { describe, expect, test } from 'vitest';
import { updateVisit } from '../../src/visit/update.ts';
import { Visit, zoneOf } from '../../src/visit/visit.ts';
import { minutesIn, observed, placeOf, visitAt, withLogged } from './made.ts';

/** A visit with something in every part, as it comes from a file. */
function full(): Record<string, unknown> {
  const logged = withLogged(visitAt(), { parts: [{ letter: 'm', value: 3 }] }, { taxon: null });
  const time = minutesIn(9);
  const weather = {
    time,
    verbatim: '7c',
    temperature: 7,
    windForce: null,
    windSpeed: null,
    windFrom: null,
    visibility: null,
    cloud: null,
    precipitation: null,
    remarks: null,
  };
  const pauses = [{ start: minutesIn(5), end: null }];
  const value = { ...logged.effort, pauses };
  const parts = [
    { do: 'set', part: 'weather', value: [weather] },
    { do: 'set', part: 'effort', value },
    { do: 'set', part: 'place', value: placeOf({ name: 'Withy Drove' }) },
    { do: 'amend', number: 1, observation: observed({ words: 'drake' }) },
  ] as const;
  const visit = parts.reduce<Visit>(
    (so, action) => updateVisit(so, { ...action, time } as Parameters<typeof updateVisit>[1]),
    logged,
  );
  return JSON.parse(JSON.stringify(visit));
}

/** Adds a field that no version knows to every object, at any depth. */
function strange(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(strange);
  if (value === null || typeof value !== 'object') return value;
  const inner = Object.entries(value).map(([key, part]) => [key, strange(part)]);
  return { ...Object.fromEntries(inner), fromAnotherVersion: { kept: true } };
}

describe('the visit schema', () => {
  test('keeps fields that this version does not know, at every depth', () => {
    const given = strange(full());
    expect(JSON.stringify(given).match(/fromAnotherVersion/g)?.length).toBeGreaterThan(20);
    expect(Visit.parse(given)).toEqual(given);
  });

  test('keeps such fields through an update and an undo', () => {
    const visit = Visit.parse(strange(full())) as Visit;
    const after = updateVisit(visit, { do: 'strike', number: 1, time: minutesIn(20) });
    const back = updateVisit(after, { do: 'undo', time: minutesIn(21) });
    expect(back.entries).toEqual(visit.entries);
    expect(after.entries[0]).toHaveProperty('fromAnotherVersion');
  });

  test.each<[string, (visit: Record<string, unknown>) => void]>([
    ['another format', (visit) => Object.assign(visit, { format: 'visit' })],
    ['a newer format version', (visit) => Object.assign(visit, { formatVersion: 3 })],
    ['an id that is none', (visit) => Object.assign(visit, { id: '7' })],
    ['a zone that nobody knows', (visit) => Object.assign(visit, { timeZone: 'Mars/Olympus' })],
    [
      'a start that does not exist',
      (visit) => Object.assign(visit, { start: '2026-02-30T07:00:00+00:00' }),
    ],
    ['no entries', (visit) => Reflect.deleteProperty(visit, 'entries')],
    ['no changes', (visit) => Reflect.deleteProperty(visit, 'changes')],
    [
      'a latitude past the pole',
      (visit) =>
        Object.assign(visit, { place: placeOf({ position: { latitude: 91, longitude: 0 } }) }),
    ],
    ['a place without a name', (visit) => Object.assign(visit, { place: placeOf({ name: '' }) })],
  ])('refuses %s', (_, spoil) => {
    const given = full();
    expect(Visit.safeParse(given).success).toBe(true);
    spoil(given);
    expect(Visit.safeParse(given).success).toBe(false);
  });

  test.each<[string, unknown]>([
    ['a negative count', { kind: 'exact', value: -1 }],
    ['half a bird', { kind: 'exact', value: 1.5 }],
    ['a count without a number', { kind: 'about' }],
    ['a count of an unknown kind', { kind: 'many', value: 3 }],
    ['a count past seven digits', { kind: 'exact', value: 10_000_000 }],
  ])('refuses %s', (_, count) => {
    const given = full();
    Object.assign((given.entries as object[])[0] ?? {}, { count });
    expect(Visit.safeParse(given).success).toBe(false);
  });
});

describe('the zone of a visit', () => {
  test("is the place's, else the machine's", () => {
    expect(zoneOf(visitAt(placeOf({ timeZone: 'Asia/Kolkata' })))).toBe('Asia/Kolkata');
    expect(zoneOf(visitAt(placeOf({ timeZone: null })))).toBe('Europe/London');
    expect(zoneOf(visitAt(null))).toBe('Europe/London');
  });
});
