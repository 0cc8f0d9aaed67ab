import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { readPlaces, rememberPlace } from '../../src/notebook/places.ts';
import { placeOf } from '../visit/made.ts';
import { freshFolder } from './visits.ts';

let notebook: string;
beforeEach(() => {
  notebook = freshFolder();
});

const file = () => join(notebook, 'places.json');

describe('the remembered places of a notebook', () => {
  test('are none, without a fault, where there is no file', async () => {
    expect(await readPlaces(notebook)).toEqual({ places: [], problem: null });
  });

  test('are read as they were written, one for each name however it is typed', async () => {
    await rememberPlace(notebook, placeOf());
    await rememberPlace(notebook, placeOf({ name: 'Withy Lane', position: null }));
    await rememberPlace(notebook, placeOf({ name: ' sallow  MERE', habitat: 'reedbed' }));
    expect(await readPlaces(notebook)).toEqual({
      places: [
        placeOf({ name: ' sallow  MERE', habitat: 'reedbed' }),
        placeOf({ name: 'Withy Lane', position: null }),
      ],
      problem: null,
    });
  });

  test('keep the fields that another version or program put there', async () => {
    await rememberPlace(notebook, placeOf());
    const before = JSON.parse(await readFile(file(), 'utf8'));
    const strange = { ...before, 'x-club': 'Ashwick Levels naturalists' };
    strange.places[0]['x-gate'] = 'north';
    await writeFile(file(), `\ufeff${JSON.stringify(strange)}`);
    await rememberPlace(notebook, placeOf({ name: 'Withy Lane' }));
    const after = JSON.parse(await readFile(file(), 'utf8'));
    expect(after['x-club']).toBe('Ashwick Levels naturalists');
    expect(after.places[0]['x-gate']).toBe('north');
  });

  test.each([
    ['', 'the file is empty'],
    ['{"format": "tussock-places", "pla', 'it breaks off in line 1'],
    ['{"format": "tussock-places", "formatVersion": 2, "places": []}', 'a newer Tussock'],
    ['{"format": "tussock-places", "formatVersion": 1, "places": [{}]}', 'at places.0.name'],
    ['[]', 'at its start'],
  ])(
    'are none, with a sentence, where the file is %j, which is then never written over',
    async (text, words) => {
      await writeFile(file(), text);
      const { places, problem } = await readPlaces(notebook);
      expect(places).toEqual([]);
      expect(problem).toContain(words);
      expect(problem).toMatch(/^\S+places\.json can't be read \(.*\)\. .*\.$/s);
      await expect(rememberPlace(notebook, placeOf())).rejects.toThrow(words);
      expect(await readFile(file(), 'utf8')).toBe(text);
    },
  );
});
