import { mkdir, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { visitFiles } from '../../src/notebook/notebook.ts';
import { fileWords, visitPath } from '../../src/notebook/visit-name.ts';
import { freshFolder, moved, visitOf } from './visits.ts';

test.each([
  ['Sallow Mere', 'sallow-mere'],
  ["St Osyth's  Fen, east bank", 'st-osyth-s-fen-east-bank'],
  ['Étang d’Été', 'etang-d-ete'],
  ['Ålvik (nord)', 'alvik-nord'],
  ['İnce Göl', 'ince-gol'],
  ['Озеро Чайка', 'озеро-чайка'],
  ['柳の池 2', '柳の池-2'],
  ['한강 공원', '한강-공원'],
  // Vowel signs are no accents: without them a Devanagari word is another word.
  ['नील झील', 'नील-झील'],
  ['', ''],
  ['…!?', ''],
  ['../../etc/passwd', 'etc-passwd'],
  ['C:\\birds\\list', 'c-birds-list'],
])('%j becomes %j in a file name', (name, words) => {
  expect(fileWords(name)).toBe(words);
});

test('a composed and a decomposed name come to the same words', () => {
  for (const name of ['Étang', '한강', 'Чайка', 'नील'])
    expect(fileWords(name.normalize('NFD'))).toBe(fileWords(name.normalize('NFC')));
});

test('a visit lies by its year, under its date and place', () => {
  const visit = visitOf({ start: '2026-11-14T23:59:00-08:00' });
  expect(visitPath('/n', visit)).toBe('/n/visits/2026/2026-11-14-sallow-mere.json');
  expect(visitPath('/n', visit, 2)).toBe('/n/visits/2026/2026-11-14-sallow-mere-2.json');
  expect(visitPath('/n', moved(visit, null))).toBe('/n/visits/2026/2026-11-14-visit.json');
  expect(visitPath('/n', moved(visit, '?!'))).toBe('/n/visits/2026/2026-11-14-visit.json');
});

const names = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.string({ unit: 'grapheme', minLength: 20, maxLength: 300 }),
  fc.string({ unit: fc.constantFrom('.', '/', '\\', '\0', '~', ':', 'a'), maxLength: 12 }),
  fc.constantFrom('\u{20000}'.repeat(90), '\ud800/..', 'ΐ'.repeat(80), 'con', '-'.repeat(70)),
);

test('no name of a place leads out of its folder or past what file systems take', () => {
  fc.assert(
    fc.property(names, (place) => {
      const path = visitPath('/n', moved(visitOf(), place), 999);
      expect(dirname(path)).toBe('/n/visits/2026');
      expect(basename(path)).toMatch(/^2026-11-14-[\p{L}\p{M}\p{N}][\p{L}\p{M}\p{N}-]*\.json$/u);
      // 255 bytes on most, 143 on some encrypted file systems (from memory), 14 for a temporary file.
      expect(Buffer.byteLength(basename(path))).toBeLessThanOrEqual(143 - 14);
    }),
    { numRuns: 500 },
  );
});

test('a file of any name is made on this disk and found again', async () => {
  const folder = freshFolder();
  await mkdir(join(folder, 'visits', '2026'), { recursive: true });
  const paths = new Set<string>();
  for (const place of fc.sample(names, 60)) {
    const path = visitPath(folder, moved(visitOf(), place));
    await writeFile(path, 'x');
    paths.add(path);
  }
  expect(new Set(await visitFiles(folder))).toEqual(paths);
});

// Names that Windows keeps for devices, with any ending (Microsoft, "Naming Files, Paths, and Namespaces").
const devices = fc
  .constantFrom('CON', 'PRN', 'AUX', 'NUL', 'COM1', 'COM9', 'LPT1', 'COM¹', 'CONIN$', 'CLOCK$')
  .chain((name) =>
    fc.constantFrom(name, name.toLowerCase(), `${name}.txt`, `${name} `, `.${name}`),
  );
const awkward = fc.oneof(
  names,
  devices,
  fc.tuple(names, fc.constantFrom('.', ' ', '...', '. ', '/..')).map((parts) => parts.join('')),
);

test('no name of a place is one that a system keeps, ends in a dot or blank, or is another when composed', () => {
  fc.assert(
    fc.property(awkward, fc.integer({ min: 1, max: 999 }), (place, copy) => {
      const name = basename(visitPath('/n', moved(visitOf(), place), copy));
      expect(name).not.toMatch(/^(con|prn|aux|nul|com[\d¹²³]|lpt[\d¹²³]|conin\$|conout\$)(\.|$)/i);
      expect(name).toMatch(/[^. ]\.json$/);
      expect(name).not.toMatch(/[<>:"/\\|?*\p{Cc}]/u);
      expect(name.normalize('NFC')).toBe(name);
    }),
    { numRuns: 1000 },
  );
});
