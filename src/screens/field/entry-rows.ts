import { firstOf } from '../../taxa/known.ts';
import { CATEGORY_WORDS, categoryLetters, isThreatened } from '../../taxa/red-list.ts';
import { countShown, partsText } from '../../visit/count.ts';
import { type Entry, nameOf, taxonKey } from '../../visit/entry.ts';
import { clockOf, epochOf, offsetOf, stamp } from '../../visit/time.ts';
import { speciesSeen, standing, zoneOf } from '../../visit/visit.ts';
import { cell, fitting, type Row, rule, type Span, span } from '../paint.ts';
import { type Session, stampNow, unsavedNumbers } from './session.ts';

/** Entries newest first in a window of `height` rows, headed by a rule that sums them up. */
export function entryRows(session: Session, width: number, height: number): Row[] {
  if (height <= 0) return [];
  const { entries } = session.visit;
  const rows = height - 1;
  const newestFirst = entries.toReversed();
  const from = windowStart(session, newestFirst, rows);
  const drawn: Drawn = {
    session,
    width,
    pending: unsavedNumbers(session),
    offset: offsetOf(stampNow(session)),
  };
  return [
    [span(rule(sumWords(session, from, rows, width - RULE), width), 'quiet')],
    ...newestFirst.slice(from, from + rows).map((entry) => entryRow(drawn, entry)),
  ];
}

/** What all rows of a frame share, found once. */
interface Drawn {
  session: Session;
  width: number;
  /** Numbers of entries that are not on disk yet. */
  pending: ReadonlySet<number>;
  /** The offset of the head line's clock. */
  offset: string;
}

/** The entry that is being picked or changed stays in the window. */
function windowStart({ mode }: Session, newestFirst: readonly Entry[], rows: number): number {
  if (mode.at !== 'pick' && mode.at !== 'change') return 0;
  const at = newestFirst.findIndex((entry) => entry.number === mode.number);
  return Math.max(0, Math.min(at - Math.floor(rows / 2), newestFirst.length - rows));
}

/** Columns of the rule that no word takes. */
const RULE = 4;

function sumWords(session: Session, from: number, rows: number, width: number): string {
  const stand = standing(session.visit);
  if (session.visit.entries.length === 0) return 'nothing logged yet';
  const unnamed = stand.filter((entry) => entry.taxon === null).length;
  const hidden = session.visit.entries.length - from - rows;
  const parts = [
    `${stand.length} ${stand.length === 1 ? 'entry' : 'entries'}`,
    savedWords(session),
    `${speciesSeen(session.visit)} species`,
    unnamed === 0 ? '' : `${unnamed} unnamed`,
    hidden > 0 ? `${hidden} more below` : '',
  ];
  return fitting(parts, ', ', width);
}

/** What is on disk, in words. */
export function savedWords({ visit, saved, readOnly }: Session): string {
  if (readOnly !== null) return 'read only';
  const open = visit.changes.length - saved.changes;
  if (open <= 0) return 'all saved';
  return saved.failure === null ? 'saving' : `${open} NOT SAVED`;
}

function entryRow(drawn: Drawn, entry: Entry): Row {
  const { width } = drawn;
  const { mode } = drawn.session;
  const picked = (mode.at === 'pick' || mode.at === 'change') && mode.number === entry.number;
  const wide = width >= 100;
  const name = entry.uncertain ? `${nameOf(entry)}?` : nameOf(entry);
  // In the narrowest window the words behind a threatened species come before its name's last letters.
  const nameWidth = width < 56 ? 14 : Math.min(28, Math.floor(width * 0.32));
  const threatened = entry.taxon !== null && isThreatened(entry.taxon.redListCategory);
  const columns: Span[] = [
    span(picked ? '>' : ' ', 'strong'),
    span(cell(String(entry.number), 3, 'right'), 'quiet'),
    span(` ${clockHere(drawn, entry)} `),
    span(cell(name, nameWidth), 'strong'),
    ...(wide ? [span(` ${cell(entry.taxon ? taxonKey(entry.taxon) : '', 24)}`, 'quiet')] : []),
    span(` ${cell(countShown(entry.count), 7, 'right')} `),
    span(cell(entry.taxon ? categoryLetters(entry.taxon) : '', 5), threatened ? 'threat' : 'plain'),
  ];
  const used = 1 + 3 + 7 + nameWidth + (wide ? 25 : 0) + 9 + 5;
  const row = [
    ...columns,
    span(cell(notesOf(drawn, entry), width - used), threatened ? 'threat' : 'plain'),
  ];
  if (entry.struck !== null) return row.map((each) => span(each.text, 'struck'));
  return picked ? row.map((each) => span(each.text, 'chosen')) : row;
}

/** The entry's time on the clock of the head line: a place given later may have brought another zone. */
function clockHere({ session, offset }: Drawn, { time }: Entry): string {
  return offsetOf(time) === offset
    ? clockOf(time)
    : clockOf(stamp(epochOf(time), zoneOf(session.visit)));
}

/** What does not fit a column, most urgent first: it is cut at the end. */
function notesOf({ session, pending }: Drawn, entry: Entry): string {
  const { known, visit, saved } = session;
  const category = entry.taxon?.redListCategory ?? null;
  const first = known ? firstOf(known, visit, entry) : null;
  return [
    entry.struck === null ? '' : 'struck out',
    pending.has(entry.number) ? (saved.failure === null ? 'saving' : 'NOT SAVED') : '',
    category === null ? 'unnamed' : isThreatened(category) ? CATEGORY_WORDS[category] : '',
    first ?? '',
    partsText(entry.parts),
    entry.description ?? '',
  ]
    .filter((part) => part !== '')
    .join(', ');
}
