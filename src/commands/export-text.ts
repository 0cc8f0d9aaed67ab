import { absenceOccurrences, absentFrom, type SpeciesMet } from '../outputs/absences.ts';
import { type Cell, type Column, cellsOf, csvRows, PLAIN_FORM } from '../outputs/csv-rows.ts';
import { csvTable } from '../outputs/csv-table.ts';
import { ENTRY_COLUMNS, entryRows } from '../outputs/entries-table.ts';
import { geoJson } from '../outputs/geojson.ts';
import type { GivenVisit } from '../outputs/given-visit.ts';
import { gpxWaypoints } from '../outputs/gpx-waypoints.ts';
import { MATRIX_COLUMNS, MOST_VISITS, matrixOf, VISIT_COLUMN } from '../outputs/matrix-table.ts';
import { SIMPLE_COLUMNS } from '../outputs/occurrence-columns.ts';
import { type About, occurrencesOf, visitCells } from '../outputs/occurrences.ts';
import { SPECIES_COLUMNS, speciesRows } from '../outputs/species-table.ts';
import type { Chosen } from './export-chosen.ts';
import type { Form } from './export-options.ts';
import { sunWords } from './export-sun.ts';
import { EXIT, Refusal } from './refusal.ts';

type TextForm = Exclude<Form, { as: 'archive' }>;

/** What is exported beside the visits. */
export interface Beside extends About {
  /** The species of all chosen visits, where absences are asked for. */
  met: SpeciesMet | null;
}

/** The chosen visits as text in pieces. */
export function textOf(
  form: TextForm,
  chosen: AsyncIterable<Chosen>,
  beside: Beside,
): AsyncGenerator<string> {
  switch (form.as) {
    case 'table':
      return tableText(form, chosen, beside);
    case 'darwin-core':
      return csvTable(
        SIMPLE_COLUMNS.map(({ name }) => name),
        each(chosen, ({ visit }) => simpleRows(visit, beside)),
        PLAIN_FORM,
      );
    case 'geojson':
      return geoJson(each(chosen, ({ visit }) => visit));
    case 'gpx':
      return gpxWaypoints(each(chosen, ({ visit }) => visit));
  }
}

/** The columns of what is asked for, each with its sentence. */
export function columnsOf(form: TextForm): readonly Column[] {
  if (form.as !== 'table') return SIMPLE_COLUMNS;
  if (form.table === 'matrix') return [...MATRIX_COLUMNS, VISIT_COLUMN];
  return form.table === 'species' ? SPECIES_COLUMNS : ENTRY_COLUMNS;
}

function tableText(
  { table, form }: Extract<Form, { as: 'table' }>,
  chosen: AsyncIterable<Chosen>,
  { facts }: About,
): AsyncGenerator<string> {
  if (table === 'matrix') return matrixText(chosen, facts, form);
  const head = (columns: readonly Column[]) => columns.map(({ name }) => name);
  if (table === 'species')
    return csvTable(
      head(SPECIES_COLUMNS),
      each(chosen, ({ visit }) => speciesRows(visit, facts)),
      form,
    );
  const sun = sunWords();
  return csvTable(
    head(ENTRY_COLUMNS),
    each(chosen, ({ visit, firstOf }) => entryRows(visit, firstOf, sun)),
    form,
  );
}

async function* matrixText(
  chosen: AsyncIterable<Chosen>,
  facts: About['facts'],
  form: Parameters<typeof csvRows>[1],
): AsyncGenerator<string> {
  const matrix = matrixOf(facts);
  let visits = 0;
  for await (const { visit } of chosen) {
    visits += 1;
    if (visits > MOST_VISITS)
      throw new Refusal(
        EXIT.notTaken,
        `These are more than ${MOST_VISITS} visits, more columns than a spreadsheet takes: choose fewer with --from and --to.`,
      );
    matrix.add(visit);
  }
  yield csvRows(matrix.rows(), form);
}

function simpleRows(visit: GivenVisit, { met, ...about }: Beside): Cell[][] {
  const absent = met === null ? [] : absentFrom(visit, met, about.facts);
  const ofVisit = visitCells(visit);
  return [...occurrencesOf(visit, about), ...absenceOccurrences(visit, absent, about)].map(
    (occurrence) => cellsOf(SIMPLE_COLUMNS, { ...occurrence, ...ofVisit }),
  );
}

async function* each<One, Other>(
  all: AsyncIterable<One>,
  make: (one: One) => Other,
): AsyncGenerator<Other> {
  for await (const one of all) yield make(one);
}
