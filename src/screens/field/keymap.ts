import { GROUP_SIZES } from '../../visit/count.ts';
import { paused } from '../../visit/effort.ts';
import { nextInWords } from '../../visit/update.ts';
import { BOARD_KEYS, stepKey } from '../board/board-keys.ts';
import type { NamedKey } from '../keyboard.ts';
import type { Mode, Session } from './session.ts';

/** Everything that a key can do on the Field screen besides editing the line. */
export type ActionName =
  | 'log'
  | 'menu'
  | 'back'
  | 'next'
  | 'previous'
  | 'more'
  | 'fewer'
  | 'page up'
  | 'page down'
  | 'undo'
  | 'redo'
  | 'change'
  | 'strike'
  | 'place'
  | 'weather'
  | 'description'
  | 'pause'
  | 'end'
  | 'elsewhere'
  | 'board'
  | 'passing'
  | 'time'
  | 'stroke'
  | 'step'
  | 'flock'
  | 'add'
  | 'lay'
  | 'turn'
  | 'letter'
  | 'lay anew'
  | 'put'
  | 'about'
  | 'at least'
  | 'help'
  | 'quit'
  | 'take'
  | 'save'
  | 'answer'
  | 'yes'
  | 'no'
  | 'unsaid'
  | 'stop'
  | 'suspend'
  | 'redraw';

/** One key in one place: what it does, in words for the hint line and the help page. */
export interface Binding {
  at: Mode['at'] | 'anywhere';
  key: NamedKey | { letter: string } | { range: string; fits(text: string): boolean };
  action: ActionName;
  words: string;
  /** Shorter words for the hint line, where keys that share them stand together. */
  hint?: string;
  /** The reason why the key does nothing now; null when it works. */
  unless?: (session: Session) => string | null;
  /** Left out of the menu while this is false; the help page has it. */
  shown?: (session: Session) => boolean;
  /** Left out of the hint line; the help page has it. */
  quiet?: boolean;
}

const noEntries = (session: Session) =>
  session.visit.entries.length === 0 ? 'There is no entry yet.' : null;
const nothingTo = (way: 'undo' | 'redo') => (session: Session) =>
  nextInWords(session.visit, way) === null ? `There is nothing to ${way}.` : null;

const unsaved = ({ saved }: Session) => saved.failure !== null;

/** What changes no visit works on one that can only be read, too. */
const READING: ReadonlySet<ActionName> = new Set(['elsewhere', 'board', 'help', 'quit']);

function unlessReadOnly(binding: Binding): Binding {
  if (READING.has(binding.action)) return binding;
  return { ...binding, unless: (session) => session.readOnly ?? binding.unless?.(session) ?? null };
}

const ACTIONS: readonly Binding[] = [
  { at: 'menu', key: { letter: 'u' }, action: 'undo', words: 'undo', unless: nothingTo('undo') },
  { at: 'menu', key: { letter: 'r' }, action: 'redo', words: 'redo', unless: nothingTo('redo') },
  {
    at: 'menu',
    key: { letter: 'c' },
    action: 'change',
    words: 'change an entry',
    unless: noEntries,
  },
  {
    at: 'menu',
    key: { letter: 'x' },
    action: 'strike',
    words: 'strike out or bring back',
    unless: noEntries,
  },
  { at: 'menu', key: { letter: 'b' }, action: 'board', words: 'board for tallying' },
  {
    at: 'menu',
    key: { letter: 'f' },
    action: 'passing',
    words: 'birds flying past',
    shown: ({ board }) => board !== null,
    unless: ({ board }) => (board ? null : 'That is counted on the board: Esc b opens it.'),
  },
  { at: 'menu', key: { letter: 'p' }, action: 'place', words: 'place' },
  { at: 'menu', key: { letter: 't' }, action: 'time', words: 'time seen' },
  { at: 'menu', key: { letter: 'w' }, action: 'weather', words: 'weather' },
  { at: 'menu', key: { letter: 'd' }, action: 'description', words: 'describe the visit' },
  { at: 'menu', key: { letter: 'z' }, action: 'pause', words: 'pause or go on' },
  { at: 'menu', key: { letter: 'e' }, action: 'end', words: 'end the visit' },
  {
    at: 'menu',
    key: { letter: 'o' },
    action: 'elsewhere',
    words: 'save elsewhere',
    shown: unsaved,
    unless: (session) => (unsaved(session) ? null : 'All is saved where it belongs.'),
  },
  { at: 'menu', key: { letter: 'h' }, action: 'help', words: 'help' },
  { at: 'menu', key: { letter: 'q' }, action: 'quit', words: 'quit, go on later' },
];

/** The menu that Esc opens: each action by one letter, or by its word behind a slash. */
export const MENU: readonly Binding[] = ACTIONS.map(unlessReadOnly);

/** The actions that the menu shows now. */
export function menuNow(session: Session): Binding[] {
  return MENU.filter(({ shown }) => shown?.(session) ?? true);
}

const CHOOSE = (at: Mode['at']): Binding[] => [
  { at, key: 'up', action: 'previous', words: 'choose' },
  { at, key: 'down', action: 'next', words: 'choose' },
];
const BACK = (at: Mode['at']): Binding => ({ at, key: 'escape', action: 'back', words: 'back' });

/** The table that dispatches keys and from which the hint line and the help page are drawn; with the usual group sizes. */
export const KEYMAP: readonly Binding[] = [
  { at: 'line', key: 'enter', action: 'log', words: 'log the line', hint: 'log' },
  { at: 'line', key: 'escape', action: 'menu', words: 'menu' },
  ...CHOOSE('line'),
  { at: 'line', key: 'left', action: 'fewer', words: 'one group size fewer', hint: 'count' },
  { at: 'line', key: 'right', action: 'more', words: 'one group size more', hint: 'count' },
  ...MENU,
  ...BOARD_KEYS,
  BACK('menu'),
  { at: 'change', key: 'enter', action: 'save', words: 'keep the change' },
  BACK('change'),
  ...CHOOSE('change'),
  { at: 'pick', key: 'enter', action: 'take', words: 'take this entry' },
  ...CHOOSE('pick'),
  BACK('pick'),
  { at: 'ask', key: 'enter', action: 'answer', words: 'keep this' },
  ...CHOOSE('ask'),
  BACK('ask'),
  {
    at: 'complete',
    key: { letter: 'y' },
    action: 'yes',
    words: 'yes, everything noticed',
    hint: 'yes',
  },
  {
    at: 'complete',
    key: { letter: 'n' },
    action: 'no',
    words: 'no, some was left out',
    hint: 'no',
  },
  { at: 'complete', key: 'enter', action: 'unsaid', words: 'leave it open' },
  BACK('complete'),
  { at: 'ended', key: 'enter', action: 'quit', words: 'leave' },
  { at: 'ended', key: { letter: 'q' }, action: 'quit', words: 'leave' },
  { at: 'ended', key: { letter: 'u' }, action: 'undo', words: 'take the end back' },
  { at: 'ended', key: 'escape', action: 'undo', words: 'take the end back' },
  ...CHOOSE('help').map((binding) => ({ ...binding, words: 'scroll' })),
  { at: 'help', key: 'page up', action: 'page up', words: 'a page', hint: 'scroll' },
  { at: 'help', key: 'page down', action: 'page down', words: 'a page', hint: 'scroll' },
  BACK('help'),
  {
    at: 'anywhere',
    key: 'ctrl-c',
    action: 'stop',
    words: 'quit at once; all is saved',
    quiet: true,
  },
  {
    at: 'anywhere',
    key: 'ctrl-z',
    action: 'suspend',
    words: 'back to the shell for a while',
    quiet: true,
  },
  { at: 'anywhere', key: 'ctrl-l', action: 'redraw', words: 'draw the screen again', quiet: true },
];

/** The table for these group sizes: on the Board each has a digit. */
export function keymapOf(groupSizes: readonly number[]): readonly Binding[] {
  if (groupSizes === GROUP_SIZES) return KEYMAP;
  return KEYMAP.map((binding) => (binding.action === 'step' ? stepKey(groupSizes) : binding));
}

/** A key's name as it is printed. */
export function keyWords(key: Binding['key']): string {
  if (typeof key !== 'string') return 'letter' in key ? key.letter : key.range;
  if (key === 'escape') return 'Esc';
  return key.replace(/(?<![a-z])[a-z]/g, (letter) => letter.toUpperCase());
}

/** The words of a menu action now: pausing and going on share a key. */
export function wordsNow(binding: Binding, session: Session): string {
  if (binding.action === 'board') return session.board ? 'entry line' : 'board';
  if (binding.action === 'pause') return paused(session.visit.effort) ? 'go on' : 'pause';
  return binding.words;
}
