import { beforeEach, describe, expect, test } from 'vitest';
import { freshFolder } from '../notebook/visits.ts';
import { fullVisit, hiddenVisit } from '../outputs/full.ts';
import { idOf, placeOf } from '../visit/made.ts';
import { keep, ofShippedLists } from './kept.ts';
import { run } from './run.ts';

const NAME = 'Zwickelthorpe Quagfen';
const TELLING = `${NAME} 51.98765, -2.34567 51,987 N 2°20'44"W`;
const TRACES = /zwickel|quagfen|51[.,]98[78]|2[.,]34[56]|2°20|sluice|raft/i;
const POSITION = { latitude: 51.98765, longitude: -2.34567 };
const YEAR = ['report', '--year', '2026'];

let notebook: string;
beforeEach(async () => {
  notebook = freshFolder();
  await keep(notebook, ofShippedLists(fullVisit()));
  const hidden = ofShippedLists(hiddenVisit());
  const place = { ...placeOf({ name: NAME, position: POSITION, habitat: TELLING }) };
  await keep(notebook, {
    ...hidden,
    place: { ...place, verbatimCoordinates: TELLING },
    description: TELLING,
    effort: { ...hidden.effort, method: TELLING, groups: ['birds', TELLING] },
    entries: hidden.entries.map((entry) => ({
      ...entry,
      ...{ typed: TELLING, words: TELLING, description: TELLING, position: POSITION },
    })),
  });
});

describe('tussock report', () => {
  test.each([[[]], [['--markdown']], [['--group', 'mammals']], [['--from', '2026-01-01']]])(
    'tells nothing of a place that is withheld, with %j',
    async (more) => {
      const args = more[0] === '--from' ? ['report', ...more] : [...YEAR, ...more];
      const { code, out, complaints } = await run(args, { notebook });
      expect(code).toBe(0);
      expect(out).toContain('Otter');
      expect(`${out}${complaints.join('')}`).not.toMatch(TRACES);
    },
  );

  test('names the places that may be given out, and with --exact all of them', async () => {
    expect((await run(YEAR, { notebook })).out).toContain('Sallow Mere');
    const { out, complaints } = await run([...YEAR, '--exact'], { notebook });
    expect(out).toContain(NAME);
    expect(complaints.join('\n')).toContain('Exact places: for your own use');
  });

  test('of one place leaves out its hidden visits, which the report itself does not say', async () => {
    const place = placeOf();
    await keep(notebook, {
      ...ofShippedLists(hiddenVisit()),
      ...{ id: idOf(9), place, start: '2026-11-20T07:40:00+00:00' },
    });
    const { out, complaints } = await run([...YEAR, '--place', 'sallow mere'], { notebook });
    expect(out).toContain('<h1>Season report: Sallow Mere, 2026</h1>');
    expect(out).not.toMatch(/otter|20 nov/i);
    expect(complaints.join('\n')).toContain('Left out: 1 visit to this place');
  });

  test('refuses a place of which no visit may be given out', async () => {
    const { code, out, complaints } = await run([...YEAR, '--place', NAME], { notebook });
    expect(code).toBe(1);
    expect(out).toBe('');
    expect(complaints.join('\n')).toContain('may be given out with its place: leave --place out');
  });

  test('is a page that names who logged, with what is written in names kept as text', async () => {
    const by = ['--by', 'Ashwick Levels <b>naturalists</b>', '--by', 'A & B'];
    const { out } = await run([...YEAR, ...by], { notebook });
    expect(out.startsWith('<!doctype html>')).toBe(true);
    expect(out).toContain('Ashwick Levels &lt;b&gt;naturalists&lt;/b&gt; and A &amp; B');
    expect(out).toContain('<svg ');
  });

  test.each([
    [[], 2, 'Say which visits'],
    [['--year', '26'], 2, '"26" is no year'],
    [['--year', '2026', '--group', 'dragons'], 2, 'No list is of the group "dragons"'],
    [['--year', '1999'], 1, 'There is no visit in'],
  ])('refuses %j with a sentence', async (args, code, words) => {
    const ran = await run(['report', ...args], { notebook });
    expect(ran.code).toBe(code);
    expect(ran.out).toBe('');
    expect(ran.complaints.join('\n')).toContain(words);
  });
});
