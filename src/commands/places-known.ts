import type { Known } from '../taxa/known.ts';
import { type Place, placeKey } from '../visit/place.ts';

/** What is remembered of a place, with the position of a visit there where none is remembered. */
export function remembering(remembered: Place | undefined, visited: Place): Place {
  if (remembered === undefined) return visited;
  if (remembered.position !== null) return remembered;
  const { position, verbatimCoordinates, uncertainty, timeZone } = visited;
  return {
    ...remembered,
    position,
    verbatimCoordinates,
    uncertainty: remembered.uncertainty ?? uncertainty,
    timeZone: timeZone ?? remembered.timeZone,
  };
}

/** What visits know, with the remembered places before their copies in the visits. */
export function withPlaces(known: Known, remembered: readonly Place[]): Known {
  const places = new Map(known.places);
  for (const place of remembered) {
    const key = placeKey(place.name);
    const visited = places.get(key) ?? { place, visits: 0, last: '' };
    places.set(key, { ...visited, place: remembering(place, visited.place) });
  }
  return { ...known, places };
}
