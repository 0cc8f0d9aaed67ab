/** Words of a scientific name that are no part of the author: epithets, rank marks, the hybrid sign. */
const EPITHET = /^(?:[\p{Ll}-]+\.?|[×xX])$/u;
/** Small words that begin or join authors' names, and epithets never. */
const AUTHOR_WORDS: ReadonlySet<string> = new Set([
  'de',
  'von',
  'van',
  'et',
  'ex',
  'in',
  'f.',
  'sensu',
]);

/** A scientific name without the author and year behind it, which Darwin Core allows there. */
export function withoutAuthor(name: string): string {
  const words = name.trim().split(/\s+/);
  const author = words.findIndex(
    (word, at) =>
      at > 0 && !isSubgenus(words, at) && (!EPITHET.test(word) || AUTHOR_WORDS.has(word)),
  );
  // A hybrid's formula goes on with the other parent's genus.
  const kept = author === -1 || /[×]/.test(name) ? words : words.slice(0, author);
  return kept.filter((_, at) => !isSubgenus(words, at)).join(' ');
}

/**
 * A name apart from what it leaves open, which many tables write behind it: `Larus sp.`,
 * `Rubus fruticosus agg.`. Darwin Core gives that a term of its own, identificationQualifier.
 */
export function qualifierApart(name: string): {
  scientificName: string;
  identificationQualifier: string | null;
} {
  const [, before, mark] = /^(.*\S)\s+(spp?|indet|agg)\.?$/su.exec(name.trim()) ?? [];
  if (before === undefined || mark === undefined)
    return { scientificName: name, identificationQualifier: null };
  return {
    scientificName: before,
    identificationQualifier: mark === 'spp' ? 'sp.' : `${mark}.`,
  };
}

/** `Larus (Larus) canus`: a name in brackets before the epithet. */
function isSubgenus(words: readonly string[], at: number): boolean {
  const next = words[at + 1];
  return (
    at === 1 &&
    /^\(\p{Lu}\p{Ll}+\)$/u.test(words[at] ?? '') &&
    next !== undefined &&
    EPITHET.test(next)
  );
}

/**
 * The rank that the form of a name tells: one word is a genus, or by its ending a family of animals
 * (-idae, ICZN article 29.2) or of plants and fungi (-aceae, ICN article 18.1); three words a subspecies.
 */
export function rankOf(name: string): string {
  const words = name.split(' ').filter((word) => !/^[×x]$/.test(word));
  if (words.length === 1) return /(?:idae|aceae)$/.test(name) ? 'family' : 'genus';
  return words.length === 2 ? 'species' : 'subspecies';
}
