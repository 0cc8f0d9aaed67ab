import { emitKeypressEvents } from 'node:readline';
import { PassThrough } from 'node:stream';

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

const NAMES: Record<string, NamedKey> = {
  return: 'enter',
  enter: 'enter',
  escape: 'escape',
  backspace: 'backspace',
  delete: 'delete',
  tab: 'tab',
  up: 'up',
  down: 'down',
  left: 'left',
  right: 'right',
  home: 'home',
  end: 'end',
  pageup: 'page up',
  pagedown: 'page down',
};
const CONTROL: Record<string, NamedKey> = {
  c: 'ctrl-c',
  h: 'backspace',
  j: 'enter',
  l: 'ctrl-l',
  m: 'enter',
  u: 'ctrl-u',
  z: 'ctrl-z',
};

interface Keypress {
  sequence?: string;
  name?: string;
  ctrl?: boolean;
  meta?: boolean;
}

/** How long a lone Esc byte may wait for the rest of a sequence, in milliseconds. */
const ESCAPE_WAIT = 25;

/**
 * Cuts the bytes of a terminal into keys, one call of `onKey` each, however they arrive: a burst in
 * one read, or a sequence cut in two. A pasted stretch comes as one text with its line ends as gaps,
 * so that a paste never runs as commands. Esc and a letter sent as one (Alt, or quick fingers) come
 * as two keys. Returns the function to hand the bytes to.
 */
export function keyboard(onKey: (key: Key) => void): (bytes: Buffer | string) => void {
  const stream = new PassThrough();
  let pasted: string | null = null;
  // Node's own decoder; the second argument is read for the timeout alone.
  emitKeypressEvents(stream, { escapeCodeTimeout: ESCAPE_WAIT } as never);
  stream.on('keypress', (text: string | undefined, press: Keypress) => {
    if (press.name === 'paste-start') pasted = '';
    else if (press.name === 'paste-end') {
      const whole = (pasted ?? '').replace(/[\r\n\t]+/g, ' ');
      pasted = null;
      if (whole !== '') onKey({ name: 'text', text: whole });
    } else if (pasted !== null) pasted += text ?? press.sequence ?? '';
    else for (const key of keysOf(text, press)) onKey(key);
  });
  return (bytes) => stream.write(bytes);
}

function keysOf(text: string | undefined, press: Keypress): Key[] {
  const named = press.name === undefined ? undefined : NAMES[press.name];
  const sequence = press.sequence ?? text ?? '';
  if (press.meta === true && sequence.startsWith('\u001b')) {
    const rest = sequence.slice(1);
    // Node marks a lone Esc, whose wait has run out, as meta too.
    if (press.name === 'escape')
      return rest === '' ? [{ name: 'escape' }] : [{ name: 'escape' }, { name: 'escape' }];
    if (!/^[[O]./.test(rest)) return [{ name: 'escape' }, ...keysOf(rest, plainPress(press, rest))];
  }
  if (press.ctrl === true) {
    const control = press.name === undefined ? undefined : CONTROL[press.name];
    return control
      ? [{ name: control }]
      : named && sequence.startsWith('\u001b')
        ? [{ name: named }]
        : [];
  }
  if (named) return [{ name: named }];
  const typed = text ?? sequence;
  return typed === '' || /\p{Cc}/u.test(typed) ? [] : [{ name: 'text', text: typed }];
}

function plainPress(press: Keypress, sequence: string): Keypress {
  return {
    ...(press.name === undefined ? {} : { name: press.name }),
    ctrl: press.ctrl ?? false,
    meta: false,
    sequence,
  };
}
