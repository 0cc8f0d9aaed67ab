import type { Key } from './keyboard.ts';

/** A line being typed; the cursor stands before the character at that place (UTF-16 code units). */
export interface Line {
  text: string;
  cursor: number;
}

export const EMPTY_LINE: Line = { text: '', cursor: 0 };

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** A line with the cursor behind its last character. */
export function lineOf(text: string): Line {
  return { text, cursor: text.length };
}

/** The line after an editing key; the same line where the key does nothing to it. */
export function editLine(line: Line, key: Key): Line {
  const { text, cursor } = line;
  switch (key.name) {
    case 'text':
      return {
        text: text.slice(0, cursor) + key.text + text.slice(cursor),
        cursor: cursor + key.text.length,
      };
    case 'backspace': {
      const from = before(text, cursor);
      return from === cursor
        ? line
        : { text: text.slice(0, from) + text.slice(cursor), cursor: from };
    }
    case 'delete': {
      const to = after(text, cursor);
      return to === cursor ? line : { text: text.slice(0, cursor) + text.slice(to), cursor };
    }
    case 'ctrl-u':
      return text === '' ? line : EMPTY_LINE;
    case 'left':
      return { text, cursor: before(text, cursor) };
    case 'right':
      return { text, cursor: after(text, cursor) };
    case 'home':
      return { text, cursor: 0 };
    case 'end':
      return lineOf(text);
    default:
      return line;
  }
}

/** Where the character (grapheme) before the cursor begins: an accent goes with its letter. */
function before(text: string, cursor: number): number {
  return [...graphemes.segment(text.slice(0, cursor))].at(-1)?.index ?? cursor;
}

function after(text: string, cursor: number): number {
  const [next] = graphemes.segment(text.slice(cursor));
  return next ? cursor + next.segment.length : cursor;
}
