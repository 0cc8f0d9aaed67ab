/** Keys that have a name; everything else that is typed is text. */
export type NamedKey =
  | 'enter'
  | 'escape'
  | 'backspace'
  | 'delete'
  | 'tab'
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'home'
  | 'end'
  | 'page up'
  | 'page down'
  | 'ctrl-c'
  | 'ctrl-l'
  | 'ctrl-u'
  | 'ctrl-z';

export type Key = { name: 'text'; text: string } | { name: NamedKey };

const ESC = '\u001b';
const PASTE_START = `${ESC}[200~`;
const PASTE_END = `${ESC}[201~`;

/** Control characters, by their letter with Ctrl; both bytes that Backspace is sent as. */
const CONTROL: Record<string, NamedKey> = {
  '\u0003': 'ctrl-c',
  '\b': 'backspace',
  '\t': 'tab',
  '\n': 'enter',
  '\f': 'ctrl-l',
  '\r': 'enter',
  '\u0015': 'ctrl-u',
  '\u001a': 'ctrl-z',
  '\u007f': 'backspace',
};
/** Last letters of cursor keys, behind `Esc [` or `Esc O` (ECMA-48; DEC's application mode). */
const LETTERS: Record<string, NamedKey> = {
  A: 'up',
  B: 'down',
  C: 'right',
  D: 'left',
  H: 'home',
  F: 'end',
};
const KEYPAD_ENTER = 'M';
/** Numbers before `~` of the editing keys, as DEC's and Linux's terminals send them. */
const NUMBERS: Record<string, NamedKey> = {
  1: 'home',
  3: 'delete',
  4: 'end',
  5: 'page up',
  6: 'page down',
  7: 'home',
  8: 'end',
};

/** A control sequence of ECMA-48: parameters, intermediate bytes, a final one. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: a terminal's keys are control characters
const SEQUENCE = /^\u001b(?:\[([0-?]*)[ -/]*([@-~])|O([A-Za-z]))/;
// biome-ignore lint/suspicious/noControlCharactersInRegex: likewise
const UNFINISHED = /^\u001b(?:$|\[[0-?]*[ -/]*$|O$)/;

/** Keys cut from what a terminal sent, and what may still be the beginning of one. */
export interface Cut {
  keys: Key[];
  rest: string;
}

/**
 * Cuts text from a terminal into its keys, however it arrives: a burst in one read, or a sequence cut
 * in two, whose first part is then the rest. With `ended` nothing more is waited for: a lone Esc is
 * the key. Esc and another key sent as one (Alt, or quick fingers) are two keys. A pasted stretch is
 * one text with its line ends as gaps, so that a paste never runs as commands. Sequences of
 * no key of ours (a mouse, a report) are passed over.
 */
export function cutKeys(text: string, ended: boolean): Cut {
  const keys: Key[] = [];
  let rest = text;
  while (rest !== '') {
    if (!ended && mayGoOn(rest)) break;
    const { key, length } = rest.startsWith(PASTE_START) ? paste(rest) : oneKey(rest);
    if (key) keys.push(key);
    rest = rest.slice(length);
  }
  return { keys, rest };
}

/** How long to wait for the rest of a key before it is taken as it is, in milliseconds. */
export function waitFor(rest: string): number {
  return rest.startsWith(PASTE_START) ? 1000 : 25;
}

function mayGoOn(text: string): boolean {
  return text.startsWith(PASTE_START) ? !text.includes(PASTE_END) : UNFINISHED.test(text);
}

interface One {
  key: Key | undefined;
  length: number;
}

function paste(text: string): One {
  const end = text.indexOf(PASTE_END);
  const inside = text.slice(PASTE_START.length, end === -1 ? text.length : end);
  const line = inside
    .replaceAll(PASTE_START, '')
    .replace(/[\r\n\t]+/g, ' ')
    .replace(/\p{Cc}+/gu, '');
  const length = end === -1 ? text.length : end + PASTE_END.length;
  return { key: line === '' ? undefined : { name: 'text', text: line }, length };
}

function oneKey(text: string): One {
  const sequence = SEQUENCE.exec(text);
  if (sequence) {
    const [whole, parameters = '', final = '', letter = ''] = sequence;
    const name = letter === KEYPAD_ENTER ? 'enter' : nameOf(parameters, final || letter);
    return { key: name && { name }, length: whole.length };
  }
  const [character = ''] = text;
  if (character === ESC) return { key: { name: 'escape' }, length: 1 };
  const control = CONTROL[character];
  if (control) return { key: { name: control }, length: 1 };
  const isText = !/\p{Cc}/u.test(character);
  return { key: isText ? { name: 'text', text: character } : undefined, length: character.length };
}

/** A key's name; what stands behind the first parameter tells of Shift and the like. */
function nameOf(parameters: string, final: string): NamedKey | undefined {
  // A private sequence (a mouse with `<`, a report with `?`) is no key.
  if (!/^[\d;]*$/.test(parameters)) return undefined;
  return final === '~' ? NUMBERS[parameters.split(';')[0] ?? ''] : LETTERS[final];
}
