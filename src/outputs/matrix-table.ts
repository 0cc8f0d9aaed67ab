import type { EntryTaxon } from '../visit/entry.ts';
import { qualifierOf, sumWords } from './count-words.ts';
import type { Cell, Column } from './csv-rows.ts';
import type { GivenVisit } from './given-visit.ts';
import { inListOrder, type ListFacts } from './list-facts.ts';
import { visitHeading } from './visit-columns.ts';

/** Columns that stand before those of the visits. */
export const MATRIX_COLUMNS = [
  { name: 'vernacularName', sentence: 'English name.' },
  {
    name: 'scientificName',
    sentence: 'Scientific name without author, with what it leaves open.',
  },
] as const satisfies readonly Column[];

/** What stands behind them. */
export const VISIT_COLUMN: Column = {
  name: 'date, time and place of a visit',
  sentence:
    'What the entries of the taxon come to in words, with a question mark if a name was uncertain; empty where the visit has none.',
};

/** The most visits beside each other: spreadsheets have 16,384 columns (common practice, no source). */
export const MOST_VISITS = 16_000;

/** A table of taxa by visits, as it grows. */
export interface Matrix {
  add(visit: GivenVisit): void;
  /** The whole table with its head, taxa in the order of the lists, visits in the order of adding. */
  rows(): Cell[][];
}

/** Makes the table of taxa by visits. It holds a cell for each taxon that a visit has, and no visit. */
export function matrixOf(facts: ListFacts): Matrix {
  const headings: string[] = [];
  const taxa = new Map<string, { taxon: EntryTaxon; cells: Map<number, Cell> }>();
  return {
    add(visit) {
      const at = headings.push(visitHeading(visit)) - 1;
      for (const total of visit.totals) {
        const row = taxa.get(total.key) ?? { taxon: total.taxon, cells: new Map() };
        taxa.set(total.key, row);
        const words = sumWords(total);
        row.cells.set(at, total.uncertain ? `${words} ?` : words);
      }
    },
    rows() {
      const head = [...MATRIX_COLUMNS.map(({ name }) => name), ...headings];
      const rows = [...taxa]
        .sort(([one], [two]) => inListOrder(facts, one, two))
        .map(([, { taxon, cells }]) => [
          taxon.vernacularName ?? '',
          `${taxon.scientificName} ${qualifierOf({ taxon, uncertain: false })}`.trim(),
          ...headings.map((_, at) => cells.get(at) ?? ''),
        ]);
      return [head, ...rows];
    },
  };
}
