/** The regions of the shipped lists, with their titles. */
export const REGIONS = {
  'britain-ireland': 'Britain and Ireland',
  'north-america': 'North America north of Mexico',
} as const;
export type Region = keyof typeof REGIONS;

/** IANA names of zones in the Americas, older ones and the American Pacific among them. */
const NEW_WORLD = /^(?:(?:America|US|Canada)\/|Pacific\/Honolulu$|Navajo$|[ECMP]ST(?:\d|$))/;

/** The region whose lists fit a place best, by its IANA time zone: the New World, else the Old. */
export function regionFor(timeZone: string): Region {
  return NEW_WORLD.test(timeZone) ? 'north-america' : 'britain-ireland';
}

/** Name of a shipped list: `britain-ireland-birds`. */
export function listName(region: string, group: string): string {
  return `${region}-${group}`.replaceAll(' ', '-');
}
