import type { TrackPoint } from '../../src/ground/track.ts';

/** A point of an invented track by the invented Sallow Mere; `time` in epoch milliseconds. */
export function pointAt(
  over: Partial<TrackPoint> & { latitude?: number; longitude?: number } = {},
): TrackPoint {
  const { latitude = 51.12, longitude = -2.85, ...rest } = over;
  return { position: { latitude, longitude }, elevation: null, time: null, ...rest };
}

/** The text of a GPX 1.1 file with the points as given, a segment each list. */
export function gpxOf(segments: readonly (readonly TrackPoint[])[], version = '1.1'): string {
  const points = segments.map((segment) => ['<trkseg>', ...segment.map(pointText), '</trkseg>']);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<gpx version="${version}" creator="invented" xmlns="http://www.topografix.com/GPX/1/${version.at(-1)}">`,
    '<trk><name>An invented walk</name>',
    ...points.flat(),
    '</trk>',
    '</gpx>',
    '',
  ].join('\n');
}

function pointText({ position, elevation, time }: TrackPoint): string {
  const ele = elevation === null ? '' : `<ele>${elevation.toFixed(1)}</ele>`;
  const when = time === null ? '' : `<time>${new Date(time).toISOString()}</time>`;
  const [lat, lon] = [position.latitude.toFixed(6), position.longitude.toFixed(6)];
  return `<trkpt lat="${lat}" lon="${lon}">${ele}${when}</trkpt>`;
}
