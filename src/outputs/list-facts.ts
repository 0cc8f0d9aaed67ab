import type { SpeciesList } from '../taxa/species-list.ts';
import type { Taxon } from '../taxa/taxon.ts';
import { taxonKey } from '../visit/entry.ts';

/** Names of the ranks above a taxon; empty where its list does not say. */
type HigherRanks = Pick<Taxon, 'kingdom' | 'class' | 'order' | 'family'>;

/** What species lists know that an entry does not keep. Lists that are gone know nothing. */
export interface ListFacts {
  /** The group of a list, such as `birds`, by the list's name. */
  groups: ReadonlyMap<string, string>;
  /** By `taxonKey`. */
  higher: ReadonlyMap<string, HigherRanks>;
  /** Place of a taxon in the lists, by `taxonKey`: the order in which reports print taxa. */
  order: ReadonlyMap<string, number>;
}

/** Gathers the facts of lists; of a taxon in several of them the first counts. */
export function listFacts(lists: readonly SpeciesList[]): ListFacts {
  const groups = new Map(lists.map(({ name, group }) => [name, group]));
  const higher = new Map<string, HigherRanks>();
  const order = new Map<string, number>();
  for (const taxon of lists.flatMap(({ taxa }) => taxa)) {
    const key = taxonKey(taxon);
    if (higher.has(key)) continue;
    order.set(key, order.size);
    const { kingdom, class: ofClass, order: ofOrder, family } = taxon;
    higher.set(key, { kingdom, class: ofClass, order: ofOrder, family });
  }
  return { groups, higher, order };
}

/** The group of a taxon, in small letters; null where no list tells it. */
export function groupOf(facts: ListFacts, { list }: { list: string }): string | null {
  return facts.groups.get(list)?.toLowerCase() ?? null;
}

/** Puts taxa in the order of the lists, those in none of them behind by their names. */
export function inListOrder(facts: ListFacts, one: string, two: string): number {
  const at = (key: string) => facts.order.get(key) ?? Number.MAX_SAFE_INTEGER;
  return at(one) - at(two) || (one < two ? -1 : one > two ? 1 : 0);
}
