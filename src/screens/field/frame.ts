import { boardLine, boardRows } from '../board/board-rows.ts';
import { cut, fitting, type Row, rowText, type Size, span, widthOf } from '../paint.ts';
import { choiceRows, notebookWords } from './choice-rows.ts';
import { entryRows } from './entry-rows.ts';
import { askRows, hintRow, messageRows } from './foot.ts';
import { headRows } from './head.ts';
import { helpRows } from './help.ts';
import { keymapOf } from './keymap.ts';
import { type Mode, type Session, typedLine } from './session.ts';

/** Rows for a terminal of this size, and where its cursor stands (from 0), if anything is typed. */
export interface Frame {
  rows: Row[];
  cursor: { x: number; y: number } | null;
}

/** The least size that shows everything; below it typing still logs. */
export const FULL_SIZE: Size = { columns: 50, rows: 16 };

/** The whole screen as rows: never more than the terminal has, never wider. */
export function fieldFrame(session: Session, size: Size): Frame {
  if (size.columns < FULL_SIZE.columns || size.rows < FULL_SIZE.rows)
    return smallFrame(session, size);
  if (session.mode.at === 'help') return helpFrame(session, session.mode.from, size);
  const width = size.columns;
  const head = headRows(session, width);
  const typed = lineRow(session, width);
  const foot = [
    ...messageRows(session, width),
    ...askRows(session, width),
    hintRow(session, width),
  ];
  if (session.board && BOARD_BELOW.has(session.mode.at))
    return boardFrame(session, { head, foot }, size);
  const room = size.rows - head.length - 1 - foot.length;
  const choices = choiceRows(session, width, Math.min(9, room - 3));
  const entries = entryRows(session, width, room - choices.length);
  const gap = Array.from({ length: room - choices.length - entries.length }, (): Row => []);
  return {
    rows: [...head, typed.row, ...choices, ...entries, ...gap, ...foot],
    cursor: typed.cursor === null ? null : { x: typed.cursor, y: head.length },
  };
}

/** While these are asked the Board stays in sight. */
const BOARD_BELOW: ReadonlySet<Mode['at']> = new Set(['board', 'menu', 'letter']);

function boardFrame(
  session: Session,
  { head, foot }: { head: Row[]; foot: Row[] },
  size: Size,
): Frame {
  const room = size.rows - head.length - foot.length;
  const board = boardRows(session, size.columns, room).slice(0, room);
  const gap = Array.from({ length: room - board.length }, (): Row => []);
  return { rows: [...head, ...board, ...gap, ...foot], cursor: null };
}

/** The mode in words: what Enter will do with what is typed. */
function promptOf(mode: Mode): string {
  switch (mode.at) {
    case 'change':
      return `change ${mode.number}> `;
    case 'put':
      return mode.letter === null ? 'species> ' : `on ${mode.letter}> `;
    case 'board':
    case 'letter':
      return 'board> ';
    case 'pick':
      return `${mode.to} which> `;
    case 'ask':
      return `${mode.question}> `;
    case 'complete':
      return 'all logged? y/n> ';
    case 'ended':
      return 'ended> ';
    default:
      return 'log> ';
  }
}

/** The line being typed; a long one is cut so that the cursor stays in sight. */
function lineRow(session: Session, width: number): { row: Row; cursor: number | null } {
  const { mode } = session;
  const prompt = promptOf(mode);
  if (mode.at === 'pick' || mode.at === 'complete' || mode.at === 'ended') {
    const typed = mode.at === 'pick' ? String(mode.number) : '';
    return { row: [span(prompt, 'strong'), span(typed)], cursor: widthOf(prompt + typed) };
  }
  const { text, cursor } = typedLine(session);
  const room = width - widthOf(prompt) - 1;
  let from = 0;
  while (widthOf(text.slice(from, cursor)) > room) from += 1;
  const shown = cut(text.slice(from), room + 1);
  const idle = text === '' && mode.at === 'line';
  return {
    row: [
      span(prompt, 'strong'),
      span(shown),
      ...(idle ? [span(`  ${cut(notebookWords(session.known), room - 2)}`, 'quiet')] : []),
    ],
    cursor: mode.at === 'menu' ? null : widthOf(prompt) + widthOf(text.slice(from, cursor)),
  };
}

function helpFrame(session: Session, from: number, size: Size): Frame {
  const all = helpRows(size.columns, keymapOf(session.groupSizes));
  const height = size.rows - 1;
  const start = Math.max(0, Math.min(from, all.length - height));
  const rows = all.slice(start, start + height);
  while (rows.length < height) rows.push([]);
  return { rows: [...rows, hintRow(session, size.columns)], cursor: null };
}

/** Too small for the table: the line, what is asked, the first suggestion and the latest entries. */
function smallFrame(session: Session, size: Size): Frame {
  if (session.mode.at === 'help') return helpFrame(session, session.mode.from, size);
  const width = Math.max(1, size.columns);
  const onBoard = BOARD_BELOW.has(session.mode.at) && session.board !== null;
  const typed = onBoard
    ? { row: boardLine(session, width), cursor: null }
    : lineRow(session, width);
  const top: Row[] = [
    typed.row,
    ...choiceRows(session, width, 1),
    ...messageRows(session, width).slice(0, 2),
    ...askRows(session, width),
  ];
  const foot: Row = [span(cut(smallWords(width), width), 'quiet')];
  const room = size.rows - top.length - 1;
  // The rule above the entries is left out: each row counts here.
  const entries = entryRows(session, FULL_SIZE.columns, Math.max(0, room) + 1).slice(1);
  const narrowed = entries.map((row): Row => [span(cut(rowText(row).trim(), width))]);
  const rows = [...top, ...narrowed].slice(0, Math.max(1, size.rows - 1));
  return {
    rows: size.rows > 1 ? [...rows, foot] : rows,
    cursor: typed.cursor === null ? null : { x: typed.cursor, y: 0 },
  };
}

function smallWords(width: number): string {
  const full = `${FULL_SIZE.columns}x${FULL_SIZE.rows}`;
  return fitting([`Small: ${full} shows all.`, 'Typing logs.'], ' ', width);
}
