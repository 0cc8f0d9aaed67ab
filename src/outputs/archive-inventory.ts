import { type EntryTaxon, isAbsence, taxonKey } from '../visit/entry.ts';
import type { Cell } from './csv-rows.ts';
import type { GivenVisit } from './given-visit.ts';
import { visitUrn } from './visit-columns.ts';

/** Terms of the Humboldt Extension for Ecological Inventories (TDWG, 2025-07-10) in the archive. */
export const INVENTORY_TERMS = [
  'inventoryTypes',
  'targetTaxonomicScope',
  'isTaxonomicScopeFullyReported',
  'isAbsenceReported',
  'absentTaxa',
  'isAbundanceReported',
  'isLeastSpecificTargetCategoryQuantityInclusive',
  'eventDurationValue',
  'eventDurationUnit',
  'samplingEffortValue',
  'samplingEffortUnit',
  'reportedWeather',
] as const;
type Inventory = Record<'eventID' | (typeof INVENTORY_TERMS)[number], Cell>;

/** What a visit tells of its effort and completeness. `absent`: species that were not there. */
export function inventoryOf(visit: GivenVisit, absent: readonly EntryTaxon[]): Inventory {
  const { minutes, observers, complete, groups } = visit.effort;
  const none = visit.entries.filter((entry) => entry.taxon !== null && isAbsence(entry));
  const absentNames = [...none.map(({ taxon }) => taxon), ...absent]
    .filter((taxon) => taxon !== null)
    .map(taxonKey);
  const present = visit.entries.filter((entry) => entry.taxon !== null && !isAbsence(entry));
  const watched = minutes !== null && minutes > 0;
  const hours = watched && observers !== null ? (observers * minutes) / 60 : null;
  return {
    eventID: visitUrn(visit),
    inventoryTypes: inventoryType(visit),
    targetTaxonomicScope: groups?.join(' | ') ?? '',
    isTaxonomicScopeFullyReported: complete === null ? '' : String(complete),
    isAbsenceReported: String(absentNames.length > 0),
    absentTaxa: [...new Set(absentNames)].join(' | '),
    isAbundanceReported:
      present.length === 0 ? '' : String(present.every(({ count }) => count.kind !== 'present')),
    // Entries are of different individuals, but where the highest count of a taxon is the visit's.
    isLeastSpecificTargetCategoryQuantityInclusive: visit.totals.some(
      ({ rule, entries }) => rule === 'highest' && entries.length > 1,
    )
      ? ''
      : 'false',
    eventDurationValue: watched ? minutes : '',
    eventDurationUnit: watched ? 'minutes' : '',
    samplingEffortValue: hours === null ? '' : Number(hours.toFixed(2)),
    samplingEffortUnit: hours === null ? '' : 'observer-hours',
    reportedWeather: weatherJson(visit),
  };
}

/** A search for all of a group is restricted, one for all that lives is open; any other went by chance. */
function inventoryType({ effort }: GivenVisit): string {
  if (effort.complete === null) return '';
  if (!effort.complete) return 'opportunisticSearch';
  return effort.groups === null ? 'openSearch' : 'restrictedSearch';
}

function weatherJson({ weather }: GivenVisit): string {
  if (weather.length === 0) return '';
  const said = weather.map((reading) =>
    Object.fromEntries(Object.entries(reading).filter(([, value]) => value !== null)),
  );
  return JSON.stringify(said);
}
