import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { onlyVisit, told } from '../commands/run.ts';
import { freshFolder } from '../notebook/visits.ts';
import { begin, type Journey } from './terminal.ts';

const BACKSPACE = '\u007f';

async function onTheBoard(notebook: string): Promise<Journey> {
  const journey = begin({ notebook });
  await journey.shows('log>');
  journey.send('\u001bb');
  await journey.shows(/board> counts by/);
  return journey;
}

async function letters(notebook: string): Promise<Record<string, string>> {
  const text = await readFile(join(notebook, 'letters.json'), 'utf8');
  return JSON.parse(text).places[''];
}

/** The total of a letter on the screen; 0 for none. */
function total(screen: string, letter: string): number {
  return Number(new RegExp(`(?:^|[ >])${letter} [A-Z].*? {2,}(\\d+)`, 'm').exec(screen)?.[1] ?? 0);
}

test('five hundred strokes in one write are all counted, on the screen and on the disk', async () => {
  const notebook = freshFolder();
  const journey = await onTheBoard(notebook);
  journey.send('a'.repeat(500));
  await journey.shows(/a [A-Z].*? 500 [\s\S]*/);
  await journey.shows(/500 in all, all saved/);
  const visit = await onlyVisit(notebook);
  expect(visit.entries.map(({ count }) => count)).toEqual([{ kind: 'exact', value: 500 }]);
  expect(visit.changes).toHaveLength(500);
});

test('2,000 strokes at a hundred a second end with exact totals, and all is saved', async () => {
  const notebook = freshFolder();
  const journey = await onTheBoard(notebook);
  const species = 'asdfghjklqwert';
  const counts = new Map<string, number>();
  const start = performance.now();
  for (let at = 0; at < 2000; at += 1) {
    // A letter thrice in a row, then the next but two: no two species have the same total.
    const letter = species[(Math.floor(at / 3) * 3 + Math.floor(at / 600)) % species.length] ?? 'a';
    counts.set(letter, (counts.get(letter) ?? 0) + 1);
    await pause(Math.max(0, start + at * 10 - performance.now()));
    journey.send(letter);
  }
  await journey.shows(/2000 in all, all saved/);
  const laid = await letters(notebook);
  const visit = await onlyVisit(notebook);
  const logged = visit.entries.map(({ taxon, count }) => [taxon?.scientificName, count]);
  expect(Object.fromEntries(logged)).toEqual(
    Object.fromEntries(
      [...counts].map(([letter, value]) => [laid[letter], { kind: 'exact', value }]),
    ),
  );
  for (const [letter, value] of counts) expect(total(journey.screen(), letter)).toBe(value);
});

test('after leaving and coming back the letters are the same and undo goes on, stroke by stroke', async () => {
  const notebook = freshFolder();
  const first = await onTheBoard(notebook);
  first.send('.zsmew\r.xwhooper\r3zz x');
  await first.shows(/15 in all, all saved/);
  first.send('\u001bq');
  expect((await first.ends()).code).toBe(0);
  const kept = await letters(notebook);
  expect([kept.z, kept.x]).toEqual(['Mergellus albellus', 'Cygnus cygnus']);

  const second = await onTheBoard(notebook);
  expect(second.screen()).toMatch(/z Smew +10$/m);
  second.send(BACKSPACE.repeat(2));
  await second.shows(/Taken back: Smew 10 to 5[\s\S]*/);
  await second.shows(/5 in all, all saved/);
  second.send('z');
  await second.shows(/6 in all, all saved/);
  expect(told(await onlyVisit(notebook))).toEqual(['Smew 5', 'Whooper Swan 5', 'Smew 1']);
  expect(await letters(notebook)).toEqual(kept);
});

test('many letters laid in one burst are all kept', async () => {
  const notebook = freshFolder();
  const journey = await onTheBoard(notebook);
  const names = ['smew', 'pintail', 'gadwall', 'wigeon', 'shoveler', 'pochard'];
  journey.send(names.map((name, at) => `.${'zxcvbn'[at]}${name}\r`).join(''));
  await journey.shows(/n Pochard/);
  journey.send('\u001bq');
  expect((await journey.ends()).code).toBe(0);
  expect(await letters(notebook)).toMatchObject({
    z: 'Mergellus albellus',
    x: 'Anas acuta',
    c: 'Mareca strepera',
    v: 'Mareca penelope',
    b: 'Spatula clypeata',
    n: 'Aythya ferina',
  });
});

test('a kill in the middle of a burst loses nothing that was shown as saved', async () => {
  const notebook = freshFolder();
  const journey = await onTheBoard(notebook);
  journey.send('a'.repeat(200));
  await journey.shows(/200 in all, all saved/);
  for (let at = 0; at < 60; at += 1) {
    journey.send('aaaaa');
    await pause(3);
  }
  journey.signal('SIGKILL');
  await journey.ends();
  const [entry] = (await onlyVisit(notebook)).entries;
  expect(entry?.count.kind).toBe('exact');
  if (!entry || !('value' in entry.count)) throw new Error('no count');
  expect(entry.count.value).toBeGreaterThanOrEqual(200);
  const again = await onTheBoard(notebook);
  expect(total(again.screen(), 'a')).toBe(entry.count.value);
});

test('a paste counts nothing and says so', async () => {
  const notebook = freshFolder();
  const journey = await onTheBoard(notebook);
  journey.send('\u001b[200~aaaa\u001b[201~');
  await journey.shows('Pasted text does nothing here');
  journey.send('a');
  await journey.shows(/1 in all, all saved/);
});
