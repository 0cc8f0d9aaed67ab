import type { Pair } from './queries.ts';

/** What a search gave for a query of one who meant a certain species: the names, best first. */
export interface Answer {
  pair: Pair;
  meant: string;
  found: readonly string[];
}

/** One answer for each species that a pair stands for: any of them may be the one that is meant. */
export function answersTo(
  pairs: readonly Pair[],
  find: (typed: string) => readonly string[],
): Answer[] {
  return pairs.flatMap((pair) => {
    const found = find(pair.typed);
    return pair.means.map((meant) => ({ pair, meant, found }));
  });
}

function isWithin({ meant, found }: Answer, first: number): boolean {
  return found.slice(0, first).includes(meant);
}

/** Share of the answers, 0 to 1, in which what is meant is among the first so many. */
export function shareWithin(answers: readonly Answer[], first: number): number {
  return answers.filter((answer) => isWithin(answer, first)).length / answers.length;
}

/** A line for each answer that missed. */
export function missesOf(answers: readonly Answer[], first: number): string[] {
  return answers
    .filter((answer) => !isWithin(answer, first))
    .map(({ pair: { typed, kind, made, several }, meant, found }) => {
      const instead = found.slice(0, several ? 8 : 3).join(', ') || 'nothing';
      return `"${typed}" means ${meant} (${made}, ${kind}); found ${instead}`;
    });
}

export function isTypo({ kind }: Pair): boolean {
  return kind === 'one edit' || kind === 'two edits';
}
