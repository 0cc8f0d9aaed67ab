import { timeZoneAt } from '../ground/time-zone.ts';
import type { Place } from './place.ts';

/** A place with another position; what else is known of it stays. The zone is found anew. */
export function positioned(
  place: Place,
  {
    position,
    verbatimCoordinates,
    uncertainty,
  }: Pick<Place, 'position' | 'verbatimCoordinates' | 'uncertainty'>,
): Place {
  const timeZone = position === null ? null : timeZoneAt(position);
  return { ...place, position, verbatimCoordinates, uncertainty, timeZone };
}
