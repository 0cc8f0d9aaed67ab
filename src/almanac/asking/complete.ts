import type { VisitDigest } from './digest.ts';

/** The group of a species list by its name, such as `birds` of `britain-ireland-birds`. */
export type GroupOf = (list: string) => string;

/** The group of each list as the lists in use say it; a list that is no longer in use is its own group. */
export function groupsFrom(groups: Readonly<Record<string, string>>): GroupOf {
  return (list) => groups[list] ?? list;
}

/**
 * Does the visit say by its silence that a taxon of this group was not seen? Only where the observer
 * said that everything noticed was logged, for this group or for all.
 */
export function completeFor({ complete, groups }: VisitDigest, group: string): boolean {
  return complete && (groups === null || groups.some((each) => plain(each) === plain(group)));
}

function plain(group: string): string {
  return group.trim().toLocaleLowerCase('en');
}
