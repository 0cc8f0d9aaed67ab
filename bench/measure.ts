/** Wall time in milliseconds from a start that never jumps. */
export function clock(): number {
  return performance.now();
}

/** The smallest of the values that at least this share (0 to 1) of them do not exceed: the nearest rank. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((one, two) => one - two);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** A number with about three figures; `-` where there was nothing to measure. */
export function figure(value: number): string {
  if (!Number.isFinite(value)) return '-';
  if (value >= 100) return value.toFixed(0);
  return value.toFixed(value >= 10 ? 1 : value >= 1 ? 2 : 3);
}

/** How many times the floor a value is: `1.4x`. */
export function times(value: number, floor: number): string {
  const ratio = value / floor;
  return Number.isFinite(ratio) ? `${ratio.toFixed(ratio >= 10 ? 0 : ratio >= 3 ? 1 : 2)}x` : '-';
}

/** Prints a table; the first `words` columns hold words and stand left, the others right. */
export function printTable(
  title: string,
  head: readonly string[],
  rows: readonly (readonly string[])[],
  words = 1,
): void {
  const widths = head.map((name, column) =>
    Math.max(name.length, ...rows.map((row) => row[column]?.length ?? 0)),
  );
  const line = (row: readonly string[]) =>
    row
      .map((text, column) =>
        column < words ? text.padEnd(widths[column] ?? 0) : text.padStart(widths[column] ?? 0),
      )
      .join('  ')
      .trimEnd();
  console.log(`\n${title}`);
  console.log(line(head));
  console.log(widths.map((width) => '-'.repeat(width)).join('  '));
  for (const row of rows) console.log(line(row));
}

export function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
