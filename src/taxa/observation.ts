import type { Observation } from '../visit/entry.ts';
import { countOf, type EntryLine } from '../visit/entry-line.ts';
import { entryTaxon, type Taxon } from './taxon.ts';

/**
 * What a line says once its taxon is chosen; without one it is an unnamed entry that keeps the words.
 * A line without a count is 1 for a taxon that people count one by one, and else present, not counted:
 * of what has no name yet nobody can say how it is counted.
 */
export function observationOf(typed: string, line: EntryLine, taxon: Taxon | null): Observation {
  return {
    typed,
    taxon: taxon === null ? null : entryTaxon(taxon),
    words: line.words,
    uncertain: line.uncertain,
    count: countOf(line, taxon?.countedSingly ?? false),
    parts: line.parts,
    description: line.description,
    position: null,
    heading: null,
  };
}
