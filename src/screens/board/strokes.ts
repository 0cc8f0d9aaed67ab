import { isThreatened } from '../../taxa/red-list.ts';
import type { Taxon } from '../../taxa/taxon.ts';
import { countShown, MOST, partsText } from '../../visit/count.ts';
import { type Entry, nameOf, taxonKey, taxonName } from '../../visit/entry.ts';
import { entryNumbered, type Visit } from '../../visit/visit.ts';
import {
  type Moment,
  type Result,
  type Session,
  saying,
  sayingSo,
  stampNow,
  still,
  toLine,
  withVisit,
  writtenNow,
} from '../field/session.ts';
import { threatWords } from '../threat-words.ts';
import { type Board, lastNumber, letterOf } from './board.ts';
import { keptOnce } from './letters.ts';
import { fewer, flockEntry, marked, ruleTurned, struck, takenBack, type When } from './tally.ts';

/** A key that means a species: a small letter adds the step, a capital takes one back. */
export function stroke(session: Session, text: string, moment: Moment): Result {
  const { board } = session;
  if (!board) return still(session);
  const letter = text.toLowerCase();
  const taxon = board.taxa[letter];
  if (!taxon) return still(saying(session, 'problem', noSpecies(letter)));
  if (session.readOnly !== null) return still(saying(session, 'problem', session.readOnly));
  return text === letter
    ? added(session, board, letter, taxon, moment)
    : back(session, board, letter, taxon);
}

/** Why a letter does nothing, and what makes it do something. */
function noSpecies(letter: string): string {
  return `No species stands on ${letter}. A point and ${letter} put one there.`;
}

function added(
  session: Session,
  board: Board,
  letter: string,
  taxon: Taxon,
  { id }: Moment,
): Result {
  const visit = struck(session.visit, board, taxon, { ...whenOf(session), id });
  if (visit === session.visit) return still(saying(session, 'problem', `${MOST} is the most.`));
  const first = visit.entries.length > session.visit.entries.length;
  const kept = keptOnce(withLast(session, board, letter));
  const counted = withVisit({ ...kept.session, message: null }, visit);
  const result = { ...counted, effects: [...counted.effects, ...kept.effects] };
  if (!first || !isThreatened(taxon.redListCategory) || loggedBefore(session.visit, taxon))
    return result;
  return sayingSo(result, 'caution', threatWords(taxonName(taxon), taxon));
}

/** The caution is told once a visit: it must not cover the counting. */
function loggedBefore(visit: Visit, taxon: Taxon): boolean {
  const key = taxonKey(taxon);
  return visit.entries.some((entry) => entry.taxon !== null && taxonKey(entry.taxon) === key);
}

function back(session: Session, board: Board, letter: string, taxon: Taxon): Result {
  const when = whenOf(session);
  const entry = flockEntry(session.visit, board, taxon, when.at);
  if (!entry) {
    const words = `No ${taxonName(taxon)} in this flock to take back. Backspace takes back earlier strokes.`;
    return still(saying(withLast(session, board, letter), 'problem', words));
  }
  if (tooFewLeft(entry, board.step)) {
    const words = `Of ${taxonName(taxon)} ${partsText(entry.parts)} are told apart: Esc c changes that line.`;
    return still(saying(session, 'problem', words));
  }
  const visit = takenBack(session.visit, board, taxon, when);
  // Told each time: with Caps Lock on, every key would take back unnoticed.
  const left = flockEntry(visit, board, taxon, when.at);
  const words = `${taxonName(taxon)}, fewer: ${countShown(entry.count)} to ${left ? countShown(left.count) : 'none'}.`;
  return sayingSo(withVisit(withLast(session, board, letter), visit), 'done', words);
}

/** Would less be left than was told apart by sex and age? */
function tooFewLeft({ count, parts }: Entry, by: number): boolean {
  const left = fewer(count, by);
  const apart = parts.reduce((sum, part) => sum + part.value, 0);
  return left !== null && 'value' in left && left.value < apart;
}

function withLast(session: Session, board: Board, letter: string): Session {
  return { ...session, board: { ...board, last: letter } };
}

/** A digit, from 1: a stroke counts by the group size of that place from now on. */
export function stepTo(session: Session, digit: number): Result {
  const step = session.groupSizes[digit - 1];
  return still(step === undefined ? session : withBoard(session, { step }));
}

/** Space: what comes now is another flock, with a time of its own. */
export function freshFlock(session: Session): Result {
  const change = { flockAfter: lastNumber(session.visit), flockSince: stampNow(session) };
  return still(saying(withBoard(session, change), 'done', 'A fresh flock; the totals stand.'));
}

/** The last letter's flock is about so many, or at least; once more and it is exact again. */
export function mark(session: Session, kind: 'about' | 'at least'): Result {
  const { board } = session;
  const taxon = board?.taxa[board.last ?? ''];
  if (!board || !taxon)
    return still(saying(session, 'problem', 'Count something first: the sign is for its flock.'));
  const when = whenOf(session);
  if (!flockEntry(session.visit, board, taxon, when.at))
    return still(saying(session, 'problem', `No ${taxonName(taxon)} in this flock yet.`));
  const visit = marked(session.visit, board, taxon, kind, when);
  if (visit === session.visit) {
    const words = `This flock of ${taxonName(taxon)} has no single number: Esc c changes its line.`;
    return still(saying(session, 'problem', words));
  }
  return withVisit({ ...session, message: null }, visit);
}

/** The other rule of summing for the species of a letter. */
export function turnRule(session: Session, letter: string): Result {
  const taxon = session.board?.taxa[letter];
  const home = toLine(session);
  if (!taxon) return still(saying(home, 'problem', noSpecies(letter)));
  const visit = ruleTurned(session.visit, taxon, writtenNow(session));
  const highest = visit.highest.includes(taxonKey(taxon));
  const words = `${taxonName(taxon)}: ${highest ? 'the same birds seen again, the highest flock counts' : 'different birds, the flocks add up'}.`;
  return sayingSo(withVisit(home, visit), 'done', words);
}

/** What undo or redo did to a flock, by its count, and that species large; null for another change. */
export function revertedFlock(
  session: Session,
  after: Visit,
): { board: Board; words: string } | null {
  const change = after.changes.at(-1);
  if (!session.board || !change || !('number' in change)) return null;
  const [was, is] = [session.visit, after].map((visit) => entryNumbered(visit, change.number));
  if (!was?.taxon || !is?.taxon) return null;
  const [from, to] = [was, is].map(({ struck, count }) => (struck ? 'none' : countShown(count)));
  if (from === to) return null;
  const last = letterOf(session.board.taxa, taxonKey(is.taxon)) ?? session.board.last;
  return { board: { ...session.board, last }, words: `${nameOf(is)} ${from} to ${to}` };
}

export function withBoard(session: Session, change: Partial<Board>): Session {
  return session.board ? { ...session, board: { ...session.board, ...change } } : session;
}

function whenOf(session: Session): When {
  return { time: writtenNow(session), at: stampNow(session) };
}
