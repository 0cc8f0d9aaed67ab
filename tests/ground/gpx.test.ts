import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readGpx } from '../../src/ground/gpx.ts';
import type { TrackPoint } from '../../src/ground/track.ts';
import { gpxOf, pointAt } from './tracks.ts';

function problem(text: string): string {
  const read = readGpx(text);
  return 'problem' in read ? read.problem : '';
}

function gpx(text: string) {
  const read = readGpx(text);
  if ('problem' in read) throw new Error(read.problem);
  return read.gpx;
}

/** Checks what the schema of GPX 1.1 asks of a track file, by its rules in our own words. */
function refusedBySchema(text: string): string[] {
  const faults: string[] = [];
  if (
    !/<gpx version="1\.1" creator="[^"]+" xmlns="http:\/\/www\.topografix\.com\/GPX\/1\/1">/.test(
      text,
    )
  )
    faults.push('root');
  for (const [, lat, lon, inner = ''] of text.matchAll(
    /<trkpt lat="([^"]*)" lon="([^"]*)">(.*?)<\/trkpt>/g,
  )) {
    if (!(Number(lat) >= -90 && Number(lat) <= 90)) faults.push(`lat ${lat}`);
    if (!(Number(lon) >= -180 && Number(lon) < 180)) faults.push(`lon ${lon}`);
    if (
      !/^(<ele>-?\d+(\.\d+)?<\/ele>)?(<time>\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z<\/time>)?$/.test(
        inner,
      )
    )
      faults.push(inner);
  }
  return faults;
}

describe('a GPX file', () => {
  test('that keeps to the schema is read as it was written', () => {
    const degrees = (most: number) =>
      fc.integer({ min: -most * 1e6, max: most * 1e6 - 1 }).map((number) => number / 1e6 + 0);
    const points = fc.record<TrackPoint>({
      position: fc.record({ latitude: degrees(90), longitude: degrees(180) }),
      elevation: fc.option(fc.integer({ min: -4000, max: 88_480 }).map((number) => number / 10)),
      time: fc.option(fc.integer({ min: 0, max: 4e12 })),
    });
    const segments = fc.array(fc.array(points, { minLength: 1, maxLength: 5 }), {
      minLength: 1,
      maxLength: 3,
    });
    fc.assert(
      fc.property(segments, fc.constantFrom('1.1', '1.0'), (all, version) => {
        const text = gpxOf(all, version);
        if (version === '1.1') expect(refusedBySchema(text)).toEqual([]);
        expect(gpx(text)).toEqual({ segments: all, tracks: 1 });
      }),
    );
  });

  test('is read with a byte order mark, prefixed names, CDATA, comments and several tracks', () => {
    const text = `\ufeff<?xml version="1.0"?><g:gpx version="1.1" creator="x" xmlns:g="http://www.topografix.com/GPX/1/1"><!-- invented --><g:trk><g:trkseg><g:trkpt lat="1" lon="2"><g:ele><![CDATA[12.5]]></g:ele></g:trkpt></g:trkseg></g:trk><g:trk><g:trkseg/></g:trk></g:gpx>`;
    expect(gpx(text)).toEqual({
      segments: [[pointAt({ latitude: 1, longitude: 2, elevation: 12.5 })]],
      tracks: 2,
    });
  });

  test.each([
    ['', 'line 1: this is no whole XML'],
    ['walk', 'line 1: this is no whole XML'],
    ['<gpx version="1.1">\n<trk>\n<trkseg>', 'line 3: this is no whole XML'],
    ['<gpx version="1.1">\n<trk></gpx>', 'line 2: this is no whole XML'],
    ['<gpx version="1.1">\n<name>Mere & Levels</name></gpx>', 'line 2: this is no whole XML'],
    [
      '<!DOCTYPE gpx [<!ENTITY a "b">]>\n<gpx version="1.1">&a;</gpx>',
      'line 2: this is no whole XML',
    ],
    ['<kml/>', 'line 1: this is kml, not GPX'],
    ['<gpx version="1.1"><wpt lat="1" lon="2"/></gpx>', 'Its waypoints and routes say where'],
    ['<gpx version="1.1"><trk><trkseg/></trk></gpx>', 'it holds no point of a track'],
    [
      '<gpx version="1.1"><trk><trkseg>\n<trkpt lat="1"\n/></trkseg></trk></gpx>',
      'line 2: this point has no lon',
    ],
    [
      '<gpx version="1.1"><trk><trkseg><trkpt lat="1" lon="2">\n<ele>high</ele></trkpt></trkseg></trk></gpx>',
      'line 2: ele "high" is no number of metres',
    ],
  ])('%j is told to be mended, with its line', (text, sentence) => {
    expect(problem(text)).toContain(sentence);
    expect(problem(text)).toMatch(/[^.]\.$/);
  });

  test('cut off anywhere is told to be no whole XML, and never read in part', () => {
    const text = gpxOf([[pointAt({ time: 0 }), pointAt({ elevation: 3 })]]).trimEnd();
    fc.assert(
      fc.property(fc.integer({ min: 0, max: text.length - 1 }), (length) => {
        expect(problem(text.slice(0, length))).toContain('this is no whole XML');
      }),
    );
  });
});
