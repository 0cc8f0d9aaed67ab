import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { unsavedWords } from '../../../src/commands/leaving.ts';
import { fieldFrame } from '../../../src/screens/field/frame.ts';
import { newSession, type Session } from '../../../src/screens/field/session.ts';
import { rowText, type Size, widthOf } from '../../../src/screens/paint.ts';
import { knownFrom } from '../../../src/taxa/known.ts';
import { press, SALLOW_MERE, session, tell } from './drive.ts';

const SIZES: Size[] = [
  { columns: 80, rows: 24 },
  { columns: 60, rows: 20 },
  { columns: 50, rows: 16 },
  { columns: 120, rows: 40 },
];

function shown(at: Session, size: Size): string {
  return fieldFrame(at, size)
    .rows.map((row) => rowText(row).trimEnd())
    .join('\n');
}

/** An invented walk at the invented Sallow Mere. */
const WALK = [
  'mallard 10-15 3m 2f',
  'tuf 12: asleep by the raft',
  'pochard ~40',
  'grey heron: on the sluice',
  'small brown bird: white rump, low over the reeds',
  'curlew?',
  'lapwing 120+',
]
  .map((line) => `${line}<enter>`)
  .join('');

function walked(): Session {
  const earlier = press(session(), 'tuf 3<enter>mallard<enter>').session.visit;
  const at = tell(session(), {
    kind: 'known',
    known: knownFrom([{ ...earlier, start: '2026-10-03T08:00:00+01:00' }]),
  });
  const walk = press(at, `${WALK}<escape>w7c f3 sw 6/8 drizzle<enter>`).session;
  return tell(walk, { kind: 'saved', changes: walk.visit.changes.length, file: 'x.json' });
}

describe.each(SIZES)('at $columns x $rows', (size) => {
  const name = (part: string) => `frames/${part}-${size.columns}x${size.rows}.txt`;

  test('the walk is drawn', async () => {
    await expect(shown(walked(), size)).toMatchFileSnapshot(name('walk'));
  });

  test('suggestions are drawn with names, letters and what is known here', async () => {
    await expect(shown(press(walked(), 'po 12').session, size)).toMatchFileSnapshot(
      name('suggestions'),
    );
  });

  test('the menu is drawn', async () => {
    await expect(shown(press(walked(), '<escape>').session, size)).toMatchFileSnapshot(
      name('menu'),
    );
  });

  test('whatever is typed, the frame has the height of the terminal and is no wider', () => {
    const piece = fc.constantFrom(
      'tuf',
      'gre',
      ' 12',
      ' ~40',
      ': by the 🦆 raft',
      '?',
      '<enter>',
      '<escape>',
      '<up>',
      '<down>',
      '<left>',
      '<right>',
      'u',
      'r',
      'c',
      'x',
      'p',
      'w',
      'd',
      'z',
      'e',
      'h',
      'y',
      'n',
      '<backspace>',
      '/',
      'Sallow Mere 51.12, -2.85',
      '漢字',
      '\u001b',
    );
    const start = walked();
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 14 }), (pieces) => {
        const { rows, cursor } = fieldFrame(press(start, pieces.join('')).session, size);
        expect(rows).toHaveLength(size.rows);
        for (const row of rows) expect(widthOf(rowText(row))).toBeLessThanOrEqual(size.columns);
        if (cursor) expect(cursor.x).toBeLessThan(size.columns);
      }),
      { numRuns: 150 },
    );
  });
});

describe('the head line', () => {
  test('says at once that there is no place, and typing works', () => {
    expect(shown(session(null), { columns: 80, rows: 24 })).toContain('no place yet (Esc p)');
  });

  test('says when the place is only assumed', () => {
    const at = { ...session(), placeAssumed: true };
    expect(shown(at, { columns: 80, rows: 24 })).toContain('Sallow Mere (as last time?)');
  });

  test('shows date, time with offset, time since start, sun, moon and weather', () => {
    const [when, sky] = shown(walked(), { columns: 120, rows: 40 }).split('\n');
    expect(when).toMatch(/^Sat 14 Nov 2026 {2}07:4\d \+00:00 {2}Sallow Mere +0:0\d since start$/);
    expect(sky).toMatch(
      /^sunrise 07:\d\d, sunset 16:\d\d, \d+ min after sunrise \| moon 2\d %, waxing, rises 12:\d\d \| 7 °C, F3 SW, 6\/8, drizzle$/,
    );
  });

  test('leaves the moon out where the sun and the weather fill the row', () => {
    const sky = (columns: number) => shown(walked(), { columns, rows: 24 }).split('\n')[1];
    expect(sky(110)).toContain('moon 22 %, waxing, rises 12:25');
    expect(sky(100)).toMatch(/after sunrise \| moon 22 %, waxing \| 7 °C, F3 SW/);
    for (const columns of [96, 80, 60, 50]) expect(sky(columns)).not.toContain('moon');
  });

  test('says polar night in words', () => {
    const place = {
      ...SALLOW_MERE,
      name: 'North Mere',
      position: { latitude: 78.22, longitude: 15.65 },
      timeZone: 'Arctic/Longyearbyen',
    };
    expect(shown(session(place), { columns: 80, rows: 24 })).toContain(
      'polar night: the sun stays down today',
    );
  });
});

describe('what is not on disk', () => {
  test('is also what opening added to a visit that goes on', () => {
    const { visit } = press(session(), '<escape>z').session;
    const at = newSession({ ...session(), visit, saved: { changes: 0, file: 'x.json' } });
    expect(shown(press(at, 'wren<enter><escape>x<enter>').session, SIZES[0] as Size)).toContain(
      'saving',
    );
    expect(unsavedWords(at)).toContain('NOT SAVED');
    expect(unsavedWords(tell(at, { kind: 'saved', changes: 1, file: 'x.json' }))).toBeNull();
  });

  test('is marked in its row until it is', () => {
    const at = press(session(), 'wren<enter>').session;
    expect(shown(at, { columns: 80, rows: 24 })).toContain('saving');
    const saved = tell(at, { kind: 'saved', changes: 1, file: 'x.json' });
    expect(shown(saved, { columns: 80, rows: 24 })).toContain('all saved');
    expect(shown(saved, { columns: 80, rows: 24 })).not.toContain('saving');
  });

  test('is said loudly when it can not be saved', () => {
    const at = tell(press(session(), 'wren<enter>').session, {
      kind: 'save failed',
      why: 'no space left on device',
    });
    const screen = shown(at, { columns: 60, rows: 20 });
    expect(screen).toContain('1 NOT SAVED');
    expect(screen).toContain('! NOT SAVED: no space left on device');
  });
});

describe('the help page', () => {
  test.each(SIZES)(
    'is read to its end at $columns x $rows, and its cautions are not cut',
    (size) => {
      let at = tell(press(session(), '<escape>h').session, { kind: 'size', size });
      let pages = '';
      for (let page = 0; page < 12; page += 1) {
        pages += shown(at, size);
        at = press(at, '<page down>').session;
      }
      expect(pages.replace(/\s+/g, ' ')).toContain(
        'follow local law and the land manager, and ask a licensed person.',
      );
      expect(shown(at, size)).toContain('take away a letter');
      // One step back is seen at once: the page goes no further than its end.
      expect(shown(press(at, '<up>').session, size)).not.toBe(shown(at, size));
    },
  );
});

test('a threatened species that was not there brings no caution and counts for no species', () => {
  const at = press(session(), 'pochard 0<enter>').session;
  expect(at.message?.kind).toBe('done');
  expect(shown(at, { columns: 80, rows: 24 })).toContain('0 species');
  expect(shown(at, { columns: 80, rows: 24 })).toContain('none VU !');
});

test('a place that brings another zone puts all times on one clock', () => {
  const ny = session(null);
  const abroad = { ...ny, visit: { ...ny.visit, timeZone: 'America/New_York' } };
  const at = press(
    abroad,
    'wren<enter><escape>pSallow Mere 51.12, -2.85<enter>robin<enter>',
  ).session;
  expect(at.visit.entries.map((entry) => entry.time.slice(11, 16))).toEqual(['02:40', '07:40']);
  const screen = shown(at, { columns: 80, rows: 24 });
  expect(screen).toMatch(/1 07:40 Wren/);
  expect(screen).toMatch(/2 07:40 Robin/);
});

describe('below the full size', () => {
  test('the menu and the questions can be read', () => {
    const size = { columns: 30, rows: 10 };
    expect(shown(press(session(), '<escape>').session, size)).toContain('u undo');
    expect(shown(press(session(), '<escape>e<enter>').session, size)).toContain('Was everything');
  });

  test.each([
    { columns: 30, rows: 8 },
    { columns: 20, rows: 4 },
    { columns: 49, rows: 30 },
  ])('$columns x $rows says so, shows the line and still logs', (size) => {
    const typing = press(session(), 'tuf 12').session;
    expect(shown(typing, size)).toContain('log> tuf 12');
    const frame = fieldFrame(press(typing, '<enter>').session, size);
    expect(frame.rows.length).toBeLessThanOrEqual(size.rows);
    for (const row of frame.rows) expect(widthOf(rowText(row))).toBeLessThanOrEqual(size.columns);
  });

  test('the sentence names the size that shows all', () => {
    expect(shown(session(), { columns: 48, rows: 12 })).toContain('50x16 shows all');
  });
});

test('control characters of a file are never sent to the terminal', () => {
  const at = walked();
  const [first, ...rest] = at.visit.entries;
  if (!first) throw new Error('no entry');
  const evil = { ...first, taxon: null, words: 'a\u001b[2Jb', description: '\u0007\u202e' };
  const screen = shown(
    { ...at, visit: { ...at.visit, entries: [...rest, evil] } },
    { columns: 120, rows: 40 },
  );
  expect(screen).toContain('a·[2Jb');
  expect(screen.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u);
});
