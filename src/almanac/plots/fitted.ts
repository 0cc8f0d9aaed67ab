import stringWidth from 'string-width';

/** Text cut or filled up with gaps to so many columns; what is cut ends in `~`. */
export function fitted(text: string, columns: number): string {
  const wide = stringWidth(text);
  if (wide <= columns) return text + ' '.repeat(columns - wide);
  let cut = '';
  for (const letter of text) {
    if (stringWidth(cut + letter) > columns - 1) break;
    cut += letter;
  }
  return columns < 1 ? '' : `${cut}~`.padEnd(columns);
}
