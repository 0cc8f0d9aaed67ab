import type { Sum } from '../../visit/sums.ts';

/** How a count enters a figure. */
export interface Entering {
  /** Null where nobody counted: it is never taken for 1. */
  number: number | null;
  how: 'exact' | 'estimate' | 'lower bound' | 'low end' | 'not counted';
}

/** The rule by which counts enter figures, to show where figures are shown. */
export const COUNT_RULE =
  'Counts enter as they are; about as its number; at least as its number, a lower bound; a range by its low end; what was seen and not counted does not enter.';

/** The number by which a count or a sum of counts enters a figure, by `COUNT_RULE`. */
export function numberOf({ count }: Pick<Sum, 'count'>): Entering {
  switch (count.kind) {
    case 'exact':
      return { number: count.value, how: 'exact' };
    case 'about':
      return { number: count.value, how: 'estimate' };
    case 'at least':
      return { number: count.value === 0 ? null : count.value, how: 'lower bound' };
    case 'range':
      return { number: count.low === 0 ? null : count.low, how: 'low end' };
    case 'present':
      return { number: null, how: 'not counted' };
  }
}
