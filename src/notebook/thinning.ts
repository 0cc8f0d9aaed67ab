/** How many states of a visit are kept, and how many of them are always the latest. */
export const MOST_KEPT = 10;
export const LATEST_KEPT = 5;

/**
 * Which of the kept moments (epoch milliseconds, rising) are to go so that no more than ten stay. The
 * five latest stay; of the older ones that one goes which lies closest behind its elder neighbour, so
 * that those that stay reach far back. The very first, which has none, stays.
 */
export function momentsToDrop(moments: readonly number[]): number[] {
  const kept = [...moments];
  const dropped: number[] = [];
  while (kept.length > MOST_KEPT) {
    const behind = (at: number) => (kept[at] ?? 0) - (kept[at - 1] ?? 0);
    let closest = 1;
    for (let at = 2; at < kept.length - LATEST_KEPT; at += 1)
      if (behind(at) < behind(closest)) closest = at;
    dropped.push(...kept.splice(closest, 1));
  }
  return dropped;
}
