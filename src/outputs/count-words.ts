import { type Count, type CountPart, PART_LETTERS } from '../visit/count.ts';
import type { Sum } from '../visit/sums.ts';

/** A count in words: `10-15` would be read as a date by a spreadsheet. */
export function countWords(count: Count): string | number {
  switch (count.kind) {
    case 'exact':
      return count.value;
    case 'at least':
    case 'about':
      return `${count.kind} ${count.value}`;
    case 'range':
      return `${count.low} to ${count.high}`;
    case 'present':
      return 'present';
  }
}

/** A sum in words; where its lower end is itself an estimate, that is said. */
export function sumWords({ count, rounded }: Sum): string | number {
  return rounded && count.kind === 'at least' ? `at least about ${count.value}` : countWords(count);
}

/** Parts by sex or by age as Darwin Core separates a list: `3 male | 2 female`. */
export function partsWords(parts: readonly CountPart[], term: 'sex' | 'lifeStage'): string {
  return parts
    .filter((part) => PART_LETTERS[part.letter].term === term)
    .map((part) => `${part.value} ${PART_LETTERS[part.letter].word}`)
    .join(' | ');
}

/** What a name leaves open, and `?` where the observer is not sure of it. */
export function qualifierOf(entry: {
  taxon: { identificationQualifier: string | null } | null;
  uncertain: boolean;
}): string {
  const open = entry.taxon?.identificationQualifier ?? '';
  return entry.uncertain ? `${open} ?`.trim() : open;
}
