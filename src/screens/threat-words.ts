import { CATEGORY_WORDS } from '../taxa/red-list.ts';
import { sensitivityOf } from '../taxa/sensitivity.ts';
import type { EntryTaxon } from '../visit/entry.ts';

/** The caution for a threatened taxon under the name by which it is shown. */
export function threatWords(
  name: string,
  taxon: Pick<EntryTaxon, 'sensitivity' | 'redListCategory' | 'establishmentMeans'>,
): string {
  const category = taxon.redListCategory;
  const hidden = sensitivityOf(taxon) === null ? '' : ' Exports withhold the exact place.';
  return `${name}, ${category}, ${CATEGORY_WORDS[category]}: keep your distance.${hidden}`;
}
