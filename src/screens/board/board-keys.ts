import { GROUP_SIZES } from '../../visit/count.ts';
import { nextInWords } from '../../visit/update.ts';
import type { Binding } from '../field/keymap.ts';
import type { Session } from '../field/session.ts';

const unlessReadOnly = ({ readOnly }: Session) => readOnly;

/** The digits, one for each group size. */
export function stepKey(groupSizes: readonly number[]): Binding {
  return {
    at: 'board',
    key: {
      range: `1-${groupSizes.length}`,
      fits: (text) => /^[1-9]$/.test(text) && Number(text) <= groupSizes.length,
    },
    action: 'step',
    words: `how many a stroke counts: ${groupSizes.join(' ')}`,
    hint: 'step',
  };
}

/** Keys of the Board: letters are species, digits are group sizes, the rest stands around them. */
export const BOARD_KEYS: readonly Binding[] = [
  {
    at: 'board',
    key: { range: 'a-z', fits: (text) => /^[a-z]$/.test(text) },
    action: 'stroke',
    words: 'so many more of the species on that letter',
    hint: 'more',
  },
  {
    at: 'board',
    key: { range: 'A-Z', fits: (text) => /^[A-Z]$/.test(text) },
    action: 'stroke',
    words: 'with Shift: so many fewer in this flock',
    hint: 'fewer',
  },
  stepKey(GROUP_SIZES),
  // In a narrow window the hint line has room for the first of them only.
  { at: 'board', key: 'escape', action: 'menu', words: 'menu' },
  {
    at: 'board',
    key: { range: 'Space', fits: (text) => text === ' ' },
    action: 'flock',
    words: 'a fresh flock, with a time of its own',
    hint: 'flock',
  },
  { at: 'board', key: 'enter', action: 'add', words: 'another species, by its name', hint: 'add' },
  {
    at: 'board',
    key: { letter: '.' },
    action: 'lay',
    words: 'and a letter: another species on that letter, or none',
    hint: 'letter',
  },
  {
    at: 'board',
    key: 'backspace',
    action: 'undo',
    words: 'take the last stroke back',
    hint: 'undo',
    unless: (session) =>
      session.readOnly ??
      (nextInWords(session.visit, 'undo') === null ? 'There is nothing to undo.' : null),
  },
  {
    at: 'board',
    key: { letter: ',' },
    action: 'turn',
    words: 'and a letter: flocks add up, or the highest counts',
    hint: 'sum',
    unless: unlessReadOnly,
  },
  {
    at: 'board',
    key: { letter: '~' },
    action: 'about',
    words: "the last species' flock is about so many",
    hint: 'about',
    unless: unlessReadOnly,
  },
  {
    at: 'board',
    key: { letter: '+' },
    action: 'at least',
    words: "the last species' flock is at least so many",
    hint: 'at least',
    unless: unlessReadOnly,
  },
  {
    at: 'put',
    key: 'enter',
    action: 'put',
    words: 'put it on the letter, with a count log it too',
    hint: 'take',
  },
  { at: 'put', key: 'up', action: 'previous', words: 'choose' },
  { at: 'put', key: 'down', action: 'next', words: 'choose' },
  { at: 'put', key: 'escape', action: 'back', words: 'back' },
  {
    at: 'letter',
    key: { range: 'a-z', fits: (text) => /^[a-z]$/i.test(text) },
    action: 'letter',
    words: 'that one',
  },
  {
    at: 'letter',
    key: { letter: '0' },
    action: 'lay anew',
    words: 'behind a point: all letters anew, for this place and season',
    hint: 'all anew',
    unless: ({ mode }) =>
      mode.at === 'letter' && mode.to === 'turn' ? 'Only a letter says whose sum.' : null,
  },
  { at: 'letter', key: 'escape', action: 'back', words: 'back' },
];
