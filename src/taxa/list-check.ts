import { taxonKey } from '../visit/entry.ts';
import type { SpeciesList } from './species-list.ts';

/**
 * What is wrong with lists that are used together: the rows that each could not take, and taxa that
 * stand in two lists of one region, of which the search would offer only the first.
 */
export function checkedTogether(lists: readonly SpeciesList[]): string[] {
  const listOf = new Map<string, string>();
  const problems = lists.flatMap((list) => list.problems);
  for (const { name, region, taxa } of lists)
    for (const taxon of taxa) {
      const key = `${region}: ${taxonKey(taxon)}`;
      const before = listOf.get(key);
      if (before === undefined) listOf.set(key, name);
      else problems.push(`${name}: ${taxonKey(taxon)} also stands in ${before}.`);
    }
  return problems;
}
