import { distanceBetween } from './distance.ts';
import type { Position } from './position.ts';
import { climbed } from './track-climb.ts';

/** One point of a recorded track: where, metres above the sea, and when (epoch milliseconds). */
export interface TrackPoint {
  position: Position;
  elevation: number | null;
  time: number | null;
}

/** Points recorded without a break; where the signal was lost a new segment begins. */
export type Segment = readonly TrackPoint[];

/** What a track says of the walk. */
export interface TrackSummary {
  /** Metres along the segments; what lies between them is not guessed. */
  distance: number;
  /** Milliseconds between points that lie so far apart that the observer moved. */
  movingTime: number;
  /** Metres climbed; null where no point has an elevation. */
  climb: number | null;
  /** Epoch milliseconds of the earliest and the latest point; null where no point has a time. */
  start: number | null;
  end: number | null;
}

/** Metres a second from which on the observer counts as moving: a slow stroll (common practice, no source). */
export const MOVING_FROM = 0.3;

/**
 * Sums up a track. Distances are added up as recorded, so the wander of a receiver that lies still
 * counts too.
 */
export function summed(segments: readonly Segment[]): TrackSummary {
  let distance = 0;
  let movingTime = 0;
  for (const segment of segments)
    for (let at = 1; at < segment.length; at += 1) {
      const [one, two] = [segment[at - 1], segment[at]];
      if (!one || !two) continue;
      const metres = distanceBetween(one.position, two.position);
      distance += metres;
      const took = one.time === null || two.time === null ? 0 : two.time - one.time;
      if (took > 0 && metres / (took / 1000) >= MOVING_FROM) movingTime += took;
    }
  const heights = segments.map((segment) =>
    segment.flatMap(({ elevation }) => (elevation === null ? [] : elevation)),
  );
  const known = heights.some((each) => each.length > 0);
  const climb = known ? heights.reduce((sum, each) => sum + climbed(each), 0) : null;
  return { distance, movingTime, climb, ...span(segments) };
}

function span(segments: readonly Segment[]): Pick<TrackSummary, 'start' | 'end'> {
  let start: number | null = null;
  let end: number | null = null;
  for (const { time } of segments.flat())
    if (time !== null) {
      start = Math.min(start ?? time, time);
      end = Math.max(end ?? time, time);
    }
  return { start, end };
}
