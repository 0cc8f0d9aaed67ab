import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { saveElsewhere } from '../../src/commands/save-elsewhere.ts';
import { freshFolder, logging, visitOf } from '../notebook/visits.ts';

test('a visit is written whole under its name, and never over what is there', async () => {
  const folder = freshFolder();
  const visit = logging(visitOf(), 'owl');
  const first = join(folder, '2026-11-14-sallow-mere.json');
  await writeFile(first, 'another');
  const path = join(folder, '2026-11-14-sallow-mere-2.json');
  expect(await saveElsewhere(folder, visit)).toEqual({
    words: `The visit up to now is also in ${path}.`,
    done: true,
  });
  expect(JSON.parse(await readFile(path, 'utf8'))).toEqual(visit);
  expect(await readFile(first, 'utf8')).toBe('another');
});

test.each([
  ['missing', 'it is not there'],
  ['file', 'is not a folder'],
  ['file/below', 'a file stands in its way'],
])('a folder that is none is told and not made: %s', async (name, words) => {
  const folder = freshFolder();
  await writeFile(join(folder, 'file'), '');
  const said = await saveElsewhere(join(folder, name), visitOf());
  expect(said.done).toBe(false);
  expect(said.words).toContain(words);
  expect(await readdir(folder)).toEqual(['file']);
});
