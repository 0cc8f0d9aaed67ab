/**
 * A figure with what must be said beside it, or the reason why there is none and how to mend it. Every
 * note is a sentence.
 */
export type Figure<Values> = (Values & { notes: readonly string[] }) | { refused: string };

/** What each figure needs, in a sentence to show beside it. */
export const NEEDS = {
  richness: 'Richness needs species on record; counts are not needed.',
  shannon: "Shannon's H' needs a count of every species, and grows with the effort.",
  simpson: "Simpson's index needs a count of every species; common species decide it.",
  pielou: "Pielou's J needs counts of at least two species.",
  hill: 'Hill numbers of order 1 and 2 need a count of every species.',
  chao1:
    'Chao1 needs counts of individuals, exact where there were one or two: it goes by how many species were met once and twice.',
  coverage:
    "Good's coverage needs counts of individuals: it goes by how many species were met once.",
  rarefaction:
    'Rarefaction needs counts of individuals that were met independently; flocks make it too hopeful.',
  accumulation: 'Accumulation needs at least two visits that were complete for the group.',
  rate: 'A rate needs at least five complete visits with an end (an hour) or a distance (a kilometre), and counts.',
  firstAndLast:
    'First and last dates need visits before and after them, or they only say when somebody looked.',
} as const;

/** The first few names as one text: `A, B and 3 more`. */
export function named(names: readonly string[], most = 5): string {
  if (names.length <= most) return names.join(', ');
  return `${names.slice(0, most).join(', ')} and ${names.length - most} more`;
}

/** The notes with another where there is one. */
export function noting(notes: readonly string[], note: string | null): string[] {
  return note === null ? [...notes] : [...notes, note];
}

/** `1 visit`, `3 visits`. */
export function many(number: number, one: string): string {
  return `${number} ${one}${number === 1 ? '' : 's'}`;
}
