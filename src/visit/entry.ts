import * as z from 'zod';
import { Position } from '../ground/position.ts';
import { Count, CountPart, countText, partsText } from './count.ts';
import type { Declared } from './declared.ts';
import { Stamp } from './time.ts';
import { COMPASS } from './weather.ts';

/** IUCN Red List categories, version 3.1 (2001, second edition 2012), from gone to not evaluated. */
export const RED_LIST_CATEGORIES = ['EX', 'EW', 'CR', 'EN', 'VU', 'NT', 'LC', 'DD', 'NE'] as const;
export const RedListCategory = z.enum(RED_LIST_CATEGORIES);
export type RedListCategory = z.infer<typeof RedListCategory>;

/**
 * The taxon as it stood in the species list on the day, kept whole in the entry, so that a visit can
 * be read without the list and a changed list never changes what was logged.
 */
export const EntryTaxon = z.looseObject({
  scientificName: z.string().min(1),
  /**
   * What the name leaves open, apart from the name as Darwin Core asks: `sp.` or `indet.` for a genus
   * or family whose species was not named, `hirundo/paradisaea` for one of a pair, `ferina × fuligula`
   * for a hybrid, `agg.` for an aggregate; else null.
   */
  identificationQualifier: z.string().nullable(),
  vernacularName: z.string().nullable(),
  taxonRank: z.string().min(1),
  /** Darwin Core's words for the region of the list, such as `native` or `introduced`; null if unsaid. */
  establishmentMeans: z.string().nullable(),
  redListCategory: RedListCategory,
  /** Where the category comes from, with its year. */
  redListSource: z.string().nullable(),
  /** How strongly its places are to be hidden in what is given out; null for no special care. */
  sensitivity: z.enum(['low', 'medium', 'high', 'extreme']).nullable(),
  /** Name of the species list, such as `britain-ireland-birds`. */
  list: z.string().min(1),
});
export type EntryTaxon = Declared<z.infer<typeof EntryTaxon>>;

/** What an observer tells of one line: everything but its number, time and id. */
export const Observation = z.looseObject({
  /** The line as it was typed, word for word. */
  typed: z.string(),
  /** Null for an unnamed entry. */
  taxon: EntryTaxon.nullable(),
  /** The name words as typed: the only name that an unnamed entry has. */
  words: z.string(),
  /** A trailing question mark: the observer is not sure of the name. */
  uncertain: z.boolean(),
  count: Count,
  parts: z.array(CountPart),
  description: z.string().nullable(),
  /** Where it was, if not at the place of the visit. */
  position: Position.nullable(),
  /** Where passing birds were heading; null for what was not counted in passing. */
  heading: z.enum(COMPASS).nullable(),
});
export type Observation = Declared<z.infer<typeof Observation>>;

/** One numbered line of a visit. */
export const Entry = Observation.extend({
  id: z.uuid(),
  /** From 1 in the order of logging; never changed and never given to another entry. */
  number: z.number().int().min(1),
  time: Stamp,
  /** When it was struck out; a struck entry keeps its number and counts for nothing. */
  struck: Stamp.nullable(),
});
export type Entry = Declared<z.infer<typeof Entry>>;

/** What two entries of the same taxon share: the name and what it leaves open. */
export function taxonKey({
  scientificName,
  identificationQualifier,
}: Pick<EntryTaxon, 'scientificName' | 'identificationQualifier'>): string {
  return identificationQualifier === null
    ? scientificName
    : `${scientificName} ${identificationQualifier}`;
}

/** Ranks at which a species is named; a genus or a family counts as no species. */
const NAMED_RANKS: ReadonlySet<string> = new Set([
  'species',
  'speciesAggregate',
  'subspecies',
  'variety',
  'form',
]);

/** Does the taxon name one species, or a part of one? A pair, a hybrid, a genus and a family do not. */
export function isSpecies(
  taxon: Pick<EntryTaxon, 'taxonRank' | 'identificationQualifier'>,
): boolean {
  return NAMED_RANKS.has(taxon.taxonRank) && !isOfSeveral(taxon);
}

/** Is it one of a pair, or a hybrid? Its qualifier has a slash or the sign of crossing. */
export function isOfSeveral({
  identificationQualifier,
}: Pick<EntryTaxon, 'identificationQualifier'>): boolean {
  return /[/×]/.test(identificationQualifier ?? '');
}

/** Is it a record that nothing was there? None counted is worth a line, and no sighting. */
export function isAbsence({ count }: Pick<Observation, 'count'>): boolean {
  return 'value' in count && count.value === 0;
}

/** The name to show: English, else scientific, else the observer's own words. */
export function nameOf(entry: Observation): string {
  if (!entry.taxon) return entry.words === '' ? '(no words)' : entry.words;
  return taxonName(entry.taxon);
}

/** A taxon's English name, else its scientific one. */
export function taxonName({
  vernacularName,
  scientificName,
}: Pick<EntryTaxon, 'vernacularName' | 'scientificName'>): string {
  return vernacularName ?? scientificName;
}

/** The entry as a line that can be typed again: `12 Tufted Duck 3m 2f: asleep by the raft`. */
export function entryText(entry: Observation): string {
  const head = [
    countText(entry.count),
    entry.taxon || entry.words !== '' ? nameOf(entry) : '',
    partsText(entry.parts),
  ]
    .filter((part) => part !== '')
    .join(' ');
  const sure = entry.uncertain ? `${head}?` : head;
  return entry.description === null ? sure : `${sure}: ${entry.description}`;
}
