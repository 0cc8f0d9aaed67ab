import { isDeepStrictEqual } from 'node:util';
import type { Change, Visit } from '../visit/visit.ts';

/** Does one state of a visit only go on from another, so that it holds all that the other holds? */
export function goesOnFrom(longer: Visit, shorter: Visit): boolean {
  const { length } = shorter.changes;
  if (longer.changes.length < length) return false;
  return isDeepStrictEqual(rewound(longer, length), shorter);
}

/** A visit as it was after so many of its changes: each later one put back by the value that it keeps. */
function rewound(visit: Visit, changes: number): Visit {
  const back = visit.changes.slice(changes).reduceRight(withoutChange, visit);
  return { ...back, changes: visit.changes.slice(0, changes) };
}

function withoutChange(visit: Visit, change: Change): Visit {
  if (change.part !== 'entry') return { ...visit, [change.part]: change.before };
  const { number, before } = change;
  const entries = visit.entries.flatMap((entry) =>
    entry.number === number ? (before ?? []) : entry,
  );
  return { ...visit, entries };
}
