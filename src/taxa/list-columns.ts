import { TaxonRow } from './taxon.ts';

const COLUMNS = Object.keys(TaxonRow.shape);
const LANGUAGE_COLUMN = 'vernacularname:';

/** What the cells of a header line mean: a column of `TaxonRow`, names in a language, or nothing of ours. */
export type Column = { column: string } | { language: string } | null;

/** Which columns of a table hold what, by its header; or what is wrong with them. */
export type Header = { columns: Column[]; missing: string[] } | { problem: string };

/**
 * Reads a header line: Darwin Core's names in any case, also with its prefix (`dwc:scientificName`) or
 * as the term's address. `renamed` says what a table's own headings mean, such as `Latin` to
 * `scientificName`.
 */
export function readHeader(cells: readonly string[], renamed: Record<string, string> = {}): Header {
  const meanings = new Map(Object.entries(renamed));
  const unknown = Object.keys(renamed).filter((heading) => !cells.includes(heading));
  if (unknown.length > 0)
    return { problem: `there is no column ${unknown.join(', ')}; it has ${cells.join(', ')}.` };
  const strange = Object.values(renamed).filter((name) => columnOf(name) === null);
  if (strange.length > 0)
    return {
      problem: `${strange.join(', ')} is no column of a species list; they are ${COLUMNS.join(', ')}, and vernacularName:LANGUAGE.`,
    };
  const columns = cells.map((cell) => columnOf(meanings.get(cell) ?? cell));
  const held = columns.map((column) => JSON.stringify(column));
  const twice = columns.findIndex((column, at) => column && held.indexOf(held[at] ?? '') < at);
  if (twice !== -1) return { problem: `its first line has the column ${cells[twice]} twice.` };
  const missing = COLUMNS.filter((name) => !held.includes(JSON.stringify({ column: name })));
  if (missing.includes('scientificName'))
    return {
      problem: `its first line has no column scientificName; it has ${cells.join(', ')}. Name the columns with --columns "Latin=scientificName,English=vernacularName".`,
    };
  return { columns, missing };
}

function columnOf(heading: string): Column {
  const plain = heading
    .trim()
    .replace(/^.*[/#]/, '')
    .replace(/^dwc:/i, '')
    .toLowerCase();
  if (plain.startsWith(LANGUAGE_COLUMN)) {
    const language = plain.slice(LANGUAGE_COLUMN.length).trim();
    if (!/^[a-z]{2,3}(-[a-z0-9]+)*$/.test(language)) return null;
    return language === 'en' ? { column: 'vernacularName' } : { language };
  }
  const column = COLUMNS.find((name) => name.toLowerCase() === plain);
  return column === undefined ? null : { column };
}

/** Reads `Latin=scientificName,English=vernacularName`; null where it is not of that form. */
export function readRenamed(words: string): Record<string, string> | null {
  const pairs = words.split(',').map((pair) => pair.split('=').map((part) => part.trim()));
  if (pairs.some((pair) => pair.length !== 2 || pair.includes(''))) return null;
  return Object.fromEntries(pairs);
}
