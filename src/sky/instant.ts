/** A moment as suncalc wants it; suncalc reads the instant of a Date and nothing else of it. */
export function dateFromEpoch(epochMilliseconds: number) {
  // biome-ignore lint/style/noRestrictedGlobals: the one place: suncalc takes a Date
  return new Date(epochMilliseconds);
}
