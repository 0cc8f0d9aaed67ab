import { describe, expect, test } from 'vitest';
import type { Report, Table } from '../../../src/outputs/report/document.ts';
import { reportOf } from '../../../src/outputs/report/report.ts';
import { type Asked, seasonOf } from '../../../src/outputs/report/season.ts';
import type { Visit } from '../../../src/visit/visit.ts';
import { DROVE, exactly, MALLARD, outing, POCHARD, PRESENT } from '../../almanac/made.ts';
import { FACTS, given, OTTER } from '../given.ts';

const ASKED: Asked = {
  ...{ from: '2026-01-01', to: '2026-12-31', place: null, group: null, by: [] },
  ...{ exact: false, made: '2026-12-31' },
};

const duck = { ...MALLARD, list: 'birds' };
const pochard = { ...POCHARD, list: 'birds' };

function reported(visits: readonly Visit[], over: Partial<Asked> = {}): Report {
  const chosen = visits.map((visit) => ({ visit: given(visit), firstOf: () => null }));
  return reportOf(seasonOf(chosen, { ...ASKED, ...over }, FACTS));
}

function tablesOf(report: Report, id: string): Table[] {
  const section = report.sections.find((each) => each.id === id);
  return (section?.blocks ?? []).flatMap((block) => (block.kind === 'table' ? block.table : []));
}

function wordsOf(report: Report, id: string): string {
  const section = report.sections.find((each) => each.id === id);
  return (section?.blocks ?? [])
    .flatMap((block) =>
      block.kind === 'text' ? block.text : block.kind === 'list' ? block.items : [],
    )
    .join(' ');
}

/** Two ducks, none and four in three two-hour visits. */
const SPRING = [
  outing('2026-03-01', [[duck, 2]]),
  outing('2026-03-08', [[pochard, 1]]),
  outing('2026-04-05', [
    [duck, 4],
    [pochard, { kind: 'about', value: 30 }],
  ]),
];

// Expected values are worked out by hand from the visits above.
describe('The season report', () => {
  test('gives each species its visits, dates and highest count, and marks the edges of the season.', () => {
    const [birds] = tablesOf(reported(SPRING), 'species');
    expect(birds?.rows).toEqual([
      [
        'Pochard',
        'VU !',
        '2',
        '8 Mar',
        '≥ 5 Apr',
        'about 30',
        '5 Apr',
        { scientific: 'Aythya ferina' },
      ],
      [
        'Mallard',
        'LC',
        '2',
        '≤ 1 Mar',
        '≥ 5 Apr',
        '4',
        '5 Apr',
        { scientific: 'Anas platyrhynchos' },
      ],
    ]);
  });

  test('puts the number of complete visits beside the share of a month.', () => {
    const [months] = tablesOf(reported(SPRING), 'months');
    expect(months?.rows[1]?.slice(0, 6)).toEqual(['Mallard', '–', '–', '1/2', '1/1', '–']);
  });

  test('says met, and no share, where a month has no complete visit.', () => {
    const open = outing('2026-05-01', [[duck, 1]], { complete: false });
    const [months] = tablesOf(reported([...SPRING, open]), 'months');
    expect(months?.rows[1]?.[5]).toBe('met');
  });

  test('adds up effort, and a visit without an end adds no hours.', () => {
    const going = outing('2026-04-20', [], { hours: null, distance: 1500, place: DROVE });
    const [months, places] = tablesOf(reported([...SPRING, going]), 'effort');
    expect(months?.rows).toEqual([
      ['March', '2', '2', '2', '4.0', '–', '2'],
      ['April', '2', '1', '2', '2.0', '1.5', '2'],
      ['All', '4', '3', '4', '6.0', '1.5', '2'],
    ]);
    expect(places?.rows.map(([name]) => name)).toEqual([
      'Sallow Mere',
      'Withy Drove',
      'withheld or not given',
      'All',
    ]);
  });

  test('gives a rate of the sums with its interval once five visits bear it.', () => {
    const weeks = [1, 8, 15, 22, 29].map((day) =>
      outing(`2026-03-${String(day).padStart(2, '0')}`, [[duck, 2]]),
    );
    const [birds] = tablesOf(reported(weeks), 'rates');
    expect(birds?.rows).toEqual([['Mallard', '1.0', '1.0 to 1.0', '10']]);
  });

  test('gives the reason where there is no rate, no accumulation and no count.', () => {
    const visits = [1, 2, 3, 4, 5].map((day) =>
      outing(`2026-06-0${day}`, [[duck, day === 3 ? PRESENT : exactly(2)]], { complete: day > 1 }),
    );
    expect(wordsOf(reported(visits), 'rates')).toContain(
      '4 visits complete for birds with an end: 5 are needed for a rate.',
    );
    const open = visits.map((visit) => ({
      ...visit,
      effort: { ...visit.effort, complete: false },
    }));
    expect(wordsOf(reported(open), 'accumulation')).toContain(
      '0 visits of 5 are complete for birds: two are needed.',
    );
    expect(wordsOf(reported(open), 'months')).toContain('No visit is complete for birds');
  });

  // Mao tau (Colwell, Mao & Chang 2004): one of three visits holds on average 4/3 of two species in two each.
  test('accumulates species with the hours that the visits take.', () => {
    const [steps] = tablesOf(reported(SPRING), 'accumulation');
    expect(steps?.rows.map((row) => row.slice(1, 4))).toEqual([
      ['1', '2.0', '1.3'],
      ['2', '4.0', '2.0'],
      ['3', '6.0', '2.0'],
    ]);
  });

  test('lists threatened species with the source of their category, and no place.', () => {
    const report = reported(SPRING);
    const [threatened] = tablesOf(report, 'threatened');
    expect(threatened?.rows.map(([name]) => name)).toEqual(['Pochard']);
    expect(JSON.stringify(report.sections.find(({ id }) => id === 'threatened'))).not.toContain(
      'Sallow Mere',
    );
  });

  test('says how many places are withheld, and to whom an exact report may go.', () => {
    const hidden = outing('2026-05-01', [[OTTER, 1]]);
    const report = reported([...SPRING, hidden]);
    expect(wordsOf(report, 'cautions')).toContain('The places of 3 of 4 visits are withheld');
    expect(tablesOf(report, 'effort')[1]?.rows.map(([name]) => name)).toContain(
      'withheld or not given',
    );
    expect(wordsOf(reported(SPRING, { exact: true }), 'cautions')).toContain('for your own use');
  });

  test('of one place never says that it has no threatened species: their visits are left out.', () => {
    const report = reported(SPRING.slice(0, 1), { place: 'sallow mere' });
    expect(wordsOf(report, 'threatened')).toContain('are not in a report of one place');
    expect(wordsOf(report, 'summary')).not.toContain('threatened');
  });

  test('takes a list that is gone for other, and never gives out its name.', () => {
    const visit = outing('2026-05-01', [[{ ...duck, list: 'quagfen-birds' }, 1]]);
    const report = reported([visit]);
    expect(JSON.stringify(report)).not.toContain('quagfen');
    expect(tablesOf(report, 'species')[0]?.caption).toContain('Other on record');
  });

  test('is the same for the same visits.', () => {
    expect(reported(SPRING)).toEqual(reported(SPRING));
  });
});
