import { observationOf } from '../../src/taxa/observation.ts';
import type { Taxon } from '../../src/taxa/taxon.ts';
import { readEntryLine } from '../../src/visit/entry-line.ts';
import { stamp } from '../../src/visit/time.ts';
import { updateVisit, type VisitAction } from '../../src/visit/update.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { ZONE } from './places.ts';
import type { Random } from './random.ts';

type Untimed<Action> = Action extends unknown ? Omit<Action, 'time'> : never;

/** Somebody under way: a visit that grows as time goes on. */
export interface Walker {
  visit(): Visit;
  now(): string;
  /** Lets minutes pass. */
  wait(minutes: number): void;
  does(action: Untimed<VisitAction>): void;
  /** Logs a line and gives its number. */
  logs(typed: string, taxon: Taxon | null): number;
  amends(number: number, typed: string, taxon: Taxon | null, reason: string): void;
}

/** Starts from an empty visit at `start`, in epoch milliseconds. */
export function walkerFrom(empty: Visit, start: number, random: Random): Walker {
  let visit = empty;
  let seconds = 0;
  const now = () => stamp(start + seconds * 1000, ZONE);
  const does = (action: Untimed<VisitAction>) => {
    visit = updateVisit(visit, { ...action, time: now() } as VisitAction);
  };
  const said = (typed: string, taxon: Taxon | null) =>
    observationOf(typed, readEntryLine(typed), taxon);
  return {
    visit: () => visit,
    now,
    wait(minutes) {
      seconds += Math.round(minutes * 60);
    },
    does,
    logs(typed, taxon) {
      does({ do: 'log', id: random.uuid(), observation: said(typed, taxon) });
      return visit.entries.at(-1)?.number ?? 0;
    },
    amends: (number, typed, taxon, reason) =>
      does({ do: 'amend', number, observation: said(typed, taxon), reason }),
  };
}
