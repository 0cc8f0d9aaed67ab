/** Digits three rows high, of signs that every terminal has; read from arm's length. */
const DIGITS: Record<string, readonly [string, string, string]> = {
  '0': [' _ ', '| |', '|_|'],
  '1': ['   ', '  |', '  |'],
  '2': [' _ ', ' _|', '|_ '],
  '3': [' _ ', ' _|', ' _|'],
  '4': ['   ', '|_|', '  |'],
  '5': [' _ ', '|_ ', ' _|'],
  '6': [' _ ', '|_ ', '|_|'],
  '7': [' _ ', '  |', '  |'],
  '8': [' _ ', '|_|', '|_|'],
  '9': [' _ ', '|_|', ' _|'],
  '+': ['   ', '_|_', ' | '],
  '~': ['   ', '/\\/', '   '],
  '-': ['   ', ' _ ', '   '],
};
export const DIGIT_ROWS = 3;

/** A count such as `~120` in three rows; signs without a large form are left out. */
export function largeDigits(text: string): string[] {
  const known = [...text].flatMap((sign) => (DIGITS[sign] ? [DIGITS[sign]] : []));
  return Array.from({ length: DIGIT_ROWS }, (_, row) => known.map((rows) => rows[row]).join(' '));
}
