import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import type { EntryTaxon } from '../../src/visit/entry.ts';
import { dateOf, stamp } from '../../src/visit/time.ts';
import {
  COMMON_TERN,
  DROVE,
  MALLARD as LISTED_MALLARD,
  POCHARD as LISTED_POCHARD,
  outing,
  PRESENT,
} from '../almanac/made.ts';
import { freshFolder } from '../notebook/visits.ts';
import { keep } from './kept.ts';
import { run } from './run.ts';

const shipped = (taxon: EntryTaxon): EntryTaxon => ({ ...taxon, list: 'britain-ireland-birds' });
const [MALLARD, POCHARD, TERN] = [LISTED_MALLARD, LISTED_POCHARD, COMMON_TERN].map(shipped) as [
  EntryTaxon,
  EntryTaxon,
  EntryTaxon,
];

let notebook: string;
beforeEach(async () => {
  notebook = freshFolder();
  for (const visit of [
    outing('2024-05-03', [
      [TERN, 4],
      [MALLARD, 4],
    ]),
    outing('2024-06-01', [[MALLARD, 12]], { place: DROVE }),
    outing('2025-05-10', [
      [TERN, { kind: 'about', value: 20 }],
      [POCHARD, 1],
      { taxon: null, words: 'brown thing', description: 'low in the sedge' },
    ]),
    outing('2025-05-20', [[POCHARD, 1]], { place: DROVE, description: 'Rain all day' }),
  ])
    await keep(notebook, visit);
});

const asked = (...args: string[]) => run(['almanac', ...args], { notebook });

async function data(...args: string[]) {
  const ran = await asked('--json', ...args);
  expect(ran.code).toBe(0);
  return JSON.parse(ran.out);
}

describe('The almanac', () => {
  test('tells of a species its dates, visits, highest count, months and places.', async () => {
    const ran = await asked('common', 'tern');
    expect(ran.code).toBe(0);
    expect(ran.answers).toEqual(
      expect.arrayContaining([
        'Common Tern (Sterna hirundo)',
        '  First 2024-05-03, last 2025-05-10.',
        '  With it: 2 visits; without: 2.',
        '  Highest count ~20, 2025-05-10, Sallow Mere.',
        '  Sallow Mere  2 of 2  2025-05-10',
      ]),
    );
    expect(ran.out).toMatch(/^ {2}May \|#+ +2 of 3$/m);
    expect(ran.out).toMatch(/^ {2}Jun \| +0 of 1$/m);
    expect(await data('common tern')).toMatchObject({
      understood: ['Common Tern'],
      species: [
        {
          first: '2024-05-03',
          last: '2025-05-10',
          visitsWith: 2,
          visits: 4,
          highest: { date: '2025-05-10' },
        },
      ],
    });
  });

  test('narrows a species by place and time.', async () => {
    const { sentence, species } = await data('mallard', 'withy', 'june');
    expect(sentence).toBe('Mallard, Withy Drove, June: 1 entry in 1 of 1 visit.');
    expect(species).toMatchObject([
      { visitsWith: 1, visits: 1, places: [{ name: 'Withy Drove' }] },
    ]);
  });

  test('tells of a place its list, its best days and what was new there in a year.', async () => {
    const { places } = await data('sallow', '2025');
    expect(places).toMatchObject([
      {
        name: 'Sallow Mere',
        visits: 1,
        species: 2,
        bestDays: [{ date: '2025-05-10', species: 2 }],
        newIn: 2025,
        newThere: [{ name: 'Pochard', first: 'first', date: '2025-05-10' }],
      },
    ]);
    expect((await data('sallow')).places[0]).toMatchObject({ visits: 2, species: 3 });
    const { answers } = await asked('sallow 2025');
    expect(answers).toContain('New here in 2025');
    expect(answers).toContain('  Pochard  2025-05-10  first');
  });

  test('sets a year beside the others by its running total.', async () => {
    const { years } = await data('2025');
    expect(years.totals).toMatchObject([
      { year: 2024, visits: 2, byThen: 2, steps: [{ date: '2024-05-03', species: 2 }] },
      { year: 2025, visits: 2, byThen: 2 },
    ]);
    expect(years.threatened).toMatchObject([{ name: 'Pochard', visits: 2 }]);
    expect((await asked('2025')).out).toMatch(/Running total of species\n/);
  });

  test.each<[string, string[]]>([
    ['threatened', ['  Pochard  VU  2  2025-05-10  2025-05-20']],
    ['first 2025', ['  Pochard  2025-05-10  first  Sallow Mere']],
    ['unnamed', ['  2025-05-10 07:43 brown thing, 3, Sallow Mere', '    low in the sedge']],
    ['sedge', ['    low in the sedge']],
    ['rain', ['  2025-05-20  Withy Drove  Rain all day']],
  ])('answers "%s".', async (words, want) => {
    const ran = await asked(words);
    expect(ran.code).toBe(0);
    expect(ran.answers).toEqual(expect.arrayContaining(want));
  });

  test('without words tells this week in earlier years and the year so far.', async () => {
    const now = Date.now();
    const today = dateOf(stamp(now, 'UTC'));
    const yearBefore = dateOf(stamp(now - 365 * 86_400_000, 'UTC'));
    await keep(notebook, outing(yearBefore, [[TERN, 1]]));
    await keep(notebook, outing(today, [[MALLARD, 1]]));
    const { week, years, unnamed } = await data();
    expect(week).toMatchObject([{ name: 'Common Tern', last: yearBefore }]);
    expect(years).toMatchObject({ asked: [Number(today.slice(0, 4))], day: today.slice(5) });
    expect(years.totals.at(-1)).toMatchObject({ visits: 1, byThen: 1 });
    expect(unnamed).toBe(1);
    expect((await asked()).out).toMatch(/This week[\s\S]*Common Tern[\s\S]*Species by/);
  });
});

describe('Figures', () => {
  test('are told with their cautions.', async () => {
    await keep(
      notebook,
      outing('2026-01-01', [
        [MALLARD, 8],
        [POCHARD, 8],
      ]),
    );
    const { figures } = await data('birds', '2026', '--figures');
    const told = Object.fromEntries(
      figures.map((each: { name: string; figure: object }) => [each.name, each.figure]),
    );
    // Two species of the same number: H' = ln 2, J = 1, all Hill numbers 2, by their definitions.
    expect(told["Shannon's H'"].entropy).toBeCloseTo(Math.LN2, 12);
    expect(told["Pielou's J"].evenness).toBeCloseTo(1, 12);
    expect(told['Hill 0, 1, 2'].order2).toBeCloseTo(2, 12);
    expect(told.accumulation.refused).toMatch(/two are needed/);
    const { out } = await asked('birds', '--figures');
    expect(out).toMatch(/! Counts of 5 visits are added/);
    expect(out).toMatch(/! Estimates, by their number: Common Tern/);
  });

  test('are refused with the reason, where nobody counted or visits are too few.', async () => {
    await keep(notebook, outing('2026-01-01', [[MALLARD, PRESENT]]));
    const { out } = await asked('birds 2026', '--figures', '--width', '200');
    expect(out).toMatch(/richness: 1 species/);
    expect(out).toMatch(/Chao1: refused\. No species has a count \(Mallard\)/);
    const rates = await asked('mallard', '2024', '--figures', '--width', '200');
    expect(rates.out).toMatch(/rate an hour: refused\. 2 visits complete for birds/);
  });
});

describe('The lines', () => {
  test.each([40, 60, 100])('are ASCII and fit %i columns, whatever is asked.', async (width) => {
    const folder = join(notebook, 'invented');
    await run(['demo', '--folder', folder], { notebook });
    for (const asking of [
      [],
      ['tern', 'may'],
      ['sallow', '2025'],
      ['2025', '--figures'],
      ['unnamed'],
      ['first', '2026'],
      ['duck', '--figures'],
    ]) {
      const args = ['almanac', ...asking, '--width', String(width), '--notebook', folder];
      const { answers, code } = await run(args, { notebook });
      expect(code).toBe(0);
      expect(answers.length).toBeGreaterThan(2);
      // Names of the invented notebook are ASCII too.
      for (const line of answers) expect(line).toMatch(/^[\x20-\x7e]*$/);
      expect(Math.max(...answers.map(({ length }) => length))).toBeLessThanOrEqual(width);
    }
  });

  test('let nothing from a file reach the terminal as a command.', async () => {
    const place = { ...DROVE, name: 'Rook\u001b[2J Wood\u202e' };
    const harm = { taxon: null, words: 'grey\u0007 thing', description: 'a\nb\u009b1m' };
    await keep(notebook, outing('2026-02-01', [harm], { place }));
    for (const more of [[], ['--json']]) {
      const { out } = await asked('unnamed', ...more);
      expect(out).toMatch(/Rook·\[2J Wood·/);
      expect(out.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u);
    }
  });
});

describe('What can not be answered', () => {
  test('is said in a sentence that names the word, and nothing is printed.', async () => {
    const ran = await asked('tern', 'xyzzy');
    expect(ran).toMatchObject({ code: 1, answers: [] });
    expect(ran.complaints).toEqual([expect.stringMatching(/is called "xyzzy"/)]);
  });

  test('is no record of a species that the lists know.', async () => {
    const ran = await asked('smew');
    expect(ran).toMatchObject({ code: 0, answers: ['Smew: 0 entries in 0 of 4 visits.'] });
  });

  test.each(['', '39', '1001', 'wide', '-60', '60.5'])('is a width of "%s".', async (width) => {
    expect((await asked(`--width=${width}`)).code).toBe(2);
  });

  test('is a notebook that is not there, or has no visit yet.', async () => {
    const none = await run(['almanac', '--notebook', join(notebook, 'none')], { notebook });
    expect(none.code).toBe(3);
    const empty = await run(['almanac'], { notebook: freshFolder() });
    expect(empty).toMatchObject({ code: 1, answers: [] });
    expect(empty.complaints[0]).toMatch(/There is no visit/);
  });

  test('is a broken file, which is named while the others answer.', async () => {
    await mkdir(join(notebook, 'visits', '2025'), { recursive: true });
    await writeFile(join(notebook, 'visits', '2025', '2025-07-01-broken.json'), '{');
    const ran = await asked('mallard');
    expect(ran.code).toBe(0);
    expect(ran.complaints).toEqual([
      expect.stringMatching(/2025-07-01-broken\.json can't be read/),
    ]);
    expect(ran.answers).toContain('  With it: 2 visits; without: 2.');
  });
});
