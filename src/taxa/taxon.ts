import * as z from 'zod';
import { type EntryTaxon, RED_LIST_CATEGORIES, type RedListCategory } from '../visit/entry.ts';
import { CATEGORY_WORDS } from './red-list.ts';

const names = z.string().default('').transform(namesOf);
const orNull = z
  .string()
  .default('')
  .transform((text) => (text === '' ? null : text));
const text = z.string().default('');

const TRUTH: ReadonlyMap<string, boolean> = new Map([
  ['', true],
  ['true', true],
  ['yes', true],
  ['false', false],
  ['no', false],
]);
export const SENSITIVITIES = ['low', 'medium', 'high', 'extreme'] as const;

/** The names of a cell, which ` | ` separates. */
export function namesOf(cell: string): string[] {
  return cell
    .split('|')
    .map((name) => name.trim())
    .filter((name) => name !== '');
}

/** A column whose cells are read by `read`; what it can't take is told with what it takes. */
function cells<Value>(read: (cell: string) => Value | undefined, takes: string) {
  return text.transform((cell, context) => {
    const value = read(cell);
    if (value !== undefined) return value;
    context.addIssue({ code: 'custom', message: `"${cell}" is not known: write ${takes}.` });
    return z.NEVER;
  });
}

/**
 * One row of a species list. Columns are named by Darwin Core where it has a term; several names
 * in one cell are separated by ` | `, as Darwin Core recommends for lists. A list needs the scientific
 * names alone; what else it lacks is taken as usual: a species, counted one by one, not evaluated. Further columns `vernacularName:` with a language tag (RFC 5646), such as
 * `vernacularName:cy`, hold names in other languages.
 */
export const TaxonRow = z.object({
  scientificName: z.string().min(1, 'there is no scientific name: every row needs one.'),
  /** As in `EntryTaxon`. */
  identificationQualifier: orNull,
  vernacularName: orNull,
  otherEnglishNames: names,
  olderScientificNames: names,
  /** Empty: told from the form of the name. */
  taxonRank: text,
  kingdom: text,
  class: text,
  order: text,
  family: text,
  establishmentMeans: orNull,
  redListCategory: cells(categoryIn, `one of ${RED_LIST_CATEGORIES.join(' ')}, or nothing`),
  redListSource: orNull,
  /** Whether people count these one by one (birds) or only note that they are there (plants). */
  countedSingly: cells((cell) => TRUTH.get(cell.toLowerCase()), 'true or false'),
  /** How often it is met in the region: 1 common, 2 fairly common, 3 scarce, 4 rare; null if unsaid. */
  frequency: cells(
    (cell) => (cell === '' ? null : /^[1-4]$/.test(cell) ? Number(cell) : undefined),
    '1 (common), 2, 3 or 4 (rare)',
  ),
  /** How strongly its places are to be hidden in what is given out. */
  sensitivity: cells(
    (cell) => (cell === '' ? null : SENSITIVITIES.find((level) => level === cell.toLowerCase())),
    `one of ${SENSITIVITIES.join(', ')}, or nothing`,
  ),
});

export type TaxonRow = z.infer<typeof TaxonRow>;

/** A taxon of a species list. */
export type Taxon = TaxonRow & {
  list: string;
  /** Names by language tag, apart from the English ones: first the one to show. */
  namesIn?: Record<string, string[]>;
};

/** A category by its letters or its words, in any case; an empty cell is not evaluated. */
function categoryIn(cell: string): RedListCategory | undefined {
  if (cell === '') return 'NE';
  const plain = cell.toLowerCase().replace(/[\s-]+/g, ' ');
  return RED_LIST_CATEGORIES.find(
    (letters) => letters.toLowerCase() === plain || CATEGORY_WORDS[letters] === plain,
  );
}

/** What an entry keeps of a taxon. */
export function entryTaxon(taxon: Taxon): EntryTaxon {
  const {
    scientificName,
    identificationQualifier,
    vernacularName,
    taxonRank,
    establishmentMeans,
    redListCategory,
    redListSource,
    sensitivity,
    list,
  } = taxon;
  return {
    scientificName,
    identificationQualifier,
    vernacularName,
    taxonRank,
    establishmentMeans,
    redListCategory,
    redListSource,
    sensitivity,
    list,
  };
}
