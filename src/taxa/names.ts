const PLAIN = /^[A-Za-z]+(?:[ -][A-Za-z]+)*$/;

/** Small letters without accents, apostrophes or points; hyphens and slashes become gaps. */
export function plainWords(name: string): string[] {
  // Nearly all names are of these letters, and a list has tens of thousands of them.
  if (PLAIN.test(name)) return name.toLowerCase().split(/[ -]+/);
  return name
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/['’‘`´ʼ′.]/g, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

/** Words and endings that are spelt in two ways, British first; the others of the lists are spelt in one. */
const SPELLINGS = [
  ['grey', 'gray'],
  ['colour', 'color'],
  ['sulphur', 'sulfur'],
  ['harbour', 'harbor'],
  ['mould', 'mold'],
  ['moustache', 'mustache'],
  ['plough', 'plow'],
  ['odour', 'odor'],
  ['armour', 'armor'],
  ['centre', 'center'],
  ['jewelled', 'jeweled'],
] as const;
const BRITISH: ReadonlyMap<string, string> = new Map(SPELLINGS);
const AMERICAN: ReadonlyMap<string, string> = new Map(SPELLINGS.map(([one, two]) => [two, one]));
const SPELT = new RegExp(SPELLINGS.flat().join('|'), 'gi');

/** The name as it is spelt on the other side of the Atlantic; most are spelt alike. */
export function otherSpelling(name: string): string {
  return name.replace(SPELT, (word) => {
    const plain = word.toLowerCase();
    return BRITISH.get(plain) ?? AMERICAN.get(plain) ?? word;
  });
}

/**
 * The letters that a text has, one bit each (a to z, the others share six), whatever their order. A
 * name that lacks a letter of the query can't hold it, which is found out in one step.
 */
export function lettersOf(text: string): number {
  let letters = 0;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    letters |= 1 << (code >= 97 && code <= 122 ? code - 97 : 26 + (code % 6));
  }
  return letters;
}

/** First letters of the words: `gbbg` for Great Black-backed Gull. */
export function initialsOf(words: readonly string[]): string {
  return words.map((word) => [...word][0] ?? '').join('');
}

/**
 * The four-letter code of an English name by the rule of Klimkiewicz & Robbins (1978), as in Pyle &
 * DeSante (2003): one word gives its first four letters, two words 2 + 2, three 1 + 1 + 2, but 2 + 1 + 1
 * where only the last two are hyphenated, four or more one letter each of the first four.
 * The published lists settle collisions by table; the plain rule does not, so a code may fit several
 * species, and all of them are then found. In capitals; shorter than four for very short names.
 */
export function fourLetterCode(name: string, words = plainWords(name)): string {
  const letters = (word: string | undefined, count: number) => (word ?? '').slice(0, count);
  const [first, second, third, fourth] = words;
  const code = () => {
    if (words.length === 1) return letters(first, 4);
    if (words.length === 2) return letters(first, 2) + letters(second, 2);
    if (words.length > 3)
      return [first, second, third, fourth].map((word) => letters(word, 1)).join('');
    return lastTwoHyphenated(name)
      ? letters(first, 2) + letters(second, 1) + letters(third, 1)
      : letters(first, 1) + letters(second, 1) + letters(third, 2);
  };
  return code().toUpperCase();
}

function lastTwoHyphenated(name: string): boolean {
  const written = name.trim().split(/\s+/);
  return written.length === 2 && written[1]?.includes('-') === true;
}
