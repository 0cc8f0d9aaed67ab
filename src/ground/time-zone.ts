import tzLookup from '@photostructure/tz-lookup';
import type { Position } from './position.ts';

/** The IANA time zone of a position, found offline; near a border the neighbour's may come back. */
export function timeZoneAt(position: Position): string {
  return tzLookup(position.latitude, position.longitude);
}
