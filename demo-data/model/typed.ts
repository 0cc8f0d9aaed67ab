import { type Count, countText, partsText } from '../../src/visit/count.ts';
import type { DemoTaxon, Habitat } from './presence.ts';
import type { Random } from './random.ts';
import { DESCRIPTIONS, type Observer } from './words.ts';

/** Young ones are told from the grown in these months, from 1. */
const YOUNG = { first: 5, last: 9 } as const;
/** Above this nobody counts one by one. */
const COUNTED = 12;

/** Flocks vary more than what is met singly or in pairs: standard deviation of the logarithm. */
const SPREAD = { flocks: 0.7, few: 0.4 } as const;
const FEW = 3;

/** What an observer tells of a species: the parts of a line. */
export interface Told {
  name: string;
  count: Count;
  parts: string;
  uncertain: boolean;
  description: string | null;
}

/** What is told of a species met in a month (from 1); plants and fungi mostly as present. */
export function toldOf(
  random: Random,
  taxon: DemoTaxon,
  given: { month: number; singly: boolean },
): Told {
  const count = countOf(random, taxon, given.singly);
  const habitat = random.pick(Object.keys(taxon.habitats) as Habitat[]);
  return {
    name: taxon.name.toLowerCase(),
    count,
    parts: partsOf(random, taxon, count, given.month),
    uncertain: given.singly && random.chance(0.02),
    description: random.chance(0.12) ? random.pick(DESCRIPTIONS[habitat]) : null,
  };
}

export function countOf(random: Random, { flock }: DemoTaxon, singly: boolean): Count {
  if (!singly && random.chance(0.9)) return { kind: 'present' };
  const spread = flock > FEW ? SPREAD.flocks : SPREAD.few;
  // Half the square of the spread keeps the mean of a log-normal draw at the usual number.
  const value = Math.max(1, Math.round(flock * Math.exp(spread * random.bell() - spread ** 2 / 2)));
  const draw = random.next();
  if (value <= COUNTED)
    return draw < 0.93 || value < 3 ? { kind: 'exact', value } : { kind: 'at least', value };
  const step = value > 100 ? 20 : value > 30 ? 10 : 5;
  const round = Math.max(step, Math.round(value / step) * step);
  if (draw < 0.35) return { kind: 'exact', value };
  if (draw < 0.7) return { kind: 'about', value: round };
  if (draw < 0.88) return { kind: 'at least', value: round };
  return { kind: 'range', low: round, high: round + step };
}

/** Sexes or ages of an exact count, now and then. */
function partsOf(random: Random, { parts }: DemoTaxon, count: Count, month: number): string {
  if (count.kind !== 'exact' || count.value > 30 || !random.chance(0.25)) return '';
  const told = parts.filter(
    (letter) => letter !== 'j' || (month >= YOUNG.first && month <= YOUNG.last),
  );
  let left = count.value;
  const counted = told.flatMap((letter, place) => {
    const value = place === told.length - 1 && letter !== 'j' ? left : random.whole(0, left);
    left -= value;
    return value === 0 ? [] : [{ letter, value }];
  });
  return partsText(counted);
}

/** The line as the observer types it: `25 mallard 14m 11f: far out`, `mall 25`. */
export function typedBy(observer: Observer, told: Told): string {
  const one = told.count.kind === 'exact' && told.count.value === 1;
  const count = one && told.parts === '' ? '' : countText(told.count);
  const name = observer.types === 'short' ? shortName(told.name) : told.name;
  const words = observer.types === 'count first' ? [count, name] : [name, count];
  const head = [...words, told.parts].filter((part) => part !== '').join(' ');
  const sure = told.uncertain ? `${head}?` : head;
  return told.description === null ? sure : `${sure}: ${told.description}`;
}

/** The first letters of each word: `gre cre gre`; a single word longer. */
function shortName(name: string): string {
  const words = name.split(' ');
  return words.map((word) => word.slice(0, words.length === 1 ? 5 : 3)).join(' ');
}
