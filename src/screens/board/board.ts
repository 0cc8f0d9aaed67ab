import { type Occasion, priorFor } from '../../taxa/expected.ts';
import type { Known } from '../../taxa/known.ts';
import type { Taxon } from '../../taxa/taxon.ts';
import type { TaxonIndex } from '../../taxa/taxon-index.ts';
import { isSpecies, taxonKey } from '../../visit/entry.ts';
import type { Stamp } from '../../visit/time.ts';
import type { Visit } from '../../visit/visit.ts';
import type { COMPASS } from '../../visit/weather.ts';

/** The letters on which species are laid, home row first. */
export const LETTERS = [...'asdfghjklqwertyuiopzxcvbnm'];
/** How many species are laid out on opening; the other letters are free for what turns up. */
const LAID = 18;

/** Which species stand on which letters, by `taxonKey`. */
export type Layout = Readonly<Record<string, string>>;

/** Birds that pass are counted by their heading and by intervals of the clock. */
export interface Passing {
  heading: (typeof COMPASS)[number];
  /** Minutes of an interval, counted from the full hour. */
  minutes: Interval;
}
export const INTERVALS = [5, 10, 15, 60] as const;
type Interval = (typeof INTERVALS)[number];

/** What the Board keeps beside the visit: where the species stand and how a stroke counts. */
export interface Board {
  taxa: Readonly<Record<string, Taxon>>;
  /** How many a stroke adds. */
  step: number;
  /** Entries up to this number belong to earlier flocks. */
  flockAfter: number;
  flockSince: Stamp;
  /** The letter struck last: its total stands large. */
  last: string | null;
  passing: Passing | null;
}

/** A Board for a visit, from the letters kept for its place, else from what is expected. */
export function openBoard(
  given: { index: TaxonIndex; known: Known | null; visit: Visit; layout: Layout | null },
  occasion: Occasion,
  now: Stamp,
): Board {
  const { visit, layout } = given;
  const taxa = layout === null ? laidOut(given, occasion) : kept(given.index, layout);
  return {
    taxa: withLogged(taxa, given.index, visit),
    step: 1,
    flockAfter: lastNumber(visit),
    flockSince: now,
    last: null,
    passing: null,
  };
}

/** The number of the visit's last entry; 0 for none. */
export function lastNumber(visit: Visit): number {
  return visit.entries.reduce((most, entry) => Math.max(most, entry.number), 0);
}

/** The letters by `taxonKey`, to be kept for the place. */
export function layoutOf({ taxa }: Board): Layout {
  return Object.fromEntries(
    Object.entries(taxa).map(([letter, taxon]) => [letter, taxonKey(taxon)]),
  );
}

/** The first letter, home row first, on which no species stands; null where all are taken. */
export function freeLetter(taxa: Board['taxa']): string | null {
  return LETTERS.find((letter) => taxa[letter] === undefined) ?? null;
}

/** The letter of a taxon; null where it stands on none. */
export function letterOf(taxa: Board['taxa'], key: string): string | null {
  return LETTERS.find((letter) => taxa[letter] && taxonKey(taxa[letter]) === key) ?? null;
}

/** The likeliest species that are counted one by one, in the order of the lists. */
function laidOut(
  { index, known }: { index: TaxonIndex; known: Known | null },
  occasion: Occasion,
): Board['taxa'] {
  const prior = priorFor(index, known, occasion);
  const all = taxaOf(index).filter((taxon) => taxon.countedSingly && isSpecies(taxon));
  const worth = new Map(all.map((taxon) => [taxon, prior(taxon)]));
  const likely = new Set(
    all.toSorted((one, two) => (worth.get(two) ?? 0) - (worth.get(one) ?? 0)).slice(0, LAID),
  );
  const inOrder = all.filter((taxon) => likely.has(taxon));
  return Object.fromEntries(inOrder.map((taxon, at) => [LETTERS[at] ?? '', taxon]));
}

function kept(index: TaxonIndex, layout: Layout): Board['taxa'] {
  const byKey = new Map(taxaOf(index).map((taxon) => [taxonKey(taxon), taxon]));
  return Object.fromEntries(
    LETTERS.flatMap((letter) => {
      const taxon = byKey.get(layout[letter] ?? '');
      return taxon ? [[letter, taxon]] : [];
    }),
  );
}

/** What the visit has already must have a letter, as long as there are any. */
function withLogged(laid: Board['taxa'], index: TaxonIndex, visit: Visit): Board['taxa'] {
  const taxa = { ...laid };
  const logged = new Set(
    visit.entries.flatMap(({ taxon, struck }) =>
      taxon === null || struck !== null ? [] : [taxonKey(taxon)],
    ),
  );
  for (const taxon of taxaOf(index)) {
    const key = taxonKey(taxon);
    if (!logged.has(key) || !taxon.countedSingly || letterOf(taxa, key) !== null) continue;
    const letter = freeLetter(taxa);
    if (letter === null) break;
    taxa[letter] = taxon;
  }
  return taxa;
}

function taxaOf(index: TaxonIndex): Taxon[] {
  return [...new Set(index.names.map(({ taxon }) => taxon))];
}
