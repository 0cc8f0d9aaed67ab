import { expect, test } from 'vitest';
import { onlyVisit, told } from '../commands/run.ts';
import { freshFolder } from '../notebook/visits.ts';
import { begin, COMMAND, type Journey } from './terminal.ts';

/** Does any row of the screen run over into the next? */
function wraps({ terminal }: Journey): boolean {
  const { active } = terminal.buffer;
  return Array.from({ length: terminal.rows }, (_, row) => active.getLine(row)).some(
    (line) => line?.isWrapped === true,
  );
}

const SGR = new RegExp(`${'\u001b'}\\[([\\d;:]*)m`, 'g');

/** Colours that a program has set, by the parameters of SGR (ECMA-48, 8.3.117). */
function colours(sent: string): string[] {
  return [...sent.matchAll(SGR)]
    .flatMap(([, parameters = '']) => parameters.split(/[;:]/))
    .filter((parameter) => /^(?:[34][0-8]|9[0-7]|10[0-7])$/.test(parameter));
}

/** Sends Ctrl-L and resolves with the screen once it was drawn anew. */
async function redrawn(journey: Journey): Promise<string> {
  const before = journey.sent().length;
  journey.send('\u000c');
  return journey.shows(
    (screen) => journey.sent().slice(before).includes('\u001b[?1049h') && screen.includes('log>'),
  );
}

/** A screen without its clock, which may go on between two looks. */
function untimed(screen: string): string {
  return screen.replaceAll(/\d+:\d\d/g, '0:00');
}

const LONG =
  '~1200 common pochard: a raft of them far out, restless, too far for sexes, with tufted ducks';

test('a threatened species is told by letters, a sign and words where there is no colour', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook, environment: { NO_COLOR: '1' } });
  await journey.shows('log>');
  journey.send('common pochard 3\r');
  const screen = await journey.shows(/1 entry.*all saved/);
  expect(screen).toMatch(/Pochard +3 VU ! +vulnerable/);
  expect(screen).toMatch(/! Pochard, VU, vulnerable: keep your distance/);
  expect(colours(journey.sent())).toEqual([]);
});

test('a threatened species stands out in colour where that is allowed', async () => {
  const journey = begin({ notebook: freshFolder() });
  await journey.shows('log>');
  journey.send('common pochard 3\r');
  await journey.shows(/VU ! +vulnerable/);
  expect(colours(journey.sent())).toContain('31');
});

test.each([
  [50, 16],
  [60, 20],
  [120, 40],
])(
  'at %d by %d no row wraps, the frame fills the window and typing logs',
  async (columns, rows) => {
    const notebook = freshFolder();
    const journey = begin({ notebook, columns, rows });
    await journey.shows('log>');
    for (let at = 0; at < rows; at += 1) journey.send(`${LONG} ${at}\r`);
    journey.send('/place Sallow Mere in the far Ashwick Levels, east bank hide 51.12, -2.85\r');
    await journey.shows(new RegExp(`${rows} entries[^]*Sallow|Sallow[^]*${rows} entries`));
    journey.send(`${LONG} ${LONG}`);
    await journey.shows('log>');
    expect(wraps(journey)).toBe(false);
    expect(journey.terminal.buffer.active.length).toBe(rows);
    expect(journey.screen().split('\n').at(-1)).toMatch(/\S/);
    journey.send('\r');
    await journey.shows(new RegExp(`${rows + 1} entries`));
    await journey.shows('all saved');
    expect((await onlyVisit(notebook)).entries).toHaveLength(rows + 1);
  },
);

test('a window made small and large again leaves no trace on the screen, and typing logs throughout', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook });
  await journey.shows('log>');
  journey.send('tuf 12\rcommon pochard 3\r');
  await journey.shows(/2 entries.*all saved/);
  journey.resize(30, 8);
  await journey.shows('Small: 50x16 shows all');
  expect(wraps(journey)).toBe(false);
  journey.send('mal 4\r');
  await journey.shows('Mallard');
  expect(wraps(journey)).toBe(false);
  for (const [columns, rows] of [
    [120, 40],
    [50, 16],
    [80, 24],
  ] as const) {
    // A terminal may move rows and cursor when its size changes.
    await journey.scribble('\u001b[3;9Hrubbish\r\n');
    journey.resize(columns, rows);
    await journey.shows((screen) => /3 entries.*all saved/.test(screen) && !/rubbish/.test(screen));
    journey.send(`heron ${rows}`);
    const screen = await journey.shows(`log> heron ${rows}`);
    expect(wraps(journey)).toBe(false);
    expect(untimed(await redrawn(journey))).toBe(untimed(screen));
    journey.send('\u0015');
  }
  expect(told(await onlyVisit(notebook))).toEqual(['Tufted Duck 12', 'Pochard 3', 'Mallard 4']);
});

test('a window too small for the entry line ends with 2 and a sentence', async () => {
  const journey = begin({ notebook: freshFolder(), columns: 10, rows: 3 });
  expect(await journey.ends()).toEqual({ code: 2, signal: 0 });
  const words = journey.sent().replaceAll('\r\n', '');
  expect(words).toBe(
    'tussock: This window is 10x3; the Field screen needs at least 20x4, and shows all at 50x16.',
  );
});

test('a terminal that does not know its size gets the screen of 80 by 24', async () => {
  const script = `stty cols 0 rows 0; exec ${COMMAND}`;
  const journey = begin({ notebook: freshFolder(), instead: ['/bin/sh', '-c', script] });
  await journey.shows('log>');
  journey.send('tuf\r');
  await journey.shows(/1 entry.*all saved/);
});

test('CI in the environment does not keep the screen from being drawn', async () => {
  const environment = { CI: '1', CONTINUOUS_INTEGRATION: '1' };
  const journey = begin({ notebook: freshFolder(), environment });
  await journey.shows('log>');
  journey.send('tuf');
  await journey.shows(/log> tuf[\s\S]*Tufted Duck/);
});

test('a dumb terminal gets plain lines: no control codes, and each line is answered', async () => {
  const notebook = freshFolder();
  const journey = begin({ notebook, environment: { TERM: 'dumb' } });
  journey.send('tufted duck 12\r');
  await journey.shows(/^1 {2}\d\d:\d\d {2}Tufted Duck {2}12/m);
  journey.send('zzqxv\r');
  await journey.shows('line 2: "zzqxv" is no name');
  journey.send('\u0004');
  expect(await journey.ends()).toEqual({ code: 1, signal: 0 });
  expect(journey.sent()).not.toContain('\u001b');
  expect((await onlyVisit(notebook)).entries).toHaveLength(2);
});
