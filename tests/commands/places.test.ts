import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { listPlaces, type PlaceOptions, setPlace } from '../../src/commands/places.ts';
import { withPlaces } from '../../src/commands/places-known.ts';
import { Refusal } from '../../src/commands/refusal.ts';
import { readPlaces } from '../../src/notebook/places.ts';
import { visitText } from '../../src/notebook/visit-file.ts';
import { visitPath } from '../../src/notebook/visit-name.ts';
import { knownFrom } from '../../src/taxa/known.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { freshFolder, visitOf } from '../notebook/visits.ts';
import { placeOf, visitAt } from '../visit/made.ts';

let notebook: string;
let answers: string[];
let complaints: string[];
beforeEach(() => {
  notebook = freshFolder();
  [answers, complaints] = [[], []];
});

const io = {
  answer: (line: string) => answers.push(line),
  complain: (line: string) => complaints.push(line),
};

async function keep(visit: Visit): Promise<string> {
  const path = visitPath(notebook, visit);
  await mkdir(join(path, '..'), { recursive: true });
  await writeFile(path, visitText(visit));
  return path;
}

const set = (name: string, options: PlaceOptions) =>
  setPlace(async () => notebook, name, options, io);

describe('tussock places', () => {
  test('says how to make one where there is none', async () => {
    await listPlaces(notebook, io);
    expect(answers).toEqual([expect.stringMatching(/^No place yet\. tussock places set/)]);
  });

  test('lists visited places, the latest first, then those that were only set', async () => {
    await keep(visitOf({ id: 2, place: 'Withy Lane', start: '2025-05-01T08:00:00+00:00' }));
    await keep(visitAt());
    await keep(visitAt(placeOf(), '2026-11-15T08:00:00+00:00', 3));
    await set('Alder Carr', { habitat: 'wet wood' });
    answers = [];
    await listPlaces(notebook, io);
    expect(answers).toEqual([
      'Sallow Mere  51.12345, -2.85432  2 visits, last 2026-11-15',
      'Withy Lane  no position  1 visit, last 2025-05-01',
      'Alder Carr  no position  wet wood  no visit yet',
    ]);
  });
});

describe('tussock places set', () => {
  test('keeps a position word for word with its uncertainty and zone, and what else is said', async () => {
    await set('Sallow Mere', {
      position: ' ST 401 285 ',
      habitat: 'reedbed, open water',
      protection: 'private',
    });
    const { places } = await readPlaces(notebook);
    expect(places).toEqual([
      {
        name: 'Sallow Mere',
        position: { latitude: 51.053161, longitude: -2.855267 },
        verbatimCoordinates: 'ST 401 285',
        uncertainty: 71,
        habitat: 'reedbed, open water',
        protection: 'private',
        timeZone: 'Europe/London',
      },
    ]);
    expect(answers[0]).toContain('private: follow local law');
  });

  test('begins with what visits know of the place, and leaves their files as they are', async () => {
    const path = await keep(visitAt());
    const before = await readFile(path, 'utf8');
    await set(' sallow  mere ', { uncertainty: '50 m' });
    expect((await readPlaces(notebook)).places).toEqual([placeOf({ uncertainty: 50 })]);
    expect(await readFile(path, 'utf8')).toBe(before);
  });

  test('goes by the uncertainty that is given rather than by that of the position', async () => {
    await set('Sallow Mere', { position: 'geo:51.12,-2.85;u=35', uncertainty: '50' });
    expect((await readPlaces(notebook)).places[0]?.uncertainty).toBe(50);
  });

  test('takes back what was said by none', async () => {
    await set('Sallow Mere', { position: '51.12, -2.85', habitat: 'fen', protection: 'protected' });
    await set('Sallow Mere', { position: 'none', habitat: 'none', protection: 'none' });
    expect((await readPlaces(notebook)).places).toEqual([
      placeOf({ position: null, verbatimCoordinates: null, timeZone: null }),
    ]);
  });

  test.each<[string, PlaceOptions, string]>([
    ['Sallow Mere', {}, 'Say what is to be known of it'],
    ['Sallow Mere', { position: 'ST 4012 85' }, '--position: "ST 4012 85"'],
    ['Sallow Mere', { position: 'by the gate' }, 'is no position. Write'],
    ['Sallow Mere', { uncertainty: '0' }, 'write metres above 0'],
    ['Sallow Mere', { uncertainty: 'far' }, 'write metres above 0'],
    ['Sallow Mere', { protection: 'mine' }, 'write protected, private or none'],
    ['Sallow Mere 51.12, -2.85', { habitat: 'fen' }, '"Sallow Mere" --position "51.12, -2.85"'],
    ['Sallow Mere ST 401 285', { habitat: 'fen' }, '"Sallow Mere" --position "ST 401 285"'],
    [' ', { habitat: 'fen' }, 'Name the place'],
  ])('refuses %j with %j and keeps nothing', async (name, options, words) => {
    const refused = await set(name, options).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(Refusal);
    expect(refused).toMatchObject({ code: 2, message: expect.stringContaining(words) });
    expect((await readPlaces(notebook)).places).toEqual([]);
  });

  test('never writes over a file that it can not read', async () => {
    await writeFile(join(notebook, 'places.json'), '{');
    const refused = await set('Sallow Mere', { habitat: 'fen' }).catch((error: unknown) => error);
    expect(refused).toMatchObject({ code: 3 });
    expect(complaints[0]).toContain("places.json can't be read");
    expect(await readFile(join(notebook, 'places.json'), 'utf8')).toBe('{');
  });
});

test('What is remembered of places stands before their copies in the visits', () => {
  const known = knownFrom([visitAt()]);
  const remembered = [
    placeOf({ name: 'sallow mere', position: null, verbatimCoordinates: null, habitat: 'fen' }),
    placeOf({ name: 'Alder Carr' }),
  ];
  const { places } = withPlaces(known, remembered);
  expect(places.get('sallow mere')).toEqual({
    place: placeOf({ name: 'sallow mere', habitat: 'fen' }),
    visits: 1,
    last: '2026-11-14',
  });
  expect(places.get('alder carr')).toMatchObject({ visits: 0, last: '' });
  expect(known.places.size).toBe(1);
});
