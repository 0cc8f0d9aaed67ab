/**
 * How many edits lie between two texts: a letter wrong, missing, too many, or two neighbours swapped
 * (optimal string alignment: Damerau 1964, Levenshtein 1966). Written apart from the search's own.
 */
export function editsBetween(one: string, two: string): number {
  const table = [Array.from({ length: two.length + 1 }, (_, column) => column)];
  const at = (row: number, column: number) => table[row]?.[column] ?? Number.POSITIVE_INFINITY;
  for (let row = 1; row <= one.length; row += 1) {
    const here = [row];
    table.push(here);
    for (let column = 1; column <= two.length; column += 1) {
      const wrong = one[row - 1] === two[column - 1] ? 0 : 1;
      const swapped = one[row - 1] === two[column - 2] && one[row - 2] === two[column - 1];
      here.push(
        Math.min(
          at(row - 1, column) + 1,
          at(row, column - 1) + 1,
          at(row - 1, column - 1) + wrong,
          row > 1 && column > 1 && swapped ? at(row - 2, column - 2) + 1 : Number.POSITIVE_INFINITY,
        ),
      );
    }
  }
  return at(one.length, two.length);
}

/** Keys beside each other on a British or American keyboard, row by row. */
const ROWS = ['qwertyuiop', 'asdfghjkl', 'zxcvbnm'];

/** The text with one slip of the kind that cold fingers make at a place, or the same text. */
export function slip(text: string, place: number, pick: (below: number) => number): string {
  const letter = text[place] ?? '';
  const before = text.slice(0, place);
  const after = text.slice(place + 1);
  const way = pick(5);
  if (way < 2) return before + (after[0] ?? '') + letter + after.slice(1);
  if (way === 2) return before + after;
  if (way === 3 && letter !== ' ') return before + letter + letter + after;
  const row = ROWS.find((keys) => keys.includes(letter)) ?? letter;
  const beside = row.indexOf(letter) + (pick(2) === 0 ? -1 : 1);
  return before + (row[beside] ?? letter) + after;
}
