/** Metres by which a height must turn back before a rise counts as ended; less is noise. */
const CLIMB_THRESHOLD = 3;

/**
 * Metres climbed over a run of elevations, by reversal hysteresis: a rise is counted from its lowest to
 * its highest point once the height turned by the threshold, so that the noise of a receiver adds
 * nothing. The descent is what the negative elevations climb. Common practice, no source.
 */
export function climbed(elevations: readonly number[], threshold = CLIMB_THRESHOLD): number {
  const [first] = elevations;
  if (first === undefined) return 0;
  let climb = 0;
  let rising = false;
  let low = first;
  let high = first;
  for (const elevation of elevations) {
    if (rising) {
      high = Math.max(high, elevation);
      if (high - elevation < threshold) continue;
      climb += high - low;
      rising = false;
      low = elevation;
    } else {
      low = Math.min(low, elevation);
      if (elevation - low < threshold) continue;
      rising = true;
      high = elevation;
    }
  }
  return rising ? climb + high - low : climb;
}
