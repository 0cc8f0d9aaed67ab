import {
  isCollection,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  type Node,
  parseDocument,
} from 'yaml';
import { KEYS, type Key, SETTINGS, type Values, writtenOf } from './settings-keys.ts';
import { readSettingsText, type SettingsText } from './settings-text.ts';

/** A file of all settings, each with its words and its usual value behind a `#`. */
export function newSettingsText(): string {
  const parts = KEYS.map((key) => `# ${SETTINGS[key].about}\n# ${key}: ${usualText(key)}\n`);
  return [
    '# Settings of this notebook (YAML). A line without # before it is in force.\n',
    ...parts,
  ].join('\n');
}

function usualText(key: Key): string {
  const plain = writtenOf(key, SETTINGS[key].usual);
  return Array.isArray(plain) ? `[${plain.join(', ')}]` : String(plain);
}

/**
 * The text with one setting changed: comments, order and what this version does not know stay. A setting
 * that was not in force gets its line below the one that tells its usual value. Only for a whole text.
 * Throws a sentence where another value in the file is borrowed from this one.
 */
export function changedText<K extends Key>(text: string, key: K, value: Values[K]): string {
  const begun = key in readSettingsText(text).lines ? text : withKey(text, key);
  const document = parseDocument(begun, { logLevel: 'error' });
  const node = document.createNode(writtenOf(key, value));
  const old = document.get(key, true);
  const { kept, left } = keepingComments(old, node);
  document.set(key, kept);
  if (left.length > 0 && isMap(document.contents)) {
    const at = document.contents.items.find((pair) => isScalar(pair.key) && pair.key.value === key);
    if (isScalar(at?.key))
      at.key.commentBefore = [at.key.commentBefore, ...left].filter(Boolean).join('\n');
  }
  try {
    return document.toString({ lineWidth: 0, flowCollectionPadding: false });
  } catch {
    throw new Error(`another line borrows the value of ${key} (& and *): change it by hand`);
  }
}

/** The text with a line for a setting below its usual one, if it has a place of its own there. */
function withKey(text: string, key: Key): string {
  const lines = text.split('\n');
  const usual = lines.findLastIndex((line) => line.startsWith(`# ${key}: `));
  if (usual < 0) return text;
  const placed = lines.toSpliced(usual + 1, 0, `${key}: null`).join('\n');
  const before = readSettingsText(text);
  const after = readSettingsText(placed);
  const told = ({ values, unknown }: SettingsText) =>
    JSON.stringify([values, unknown.map((each) => each.key)]);
  return after.whole && key in after.lines && told(after) === told(before) ? placed : text;
}

/** The new value with the comments of the old one, and those of items that are gone. */
function keepingComments(old: unknown, node: Node): { kept: Node; left: string[] } {
  if (isSeq(old) && isSeq(node)) {
    const items = node.items.map(
      (item) => old.items.find((had) => plainItem(had) === plainItem(item)) ?? item,
    );
    const gone = old.items.filter((item) => !items.includes(item));
    old.items = items;
    return { kept: old, left: gone.flatMap(commentsIn) };
  }
  if (isSeq(node)) node.flow = true;
  if (isScalar(old) && isNode(node)) {
    node.comment = old.comment ?? null;
    node.commentBefore = old.commentBefore ?? null;
    return { kept: node, left: [] };
  }
  return { kept: node, left: commentsIn(old) };
}

function plainItem(item: unknown): unknown {
  return isScalar(item) ? item.value : item;
}

function commentsIn(node: unknown): string[] {
  if (!isNode(node)) return [];
  const inside = isCollection(node)
    ? node.items.flatMap((item) =>
        isPair(item) ? [...commentsIn(item.key), ...commentsIn(item.value)] : commentsIn(item),
      )
    : [];
  return [node.commentBefore, ...inside, node.comment].flatMap((each) => each ?? []);
}
