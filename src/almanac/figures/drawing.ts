/** Below this logarithm a chance is 0 in double precision. */
const LEAST_LOG = -745;

/**
 * The chance that `drawn` of `all` things, drawn without putting back, hold none of `marked` of them:
 * C(all - marked, drawn) / C(all, drawn), the hypergeometric term for none. It is a product of as many
 * factors as the smaller of the two has, so no large gamma functions have to be subtracted from each
 * other, which would lose half of the digits with ten million individuals.
 */
export function chanceOfNone(all: number, marked: number, drawn: number): number {
  if (marked + drawn > all) return 0;
  const [fewer, more] = marked < drawn ? [marked, drawn] : [drawn, marked];
  let log = 0;
  for (let at = 0; at < fewer; at += 1) {
    log += Math.log1p(-more / (all - at));
    if (log < LEAST_LOG) return 0;
  }
  return Math.exp(log);
}

/** `chanceOfNone` for 0, 1, ... and `all` marked things, each by one more factor. */
export function chancesOfNone(all: number, drawn: number): number[] {
  const chances = [1];
  for (let marked = 0; marked < all; marked += 1)
    chances.push(((chances[marked] ?? 0) * Math.max(0, all - drawn - marked)) / (all - marked));
  return chances;
}
