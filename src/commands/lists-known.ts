import { groupOf, type ListFacts, listFacts } from '../outputs/list-facts.ts';
import { REGIONS, type Region } from '../taxa/regions.ts';
import { ownLists, shippedLists } from './lists-in-use.ts';
import { EXIT, Refusal } from './refusal.ts';

/**
 * What every list there is says of its taxa, own ones first: an entry may come from one that is no
 * longer in use. Own lists that can't be read are told.
 */
export async function factsOfLists(
  notebook: string,
  complain: (line: string) => void,
): Promise<ListFacts> {
  const regions = Object.keys(REGIONS) as Region[];
  const [{ lists, problems }, ...shipped] = await Promise.all([
    ownLists(notebook),
    ...regions.map(shippedLists),
  ]);
  for (const words of problems) complain(words);
  return listFacts([...lists, ...shipped.flat()]);
}

/** The group of `--group`; null where none was asked for. Refuses one that no list has. */
export function groupAsked(group: string | undefined, facts: ListFacts): string | null {
  if (group === undefined) return null;
  const known = [...facts.groups.keys()].map((list) => groupOf(facts, { list }) ?? '');
  if (known.includes(group.toLowerCase())) return group.toLowerCase();
  throw new Refusal(
    EXIT.usage,
    `No list is of the group "${group}": choose ${[...new Set(known)].sort().join(', ')}.`,
  );
}
