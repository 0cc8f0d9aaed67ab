import {
  type Count,
  type CountPart,
  countText,
  GROUP_SIZES,
  MOST,
  mostOf,
  type PartLetter,
  readCount,
  stepCount,
} from './count.ts';

/** What a stretch of an entry line was taken for. Every character of the line has one role. */
type Role = 'space' | 'name' | 'count' | 'part' | 'unsure' | 'colon' | 'description';

/** A stretch of the line, `start` included and `end` not, in UTF-16 code units. */
interface Piece {
  start: number;
  end: number;
  role: Role;
}

/** An entry line, taken apart. No input throws; what can't be right is told in `problem`. */
export interface EntryLine {
  /** Name words in order, single-spaced; empty where the line has none. */
  words: string;
  count: Count | null;
  parts: CountPart[];
  /** Text after the colon, trimmed; null where there is none. */
  description: string | null;
  uncertain: boolean;
  pieces: Piece[];
  /** A sentence that says what to mend, and where in the line. */
  problem: { words: string; at: number } | null;
}

const TOKEN = /~\s*\d+(?=[\s?]|$)|\S+/g;
const PARTS = /^(?:\d{1,7}[mfja])+$/i;
const ONE_PART = /(\d{1,7})([mfja])/gi;
const GLUED = /^([\p{L}\p{M}'’-]*\p{L}\p{M}*)(~?\d{1,7}(?:\+|[-–]\d{1,7})?)$/u;
const TOO_MANY = /^(?:~\s*)?\d{8,}\+?$/;
const TOO_HIGH = `A count goes up to ${MOST}.`;

/**
 * Takes a line apart: name words, a count before or after them (`12`, `12+`, `~12`, `10-15`), parts by
 * sex and age (`3m 2f 2j`), a question mark behind for an uncertain name, and a description behind
 * the first colon. A number between name words belongs to the name; one that stands directly behind
 * the last word (`tuf12`) is the count.
 */
export function readEntryLine(text: string): EntryLine {
  const colon = text.indexOf(':');
  const head = colon === -1 ? text : text.slice(0, colon);
  const pieces = headPieces(head);
  if (colon !== -1) {
    pieces.push({ start: colon, end: colon + 1, role: 'colon' });
    if (colon + 1 < text.length)
      pieces.push({ start: colon + 1, end: text.length, role: 'description' });
  }
  const texts = (role: Role) =>
    pieces
      .filter((piece) => piece.role === role)
      .map((piece) => text.slice(piece.start, piece.end));
  const description = colon === -1 ? '' : text.slice(colon + 1).trim();
  const counts = texts('count');
  const line: EntryLine = {
    words: texts('name').join(' '),
    count: counts[0] === undefined ? null : readCount(counts[0]),
    parts: texts('part').flatMap(readParts),
    description: description === '' ? null : description,
    uncertain: pieces.some((piece) => piece.role === 'unsure'),
    pieces,
    problem: null,
  };
  return { ...line, problem: problemOf(text, line) };
}

function headPieces(head: string): Piece[] {
  const tokens = [...head.matchAll(TOKEN)].flatMap((found) => split(found[0], found.index));
  const isName = (token: Piece) => token.role === 'name';
  const first = tokens.findIndex(isName);
  const last = tokens.findLastIndex(isName);
  const pieces: Piece[] = [];
  let at = 0;
  tokens.forEach((token, index) => {
    if (token.start > at) pieces.push({ start: at, end: token.start, role: 'space' });
    const inside = index > first && index < last;
    // A question mark between two name words is the observer's punctuation, not a sign of doubt.
    pieces.push(inside && token.role !== 'space' ? { ...token, role: 'name' } : token);
    at = token.end;
  });
  if (at < head.length) pieces.push({ start: at, end: head.length, role: 'space' });
  return rejoined(pieces);
}

/** A word's own pieces: `tuf12?` is a name, a count and a doubt. */
function split(token: string, start: number): Piece[] {
  const marks = /\?*$/.exec(token)?.[0].length ?? 0;
  const core = token.slice(0, token.length - marks);
  const end = start + core.length;
  const pieces: Piece[] = [];
  const glued = GLUED.exec(core);
  if (glued?.[1] !== undefined && glued[1].length > 1) {
    const seam = start + glued[1].length;
    pieces.push({ start, end: seam, role: 'name' }, { start: seam, end, role: 'count' });
  } else if (core !== '') pieces.push({ start, end, role: roleOf(core) });
  if (marks > 0) pieces.push({ start: end, end: end + marks, role: 'unsure' });
  return pieces;
}

function roleOf(core: string): Role {
  if (readCount(core) || TOO_MANY.test(core)) return 'count';
  return PARTS.test(core) ? 'part' : 'name';
}

/** Name pieces that touch belong to one word again: `post14 gate` keeps `post14` whole. */
function rejoined(pieces: readonly Piece[]): Piece[] {
  const joined: Piece[] = [];
  for (const piece of pieces) {
    const before = joined.at(-1);
    if (before?.role === 'name' && piece.role === 'name' && before.end === piece.start)
      before.end = piece.end;
    else joined.push({ ...piece });
  }
  return joined;
}

function readParts(text: string): CountPart[] {
  return [...text.matchAll(ONE_PART)].map(([, digits, letter]) => ({
    value: Number(digits),
    letter: (letter ?? 'a').toLowerCase() as PartLetter,
  }));
}

function problemOf(text: string, line: EntryLine): EntryLine['problem'] {
  const counts = line.pieces.filter((piece) => piece.role === 'count');
  const [one, two] = counts.map((piece) => text.slice(piece.start, piece.end));
  const tooMany = counts.find((piece) => TOO_MANY.test(text.slice(piece.start, piece.end)));
  if (tooMany) return { words: TOO_HIGH, at: tooMany.end };
  if (one !== undefined && two !== undefined)
    return { words: `Two counts, ${one} and ${two}: keep one.`, at: counts[1]?.end ?? text.length };
  const total = partsTotal(line.parts);
  const most = line.count ? mostOf(line.count) : null;
  const at = line.pieces.findLast((piece) => piece.role === 'part')?.end ?? text.length;
  if (most !== null && total > most)
    return { words: `The parts add up to ${total}, more than the count of ${most}.`, at };
  if (total > MOST) return { words: `The parts add up to ${total}. ${TOO_HIGH}`, at };
  return null;
}

function partsTotal(parts: readonly CountPart[]): number {
  return parts.reduce((sum, part) => sum + part.value, 0);
}

/**
 * The count that a line stands for: the one typed, else the sum of its parts, else 1 for what is
 * counted one by one and `present` for what is not.
 */
export function countOf(line: EntryLine, countedSingly: boolean): Count {
  if (line.count) return line.count;
  if (line.parts.length > 0) return { kind: 'exact', value: partsTotal(line.parts) };
  return countedSingly ? { kind: 'exact', value: 1 } : { kind: 'present' };
}

/** The line with its count one group size up or down; the same line where there is no such step. */
export function stepLine(
  text: string,
  direction: 1 | -1,
  countedSingly: boolean,
  sizes: readonly number[] = GROUP_SIZES,
): string {
  const line = readEntryLine(text);
  const now = countOf(line, countedSingly);
  const next = stepCount(now, direction, sizes);
  if (next === now) return text;
  const typed = line.pieces.find((piece) => piece.role === 'count');
  const at = typed?.start ?? line.pieces.findLast((piece) => piece.role === 'name')?.end ?? 0;
  const gap = typed || at === 0 ? '' : ' ';
  const behind = !typed && at === 0 && text !== '' ? ' ' : '';
  const stepped = `${text.slice(0, at)}${gap}${countText(next)}${behind}${text.slice(typed?.end ?? at)}`;
  // Behind a lone ~ the number would take it along, out of the name.
  return readEntryLine(stepped).words === line.words ? stepped : text;
}
