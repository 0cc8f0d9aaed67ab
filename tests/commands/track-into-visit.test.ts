import { describe, expect, test } from 'vitest';
import { overlapping, type WalkedTrack, withTrack } from '../../src/commands/track-into-visit.ts';
import { epochOf } from '../../src/visit/time.ts';
import { updateVisit } from '../../src/visit/update.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { entryOf, minutesIn, START, visitAt, withLogged } from '../visit/made.ts';

const TIME = minutesIn(200);
const HERE = { latitude: 51.13, longitude: -2.86 };

function trackOf(over: Partial<WalkedTrack> = {}): WalkedTrack {
  return {
    file: 'walk.gpx',
    start: epochOf(START),
    end: epochOf(minutesIn(60)),
    distance: 3214,
    movingTime: 2_400_000,
    climb: 12,
    positionAt: () => HERE,
    ...over,
  };
}

function withDistance(visit: Visit, distance: number): Visit {
  const value = { ...visit.effort, distance };
  return updateVisit(visit, { do: 'set', time: START, part: 'effort', value });
}

describe('a track in a visit', () => {
  const visit = withLogged(visitAt(), {}, { position: { latitude: 1, longitude: 2 } }, {});

  test('is its distance and its track', () => {
    const { visit: with_, lines, left } = withTrack(visit, trackOf(), TIME, false);
    expect(with_.effort).toEqual({
      ...visit.effort,
      distance: 3214,
      track: {
        file: 'walk.gpx',
        start: START,
        end: minutesIn(60),
        movingTime: 2_400_000,
        climb: 12,
      },
    });
    expect(lines).toEqual(['Distance 3.21 km.', '2 entries got a position from it.']);
    expect(left).toEqual([]);
  });

  test('gives a position to the entries that have none, and changes nothing else of them', () => {
    const { visit: after } = withTrack(visit, trackOf(), TIME, false);
    expect(after.entries.map(({ position }) => position)).toEqual([
      HERE,
      { latitude: 1, longitude: 2 },
      HERE,
    ]);
    expect({ ...entryOf(after, 1), position: null }).toEqual(entryOf(visit, 1));
    expect(after.changes.at(-1)?.reason).toBe('position from walk.gpx');
  });

  test('gives none to struck entries, nor where the track does not say', () => {
    const struck = updateVisit(visit, { do: 'strike', time: TIME, number: 1 });
    const gap = trackOf({ positionAt: () => null });
    expect(entryOf(withTrack(struck, trackOf(), TIME, false).visit, 1).position).toBeNull();
    const { lines } = withTrack(visit, gap, TIME, false);
    expect(lines).toContain('0 entries got a position from it.');
    expect(lines.at(-1)).toMatch(/^2 entries got none: /);
  });

  test('is taken back change by change, to what the visit was', () => {
    let back = withTrack(visit, trackOf(), TIME, false).visit;
    for (let steps = 0; steps < 3; steps += 1) back = updateVisit(back, { do: 'undo', time: TIME });
    expect({ ...back, changes: visit.changes }).toEqual(visit);
  });

  test('leaves a distance that was given by hand, unless it is told to replace it', () => {
    const byHand = withDistance(visit, 5000);
    const left = withTrack(byHand, trackOf(), TIME, false);
    expect(left.visit.effort).toEqual(byHand.effort);
    expect(left.left).toEqual([
      'The distance stays 5 km, given by hand. --replace takes the 3.21 km of the track.',
    ]);
    expect(entryOf(left.visit, 1).position).toEqual(HERE);
    const replaced = withTrack(byHand, trackOf(), TIME, true);
    expect(replaced.visit.effort.distance).toBe(3214);
    expect(replaced.lines).toContain('Distance 3.21 km in place of 5 km, given by hand.');
  });

  test('of another file is left too, and the same one changes nothing', () => {
    const { visit: once } = withTrack(visit, trackOf(), TIME, false);
    const again = withTrack(once, trackOf(), TIME, false);
    expect(again.visit).toBe(once);
    expect(again.lines).toEqual(['It has this track already.']);
    const other = withTrack(once, trackOf({ file: 'other.gpx', distance: 9 }), TIME, false);
    expect(other.left[0]).toContain('3.21 km, of walk.gpx');
  });

  test('that runs far beyond the visit is told of', () => {
    const ended = { ...visit, end: minutesIn(60) };
    const lines = (over: Partial<WalkedTrack>) =>
      withTrack(ended, trackOf(over), TIME, false).lines;
    expect(lines({ start: epochOf(START) - 9 * 60_000 })[0]).toBe('Distance 3.21 km.');
    const early = { start: epochOf(START) - 11 * 60_000 };
    const late = { end: epochOf(minutesIn(90)) };
    expect(lines(early)[0]).toContain('The track begins before the visit;');
    expect(lines(late)[0]).toContain('The track ends after the visit;');
    expect(lines({ ...early, ...late })[0]).toContain('begins before the visit and ends after it;');
    expect(lines({ start: late.end, end: late.end })[0]).toContain('not recorded during the visit');
  });
});

test('A track overlaps a visit from its start to its end, or to its last entry while it has no end', () => {
  const open = withLogged(visitAt(), {}, {});
  const at = (from: number, to: number) => ({
    start: epochOf(minutesIn(from)),
    end: epochOf(minutesIn(to)),
  });
  expect(overlapping(open, trackOf(at(-9, -1)))).toBe(false);
  expect(overlapping(open, trackOf(at(-9, 0)))).toBe(true);
  expect(overlapping(open, trackOf(at(2, 9)))).toBe(true);
  expect(overlapping(open, trackOf(at(3, 9)))).toBe(false);
  expect(overlapping({ ...open, end: minutesIn(5) }, trackOf(at(3, 9)))).toBe(true);
});
