import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readVisit, visitFrom, visitText } from '../../src/notebook/visit-file.ts';
import { anyVisit, freshFolder } from './visits.ts';

/** Longer than this to read one file, in milliseconds, counts as a hang. */
const MOST_TIME = 1000;

type Harm = (bytes: Buffer) => Buffer;

const places = fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true });
const at = (bytes: Buffer, place: number) => Math.floor(place * bytes.length);

const flipped = fc
  .array(fc.tuple(places, fc.integer({ min: 1, max: 255 })), { minLength: 1, maxLength: 8 })
  .map(
    (flips): Harm =>
      (bytes) => {
        const harmed = Buffer.from(bytes);
        for (const [place, bits] of flips)
          harmed[at(bytes, place)] = (bytes[at(bytes, place)] ?? 0) ^ bits;
        return harmed;
      },
  );
const cut = places.map(
  (place): Harm =>
    (bytes) =>
      bytes.subarray(0, at(bytes, place)),
);
const spliced = fc.tuple(places, places, places).map(
  ([from, to, into]): Harm =>
    (bytes) => {
      const [first = 0, last = 0] = [at(bytes, from), at(bytes, to)].sort((one, two) => one - two);
      const piece = bytes.subarray(first, last);
      const where = at(bytes, into);
      return Buffer.concat([bytes.subarray(0, where), piece, bytes.subarray(where)]);
    },
);
const without = fc.tuple(places, fc.integer({ min: 1, max: 200 })).map(
  ([from, length]): Harm =>
    (bytes) => {
      const first = at(bytes, from);
      return Buffer.concat([bytes.subarray(0, first), bytes.subarray(first + length)]);
    },
);

/** Puts words in the place of one match of a pattern, or before it. */
function replaced(pattern: RegExp, words: fc.Arbitrary<string>, keep = false): fc.Arbitrary<Harm> {
  return fc.tuple(places, words).map(
    ([place, put]): Harm =>
      (bytes) => {
        const text = bytes.toString();
        const found = [...text.matchAll(pattern)];
        const one = found[Math.floor(place * found.length)];
        if (one === undefined) return bytes;
        const behind = text.slice(one.index + (keep ? 0 : one[0].length));
        return Buffer.from(text.slice(0, one.index) + put + behind);
      },
  );
}

const KEY = /"\w+":/g;
const VALUE = /(?<=: )(?:"[^"\\]*"|[-\d.e+]+|null|true|false)/g;
const OPENING = /(?<=[{])/g;
const renamed = replaced(
  KEY,
  fc.constantFrom(
    '"__proto__":',
    '"constructor":',
    '"prototype":',
    '"toString":',
    '"length":',
    '"then":',
    '"x":',
    '"":',
    '"id":',
    '"entries":',
  ),
);
const doubled = replaced(
  OPENING,
  fc.constantFrom(
    '"id": 1, "id": "two",',
    '"entries": [],',
    '"__proto__": {"polluted": true},',
    '"constructor": {"prototype": {"polluted": true}},',
    '"changes": [{"__proto__": null}],',
  ),
  true,
);
const odd = replaced(
  VALUE,
  fc.constantFrom(
    '1e999',
    '-1e999',
    '9007199254740993',
    '-0',
    '0.1e-400',
    '9'.repeat(400),
    'NaN',
    'null',
    '""',
    '"\\u0000"',
    '"\\ud800"',
    '"\\udc00\\ud800"',
    '"+275760-09-13T00:00:00+00:00"',
    '"9999-12-31T23:59:59-23:59"',
    '"Etc/../../etc/passwd"',
    '{"__proto__": []}',
    '[[]]',
    `"${'a'.repeat(50_000)}"`,
    `"${'a-'.repeat(20_000)}!"`,
    '['.repeat(199) + ']'.repeat(199),
    '['.repeat(100_000),
    '{"a":'.repeat(50_000),
  ),
);
const raw = fc
  .tuple(
    places,
    fc.constantFrom(
      [0],
      [0, 0, 0, 0, 0, 0, 0, 0],
      [0xef, 0xbb, 0xbf],
      [0xff, 0xfe],
      [0xed, 0xa0, 0x80],
      [0xc0, 0x80],
      [0xf4, 0x90, 0x80, 0x80],
      [0xe2, 0x80, 0xa8],
    ),
    fc.boolean(),
  )
  .map(
    ([place, put, first]): Harm =>
      (bytes) => {
        const where = first ? 0 : at(bytes, place);
        return Buffer.concat([bytes.subarray(0, where), Buffer.from(put), bytes.subarray(where)]);
      },
  );

const harms = fc.array(fc.oneof(flipped, cut, spliced, without, renamed, doubled, odd, raw), {
  minLength: 1,
  maxLength: 3,
});

/** A hundred files to harm; making each anew would take longer than reading it. */
const SOUND: Buffer[] = fc
  .sample(anyVisit, { numRuns: 100, seed: 14 })
  .map((visit) => Buffer.from(visitText(visit)));

const harmed = fc
  .tuple(fc.constantFrom(...SOUND), harms)
  .map(([bytes, all]) => all.reduce<Buffer>((sofar, harm) => harm(sofar), bytes));

function expectTold(read: { problem: string } | { visit: unknown }): void {
  expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  if ('problem' in read) expect(read.problem).toMatch(/^(?:it is|it was|the file is) \S/);
}

test('of 10,000 harmed files none throws, hangs, or changes what other objects share', {
  timeout: 120_000,
}, () => {
  let taken = 0;
  fc.assert(
    fc.property(harmed, (bytes) => {
      const begun = performance.now();
      const read = visitFrom(bytes.toString('utf8'));
      expect(performance.now() - begun).toBeLessThan(MOST_TIME);
      expectTold(read);
      if ('problem' in read) return;
      taken += 1;
      // What was taken is written back and taken again.
      expect(visitFrom(visitText(read.visit))).toHaveProperty('visit');
    }),
    { numRuns: 10_000, endOnFailure: true },
  );
  // Else the harm was such that the checks behind the JSON were never reached.
  expect(taken).toBeGreaterThan(500);
  expect(taken).toBeLessThan(8000);
});

test('a harmed file on disk is read to a visit or a sentence, and keeps its bytes', async () => {
  const path = join(freshFolder(), '2026', 'visit.json');
  await mkdir(join(path, '..'));
  await fc.assert(
    fc.asyncProperty(harmed, async (bytes) => {
      await writeFile(path, bytes);
      expectTold(await readVisit(path));
      expect(bytes.equals(await readFile(path))).toBe(true);
    }),
    { numRuns: 300, endOnFailure: true },
  );
});
