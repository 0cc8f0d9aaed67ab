import type { PartLetter } from '../../src/visit/count.ts';

/** Open water, reed and ditch, wet meadow, wood and trees, farm and hedge, mud and shore. */
export type Habitat = 'W' | 'R' | 'M' | 'T' | 'F' | 'U';

/** What the model knows of a species; the English name ties it to the species lists. */
export interface DemoTaxon {
  name: string;
  /** Chance, 0 to 1, to meet it on a walk through its best habitat in the middle of each month. */
  months: readonly number[];
  /** How well each habitat suits it, 0 to 1. */
  habitats: Readonly<Partial<Record<Habitat, number>>>;
  /** Usual number met at a time. */
  flock: number;
  /** Parts of a count that can be told apart in the field. */
  parts: readonly PartLetter[];
}

const ROW = /^(.+?) +(\d{12}) +((?:[WRMTFU]\d ?)+) +(\d+)(?: +([mfja]+))?$/;
const TENTHS = 10;

/**
 * Reads a table of rows such as `Teal 998511258999 W8 U7 60 mf`: name, twelve months in tenths, habitats
 * in tenths, flock, parts. `attention` is how often an observer who meets it writes it down.
 */
export function readTable(table: string, attention = 1): DemoTaxon[] {
  return table
    .trim()
    .split('\n')
    .map((row) => {
      const [, name = '', months = '', habitats = '', flock = '', parts = ''] =
        ROW.exec(row.trim()) ?? [];
      if (name === '') throw new Error(`"${row}" is no row of the model.`);
      return {
        name,
        months: [...months].map((digit) => (Number(digit) / TENTHS) * attention),
        habitats: Object.fromEntries(
          habitats
            .trim()
            .split(' ')
            .map((cell) => [cell.slice(0, 1), Number(cell.slice(1)) / TENTHS]),
        ),
        flock: Number(flock),
        parts: [...parts] as PartLetter[],
      };
    });
}

/** Chance to log a species on a date (`YYYY-MM-DD`) in a mix of habitats: 0 to below 1. */
export function presence(
  { months, habitats }: Pick<DemoTaxon, 'months' | 'habitats'>,
  mix: Readonly<Record<Habitat, number>>,
  date: string,
): number {
  const missed = Object.entries(habitats).reduce(
    (chance, [habitat, suits]) => chance * (1 - suits * mix[habitat as Habitat]),
    1,
  );
  return seasonal(months, date) * (1 - missed);
}

/** Straight between the middles of the months, around the year; a month without it stays without. */
function seasonal(months: readonly number[], date: string): number {
  const at = Number(date.slice(5, 7)) - 1 + (Number(date.slice(8, 10)) - 15.5) / 31;
  const from = Math.floor(at);
  const part = at - from;
  const value = (month: number) => months[(month + 12) % 12] ?? 0;
  if (value(Number(date.slice(5, 7)) - 1) === 0) return 0;
  return value(from) * (1 - part) + value(from + 1) * part;
}
