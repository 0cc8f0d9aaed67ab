import { parse } from 'csv-parse/sync';
import { csvRows, PLAIN_FORM, type TableForm, USUAL_FORM } from '../../src/outputs/csv-rows.ts';
import { ENTRY_COLUMNS, entryRows } from '../../src/outputs/entries-table.ts';
import { firstsInOrder } from '../../src/outputs/firsts.ts';
import { type GivenVisit, givenVisit } from '../../src/outputs/given-visit.ts';
import { listFacts } from '../../src/outputs/list-facts.ts';
import { SIMPLE_COLUMNS } from '../../src/outputs/occurrence-columns.ts';
import { occurrencesOf, visitCells } from '../../src/outputs/occurrences.ts';
import type { Taxon } from '../../src/taxa/taxon.ts';
import type { EntryTaxon, Observation } from '../../src/visit/entry.ts';
import type { Place } from '../../src/visit/place.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { MALLARD, POCHARD, taxonOf, visitAt, withLogged } from '../visit/made.ts';

export const OTTER = taxonOf({
  scientificName: 'Lutra lutra',
  vernacularName: 'Otter',
  sensitivity: 'high',
  list: 'mammals',
});

function listed(taxon: EntryTaxon, family: string, klass = 'Aves', order = 'Anseriformes'): Taxon {
  return {
    ...taxon,
    ...{ otherEnglishNames: [], olderScientificNames: [], countedSingly: true, frequency: 1 },
    ...{ kingdom: 'Animalia', class: klass, order, family },
  };
}

/** Facts of two invented lists of real species. */
export const FACTS = listFacts([
  {
    ...{ name: 'birds', region: 'britain-ireland', group: 'birds', problems: [] },
    taxa: [listed(POCHARD, 'Anatidae'), listed(MALLARD, 'Anatidae')],
  },
  {
    ...{ name: 'mammals', region: 'britain-ireland', group: 'mammals', problems: [] },
    taxa: [listed(OTTER, 'Mustelidae', 'Mammalia', 'Carnivora')],
  },
]);

export const ABOUT = { facts: FACTS, by: [] };

export function at(place: Place | null, ...seen: Partial<Observation>[]): Visit {
  return withLogged(visitAt(place), ...seen);
}

export function given(visit: Visit, exact = false): GivenVisit {
  return givenVisit(visit, FACTS, exact);
}

type Row = Record<string, string>;

export function readRows(csv: string, { separator } = USUAL_FORM): Row[] {
  return parse(csv, { columns: true, record_delimiter: '\r\n', delimiter: separator });
}

/** The table of entries of a visit in a notebook that has no other, with its rows as a spreadsheet reads them. */
export function table(visit: Visit, exact = false, form: TableForm = USUAL_FORM) {
  const firsts = firstsInOrder(exact);
  const entry = (number: number) => visit.entries.find((each) => each.number === number);
  const firstOf = (number: number) => {
    const found = entry(number);
    return found ? firsts.of(visit, found) : null;
  };
  const rows = entryRows(given(visit, exact), firstOf, () => '9 min after sunrise');
  const csv = csvRows([ENTRY_COLUMNS.map(({ name }) => name), ...rows], form);
  return { csv, rows: readRows(csv, form) };
}

/** The Darwin Core occurrences of a visit, as a reader takes them. */
export function occurrenceRows(visit: Visit, exact = false): Row[] {
  const shown = given(visit, exact);
  const names = SIMPLE_COLUMNS.map(({ name }) => name);
  const rows = occurrencesOf(shown, ABOUT).map(
    (each): Record<string, string | number> => ({
      ...each,
      ...visitCells(shown),
    }),
  );
  return readRows(
    csvRows([names, ...rows.map((row) => names.map((name) => row[name] ?? ''))], PLAIN_FORM),
  );
}
