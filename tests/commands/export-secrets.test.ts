import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { updateVisit } from '../../src/visit/update.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { freshFolder } from '../notebook/visits.ts';
import { hiddenVisit } from '../outputs/full.ts';
import { idOf, minutesIn, observed, placeOf } from '../visit/made.ts';
import { bytesOf, keep, ofShippedLists, unzipped } from './kept.ts';
import { run } from './run.ts';

const NAME = 'Zwickelthorpe Quagfen';
const POSITION = { latitude: 51.98765, longitude: -2.34567 };
const TELLING = `${NAME} zwickel-thorpe QUAGFEN 51.98765, -2.34567 51,987 N 2°20'44"W`;

/** Words of the name in any case, and coordinates to three decimals, with points, commas or as they were typed. */
const TRACES = /zwickel|quagfen|51[.,]98[78]|2[.,]34[56]|2°20/i;

/** A visit with an otter in which every text that can be written by hand tells the place. */
function telling(): Visit {
  const hidden = ofShippedLists(hiddenVisit());
  const place = {
    ...placeOf({ name: NAME, position: POSITION, uncertainty: 12.5 }),
    verbatimCoordinates: TELLING,
    habitat: TELLING,
  };
  const spread = hidden.entries.map((entry, at) => ({
    ...entry,
    typed: TELLING,
    words: TELLING,
    description: TELLING,
    position: at % 2 === 0 ? { latitude: 51.98712, longitude: -2.34598 } : null,
  }));
  const visit: Visit = {
    ...hidden,
    place,
    entries: spread,
    end: '2026-11-15T09:40:00+00:00',
    description: TELLING,
    weather: hidden.weather.map((reading) => ({ ...reading, verbatim: TELLING, remarks: TELLING })),
    effort: {
      ...hidden.effort,
      method: TELLING,
      groups: ['birds', TELLING],
      track: {
        ...{ file: TELLING, start: hidden.start, end: hidden.start, movingTime: 1000 },
        climb: 51.987,
      },
    },
    conflicts: [
      { part: 'place', entryId: null, time: minutesIn(1), stands: TELLING, other: TELLING },
    ],
  };
  const observation = observed({ words: TELLING, description: TELLING, taxon: null });
  const renamed = updateVisit(visit, {
    ...{ do: 'amend', number: 7, time: minutesIn(9), observation, reason: TELLING },
  });
  const again = observed({ words: TELLING, description: TELLING });
  return updateVisit(renamed, { do: 'amend', number: 7, time: minutesIn(10), observation: again });
}

let notebook: string;
beforeEach(async () => {
  notebook = freshFolder();
  await keep(notebook, telling());
  const lane = placeOf({ name: 'Withy Lane', position: { latitude: 52.5, longitude: -3.5 } });
  await keep(notebook, {
    ...hiddenVisit(),
    id: idOf(9),
    start: '2026-11-16T07:40:00+00:00',
    place: lane,
  });
});

const FORMS = [
  [],
  ['--table', 'species'],
  ['--table', 'matrix'],
  ['--decimal', ',', '--separator', ';'],
  ['--darwin-core'],
  ['--darwin-core', '--absences'],
  ['--geojson'],
  ['--gpx'],
  ['--group', 'birds'],
  ['--group', 'birds', '--darwin-core'],
];

describe('a place that is withheld', () => {
  test.each(FORMS.map((form) => [form]))('leaves no trace in export --all %j', async (form) => {
    const { code, out, complaints } = await run(['export', '--all', ...form], { notebook });
    expect(code).toBe(0);
    expect(out.length).toBeGreaterThan(100);
    expect(out).not.toMatch(TRACES);
    expect(complaints.join('\n')).not.toMatch(TRACES);
    expect(complaints.join('\n')).toContain('2 of 2 visits are withheld');
  });

  test('leaves no trace in an archive, its metadata and the names of its files', async () => {
    const path = join(notebook, 'log.zip');
    const ran = await run(['export', '--all', '--absences', '--archive', path], { notebook });
    expect(ran.code).toBe(0);
    const files = await unzipped(path);
    expect(Object.keys(files)).toHaveLength(6);
    for (const [name, text] of Object.entries(files)) {
      expect(name).not.toMatch(TRACES);
      expect(text).not.toMatch(TRACES);
    }
    expect(await bytesOf(path)).not.toMatch(TRACES);
    expect(await readdir(notebook)).toEqual(['log.zip', 'visits']);
  });

  test('stands in every form where exact places are asked for, with a word on who may have them', async () => {
    for (const form of [['--group', 'birds'], ['--darwin-core'], ['--table', 'matrix']]) {
      const ran = await run(['export', '--all', '--exact', ...form], { notebook });
      expect(ran.out).toMatch(/Zwickelthorpe/);
      expect(ran.complaints[0]).toContain('Exact places: for your own use, and for those who may');
    }
  });

  test('does not order the visits of a day: they go by their start', async () => {
    const noon = '2026-11-15T12:00:00+00:00';
    const alder = placeOf({ name: 'Alder Carr' });
    await keep(notebook, { ...hiddenVisit(), id: idOf(8), start: noon, place: alder });
    const { out } = await run(
      ['export', '--from', '2026-11-15', '--to', '2026-11-15', '--table', 'matrix'],
      { notebook },
    );
    expect(out.split('\r\n')[0]).toBe(
      'vernacularName,scientificName,2026-11-15 07:40 withheld,2026-11-15 12:00 withheld',
    );
  });

  test('is told to be known to whoever is told that visits were chosen by it', async () => {
    const { out, complaints } = await run(['export', '--place', NAME.toUpperCase()], { notebook });
    expect(out).not.toMatch(TRACES);
    expect(complaints.join('\n')).toContain('You chose the visits by their place');
  });
});
