import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { fileNames, onlyVisit, run, told } from '../commands/run.ts';
import { freshFolder } from '../notebook/visits.ts';
import { begin } from './terminal.ts';

const RIGHT = '\u001b[C';
const LEFT = '\u001b[D';
const KEY = new RegExp(`${RIGHT.slice(0, 1)}\\[.|.`, 'gsu');

test('the first start is ready for a name: a few letters, a count and Enter are on disk', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook });
  await journey.shows('nothing logged yet');
  for (const key of 'tuf 12') journey.send(key);
  await journey.shows(/log> tuf 12[\s\S]*> +12 Tufted Duck/);
  journey.send('\r');
  const screen = await journey.shows(/1 entry.*all saved/);
  expect(screen).toMatch(/^ +1 \d\d:\d\d Tufted Duck +12 LC +first$/m);
  const visit = await onlyVisit(notebook);
  expect(told(visit)).toEqual(['Tufted Duck 12']);
  expect(visit.entries[0]).toMatchObject({ typed: 'tuf 12', number: 1, struck: null });
});

test('a walk of thirty species, counted by keys alone, comes back whole as JSON and as CSV', async () => {
  const list = readFileSync(new URL('../../taxa/britain-ireland/birds.csv', import.meta.url));
  const names = (parse(list, { columns: true }) as { vernacularName: string }[])
    .map((row) => row.vernacularName)
    .filter((_, at) => at % 11 === 0)
    .slice(0, 30);
  const walk = names.map((name, at) => {
    // One bird, and from it by the steps of the group size (1 2 5 10 20 50 100) up and down.
    if (at % 3 === 0) return { name, count: 10, keys: `${name}${RIGHT.repeat(4)}${LEFT}\r` };
    if (at % 3 === 1) return { name, count: at, keys: `${at} ${name}\r` };
    return { name, count: 100 + at, keys: `${name} ${100 + at}: no ${at}\r` };
  });
  const notebook = freshFolder();
  const journey = begin({ notebook });
  await journey.shows('log>');
  for (const { keys } of walk) for (const key of keys.match(KEY) ?? []) journey.send(key);
  await journey.shows(/30 entries.*all saved/);
  journey.send('\u001bq');
  expect(await journey.ends()).toEqual({ code: 0, signal: 0 });

  const visit = await onlyVisit(notebook);
  const logged = visit.entries.map(({ taxon, count }) => [taxon?.vernacularName, count]);
  expect(logged).toEqual(walk.map(({ name, count }) => [name, { kind: 'exact', value: count }]));
  const { out } = await run(['export', '--last', '--exact'], { notebook });
  const rows: Record<string, string>[] = parse(out, { columns: true });
  expect(rows.map((row) => [row.vernacularName, row.count, row.occurrenceRemarks])).toEqual(
    walk.map(({ name, count }, at) => [name, String(count), at % 3 === 2 ? `no ${at}` : '']),
  );
});

test('a name and Enter in one write log that name, and a burst of thirty lines logs thirty', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook });
  await journey.shows('log>');
  journey.send('mal\r');
  await journey.shows(/1 entry.*all saved/);
  expect(told(await onlyVisit(notebook))).toEqual(['Mallard 1']);
  const lines = Array.from({ length: 30 }, (_, at) => `${at % 2 ? 'mal' : 'tuf'} ${at}`);
  journey.send(lines.map((line) => `${line}\r`).join(''));
  await journey.shows(/31 entries.*all saved/);
  const { entries } = await onlyVisit(notebook);
  expect(entries.slice(1).map(({ typed }) => typed)).toEqual(lines);
});

test('keys typed before the first frame are not lost, nor their order', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook });
  journey.send('tuf 12\rmal 3\r');
  journey.send('\u001bw7c f3\r');
  journey.send('wre');
  await journey.shows(/log> wre[\s\S]*2 entries.*all saved/);
  const visit = await onlyVisit(notebook);
  expect(told(visit)).toEqual(['Tufted Duck 12', 'Mallard 3']);
  expect(visit.weather).toMatchObject([{ temperature: 7, windForce: 3 }]);
});

test('a paste with line ends stands in the line and logs nothing until Enter', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook });
  await journey.shows('log>');
  expect(journey.terminal.modes.bracketedPasteMode).toBe(true);
  journey.send('\u001b[200~old gull\r\nby the');
  journey.send(' gate\n\u001b[201~');
  await journey.shows('log> old gull by the gate');
  expect(journey.screen()).toContain('nothing logged yet');
  expect(await fileNames(notebook)).toEqual([]);
  journey.send('\r');
  await journey.shows(/1 entry.*all saved/);
  expect((await onlyVisit(notebook)).entries).toMatchObject([{ words: 'old gull by the gate' }]);
});

test('the menu is reached by Esc and a letter, by a word behind a slash, and by Alt and the letter', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook });
  await journey.shows('log>');
  journey.send('\u001b');
  await journey.shows(/u undo[\s\S]*w weather/);
  journey.send('w');
  await journey.shows('weather>');
  journey.send('7c f3 sw 6/8 drizzle\r');
  await journey.shows(/log>[\s\S]*Weather: 7/);
  journey.send('/weather 9c\r');
  await journey.shows(/log>[\s\S]*Weather: 9/);
  journey.send('\u001bd');
  await journey.shows('description>');
  journey.send('Mist over the reeds\r');
  await journey.shows(/log>[\s\S]*Description kept/);
  journey.send('tuf\r');
  await journey.shows(/1 entry.*all saved/);
  const { weather, description } = await onlyVisit(notebook);
  expect(weather.map(({ temperature }) => temperature)).toEqual([7, 9]);
  expect(weather[0]).toMatchObject({ windForce: 3, windFrom: 'SW', cloud: 6 });
  expect(description).toBe('Mist over the reeds');
});

test('a place given later renames the file, and the screen goes on with it', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook });
  await journey.shows('log>');
  journey.send('tuf\r');
  await journey.shows(/1 entry.*all saved/);
  expect(await fileNames(notebook)).toEqual([expect.stringMatching(/-visit\.json$/)]);
  journey.send('/place Sallow Mere 51.12, -2.85\r');
  await journey.shows(/Sallow Mere[\s\S]*all saved/);
  expect(await fileNames(notebook)).toEqual([expect.stringMatching(/-sallow-mere\.json$/)]);
  journey.send('mal\r');
  await journey.shows(/2 entries.*all saved/);
  expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 1', 'Mallard 1']);
});
