/**
 * A JSON value as text that does not depend on the order of its members: sorted by UTF-16 code units
 * and without spaces, as RFC 8785 (JSON Canonicalization Scheme) asks. Members that are undefined are left out.
 */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([one], [two]) => inOrder(one, two))
    .map(([key, member]) => `${JSON.stringify(key)}:${canonical(member)}`);
  return `{${members.join(',')}}`;
}

/** Do two JSON values say the same, whatever the order of their members? */
export function alike(one: unknown, two: unknown): boolean {
  return canonical(one) === canonical(two);
}

/** Two texts by their UTF-16 code units, as `sort` wants it: the same on every machine. */
export function inOrder(one: string, two: string): number {
  return one < two ? -1 : one > two ? 1 : 0;
}

/** All members of both; where both have one, the greater by its canonical text, whichever side it is on. */
export function bothMembers<T extends object>(one: T, two: T): T {
  const all = new Map<string, unknown>(Object.entries(one));
  for (const [key, member] of Object.entries(two))
    if (!all.has(key) || canonical(all.get(key)) < canonical(member)) all.set(key, member);
  return Object.fromEntries(all) as T;
}
