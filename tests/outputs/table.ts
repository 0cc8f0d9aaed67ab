import { parse } from 'csv-parse/sync';
import { visitTable } from '../../src/outputs/visit-table.ts';
import { knownFrom } from '../../src/taxa/known.ts';
import type { Observation } from '../../src/visit/entry.ts';
import type { Place } from '../../src/visit/place.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { visitAt, withLogged } from '../visit/made.ts';

/** The table of a visit in a notebook that has no other, with its rows as a spreadsheet reads them. */
export function table(visit: Visit, exact = false) {
  const { csv, hidden } = visitTable(visit, knownFrom([]), exact);
  const rows: Record<string, string>[] = parse(csv, { columns: true, record_delimiter: '\r\n' });
  return { csv, hidden, rows };
}

export function at(place: Place, ...seen: Partial<Observation>[]): Visit {
  return withLogged(visitAt(place), ...seen);
}
