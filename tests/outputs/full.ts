import type { Visit } from '../../src/visit/visit.ts';
import type { Weather } from '../../src/visit/weather.ts';
import { minutesIn, POCHARD, placeOf, taxonOf } from '../visit/made.ts';
import { at, OTTER } from './given.ts';

function reading(minutes: number, over: Partial<Weather> = {}): Weather {
  return {
    ...{ verbatim: '7c f3 sw', temperature: 7, windForce: 3, windSpeed: 4.2, windFrom: 'SW' },
    ...{ cloud: 6, precipitation: 'drizzle', visibility: 'good', remarks: null },
    time: minutesIn(minutes),
    ...over,
  };
}

/** An invented visit that has something of everything that is given out; its place is not hidden. */
export function fullVisit(): Visit {
  const logged = at(
    placeOf({ habitat: 'reedbed', uncertainty: 50 }),
    {
      count: { kind: 'exact', value: 5 },
      parts: [
        { letter: 'm', value: 3 },
        { letter: 'f', value: 2 },
      ],
      description: 'asleep, "all" of them\nby the raft',
    },
    { count: { kind: 'at least', value: 120 }, heading: 'SW' },
    { count: { kind: 'range', low: 10, high: 15 }, uncertain: true, words: 'mallard' },
    { count: { kind: 'about', value: 40 }, position: { latitude: 51.13, longitude: -2.86 } },
    { count: { kind: 'present' }, taxon: taxonOf({ scientificName: 'Anas crecca' }) },
    { count: { kind: 'exact', value: 0 }, taxon: POCHARD },
    { taxon: null, words: 'small brown bird' },
  );
  return {
    ...logged,
    end: minutesIn(95),
    description: 'a cold morning',
    weather: [reading(0), reading(30, { temperature: -1.5, remarks: 'light' })],
    effort: {
      ...logged.effort,
      ...{ distance: 3210, observers: 2, method: 'line transect', complete: true },
      groups: ['birds'],
      pauses: [{ start: minutesIn(10), end: minutesIn(15) }],
    },
  };
}

/** The same with an otter, for whose sake its place is hidden. */
export function hiddenVisit(): Visit {
  const visit = fullVisit();
  const otter = at(placeOf(), { taxon: OTTER, description: 'holt by the sluice' }).entries[0];
  if (!otter) throw new Error('no otter');
  const entry = { ...otter, number: 8, id: '00000000-0000-4000-8000-000000000108' };
  return {
    ...visit,
    id: '00000000-0000-4000-8000-000000000002',
    start: '2026-11-15T07:40:00+00:00',
    end: null,
    entries: [
      ...visit.entries.map((each, number) => ({
        ...each,
        id: `00000000-0000-4000-8000-${String(200 + number).padStart(12, '0')}`,
      })),
      entry,
    ],
  };
}
