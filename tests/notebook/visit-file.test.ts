import { mkdir, readFile, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { newerWords, readVisit, visitFrom, visitText } from '../../src/notebook/visit-file.ts';
import { FORMAT_VERSION } from '../../src/visit/visit.ts';
import { anyVisit, freshFolder, visitOf } from './visits.ts';

function problemIn(text: string): string {
  const read = visitFrom(text);
  if ('visit' in read) throw new Error('The text was read as a visit.');
  return read.problem;
}

/** The visit as JSON with one part changed. */
function changed(change: object): string {
  return JSON.stringify({ ...visitOf(), ...change });
}

describe('the text of a visit file', () => {
  test('comes back as it was written, with the fields that this version does not know', () => {
    fc.assert(
      fc.property(anyVisit, (visit) => {
        const text = visitText(visit);
        const read = visitFrom(text);
        if ('problem' in read) throw new Error(read.problem);
        expect(JSON.parse(visitText(read.visit))).toEqual(JSON.parse(text));
      }),
    );
  });

  test('that is cut off anywhere is told as such', () => {
    const text = visitText(visitOf({ logged: ['brown bird', 'thrush é'] }));
    for (let end = 1; end < text.length - 1; end += 1)
      expect(problemIn(text.slice(0, end))).toMatch(/^it is not whole JSON: /);
  });

  test('that is no visit, whatever it is, gives a sentence and never throws', () => {
    const texts = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.jsonValue().map((value) => JSON.stringify(value)),
    );
    fc.assert(
      fc.property(texts, (text) => {
        expect(problemIn(text)).toMatch(/^(it is|the file is) \S/);
      }),
    );
  });

  test.each(['', ' ', '\n\n\t'])('that is empty, %j, is told as empty', (text) => {
    expect(problemIn(text)).toBe('the file is empty');
  });

  test.each([
    [{ format: 'other' }, 'format'],
    [{ id: 'one' }, 'id'],
    [{ start: '2026-11-14 07:41' }, 'start'],
    [{ start: '2026-02-30T07:41:05+00:00' }, 'start'],
    [{ timeZone: 'Europe/Sallow' }, 'timeZone'],
    [{ place: { name: '' } }, 'place.name'],
    [{ entries: [{ number: 1 }] }, 'entries.0'],
    [{ changes: [{ part: 'nothing' }] }, 'changes.0.part'],
    [{ formatVersion: 0 }, 'formatVersion'],
    [{ formatVersion: '1' }, 'formatVersion'],
  ])('with a wrong part, %j, names the part', (change, where) => {
    expect(problemIn(changed(change))).toMatch(
      new RegExp(`^it is not a visit, at ${where.replaceAll('.', '\\.')}`),
    );
  });

  test.each(Object.keys(visitOf()))('without its %s is no visit', (key) => {
    expect(problemIn(changed({ [key]: undefined }))).toContain(`at ${key}`);
  });

  test('of a newer version is read as far as it fits, and keeps its number and what is new', () => {
    const newer = FORMAT_VERSION + 1;
    const read = visitFrom(changed({ formatVersion: newer, 'x-new': { deep: [1] } }));
    if ('problem' in read) throw new Error(read.problem);
    expect(read.visit).toMatchObject({ formatVersion: newer, 'x-new': { deep: [1] } });
    expect(newerWords(read.visit)).toBe(
      `was written by a newer Tussock (format ${newer}; this one writes ${FORMAT_VERSION}): it can be read here and is never changed.`,
    );
    expect(newerWords(visitOf())).toBeNull();
  });

  test.each([
    [{ description: 7 }, 'at description: a string is needed, not a number'],
    [{ description: undefined }, 'at description: missing, a string'],
    [{ format: 'other' }, 'at format: needed is "tussock-visit"'],
  ])('with a wrong part, %j, is told in words', (change, words) => {
    expect(problemIn(changed(change))).toBe(`it is not a visit, ${words}`);
  });

  test.each(['__proto__', 'constructor', 'prototype'])(
    'with the key %s changes nothing that other objects share',
    (key) => {
      const harm = `"${key}": {"struck": "polluted", "polluted": true}`;
      const text = visitText(visitOf())
        .replaceAll('{', `{${harm},`)
        .replaceAll(/,(\s*})/g, '$1');
      const read = visitFrom(text);
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      if ('problem' in read) return;
      expect(read.visit.entries[0]?.struck).toBeNull();
      const again = visitFrom(visitText(read.visit));
      expect(again).toHaveProperty('visit');
      for (const each of [read.visit, ...read.visit.entries])
        expect((each as { polluted?: unknown }).polluted).toBeUndefined();
    },
  );

  test('of a newer version that does not fit asks for a newer program', () => {
    const newer = FORMAT_VERSION + 1;
    expect(problemIn(changed({ formatVersion: newer, entries: 'otherwise' }))).toBe(
      `it was written by a newer Tussock (format ${newer}; this one reads ${FORMAT_VERSION})`,
    );
  });
});

describe('a visit file', () => {
  test('is read with its mark and left as it is', async () => {
    const path = join(freshFolder(), 'visit.json');
    const text = JSON.stringify({ ...visitOf(), 'x-club': 'Ashwick Levels' });
    await writeFile(path, text);
    const read = await readVisit(path);
    expect(read).toMatchObject({ path, mark: { size: text.length }, visit: { id: visitOf().id } });
    expect(await readFile(path, 'utf8')).toBe(text);
  });

  test.each([
    ['missing', 'none.json', /^it is not there$/, false],
    ['a folder', 'folder', /^it is a folder$/, false],
    ['below a file', 'empty.json/visit.json', /^a file stands in its way$/, false],
    ['empty', 'empty.json', /^the file is empty$/, true],
    ['cut off', 'cut.json', /^it is not whole JSON: it breaks off in line \d+$/, true],
    ['larger than any visit', 'large.json', /^it is larger than 64 MB$/, false],
  ])('that is %s gives a reason and never throws', async (_, name, reason, broken) => {
    const folder = freshFolder();
    await mkdir(join(folder, 'folder'));
    await writeFile(join(folder, 'empty.json'), '');
    await writeFile(join(folder, 'cut.json'), visitText(visitOf()).slice(0, 200));
    await writeFile(join(folder, 'large.json'), '');
    await truncate(join(folder, 'large.json'), 64 * 1024 ** 2 + 1);
    const path = join(folder, name);
    const problem = expect.stringMatching(reason);
    expect(await readVisit(path)).toEqual({ path, problem, broken });
  });
});
