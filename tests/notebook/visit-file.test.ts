import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readVisit, visitFrom, visitText } from '../../src/notebook/visit-file.ts';
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

  test('of a newer version asks for a newer program', () => {
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
    ['missing', 'none.json', /ENOENT/],
    ['a folder', 'folder', /EISDIR/],
    ['below a file', 'empty.json/visit.json', /ENOTDIR/],
    ['empty', 'empty.json', /the file is empty/],
    ['cut off', 'cut.json', /not whole JSON/],
  ])('that is %s gives a reason and never throws', async (_, name, reason) => {
    const folder = freshFolder();
    await mkdir(join(folder, 'folder'));
    await writeFile(join(folder, 'empty.json'), '');
    await writeFile(join(folder, 'cut.json'), visitText(visitOf()).slice(0, 200));
    const path = join(folder, name);
    expect(await readVisit(path)).toEqual({ path, problem: expect.stringMatching(reason) });
  });
});
