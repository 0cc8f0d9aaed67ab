import { describe, expect, test } from 'vitest';
import { readGpx } from '../../src/ground/gpx.ts';
import { climbed } from '../../src/ground/track-climb.ts';

/** Rules are those of the GPX 1.1 schema, http://www.topografix.com/GPX/1/1/gpx.xsd, by the names of its types. */
function file(points: string, root = 'version="1.1" creator="invented"'): string {
  return `<?xml version="1.0"?>\n<gpx ${root} xmlns="http://www.topografix.com/GPX/1/1">\n<trk><trkseg>\n${points}\n</trkseg></trk>\n</gpx>`;
}

function problem(text: string): string {
  const read = readGpx(text);
  return 'problem' in read ? read.problem : '';
}

function points(text: string) {
  const read = readGpx(text);
  if ('problem' in read) throw new Error(read.problem);
  return read.gpx.segments.flat();
}

describe('GPX by its schema', () => {
  test('has every element of a point in its order, of which where, how high and when are read', () => {
    // wptType: ele, time, magvar, geoidheight, name, cmt, desc, src, link, sym, type, fix, sat, hdop, … extensions.
    const whole =
      '<trkpt lat="51.12" lon="-2.85"><ele>12.5</ele><time>2026-11-14T07:41:05Z</time><magvar>1.5</magvar><geoidheight>48</geoidheight><name>gate</name><fix>3d</fix><sat>9</sat><hdop>1.1</hdop><extensions><ele>99</ele><time>never</time></extensions></trkpt>';
    expect(points(file(whole))).toEqual([
      {
        position: { latitude: 51.12, longitude: -2.85 },
        elevation: 12.5,
        time: Date.parse('2026-11-14T07:41:05Z'),
      },
    ]);
  });

  // latitudeType: minInclusive -90, maxInclusive 90. longitudeType: minInclusive -180, maxExclusive 180.
  test.each([
    ['-90', '-180'],
    ['90', '179.999999'],
    ['0', '0'],
    ['+51.5', '-.5'],
  ])('allows lat %s and lon %s', (lat, lon) => {
    const [point] = points(file(`<trkpt lat="${lat}" lon="${lon}"/>`));
    expect(point?.position).toEqual({ latitude: Number(lat), longitude: Number(lon) });
  });

  test.each([
    ['lat="51"', 'line 4: this point has no lon.'],
    ['lon="2"', 'line 4: this point has no lat.'],
    ['lat="51" lon="180"', 'line 4: lon 180 is not allowed in GPX: it is written -180 there.'],
    ['lat="51" lon="-180.1"', 'line 4: lon -180.1 is past 180.'],
    ['lat="90.1" lon="2"', 'line 4: lat 90.1 is past 90.'],
    // xsd:decimal has no exponent and no comma.
    ['lat="5e1" lon="2"', 'line 4: lat "5e1" is no decimal number.'],
    ['lat="51,2" lon="2"', 'line 4: lat "51,2" is no decimal number.'],
    ['lat="" lon="2"', 'line 4: lat "" is no decimal number.'],
  ])('does not allow a point with %s', (attributes, sentence) => {
    expect(problem(file(`<trkpt ${attributes}/>`))).toBe(sentence);
  });

  // xsd:dateTime, ISO 8601; times are UTC, "fractional seconds are allowed".
  test.each([
    ['2026-11-14T07:41:05Z', '2026-11-14T07:41:05Z'],
    ['2026-11-14T07:41:05.250Z', '2026-11-14T07:41:05.250Z'],
    ['2026-11-14T08:41:05+01:00', '2026-11-14T07:41:05Z'],
    [' 2026-11-14T07:41:05 ', '2026-11-14T07:41:05Z'],
  ])('reads the time %j', (text, moment) => {
    const [point] = points(file(`<trkpt lat="1" lon="2"><time>${text}</time></trkpt>`));
    expect(point?.time).toBe(Date.parse(moment));
  });

  test.each(['14 November', '2026-11-14', '2026-02-30T07:41:05Z', '2026-11-14T27:41:05Z', ''])(
    'does not allow the time %j',
    (text) => {
      expect(problem(file(`<trkpt lat="1" lon="2"><time>${text}</time></trkpt>`))).toContain(
        `line 4: time "${text}" is none`,
      );
    },
  );

  // gpxType: version is required and fixed to 1.1; the schema of 1.0 fixes it to 1.0.
  test.each([
    ['version="1.0" creator="invented"', ''],
    ['creator="invented"', 'line 2: this GPX has no version; 1.1 and 1.0 are read.'],
    ['version="2.0"', 'line 2: this GPX has version 2.0; 1.1 and 1.0 are read.'],
  ])('with the root %s: %j', (root, sentence) => {
    expect(problem(file('<trkpt lat="1" lon="2"/>', root))).toBe(sentence);
  });
});

describe('the climb', () => {
  // Common practice, no source; computed by hand for the rule of reversal by a threshold.
  const noisy = [12, 17, 15, 20, 22, 18, 15, 16, 14, 12];
  const hills = [0, 10, 20, 30, 20, 10, 0, 10, 20, 30];
  const down = (run: number[]) => climbed(run.map((metres) => -metres));

  test('of a noisy rise is 10 m where the bare sum of all rises is 13 m', () => {
    expect(climbed(noisy)).toBe(10);
    expect(climbed(noisy, Number.MIN_VALUE)).toBe(13);
  });

  test('of two hills is 60 m, and the descent 30 m', () => {
    expect(climbed(hills)).toBe(60);
    expect(down(hills)).toBe(30);
  });
});
