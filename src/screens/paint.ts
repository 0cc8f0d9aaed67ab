import cliTruncate from 'cli-truncate';
import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';

/** Columns and rows of a window. */
export interface Size {
  columns: number;
  rows: number;
}

/** How a stretch of text is shown; what it means also stands in its letters. */
export type Look = 'plain' | 'strong' | 'quiet' | 'threat' | 'problem' | 'chosen' | 'struck';

export interface Span {
  text: string;
  look: Look;
}

/** One row of the screen, never wider than the frame it was made for. */
export type Row = readonly Span[];

export function span(text: string, look: Look = 'plain'): Span {
  return { text, look };
}

/** Text that can't harm the terminal: control and direction characters show as a middle dot. */
export function harmless(text: string): string {
  return text.replace(/[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu, '·');
}

export function widthOf(text: string): number {
  return stringWidth(text);
}

/** Cuts text to a width in columns, with … for what is left out. */
export function cut(text: string, width: number): string {
  let room = width;
  // Marks that take a column of their own are counted once more by the truncation.
  for (; room > 0; room -= 1) {
    const shown = cliTruncate(harmless(text), room);
    if (widthOf(shown) <= width) return shown;
  }
  return '';
}

/** Cuts or fills text to exactly a width in columns; numbers stand right. */
export function cell(text: string, width: number, side: 'left' | 'right' = 'left'): string {
  const shown = cut(text, width);
  const gap = ' '.repeat(Math.max(0, width - widthOf(shown)));
  return side === 'left' ? shown + gap : gap + shown;
}

/** Words wrapped to a width, no more than `most` rows; the last is cut. */
export function wrapped(text: string, width: number, most: number): string[] {
  const rows = wrapAnsi(harmless(text), width, { hard: true, trim: true }).split('\n');
  if (rows.length <= most) return rows;
  return [...rows.slice(0, most - 1), cut(rows.slice(most - 1).join(' '), width)];
}

/** As many parts as fit a width, whole and in their order; others are left out. */
export function fitting(parts: readonly string[], gap: string, width: number): string {
  const shown: string[] = [];
  for (const part of parts)
    if (part !== '' && widthOf([...shown, part].join(gap)) <= width) shown.push(part);
  return shown.join(gap);
}

/** Left and right text on one row; the left one gives way. */
export function ends(left: string, right: string, width: number): string {
  const room = Math.max(0, width - widthOf(right) - 1);
  return `${cell(left, room)} ${cut(right, width)}`;
}

/** A rule across the screen with words in it. */
export function rule(words: string, width: number): string {
  const shown = cut(words, width - 4);
  return `── ${shown} ${'─'.repeat(Math.max(0, width - widthOf(shown) - 4))}`;
}

export function rowText(row: Row): string {
  return row.map((each) => each.text).join('');
}
