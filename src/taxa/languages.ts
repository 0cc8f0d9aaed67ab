import type { Taxon } from './taxon.ts';

/** Which names are shown and which the search knows, by language tag (RFC 5646); `en` is English. */
export interface Languages {
  shown: string;
  searched: readonly string[];
}

export const ENGLISH: Languages = { shown: 'en', searched: ['en'] };

/**
 * The taxon with the name to show as its first and the other names that the search knows behind it.
 * A taxon without a name in the language that is shown keeps its English one.
 */
export function inLanguages(taxon: Taxon, { shown, searched }: Languages): Taxon {
  if (shown === 'en' && searched.join() === 'en') return taxon;
  const english = [
    ...(taxon.vernacularName === null ? [] : [taxon.vernacularName]),
    ...taxon.otherEnglishNames,
  ];
  const namesIn = (language: string) =>
    language === 'en' ? english : (taxon.namesIn?.[language] ?? []);
  const vernacularName = namesIn(shown)[0] ?? taxon.vernacularName;
  const others = [shown, ...searched].flatMap(namesIn);
  return {
    ...taxon,
    vernacularName,
    otherEnglishNames: [...new Set(others)].filter((name) => name !== vernacularName),
  };
}

/** The languages other than English in which taxa have names. */
export function languagesOf(taxa: readonly Taxon[]): string[] {
  return [...new Set(taxa.flatMap(({ namesIn }) => Object.keys(namesIn ?? {})))].sort();
}
