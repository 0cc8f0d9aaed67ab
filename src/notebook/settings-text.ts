import {
  type Document,
  isMap,
  isNode,
  isScalar,
  LineCounter,
  type Pair,
  parseDocument,
} from 'yaml';
import { isKey, type Key, readValue, type Values } from './settings-keys.ts';

/** What is wrong in the text; `line` from 1, null where the whole is meant. */
export interface Fault {
  line: number | null;
  words: string;
}

/** What a text of settings says. */
export interface SettingsText {
  values: Partial<Values>;
  lines: Partial<Record<Key, number>>;
  /** Keys that this version does not know. */
  unknown: { key: string; line: number }[];
  faults: Fault[];
  /** It can be changed: what is wrong in it is at most single values. */
  whole: boolean;
}

/** The parser's commonest faults in plain words. */
const FAULTS: Record<string, string> = {
  TAB_AS_INDENT: 'a tab stands where spaces belong: write spaces',
  DUPLICATE_KEY: 'this key stands twice: keep one of them',
  MISSING_CHAR:
    'here or before, a quotation mark or a bracket is not closed, or a comma or a colon is missing',
  BAD_INDENT: 'this line begins too far left or right, or a bracket before it is not closed',
  BAD_ALIAS: 'a name behind a * or & is not understood: put quotation marks around the value',
  MULTIPLE_DOCS: 'a line --- begins a second text: take it away',
};
const NOT_UNDERSTOOD =
  'this line is not understood: write a key, a colon, a space and a value, such as group-sizes: [1, 5, 10]; a value with signs such as : or @ stands in quotation marks';

/** Reads the settings of a text; nothing that it holds throws. */
export function readSettingsText(text: string): SettingsText {
  const read: SettingsText = { values: {}, lines: {}, unknown: [], faults: [], whole: false };
  const lines = new LineCounter();
  const lineAt = (at: number | undefined) => lines.linePos(at ?? 0).line;
  const document = parsed(text, lines);
  if (document === null)
    return { ...read, faults: [{ line: null, words: 'lists lie too deep in one another' }] };
  const [error] = document.errors;
  if (error)
    return {
      ...read,
      faults: [{ line: lineAt(error.pos[0]), words: FAULTS[error.code] ?? NOT_UNDERSTOOD }],
    };
  const { contents } = document;
  if (contents === null) return { ...read, whole: true };
  if (!isMap(contents))
    return { ...read, faults: [{ line: lineAt(contents.range?.[0]), words: NOT_UNDERSTOOD }] };
  for (const pair of contents.items) take(read, document, pair, lineAt);
  return { ...read, whole: true };
}

/** Null where the text nests so deep that the parser can't follow. */
function parsed(text: string, lineCounter: LineCounter): Document.Parsed | null {
  try {
    return parseDocument(text, { lineCounter, prettyErrors: false, logLevel: 'error' });
  } catch {
    return null;
  }
}

function take(
  read: SettingsText,
  document: Document.Parsed,
  { key: node, value }: Pair,
  lineAt: (at: number | undefined) => number,
): void {
  const key = isScalar(node) ? String(node.value) : String(node);
  const line = lineAt((node as { range?: [number] } | null)?.range?.[0]);
  if (!isKey(key)) {
    read.unknown.push({ key, line });
    return;
  }
  read.lines[key] = line;
  const written = plainOf(document, value);
  if ('problem' in written) {
    read.faults.push({ line, words: `${key} ${written.problem}` });
    return;
  }
  const said = readValue(key, written.plain);
  if ('value' in said) Object.assign(read.values, { [key]: said.value });
  else read.faults.push({ line, words: `${key} "${shown(written.plain)}" ${said.problem}` });
}

/** A value as plain data. Aliases that lead nowhere, or multiply without end, make the library throw. */
function plainOf(
  document: Document.Parsed,
  value: unknown,
): { plain: unknown } | { problem: string } {
  try {
    const plain = isNode(value) ? value.toJS(document) : null;
    return plain === null
      ? { problem: 'has no value: write one, or put a # before the line' }
      : { plain };
  } catch {
    return { problem: 'borrows a value (* or &) that can not be found: write the value itself' };
  }
}

const LONGEST = 40;

function shown(written: unknown): string {
  const text = typeof written === 'string' ? written : JSON.stringify(written);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}
