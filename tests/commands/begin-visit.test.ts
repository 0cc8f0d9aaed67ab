import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { askedPlace, beginVisit } from '../../src/commands/begin-visit.ts';
import { Refusal } from '../../src/commands/refusal.ts';
import { rememberPlace } from '../../src/notebook/places.ts';
import { visitText } from '../../src/notebook/visit-file.ts';
import { visitPath } from '../../src/notebook/visit-name.ts';
import { epochOf } from '../../src/visit/time.ts';
import { updateVisit } from '../../src/visit/update.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { freshFolder, idOf, logging, placeOf, visitOf } from '../notebook/visits.ts';

const HOUR = 3_600_000;
const START = '2026-11-14T07:41:05+00:00';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

async function keep(visit: Visit): Promise<void> {
  const path = visitPath(notebook, visit);
  await mkdir(join(path, '..'), { recursive: true });
  await writeFile(path, visitText(visit));
}

async function begun(hoursLater: number, place?: string) {
  return beginVisit(
    notebook,
    await askedPlace(place),
    epochOf(START) + hoursLater * HOUR,
    'Europe/London',
  );
}

function ended(visit: Visit): Visit {
  return { ...visit, end: visit.start };
}

describe('a visit begins', () => {
  test('empty and without a place in an empty notebook', async () => {
    const { visit, opened, placeAssumed, problems } = await begun(0);
    expect(visit).toMatchObject({ start: START, end: null, place: null, entries: [], changes: [] });
    expect({ opened, placeAssumed, problems }).toEqual({
      opened: null,
      placeAssumed: false,
      problems: [],
    });
    expect((await begun(0)).visit.id).not.toBe(visit.id);
  });

  test.each([0, 1, 11.99])(
    'as the open one goes on, %d hours after its last change',
    async (hours) => {
      await keep(visitOf());
      const { visit, opened, placeAssumed } = await begun(hours);
      expect(visit.id).toBe(visitOf().id);
      expect(opened?.visit).toEqual(visitOf());
      expect(opened?.path).toBe(visitPath(notebook, visitOf()));
      expect(placeAssumed).toBe(false);
    },
  );

  test('as it was left where it goes on within a quarter of an hour', async () => {
    await keep(visitOf());
    expect((await begun(0.2)).visit).toEqual(visitOf());
  });

  test('with a pause from the last change on where it was left for longer, which can be taken back', async () => {
    await keep(visitOf());
    const { visit } = await begun(3);
    expect(visit.effort.pauses).toEqual([{ start: START, end: '2026-11-14T10:41:05+00:00' }]);
    const back = updateVisit(visit, { do: 'undo', time: START });
    expect(back.effort).toEqual(visitOf().effort);
  });

  test('still paused where it was left in a pause', async () => {
    const effort = { ...visitOf().effort, pauses: [{ start: START, end: null }] };
    await keep({ ...visitOf(), effort });
    expect((await begun(3)).visit.effort).toEqual(effort);
  });

  test('as the open one goes on, counted from its last change and not from its start', async () => {
    await keep(logging(visitOf(), 'owl', '2026-11-14T17:41:05+00:00'));
    expect((await begun(21)).opened).not.toBeNull();
    expect((await begun(22)).opened).toBeNull();
  });

  test.each([12, 12.01, 48, 24 * 400])('anew %d hours after the last change', async (hours) => {
    await keep(visitOf());
    const { visit, opened } = await begun(hours);
    expect(opened).toBeNull();
    expect(visit.id).not.toBe(idOf(1));
  });

  test('anew after a visit that was ended', async () => {
    await keep(ended(visitOf()));
    expect((await begun(1)).opened).toBeNull();
  });

  test('anew where the open one lies ahead, by a clock that was wrong', async () => {
    await keep(visitOf());
    expect((await begun(-13)).opened).toBeNull();
  });

  test('at the place of the last visit, which is only assumed', async () => {
    await keep(ended(visitOf({ start: '2026-11-01T08:00:00+00:00', place: 'Alder Carr' })));
    await keep(ended(visitOf({ id: 2, place: 'Withy Lane' })));
    await keep(ended(visitOf({ id: 3, start: '2026-11-14T09:00:00+00:00', place: null })));
    const { visit, placeAssumed } = await begun(30);
    expect(visit.place?.name).toBe('Withy Lane');
    expect(placeAssumed).toBe(true);
  });

  test('as the later one goes on where two are open', async () => {
    await keep(visitOf({ id: 2, place: 'Withy Lane' }));
    await keep(visitOf({ id: 3, place: 'Alder Carr', start: '2026-11-14T09:00:00+00:00' }));
    expect((await begun(3)).visit.id).toBe(idOf(3));
  });

  test('as the open one goes on, however many visits the day has already', async () => {
    await keep(visitOf({ id: 9, place: 'Alder Carr', start: '2026-11-14T12:00:00+00:00' }));
    for (const [at, place] of ['Birch Hill', 'Cut Drove', 'Dyke End', 'Eel Rhyne'].entries())
      await keep(ended(visitOf({ id: 2 + at, place })));
    expect((await begun(5)).visit.id).toBe(idOf(9));
  });

  test('with a sentence on a broken file among the latest', async () => {
    await keep(visitOf());
    const broken = join(notebook, 'visits', '2026', '2026-11-14-visit.json');
    await writeFile(broken, '{');
    const { opened, problems } = await begun(1);
    expect(opened?.visit.id).toBe(idOf(1));
    expect(problems).toEqual([expect.stringContaining(`${broken} can't be read`)]);
  });
});

describe('a visit begins at the place that is asked for', () => {
  const mere = {
    ...placeOf('Sallow Mere'),
    position: { latitude: 51.12, longitude: -2.85 },
    verbatimCoordinates: '51.12, -2.85',
    uncertainty: null,
    habitat: null,
    protection: null,
    timeZone: 'Europe/London',
  };

  test('with its coordinates and the clock of its zone', async () => {
    const { visit, placeAssumed } = await begun(0, 'Salt Flat 40.5, -112.5');
    expect(visit.place).toEqual({
      name: 'Salt Flat',
      position: { latitude: 40.5, longitude: -112.5 },
      verbatimCoordinates: '40.5, -112.5',
      uncertainty: null,
      habitat: null,
      protection: null,
      timeZone: 'America/Denver',
    });
    expect(visit.start).toBe('2026-11-14T00:41:05-07:00');
    expect(placeAssumed).toBe(false);
  });

  test('with the coordinates that an earlier visit knew, however long ago', async () => {
    await keep({ ...ended(visitOf({ start: '2025-02-01T08:00:00+00:00' })), place: mere });
    for (let day = 1; day <= 6; day += 1)
      await keep(
        ended(
          visitOf({ id: 1 + day, place: 'Withy Lane', start: `2026-10-0${day}T08:00:00+00:00` }),
        ),
      );
    expect((await begun(30, ' sallow  MERE ')).visit.place).toEqual(mere);
  });

  test('and goes on there, not in an open visit elsewhere', async () => {
    await keep(visitOf());
    await keep(visitOf({ id: 2, place: 'Withy Lane', start: '2026-11-14T09:00:00+00:00' }));
    expect((await begun(2, 'sallow mere')).visit.id).toBe(idOf(1));
    const { visit, opened } = await begun(2, 'Alder Carr');
    expect(opened).toBeNull();
    expect(visit.place?.name).toBe('Alder Carr');
  });

  test('and the open visit there takes the coordinates that it had not', async () => {
    await keep(visitOf());
    const { visit, opened } = await begun(0.1, 'Sallow Mere 51.12, -2.85');
    expect(opened?.visit).toEqual(visitOf());
    expect(visit.place).toEqual(mere);
    expect(visit.changes.at(-1)).toMatchObject({ part: 'place', before: placeOf('Sallow Mere') });
  });

  test('and the open visit stays as it is where it has those coordinates', async () => {
    await keep({ ...visitOf(), place: mere });
    const { visit, opened } = await begun(0.1, 'Sallow Mere 51.120, -2.850');
    expect(visit).toBe(opened?.visit);
  });

  test('with what the notebook remembers of it before the copy of the last visit', async () => {
    await keep({ ...ended(visitOf()), place: mere });
    const remembered = {
      ...mere,
      position: { latitude: 51.2, longitude: -2.9 },
      verbatimCoordinates: '51.2, -2.9',
      habitat: 'reedbed',
      protection: 'private' as const,
    };
    await rememberPlace(notebook, remembered);
    expect((await begun(30)).visit.place).toEqual(remembered);
    expect((await begun(30, 'sallow mere')).visit.place).toEqual(remembered);
    const elsewhere = await begun(30, 'Sallow Mere 51.3, -2.8');
    expect(elsewhere.visit.place).toEqual({
      ...remembered,
      position: { latitude: 51.3, longitude: -2.8 },
      verbatimCoordinates: '51.3, -2.8',
    });
  });

  test('with the position of the last visit where none is remembered', async () => {
    await keep({ ...ended(visitOf()), place: mere });
    await rememberPlace(notebook, { ...placeOf('Sallow Mere'), habitat: 'reedbed' });
    expect((await begun(30)).visit.place).toEqual({ ...mere, habitat: 'reedbed' });
  });

  test('as remembered before any visit there', async () => {
    await rememberPlace(notebook, mere);
    const { visit } = await begun(0, 'Sallow Mere');
    expect(visit.place).toEqual(mere);
  });

  test('by the copy of the last visit, with a sentence, where the remembered ones are broken', async () => {
    await keep({ ...ended(visitOf()), place: mere });
    await writeFile(join(notebook, 'places.json'), '{"format":');
    const { visit, problems } = await begun(30);
    expect(visit.place).toEqual(mere);
    expect(problems).toEqual([expect.stringContaining('it breaks off in line 1')]);
  });

  test('given on a grid, with the half diagonal of its square', async () => {
    const { visit } = await begun(0, 'Sallow Mere ST 401 285');
    expect(visit.place).toMatchObject({
      name: 'Sallow Mere',
      verbatimCoordinates: 'ST 401 285',
      uncertainty: 71,
      timeZone: 'Europe/London',
    });
  });

  test.each(['Sallow Mere 95.5, 2.5', ''])('or is refused as wrong usage: %j', async (place) => {
    const refused = await begun(0, place).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(Refusal);
    expect(refused).toMatchObject({ code: 2, message: expect.stringMatching(/^--place: \S/) });
  });
});
