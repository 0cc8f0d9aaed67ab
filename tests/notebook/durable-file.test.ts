import { chmod, lstat, mkdir, readdir, readFile, stat, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  createDurably,
  markOf,
  moveDurably,
  replaceDurably,
} from '../../src/notebook/durable-file.ts';
import { freshFolder } from './visits.ts';

async function modeOf(path: string): Promise<number> {
  return (await stat(path)).mode & 0o7777;
}

test.each([0o600, 0o640, 0o664])('a replaced file keeps its mode bits, %o', async (mode) => {
  const path = join(freshFolder(), 'visit.json');
  await writeFile(path, 'old');
  await chmod(path, mode);
  await replaceDurably(path, 'new');
  expect(await readFile(path, 'utf8')).toBe('new');
  expect(await modeOf(path)).toBe(mode);
});

test('a link stays a link, and the file that it points to is the one that is replaced', async () => {
  const folder = freshFolder();
  const elsewhere = join(folder, 'elsewhere');
  await mkdir(elsewhere);
  await writeFile(join(elsewhere, 'real.json'), 'old');
  const path = join(folder, 'visit.json');
  await symlink(join('elsewhere', 'real.json'), path);
  await replaceDurably(path, 'new');
  expect((await lstat(path)).isSymbolicLink()).toBe(true);
  expect(await readFile(join(elsewhere, 'real.json'), 'utf8')).toBe('new');
  expect(await readdir(elsewhere)).toEqual(['real.json']);
});

test('no write leaves a temporary file behind', async () => {
  const folder = freshFolder();
  const path = join(folder, 'visit.json');
  expect(await createDurably(path, 'one')).toBe(true);
  await replaceDurably(path, 'two');
  await replaceDurably(path, 'three');
  expect(await createDurably(path, 'four')).toBe(false);
  expect(await moveDurably(path, join(folder, 'other.json'))).toBe(true);
  expect(await readdir(folder)).toEqual(['other.json']);
});

test('a replacement that fails leaves what stood there and no temporary file', async () => {
  const folder = freshFolder();
  const path = join(folder, 'visit.json');
  await mkdir(path);
  await writeFile(join(path, 'inside'), 'old');
  await expect(replaceDurably(path, 'new')).rejects.toThrow(/EISDIR|ENOTEMPTY|EEXIST/);
  expect(await readdir(folder)).toEqual(['visit.json']);
  expect(await readFile(join(path, 'inside'), 'utf8')).toBe('old');
});

test('a reader sees the old text or the new, never a part of one', async () => {
  const path = join(freshFolder(), 'visit.json');
  const texts = ['a', 'b'].map((letter) => letter.repeat(2_000_000));
  await writeFile(path, texts[0] ?? '');
  let writing = true;
  const writes = (async () => {
    for (let round = 0; round < 12; round += 1)
      await replaceDurably(path, texts[(round + 1) % 2] ?? '');
    writing = false;
  })();
  const seen = new Set<boolean>();
  while (writing) seen.add(texts.includes(await readFile(path, 'utf8')));
  await writes;
  expect([...seen]).toEqual([true]);
});

test('a new file never goes over another', async () => {
  const path = join(freshFolder(), 'visit.json');
  await writeFile(path, 'mine');
  expect(await createDurably(path, 'yours')).toBe(false);
  expect(await readFile(path, 'utf8')).toBe('mine');
});

test('of many that make one file at once one succeeds, and the file is wholly its own', async () => {
  const folder = freshFolder();
  const path = join(folder, 'visit.json');
  const texts = Array.from({ length: 8 }, (_, at) => String(at).repeat(100_000 - at));
  const made = await Promise.all(texts.map((text) => createDurably(path, text)));
  expect(made.filter(Boolean)).toHaveLength(1);
  expect(await readFile(path, 'utf8')).toBe(texts[made.indexOf(true)]);
  expect(await readdir(folder)).toEqual(['visit.json']);
});

test('folders on the way of a new file are made', async () => {
  const path = join(freshFolder(), 'visits', '2026', 'visit.json');
  expect(await createDurably(path, 'text')).toBe(true);
  expect(await readFile(path, 'utf8')).toBe('text');
});

test('a file never moves over another', async () => {
  const folder = freshFolder();
  const [from, to] = [join(folder, 'from.json'), join(folder, 'to.json')];
  await writeFile(from, 'one');
  await writeFile(to, 'two');
  expect(await moveDurably(from, to)).toBe(false);
  expect(await readFile(from, 'utf8')).toBe('one');
  expect(await readFile(to, 'utf8')).toBe('two');
});

test('a file moves into a folder that is not there yet', async () => {
  const folder = freshFolder();
  const from = join(folder, 'from.json');
  await writeFile(from, 'one');
  const to = join(folder, '2027', 'to.json');
  expect(await moveDurably(from, to)).toBe(true);
  expect(await readFile(to, 'utf8')).toBe('one');
  expect(await readdir(folder)).toEqual(['2027']);
});

test('a mark changes with the text and with a replacement, and is null where there is no file', async () => {
  const path = join(freshFolder(), 'visit.json');
  expect(await markOf(path)).toBeNull();
  await writeFile(path, 'one');
  const first = await markOf(path);
  expect(await markOf(path)).toEqual(first);
  await replaceDurably(path, 'one');
  expect(await markOf(path)).not.toEqual(first);
});
