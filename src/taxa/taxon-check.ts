import { RED_LIST_CATEGORIES } from '../visit/entry.ts';
import { SENSITIVITIES, type Taxon } from './taxon.ts';

type Check = (value: unknown) => boolean;

const isText: Check = (value) => typeof value === 'string';
const isName: Check = (value) => typeof value === 'string' && value !== '';
const isNames: Check = (value) => Array.isArray(value) && value.every(isName);
const orNull =
  (check: Check): Check =>
  (value) =>
    value === null || check(value);
const oneOf =
  (...values: readonly unknown[]): Check =>
  (value) =>
    values.includes(value);

const CHECKS: Record<keyof Taxon, Check> = {
  scientificName: isName,
  identificationQualifier: orNull(isName),
  vernacularName: orNull(isName),
  otherEnglishNames: isNames,
  olderScientificNames: isNames,
  taxonRank: isName,
  kingdom: isText,
  class: isText,
  order: isText,
  family: isText,
  establishmentMeans: orNull(isName),
  redListCategory: oneOf(...RED_LIST_CATEGORIES),
  redListSource: orNull(isText),
  countedSingly: (value) => typeof value === 'boolean',
  frequency: oneOf(null, 1, 2, 3, 4),
  sensitivity: oneOf(null, ...SENSITIVITIES),
  list: isName,
  namesIn: (value) =>
    value === undefined || (isRecord(value) && Object.values(value).every(isNames)),
};
const CHECKED = Object.entries(CHECKS);

/**
 * Which field of a value is not as `Taxon` has it; null where all are. A start asks this of eleven
 * thousand rows, of which a zod schema would take several times as long.
 */
export function wrongField(value: unknown): string | null {
  if (!isRecord(value)) return 'all';
  return CHECKED.find(([field, check]) => !check(value[field]))?.[0] ?? null;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
