import type { EntryDigest, VisitDigest } from './digest.ts';

/** An entry with the visit that it is of. */
export interface Found {
  visit: VisitDigest;
  entry: EntryDigest;
}

/** The entries that still wait for a name, the latest first. */
export function unnamed(visits: readonly VisitDigest[]): Found[] {
  return visits
    .flatMap((visit) =>
      visit.entries.filter(({ key }) => key === null).map((entry) => ({ visit, entry })),
    )
    .reverse();
}
