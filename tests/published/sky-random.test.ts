import { Body, Illumination, Observer, SearchRiseSet } from 'astronomy-engine';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { moonAt, moonCourse } from '../../src/sky/moon.ts';
import { sunDay } from '../../src/sky/sun.ts';
import { fromEngine, largest, randomPlaces, secondsApart, toEngine } from './sky-reference.ts';

const HALF_DAY = 12 * 3_600_000;

describe('astronomy-engine, reference library, 200 random places and dates up to 60 degrees', () => {
  const cases = randomPlaces(200);

  test('agrees within 60 s on sunrise and sunset', () => {
    const differences = cases.flatMap(({ position, epoch, where }) => {
      const { latitude, longitude } = position;
      const date = Temporal.Instant.fromEpochMilliseconds(epoch).toString().slice(0, 10);
      const day = sunDay(position, date, 'Etc/UTC');
      if (day.kind !== 'rises') throw new Error(`${where}: ${day.kind}`);
      const { noon, sunrise, sunset } = day;
      const observer = new Observer(latitude, longitude, 0);
      const rise = SearchRiseSet(Body.Sun, observer, +1, toEngine(noon - HALF_DAY), 1);
      const set = SearchRiseSet(Body.Sun, observer, -1, toEngine(noon), 1);
      return [
        { where: `${where} rise`, by: secondsApart(sunrise ?? 0, fromEngine(rise?.ut ?? 0)) },
        { where: `${where} set`, by: secondsApart(sunset ?? 0, fromEngine(set?.ut ?? 0)) },
      ];
    });
    expect(differences).toHaveLength(400);
    const { by, words } = largest(differences);
    expect(by, words).toBeLessThanOrEqual(60);
  });

  test('agrees within 1 % on the illuminated part of the moon', () => {
    const differences = cases.map(({ epoch, where }) => ({
      where,
      by: 100 * Math.abs(moonAt(epoch).illuminated - illuminatedByEngine(epoch)),
    }));
    const { by, words } = largest(differences);
    expect(by, words).toBeLessThanOrEqual(1);
  });

  test('agrees within 60 s on the next moonrise or moonset, and on which it is', () => {
    const differences = cases.map(({ position, epoch, where }) => {
      const observer = new Observer(position.latitude, position.longitude, 0);
      const course = moonCourse(position, epoch);
      const way = course.next === 'rises' ? +1 : -1;
      const theirs = SearchRiseSet(Body.Moon, observer, way, toEngine(epoch), 2);
      const other = SearchRiseSet(Body.Moon, observer, -way, toEngine(epoch), 2);
      expect(theirs?.ut).toBeLessThan(other?.ut ?? 0);
      const ours = 'at' in course ? course.at : null;
      return {
        where: `${where} ${course.next}`,
        by: secondsApart(ours ?? 0, fromEngine(theirs?.ut ?? 0)),
      };
    });
    const { by, words } = largest(differences);
    expect(by, words).toBeLessThanOrEqual(60);
  });
});

function illuminatedByEngine(epoch: number): number {
  return Illumination(Body.Moon, toEngine(epoch)).phase_fraction;
}
