import { countShown } from '../../visit/count.ts';
import { taxonKey, taxonName } from '../../visit/entry.ts';
import { sumShown, type Total, totals } from '../../visit/sums.ts';
import { clockOf } from '../../visit/time.ts';
import { speciesSeen, type Visit } from '../../visit/visit.ts';
import { savedWords } from '../field/entry-rows.ts';
import { type Session, stampNow } from '../field/session.ts';
import { cell, cut, ends, fitting, type Row, rule, span, widthOf } from '../paint.ts';
import { type Board, LETTERS } from './board.ts';
import { DIGIT_ROWS, largeDigits } from './digits.ts';
import { passingRows } from './passing.ts';
import { speciesCell } from './species-cell.ts';
import { flockEntry } from './tally.ts';

/** The least width of a cell: the letter, some of the name, a total of five digits and its sign. */
const LEAST_CELL = 25;
const MOST_COLUMNS = 3;
/** The same where else some species would have no room: of a name its first letters are left. */
const TIGHT_CELL = 16;
/** How many rows the steps and the rule take. */
const AROUND = 2;
/** From so many columns on, words need not be short. */
const WIDE = 60;

/**
 * The Board's rows below the head: how strokes count, the last species large, all species in columns. Of
 * what has no room the large digits go first, then the widths of names; what then has none is counted.
 */
export function boardRows(session: Session, width: number, room: number): Row[] {
  const { board, visit } = session;
  if (!board) return [];
  const sums = new Map(totals(visit).map((total) => [total.key, total]));
  const letters = LETTERS.filter((letter) => board.taxa[letter]);
  const columns = columnsFor(letters.length, width, room - AROUND);
  const height = Math.ceil(letters.length / columns);
  const spare = Math.max(0, room - AROUND - height);
  const passing = passingRows(session, width, spare);
  const large = spare - passing.length >= DIGIT_ROWS ? largeRows(session, board, sums, width) : [];
  const left = Math.max(1, room - AROUND - large.length - passing.length);
  const hidden = letters.filter((_letter, at) => at % height >= left).length;
  const words = [hidden > 0 ? `${hidden} more letters` : '', ...sumParts(session, sums)];
  const sum = [span(rule(fitting(words, ', ', width - 4), width), 'quiet')];
  // Rows apart are read from further away.
  const apart: Row[] = left >= 2 * height ? [[]] : [];
  const rows = Array.from({ length: Math.min(height, left) }, (_, row) => {
    const across = letters.filter((_letter, at) => at % height === row);
    return [
      ...apart,
      across.flatMap((letter) => speciesCell(session, letter, sums, width / columns)),
    ];
  });
  return [stepRow(board, session.groupSizes, width), ...large, ...passing, sum, ...rows.flat()];
}

/** As few columns as give every species a row, and as wide as they can be. */
function columnsFor(species: number, width: number, rows: number): number {
  const few = Math.max(1, Math.min(MOST_COLUMNS, Math.floor(width / LEAST_CELL)));
  const needed = Math.ceil(species / Math.max(1, rows));
  return Math.max(few, Math.min(needed, Math.floor(width / TIGHT_CELL)));
}

/** How many a key counts, of what it can, and since when the flock is counted. */
function stepRow(board: Board, groupSizes: readonly number[], width: number): Row {
  const steps = groupSizes.map((size) => (size === board.step ? `[${size}]` : String(size)));
  const flock = board.passing
    ? `passing ${board.passing.heading}`
    : `flock since ${clockOf(board.flockSince)}`;
  const all = `board> ${width < WIDE ? 'by' : 'counts by'} ${steps.join(' ')}`;
  const fits = widthOf(all) + widthOf(flock) < width;
  return [span(ends(fits ? all : `board> by [${board.step}]`, flock, width), 'strong')];
}

/** The Board as one row, for a window without room: the step and the total of the species struck last. */
export function boardLine({ board, visit }: Session, width: number): Row {
  const taxon = board?.taxa[board.last ?? ''];
  const total = taxon && totals(visit).find(({ key }) => key === taxonKey(taxon));
  const number = `[${board?.step ?? 1}] ${total ? sumShown(total) : ''}`;
  return [span(cut(`board> ${number} ${taxon ? taxonName(taxon) : ''}`, width), 'strong')];
}

/** The species struck last: its name, how it sums up, and its total in large digits. */
function largeRows(
  session: Session,
  board: Board,
  sums: ReadonlyMap<string, Total>,
  width: number,
): Row[] {
  const taxon = board.taxa[board.last ?? ''];
  if (!taxon)
    return Array.from({ length: DIGIT_ROWS }, (_, at) => (at === 1 ? [span(HINT, 'quiet')] : []));
  const total = sums.get(taxonKey(taxon));
  const entry = flockEntry(session.visit, board, taxon, stampNow(session));
  const flocks = total?.entries.length ?? 0;
  const words = [
    taxonName(taxon),
    `this ${board.passing ? 'interval' : 'flock'} ${entry ? countShown(entry.count) : 0}, ${flocks === 1 ? '1 flock' : `${flocks} flocks`}`,
    ruleWords(session.visit, taxonKey(taxon)),
  ];
  const digits = largeDigits(total ? sumShown(total).replace('none', '0') : '0');
  const left = Math.min(40, Math.floor(width / 2));
  return digits.map((row, at) => [
    span(cell(` ${words[at] ?? ''}`, left), at === 0 ? 'strong' : 'plain'),
    span(cut(row, width - left), 'strong'),
  ]);
}

const HINT = ' Strike a letter: its total stands here in large digits.';

function ruleWords({ highest }: Visit, key: string): string {
  return highest.includes(key) ? 'same birds: highest flock' : 'different birds: adds up';
}

/** Species, birds and what is saved; of birds, what is sure. */
function sumParts(session: Session, sums: ReadonlyMap<string, Total>): string[] {
  const lows = [...sums.values()].map(({ count }) =>
    count.kind === 'present' ? 0 : count.kind === 'range' ? count.low : count.value,
  );
  const unsure = [...sums.values()].some(({ count }) => count.kind !== 'exact');
  const all = lows.reduce((sum, low) => sum + low, 0);
  const highest = session.visit.highest.length > 0 ? '^ highest flock' : '';
  return [
    `${speciesSeen(session.visit)} species`,
    `${unsure ? 'some ' : ''}${all} in all`,
    savedWords(session),
    highest,
  ];
}
