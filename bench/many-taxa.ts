import { initialsOf, plainWords } from '../src/taxa/names.ts';
import type { Taxon } from '../src/taxa/taxon.ts';

/** How many queries of a kind are made, as far as the names give so many. */
const QUERIES_EACH = 30;

/** Species of one genus in the made-up names; what a list of the birds of the world has, roughly. */
const SPECIES_A_GENUS = 5;

/**
 * A list of `size` taxa with names of the kind that a large list has: every taxon of `taxa`, then made-up
 * ones. English names are put together of the words of the list (`Northern Pied Harrier`), genera and
 * epithets of halves of its own (`Anahierax`), so that most of these words are new.
 */
export function manyTaxa(all: readonly Taxon[], size: number): Taxon[] {
  const taxa = all.filter((taxon) => taxon.taxonRank === 'species');
  const english = taxa.map((taxon) => (taxon.vernacularName ?? '').split(/\s+/));
  const latin = taxa.map((taxon) => taxon.scientificName.split(/\s+/));
  const describing = [...new Set(english.flatMap((words) => words.slice(0, -1)))];
  const kinds = [...new Set(english.map((words) => words.at(-1) ?? ''))].filter(Boolean);
  const genera = [...new Set(latin.map((words) => words[0] ?? ''))];
  const epithets = [...new Set(latin.map((words) => words.at(-1) ?? ''))];
  const many = [...taxa];
  const used = new Set(taxa.map((taxon) => taxon.scientificName));
  for (let made = 0; many.length < size; made += 1) {
    const genus = Math.floor(made / SPECIES_A_GENUS);
    const scientificName = `${halves(genera, genus)} ${halves(epithets, made)}`;
    if (used.has(scientificName)) continue;
    used.add(scientificName);
    const second = made % 3 === 0 ? '' : `${pick(describing, made * 5 + 1)} `;
    const kind = pick(kinds, made * 3 + Math.floor(made / 97));
    many.push({
      ...pick(taxa, made),
      scientificName,
      vernacularName: `${pick(describing, made)} ${second}${kind}`,
      otherEnglishNames: [],
      olderScientificNames: [],
    });
  }
  return many;
}

/** The first half of one word with the second of another; the pair changes with each turn of the list. */
function halves(words: readonly string[], at: number): string {
  const one = pick(words, at);
  const two = pick(words, at * 3 + Math.floor(at / words.length) * 7 + 1);
  return one.slice(0, Math.ceil(one.length / 2)) + two.slice(Math.floor(two.length / 2));
}

function pick<T>(from: readonly T[], at: number): T {
  const picked = from[at % from.length];
  if (picked === undefined) throw new Error('There is nothing to pick from.');
  return picked;
}

/** Names spread evenly over a list. */
function someNames(taxa: readonly Taxon[], fits: (words: string[]) => boolean): string[][] {
  const names = taxa.map((taxon) => plainWords(taxon.vernacularName ?? '')).filter(fits);
  const step = Math.max(1, Math.floor(names.length / QUERIES_EACH));
  return names.filter((_, place) => place % step === 0).slice(0, QUERIES_EACH);
}

/** The queries of each kind that a list gives rise to. */
export const QUERIES: Record<string, (taxa: readonly Taxon[]) => string[]> = {
  'one letter': () => [...'abcdefghijklmnoprstuvwy'],
  'start of a word': (taxa) =>
    someNames(taxa, (words) => words.length > 0).map((words) => (words.at(-1) ?? '').slice(0, 3)),
  initials: (taxa) => someNames(taxa, (words) => words.length > 1).map(initialsOf),
  'two letters swapped': (taxa) =>
    someNames(taxa, ([first = '']) => first.length > 5 && first[2] !== first[3]).map(
      ([first = '']) => `${first.slice(0, 2)}${first[3]}${first[2]}${first.slice(4)}`,
    ),
  'far off': (taxa) =>
    someNames(taxa, ([first = '']) => first.length > 6).map(
      ([first = '']) => `q${first.slice(1, -3)}xz${first.slice(-2)}`,
    ),
};
