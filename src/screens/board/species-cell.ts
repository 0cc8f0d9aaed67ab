import { isThreatened } from '../../taxa/red-list.ts';
import { taxonKey, taxonName } from '../../visit/entry.ts';
import { sumShown, type Total } from '../../visit/sums.ts';
import type { Session } from '../field/session.ts';
import { cell, cut, type Span, span } from '../paint.ts';

/** Room for most totals; a longer one takes it from the name. */
const NUMBER_WIDTH = 5;
/** What stands around name and number: the letter with its mark, two signs, the gap to the next. */
const AROUND = 6;

/**
 * One species: its letter, name, `!` where it is threatened, its total, and `^` where that is the highest
 * flock. The one struck last is marked; one that was not counted has a dot.
 */
export function speciesCell(
  { board, visit }: Session,
  letter: string,
  sums: ReadonlyMap<string, Total>,
  width: number,
): Span[] {
  const taxon = board?.taxa[letter];
  if (!board || !taxon) return [];
  const total = sums.get(taxonKey(taxon));
  const number = total ? sumShown(total) : '·';
  const numberWidth = Math.max(NUMBER_WIDTH, number.length);
  const nameWidth = Math.floor(width) - numberWidth - AROUND;
  const last = letter === board.last;
  return [
    span(`${last ? '>' : ' '}${letter} `, 'strong'),
    span(cell(shortName(taxonName(taxon), nameWidth), nameWidth), last ? 'strong' : 'plain'),
    span(isThreatened(taxon.redListCategory) ? '!' : ' ', 'threat'),
    span(cell(number, numberWidth, 'right'), total ? 'strong' : 'quiet'),
    span(visit.highest.includes(taxonKey(taxon)) ? '^ ' : '  '),
  ];
}

/**
 * A name that fits: the last word as it is and the others cut alike, so that `Les Bla Gull` and `Gre Bla
 * Gull` can be told apart; of a pair both names are left, as in `Bla/Com Gull`. Where that leaves too
 * little, and where words stand behind a comma, it is cut at the end.
 */
export function shortName(name: string, width: number): string {
  const words = name.split(/(?<=[ /])/);
  const last = words.pop() ?? '';
  const most = name.includes(',') ? 0 : width - last.length - words.length;
  for (let letters = most; letters >= 2; letters -= 1) {
    const short = words.map((word) => word.slice(0, -1).slice(0, letters) + word.slice(-1));
    if ([...short, last].join('').length <= width) return [...short, last].join('');
  }
  return cut(name, width);
}
