import fc from 'fast-check';
import type { Observation } from '../../src/visit/entry.ts';
import { stamp } from '../../src/visit/time.ts';
import { updateVisit, type VisitAction } from '../../src/visit/update.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { readWeather, type Weather } from '../../src/visit/weather.ts';
import { idOf, MALLARD, minutesIn, observed, POCHARD, placeOf, START, visitAt } from './made.ts';

/** Copies of one invented visit that went on apart, each by its own clock. */
export interface Copies {
  base: Visit;
  one: Visit;
  two: Visit;
}

type Undated<T> = T extends unknown ? Omit<T, 'time'> : never;
export type Deed = Undated<VisitAction>;
/** A deed, and by how many seconds the clock was moved on, or back, before it. */
interface Timed {
  after: number;
  deed: Deed | { do: 'reading' } | { do: 'pause' };
}

export function reading(time: string, verbatim = 'f3'): Weather {
  const read = readWeather(verbatim);
  if ('problem' in read) throw new Error(read.problem);
  return { time, ...read.reading };
}

const observations = fc.constantFrom<Observation>(
  observed(),
  observed({ taxon: POCHARD, count: { kind: 'at least', value: 120 } }),
  observed({ taxon: null, words: 'small brown', count: { kind: 'present' } }),
  observed({ taxon: MALLARD, description: 'asleep by the raft', uncertain: true }),
);
const numbers = fc.integer({ min: 1, max: 6 });
const effort = visitAt().effort;
const deeds = fc.oneof(
  { weight: 4, arbitrary: observations.map((observation) => ({ do: 'log', id: '', observation })) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(numbers, observations, fc.constantFrom('seen better', undefined))
      .map(([number, observation, reason]) => ({
        ...{ do: 'amend', number, observation },
        ...(reason === undefined ? {} : { reason }),
      })),
  },
  {
    weight: 2,
    arbitrary: fc
      .tuple(numbers, fc.integer({ min: 0, max: 3 }))
      .map(([number, value]) => ({ do: 'recount', number, count: { kind: 'exact', value } })),
  },
  numbers.map((number) => ({ do: 'strike', number })),
  numbers.map((number) => ({ do: 'unstrike', number })),
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      { do: 'set', part: 'place', value: placeOf({ name: 'Withy Drove' }) },
      { do: 'set', part: 'place', value: null },
      { do: 'set', part: 'description', value: 'still, bright' },
      { do: 'set', part: 'description', value: 'wind got up' },
      { do: 'set', part: 'end', value: minutesIn(200) },
      { do: 'set', part: 'effort', value: { ...effort, observers: 2 } },
      { do: 'set', part: 'weather', value: [] },
      { do: 'set', part: 'highest', value: ['Aythya ferina'] },
      { do: 'set', part: 'highest', value: ['Anas platyrhynchos'] },
      { do: 'reading' },
      { do: 'pause' },
    ),
  },
  { weight: 4, arbitrary: fc.constantFrom({ do: 'undo' }, { do: 'undo' }, { do: 'redo' }) },
) as fc.Arbitrary<Timed['deed']>;

function runs(maxLength: number): fc.Arbitrary<Timed[]> {
  const after = fc.oneof(fc.constantFrom(0, 0, 1), fc.integer({ min: -120, max: 600 }));
  return fc.array(fc.record({ after, deed: deeds }), { maxLength });
}

/** Goes on with a visit; ids of what is logged are of the `side`. */
function goneOn(visit: Visit, from: number, side: number, run: readonly Timed[]): Visit {
  let clock = from;
  return run.reduce<Visit>((so, { after, deed }, at) => {
    clock += after * 1000;
    const time = stamp(clock, 'UTC');
    return updateVisit(so, { ...concrete(so, deed, time, idOf(side * 1000 + at)), time } as never);
  }, visit);
}

function concrete(visit: Visit, deed: Timed['deed'], time: string, id: string): Deed {
  if (deed.do === 'reading')
    return { do: 'set', part: 'weather', value: [...visit.weather, reading(time)] };
  if (deed.do === 'pause') {
    const pauses = [...visit.effort.pauses, { start: time, end: time }];
    return { do: 'set', part: 'effort', value: { ...visit.effort, pauses } };
  }
  return deed.do === 'log' ? { ...deed, id } : (deed as Deed);
}

const BEGINNING = 1_794_642_000_000;
const LATER = BEGINNING + 3_600_000;

/** Any two copies, on a common past, with clocks of their own that may run backwards a little. */
export const anyCopies: fc.Arbitrary<Copies> = fc
  .tuple(runs(10), runs(10), runs(10), fc.constantFrom(0, 0, 7))
  .map(([past, here, there, apart]) => {
    const base = goneOn(visitAt(placeOf(), START), BEGINNING, 1, past);
    const one = goneOn(base, LATER, 2, here);
    const two = goneOn(base, LATER + apart * 1000, 3, there);
    return { base, one, two };
  });

/** Any two copies, and how each goes on after they were joined. */
export const anyCopiesThatGoOn = fc
  .tuple(anyCopies, runs(6), runs(6))
  .map(([copies, here, there]) => ({
    ...copies,
    goOn: (visit: Visit) => goneOn(visit, LATER + 1_800_000, 4, here),
    goOnOtherwise: (visit: Visit) => goneOn(visit, LATER + 1_800_000, 5, there),
  }));

/** Does deeds, each at so many minutes from the start. */
export function doing(visit: Visit, ...deeds: [number, Deed][]): Visit {
  return deeds.reduce<Visit>(
    (so, [minute, deed]) => updateVisit(so, { ...deed, time: minutesIn(minute) } as VisitAction),
    visit,
  );
}

export const log = (id: number, words = 'mallard'): Deed => ({
  do: 'log',
  id: idOf(id),
  observation: observed({ words, typed: words }),
});
export const amend = (number: number, over: Parameters<typeof observed>[0]): Deed => ({
  do: 'amend',
  number,
  observation: observed(over),
});
export const describeAs = (value: string | null): Deed => ({
  do: 'set',
  part: 'description',
  value,
});
export const undo: Deed = { do: 'undo' };
export const counted = (value: number) => ({ count: { kind: 'exact' as const, value } });

/** Two entries, on which both copies agree. */
export const base = doing(visitAt(), [1, log(11)], [2, log(12, 'pochard')]);
