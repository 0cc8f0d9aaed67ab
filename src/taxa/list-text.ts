/** A table's text, and in which encoding it was written where that is not UTF-8. */
export interface ListText {
  text: string;
  encoding: 'UTF-8' | 'UTF-16' | 'Windows-1252';
}

/** How many bytes are looked at to tell UTF-16 without a byte order mark. */
const LOOKED_AT = 1000;

/**
 * The text of a table in UTF-8 or UTF-16, with or without a byte order mark; what is neither is taken
 * for Windows-1252, in which every byte is a letter and which spreadsheets of western countries write.
 */
export function listText(bytes: Uint8Array): ListText {
  const wide = utf16Of(bytes);
  if (wide !== null) return { text: new TextDecoder(wide).decode(bytes), encoding: 'UTF-16' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'Windows-1252' };
  }
}

/** Byte order marks of UTF-16 (Unicode Standard, chapter 23.8), else the zero bytes of its Latin letters. */
function utf16Of(bytes: Uint8Array): string | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const some = bytes.subarray(0, LOOKED_AT);
  const zeros = [0, 0];
  some.forEach((byte, at) => {
    if (byte === 0) zeros[at % 2] = (zeros[at % 2] ?? 0) + 1;
  });
  const [even = 0, odd = 0] = zeros;
  if (odd > some.length / 8 && even < odd / 4) return 'utf-16le';
  if (even > some.length / 8 && odd < even / 4) return 'utf-16be';
  return null;
}

/** No header is longer, in UTF-16 code units. */
const HEADER_LENGTH = 100_000;
const SEPARATORS = [',', ';', '\t'] as const;

/** What separates the cells: what the first line that is not empty has most of, outside quotes. */
export function separatorOf(text: string): string {
  // A heading in quotes may hold a line end.
  const [first = ''] = text
    .slice(0, HEADER_LENGTH)
    .replace(/"[^"]*"/g, '""')
    .trimStart()
    .split(/[\r\n]/, 1);
  const count = (separator: string) => first.split(separator).length;
  return SEPARATORS.toSorted((one, two) => count(two) - count(one))[0] ?? ',';
}
