import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceBetween } from '../../src/ground/distance.ts';
import { MOVING_FROM, summed, type TrackPoint } from '../../src/ground/track.ts';
import { climbed } from '../../src/ground/track-climb.ts';
import { LONGEST_GAP, positionsOf } from '../../src/ground/track-position.ts';
import { pointAt } from './tracks.ts';

const START = 1_795_000_000_000;
const SECOND = 1000;
/** Degrees of latitude that are about a metre. */
const METRE = 1 / 111_250;

/** Points so many metres north of one another, so many seconds apart. */
function walk(...steps: [metres: number, seconds: number][]): TrackPoint[] {
  let [north, time] = [0, START];
  return [
    pointAt({ time }),
    ...steps.map(([metres, seconds]) => {
      north += metres;
      time += seconds * SECOND;
      return pointAt({ latitude: 51.12 + north * METRE, time });
    }),
  ];
}

describe('a track is summed up', () => {
  test('along its segments, and not between them', () => {
    const first = walk([100, 60], [100, 60]);
    const second = [pointAt({ latitude: 52 }), pointAt({ latitude: 52.001 })];
    const apart = summed([first]).distance + summed([second]).distance;
    expect(summed([first, second]).distance).toBeCloseTo(apart, 9);
    expect(summed([[...first, ...second]]).distance).toBeGreaterThan(apart + 90_000);
  });

  test('with the time in which the observer moved, and not that of standing', () => {
    const slow = MOVING_FROM * 0.9;
    const track = walk([60, 60], [slow * 120, 120], [0, 300], [MOVING_FROM * 1.1 * 30, 30]);
    expect(summed([track]).movingTime).toBe(90 * SECOND);
  });

  test('with its earliest and latest time, whatever the order of its segments', () => {
    const [early, late] = [
      walk([1, 60]),
      walk([1, 60]).map((point) => ({ ...point, time: START + 9e6 })),
    ];
    expect(summed([late, early])).toMatchObject({ start: START, end: START + 9e6 });
  });

  test('as nothing that is known where it has neither times nor heights', () => {
    const track = [pointAt(), pointAt({ latitude: 51.13 })];
    expect(summed([track])).toMatchObject({ movingTime: 0, climb: null, start: null, end: null });
  });

  test('with the climb of each segment for itself', () => {
    const rise = [0, 10].map((elevation) => pointAt({ elevation }));
    const high = [500, 520].map((elevation) => pointAt({ elevation }));
    expect(summed([rise, [pointAt()], high]).climb).toBe(30);
  });

  test('as no shorter than the way from its start to its end', () => {
    const degrees = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
    const points = fc.array(fc.tuple(degrees(80), degrees(179)), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(points, (all) => {
        const track = all.map(([latitude, longitude]) => pointAt({ latitude, longitude }));
        const [one, two] = [track[0], track.at(-1)];
        if (!one || !two) throw new Error('no points');
        const straight = distanceBetween(one.position, two.position);
        expect(summed([track]).distance).toBeGreaterThan(straight - 0.001);
      }),
    );
  });
});

describe('the climb of a run of heights', () => {
  const heights = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 40 });

  test('less its descent is the height won, to twice the threshold, and no noise below it counts', () => {
    fc.assert(
      fc.property(heights, (run) => {
        const up = climbed(run);
        const down = climbed(run.map((metres) => -metres));
        const won = (run.at(-1) ?? 0) - (run[0] ?? 0);
        expect(Math.abs(up - down - won)).toBeLessThan(6);
        const naive = run.reduce(
          (sum, metres, at) => sum + Math.max(0, metres - (run[at - 1] ?? metres)),
          0,
        );
        expect(up).toBeLessThanOrEqual(naive);
      }),
    );
    expect(climbed([0, 2, 0, 2.9, 0, 2, 1])).toBe(0);
    expect(climbed([])).toBe(0);
  });
});

describe('where the observer was', () => {
  const track = walk([60, 60], [60, 240]);
  const at = positionsOf([track]);

  test('at a point is that point, and between two in proportion to the time', () => {
    expect(at(START)).toEqual({ latitude: 51.12, longitude: -2.85 });
    const middle = at(START + 30 * SECOND);
    expect(middle?.latitude).toBeCloseTo(51.12 + 30 * METRE, 6);
    expect(at(START + 180 * SECOND)?.latitude).toBeCloseTo(51.12 + 90 * METRE, 6);
  });

  test('before the first and after the last point is not told', () => {
    expect(at(START - 1)).toBeNull();
    expect(at(START + 300 * SECOND)).not.toBeNull();
    expect(at(START + 300 * SECOND + 1)).toBeNull();
    expect(positionsOf([])(START)).toBeNull();
  });

  test('is told over a gap of five minutes and over none that is longer', () => {
    const gap = (length: number) => positionsOf([walk([60, length / SECOND])])(START + SECOND);
    expect(gap(LONGEST_GAP)).not.toBeNull();
    expect(gap(LONGEST_GAP + SECOND)).toBeNull();
  });

  test('is found over the date line by the short way', () => {
    const over = [
      pointAt({ latitude: 0, longitude: 179.9999, time: START }),
      pointAt({ latitude: 0, longitude: -179.9997, time: START + 60 * SECOND }),
    ];
    expect(positionsOf([over])(START + 30 * SECOND)?.longitude).toBeCloseTo(-179.9999, 5);
    expect(positionsOf([over.toReversed()])(START + 15 * SECOND)?.longitude).toBeCloseTo(180, 5);
  });
});
