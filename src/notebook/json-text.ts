/** How deep lists and objects may lie in one another: what checks and writes them goes down with them. */
const DEEPEST = 200;

/** The data of a JSON text, or the reason why there are none, with its place in words. */
export function parsedJson(text: string): { data: unknown } | { problem: string } {
  if (text.trim() === '') return { problem: 'the file is empty' };
  if (depthOf(text) > DEEPEST)
    return {
      problem: `it is nested more than ${DEEPEST} levels deep, which no file of Tussock is`,
    };
  try {
    return { data: JSON.parse(text) };
  } catch {
    return { problem: `it is not whole JSON: ${faultWords(text)}` };
  }
}

/** How deep a text goes, by one walk along it, so that it is known before anything is built of it. */
export function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at];
    if (character === '"') at = closingQuote(text, at);
    else if (character === '[' || character === '{') {
      depth += 1;
      deepest = Math.max(deepest, depth);
    } else if (character === ']' || character === '}') depth -= 1;
  }
  return deepest;
}

function closingQuote(text: string, from: number): number {
  let at = from + 1;
  while (at < text.length && text[at] !== '"') at += text[at] === '\\' ? 2 : 1;
  return Math.min(at, text.length);
}

function faultWords(text: string): string {
  const at = faultAt(text) ?? text.length;
  const before = text.slice(0, at);
  const line = before.split('\n').length;
  const column = at - before.lastIndexOf('\n');
  // A number or a word that is cut in two is found at its start.
  const cutOff = /^[-+.\w]{0,30}\s*$/.test(text.slice(at, at + 40));
  return cutOff
    ? `it breaks off in line ${line}`
    : `line ${line}, column ${column} is not understood`;
}

const LITERAL = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[\dA-Fa-f]{4})/y;
const SPACE = /[ \t\n\r]*/y;

/**
 * Where a text stops being JSON (RFC 8259), from 0; its length where it is cut off, null where it is
 * whole. The engine's own messages name the place in some cases only.
 */
export function faultAt(text: string): number | null {
  const open: ('[' | '{')[] = [];
  let expected: 'value' | 'value or end' | 'key' | 'key or end' | 'colon' | 'next' = 'value';
  let at = 0;
  for (;;) {
    at = matchEnd(SPACE, text, at) ?? at;
    const inside = open.at(-1);
    const done = expected === 'next' && inside === undefined;
    if (at >= text.length) return done ? null : text.length;
    const character = text[at];
    const closes = inside === '[' ? ']' : '}';
    if (done) return at;
    if (expected === 'colon') {
      if (character !== ':') return at;
      expected = 'value';
      at += 1;
    } else if (expected === 'next' && character === ',') {
      expected = inside === '[' ? 'value' : 'key';
      at += 1;
    } else if (character === closes && (expected === 'next' || expected.endsWith('or end'))) {
      open.pop();
      expected = 'next';
      at += 1;
    } else if (expected === 'next') return at;
    else if (expected.startsWith('value') && (character === '[' || character === '{')) {
      open.push(character);
      expected = character === '[' ? 'value or end' : 'key or end';
      at += 1;
    } else if (character === '"') {
      const end = stringEnd(text, at);
      if (end.fault !== null) return end.fault;
      expected = expected.startsWith('key') ? 'colon' : 'next';
      at = end.after;
    } else {
      const end = expected.startsWith('value') ? matchEnd(LITERAL, text, at) : null;
      if (end === null) return at;
      expected = 'next';
      at = end;
    }
  }
}

function stringEnd(text: string, from: number): { after: number; fault: number | null } {
  for (let at = from + 1; at < text.length; at += 1) {
    const character = text[at] ?? '';
    if (character === '"') return { after: at + 1, fault: null };
    if (character < ' ') return { after: at, fault: at };
    if (character !== '\\') continue;
    const end = matchEnd(ESCAPE, text, at);
    if (end === null) return { after: at, fault: text.length - at < 6 ? text.length : at };
    at = end - 1;
  }
  return { after: text.length, fault: text.length };
}

function matchEnd(pattern: RegExp, text: string, at: number): number | null {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : null;
}
