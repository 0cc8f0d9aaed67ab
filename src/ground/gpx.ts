import { SaxesParser } from 'saxes';
import { elevationOf, type Fault, latitudeOf, longitudeOf, timeOf } from './gpx-values.ts';
import type { Segment, TrackPoint } from './track.ts';

/** The tracks of a GPX file. */
export interface Gpx {
  /** All segments of all its tracks, in order; those without a point are left out. */
  segments: Segment[];
  tracks: number;
}

/** Most points that are read: near six days at a point a second. */
const MOST_POINTS = 500_000;

const POINT = 'gpx/trk/trkseg/trkpt';
const VERSIONS: readonly (string | undefined)[] = ['1.1', '1.0'];

/** Ends the reading at the first fault: an XML parser calls back, and has no other way to be stopped. */
class Stop extends Error {}

/**
 * Reads the tracks of a GPX 1.1 file, or of the older 1.0, as its schema has them: every point has
 * `lat` and `lon`, -180 ≤ lon < 180, times are UTC. Routes and waypoints are no tracks and are passed
 * over, as are extensions. What is wrong comes back as a sentence with its line.
 */
export function readGpx(text: string): { gpx: Gpx } | { problem: string } {
  const parser = new SaxesParser({ xmlns: false, position: true });
  const path: string[] = [];
  const segments: TrackPoint[][] = [];
  let [tracks, points, tagLine] = [0, 0, 1];
  let [passedOver, inner] = [0, ''];
  let point: TrackPoint | null = null;
  const taken = <T>(read: { value: T } | Fault, line: number): T => {
    if ('fault' in read) throw new Stop(`line ${line}: ${read.fault}`);
    return read.value;
  };

  parser.on('error', (error) => {
    throw new Stop(`line ${parser.line}: this is no whole XML: ${faultWords(error.message)}`);
  });
  parser.on('opentagstart', () => {
    tagLine = parser.line;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const local = localName(name);
    const given = attributes as Record<string, string>;
    if (path.length === 0) taken(rootFault(local, given.version), tagLine);
    path.push(local);
    inner = '';
    const here = path.join('/');
    if (here === 'gpx/trk') tracks += 1;
    if (here === 'gpx/wpt' || here === 'gpx/rte') passedOver += 1;
    if (here === 'gpx/trk/trkseg') segments.push([]);
    if (here !== POINT) return;
    points += 1;
    if (points > MOST_POINTS)
      throw new Stop(`line ${tagLine}: this is past the ${MOST_POINTS} points that are read`);
    const latitude = taken(latitudeOf(given.lat), tagLine);
    const longitude = taken(longitudeOf(given.lon), tagLine);
    point = { position: { latitude, longitude }, elevation: null, time: null };
  });
  const addText = (more: string) => {
    if (path.length === 5) inner += more;
  };
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.on('closetag', () => {
    const here = path.join('/');
    if (point && here === `${POINT}/ele`) point.elevation = taken(elevationOf(inner), parser.line);
    if (point && here === `${POINT}/time`) point.time = taken(timeOf(inner), parser.line);
    if (point && here === POINT) {
      segments.at(-1)?.push(point);
      point = null;
    }
    path.pop();
  });

  try {
    parser.write(text).close();
  } catch (error) {
    if (error instanceof Stop) return { problem: `${error.message}.` };
    throw error;
  }
  if (points > 0)
    return { gpx: { segments: segments.filter((segment) => segment.length > 0), tracks } };
  const others = passedOver > 0 ? ' Its waypoints and routes say where, not when and how.' : '';
  return { problem: `it holds no point of a track.${others} Choose the file of a recorded track.` };
}

function rootFault(name: string, version: string | undefined): { value: null } | Fault {
  if (name !== 'gpx') return { fault: `this is ${name}, not GPX. Choose a file that ends in .gpx` };
  if (VERSIONS.includes(version)) return { value: null };
  const which = version === undefined ? 'has no version' : `has version ${version}`;
  return { fault: `this GPX ${which}; 1.1 and 1.0 are read` };
}

/** The name without the prefix of its namespace. */
function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

/** The parser's message without its own place. */
function faultWords(message: string): string {
  return message.replace(/^\d+:\d+:\s*/, '').replace(/\.$/, '');
}
