import type { Place } from '../../src/visit/place.ts';
import type { Habitat } from './presence.ts';

export const ZONE = 'Europe/London';

/** An invented place: how much of each habitat a walk there goes through (0 to 1), and how often it is gone to. */
export interface DemoPlace {
  place: Place;
  mix: Readonly<Record<Habitat, number>>;
  /** Share of all visits. */
  share: number;
}

/** Every place and every position here is invented. */
function invented(
  name: string,
  latitude: number,
  longitude: number,
  share: number,
  [water, reed, meadow, wood, farm, mud]: readonly [number, number, number, number, number, number],
): DemoPlace {
  return {
    place: {
      name,
      position: { latitude, longitude },
      verbatimCoordinates: `${latitude}, ${longitude}`,
      uncertainty: null,
      habitat: null,
      protection: null,
      timeZone: ZONE,
    },
    mix: { W: water, R: reed, M: meadow, T: wood, F: farm, U: mud },
    share,
  };
}

export const PLACES: readonly DemoPlace[] = [
  invented('Sallow Mere', 51.12, -2.85, 0.6, [1, 0.9, 0.5, 0.5, 0.3, 0.4]),
  invented('Penny Withy Drove', 51.105, -2.91, 0.1, [0.2, 0.3, 0.9, 0.3, 0.8, 0.1]),
  invented('Tallow Reedbed', 51.127, -2.872, 0.1, [0.5, 1, 0.3, 0.3, 0.1, 0.3]),
  invented('Pillow Knoll Wood', 51.094, -2.881, 0.08, [0, 0, 0.2, 1, 0.5, 0]),
  invented('Lympit Rhyne', 51.111, -2.936, 0.06, [0.4, 0.5, 0.8, 0.1, 0.4, 0.2]),
  invented('Gullock Sluice', 51.133, -2.953, 0.06, [0.5, 0.2, 0.5, 0.1, 0.2, 1]),
];
