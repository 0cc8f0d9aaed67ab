import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fieldFrame } from '../../../src/screens/field/frame.ts';
import type { Session } from '../../../src/screens/field/session.ts';
import { rowText, type Size, widthOf } from '../../../src/screens/paint.ts';
import { press, tell } from '../field/drive.ts';
import { opened } from './model.ts';

const SIZES: Size[] = [
  { columns: 80, rows: 24 },
  { columns: 60, rows: 20 },
  { columns: 120, rows: 40 },
  { columns: 50, rows: 16 },
];
const KEPT = SIZES.filter(({ columns }) => columns !== 50);

function shown(at: Session, size: Size): string {
  return fieldFrame({ ...at, size }, size)
    .rows.map((row) => rowText(row).trimEnd())
    .join('\n');
}
const saved = (at: Session) =>
  tell(at, { kind: 'saved', changes: at.visit.changes.length, file: 'x.json' });

/** An invented hour: some flocks, one species seen twice, an estimate, a threatened species. */
function counted(): Session {
  const keys = '<enter>pochard<enter>7ff3f 6q~ 1aaA4pp,q q3uu1w';
  return saved(press(opened(), keys).session);
}

/** A species on every letter. */
function full(): Session {
  const names = [
    'smew',
    'goosander',
    'goldeneye',
    'pochard',
    'pintail',
    'wigeon',
    'gadwall',
    'shoveler',
  ];
  return saved(press(opened(), names.map((name) => `<enter>${name} 3<enter>`).join('')).session);
}

describe.each(KEPT)('at $columns x $rows', (size) => {
  const name = (part: string) => `frames/${part}-${size.columns}x${size.rows}.txt`;

  test('the Board is drawn as it opens', async () => {
    await expect(shown(opened(), size)).toMatchFileSnapshot(name('opened'));
  });

  test('a count is drawn with the last species large', async () => {
    await expect(shown(counted(), size)).toMatchFileSnapshot(name('counted'));
  });

  test('passing birds are drawn with their bars', async () => {
    const at = press(counted(), '<escape>fsw 5<enter>6gg3g').session;
    const later = press({ ...at, now: at.now + 300_000 }, 'ggg').session;
    await expect(shown(saved(later), size)).toMatchFileSnapshot(name('passing'));
  });
});

describe.each(SIZES)('at $columns x $rows', (size) => {
  test('all letters are seen, be they 18 or 26, also with two rows of a message', () => {
    const long =
      'A long sentence that takes two rows of the window, whatever its width may be: '.repeat(3);
    for (const at of [opened(), full(), tell(full(), { kind: 'notice', words: long })]) {
      const cells = shown(at, size);
      for (const letter of Object.keys(at.board?.taxa ?? {}))
        expect(cells).toMatch(new RegExp(`(?:^|[ >])${letter} [A-Z]`, 'm'));
    }
  });

  test('the steps, the time of the flock and the way out are seen whole', () => {
    const screen = shown(press(opened(), '7').session, size);
    expect(screen).toMatch(/1 2 5 10 20 50 \[100\] +flock since 07:40$/m);
    expect(screen).toContain('Esc menu');
  });

  test('a total of seven digits with its signs is never cut', () => {
    const at = press(opened(), '<enter>coot ~9999999<enter> <enter>coot 5+<enter>').session;
    expect(shown(at, size)).toContain('~10000004+');
  });

  test('whatever is pressed, the frame has the height of the window and is no wider', () => {
    const piece = fc.constantFrom(
      ...['a', 'q', 'A', 'b', '1', '7', ' ', '~', '+', ',', '.', '0', '<enter>', '<escape>'],
      ...['<backspace>', '<up>', '<down>', '<left>', '<tab>', '<ctrl-u>', 'coot 3', 'é', '漢字'],
      ...['<escape>fsw 5<enter>', '<escape>b', '<escape>z', '<escape>c', '<page down>', '9999999'],
      ...['<escape>h', '<escape>u', '<escape>r', '<enter>lesser black-backed gull ~9999999<enter>'],
    );
    const pieces = fc.array(piece, { maxLength: 25 });
    fc.assert(
      fc.property(pieces, fc.constantFrom(counted(), full(), opened()), (keys, start) => {
        const at = { ...press(start, keys.join('')).session, size };
        const { rows, cursor } = fieldFrame(at, size);
        expect(rows).toHaveLength(size.rows);
        for (const row of rows) expect(widthOf(rowText(row))).toBeLessThanOrEqual(size.columns);
        if (cursor) expect(cursor.x).toBeLessThan(size.columns);
      }),
      { numRuns: 120 },
    );
  });
});

describe('below the full size', () => {
  test.each([
    { columns: 40, rows: 12 },
    { columns: 20, rows: 4 },
  ])('$columns x $rows shows the step, the last species and its total, and counts', (size) => {
    const screen = shown(press(opened(), '5qq').session, size);
    expect(screen).toContain('board> [20] 40 Coot');
    for (const row of screen.split('\n')) expect(widthOf(row)).toBeLessThanOrEqual(size.columns);
  });
});

test('the rule of the sum, the sign of the highest and the threatened sign stand on the screen', () => {
  const size = { columns: 80, rows: 24 };
  expect(shown(counted(), size)).toContain('different birds: adds up');
  const coot = shown(press(counted(), 'q').session, size);
  expect(coot).toContain('same birds: highest flock');
  expect(coot).toMatch(/q Coot +~?\d+\^/);
  expect(coot).toContain('^ highest flock');
  expect(coot).toMatch(/p Pochard +! +20/);
});
