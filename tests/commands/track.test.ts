import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { Refusal } from '../../src/commands/refusal.ts';
import { takeTrack } from '../../src/commands/track.ts';
import { visitText } from '../../src/notebook/visit-file.ts';
import { visitPath } from '../../src/notebook/visit-name.ts';
import { epochOf } from '../../src/visit/time.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { gpxOf, pointAt } from '../ground/tracks.ts';
import { freshFolder, visitOf } from '../notebook/visits.ts';

const START = '2026-11-14T07:41:05+00:00';
const NOW = epochOf(START) + 7_200_000;

let notebook: string;
let file: string;
let said: { answers: string[]; complaints: string[] };
beforeEach(() => {
  notebook = freshFolder();
  file = join(notebook, 'walk.gpx');
  said = { answers: [], complaints: [] };
});

async function keep(visit: Visit): Promise<string> {
  const path = visitPath(notebook, visit);
  await mkdir(join(path, '..'), { recursive: true });
  await writeFile(path, visitText(visit));
  return path;
}

/** A walk of ten minutes from the start of the visit on, a point a minute, about 1.1 km north. */
const walk = Array.from({ length: 11 }, (_, minute) =>
  pointAt({
    latitude: 51.12 + minute / 1000,
    elevation: minute,
    time: epochOf(START) + minute * 60_000,
  }),
);

function take(options: { visit?: string; replace?: boolean } = {}) {
  return takeTrack(notebook, file, options, NOW, {
    answer: (line) => said.answers.push(line),
    complain: (line) => said.complaints.push(line),
  });
}

async function refusal(options = {}) {
  const refused = await take(options).catch((error: unknown) => error);
  expect(refused).toBeInstanceOf(Refusal);
  return refused as Refusal;
}

async function visitIn(path: string): Promise<Visit> {
  return JSON.parse(await readFile(path, 'utf8'));
}

describe('tussock track', () => {
  test('takes a track into the latest visit that it overlaps, and says what it did', async () => {
    await keep(visitOf({ id: 2, place: 'Withy Lane', start: '2026-11-13T07:41:05+00:00' }));
    const path = await keep(visitOf({ end: '2026-11-14T09:00:00+00:00' }));
    await writeFile(file, gpxOf([walk]));
    expect(await take()).toBe(0);
    const visit = await visitIn(path);
    // 0.01° of latitude at 51° N is 1112.5 m (WGS 84, meridian radius of Chapman & Wieczorek 2020).
    expect(visit.effort.distance).toBeGreaterThan(1111);
    expect(visit.effort.distance).toBeLessThan(1114);
    expect(visit.effort.track).toEqual({
      file: 'walk.gpx',
      start: START,
      end: '2026-11-14T07:51:05+00:00',
      movingTime: 600_000,
      climb: 10,
    });
    expect(visit.entries[0]?.position).toEqual({ latitude: 51.12, longitude: -2.85 });
    expect(said.answers).toEqual([
      'walk.gpx: 2026-11-14 07:41 to 07:51, 1.11 km, moving for 0:10, climbed 10 m.',
      'Into visits/2026/2026-11-14-sallow-mere.json:',
      '  Distance 1.11 km.',
      '  1 entry got a position from it.',
    ]);
    expect(said.complaints).toEqual([]);
  });

  test('says so, with another exit code, where a distance by hand stays', async () => {
    const visit = visitOf();
    const path = await keep({ ...visit, effort: { ...visit.effort, distance: 5000 } });
    await writeFile(file, gpxOf([walk]));
    expect(await take()).toBe(1);
    expect((await visitIn(path)).effort).toMatchObject({ distance: 5000, track: null });
    expect(said.complaints[0]).toMatch(/^The distance stays 5 km, given by hand\. --replace/);
    expect(await take({ replace: true })).toBe(0);
    expect((await visitIn(path)).effort.track?.file).toBe('walk.gpx');
  });

  test('tells of two visits that it overlaps and takes the later, or the one that is named', async () => {
    const end = '2026-11-14T09:00:00+00:00';
    const early = await keep(visitOf({ end }));
    const late = visitOf({ id: 2, place: 'Withy Lane', start: '2026-11-14T07:45:05+00:00', end });
    const path = await keep(late);
    await writeFile(file, gpxOf([walk]));
    await take();
    expect(said.complaints[0]).toMatch(/^2 visits overlap the track; the latest is taken/);
    expect((await visitIn(path)).effort.track).not.toBeNull();
    expect((await visitIn(early)).effort.track).toBeNull();
    await take({ visit: '2026-11-14-sallow-mere' });
    expect((await visitIn(early)).effort.track).not.toBeNull();
  });

  test.each([
    ['<gpx version="1.1">\n<trk>', 'line 2: this is no whole XML'],
    [gpxOf([[pointAt({ longitude: 180 })]]), 'lon 180 is not allowed'],
    [gpxOf([[pointAt(), pointAt({ latitude: 51.13 })]]), 'has no times'],
    [gpxOf([walk.map((point) => ({ ...point, time: 0 }))]), 'No visit in'],
  ])('refuses a file, and leaves the visit as it is', async (text, words) => {
    const path = await keep(visitOf());
    const before = await readFile(path, 'utf8');
    await writeFile(file, text);
    const { code, message } = await refusal();
    expect(code).toBe(1);
    expect(message).toContain(words);
    expect(message).toMatch(/[^.]\.$/);
    expect(await readFile(path, 'utf8')).toBe(before);
  });

  test('refuses a file that is not there, and a visit of a newer version', async () => {
    expect((await refusal()).message).toContain('it is not there');
    await keep({ ...visitOf(), formatVersion: 3 as 2 });
    await writeFile(file, gpxOf([walk]));
    expect((await refusal()).message).toContain('written by a newer Tussock');
  });
});
