import { MONTHS, monthOf, yearOf } from '../../almanac/asking/days.ts';
import type { VisitDigest } from '../../almanac/asking/digest.ts';
import { speciesCount, taxaSeen } from '../../almanac/asking/taxa-seen.ts';
import { many } from '../../almanac/figures/figure.ts';
import { type Block, type Column, type Section, table, text } from './document.ts';
import type { Season } from './season.ts';
import { barsSvg } from './svg-bars.ts';
import { hoursWords } from './words.ts';

const HOUR = 3_600_000;

const COLUMNS: readonly Column[] = [
  { name: 'Visits', number: true },
  { name: 'With an end', number: true },
  { name: 'Complete', number: true },
  { name: 'Hours', number: true },
  { name: 'Kilometres', number: true },
  { name: 'Species', number: true },
];

/** How much was looked: by month and by place. */
export function effortSection(season: Season): Section {
  const { visits } = season;
  const months = by(visits, ({ date }) => monthName(date, visits));
  const bars = [...months].map(([label, some]) => ({
    label,
    value: watchedIn(some) / HOUR,
    beside: `${hoursWords(watchedIn(some))} h, ${many(some.length, 'visit')}`,
  }));
  return {
    id: 'effort',
    heading: 'Effort',
    blocks: [
      text(
        'Hours are those of the visit less its pauses, whatever the number of observers; a visit without an end has none. Kilometres are as given by hand or by a track; a visit without a distance has none. More hours find more species, so figures of months and places with another effort do not compare by themselves.',
      ),
      {
        kind: 'picture',
        svg: barsSvg(bars, { id: 'hours', title: 'Hours watched by month', width: 620 }),
        words: 'Hours watched by month.',
      },
      tableBy('Effort by month', 'Month', months),
      ...placeBlocks(season),
    ],
  };
}

function placeBlocks({ visits, asked }: Season): Block[] {
  if (asked.place !== null) return [];
  const withheld = 'withheld or not given';
  const places = [...by(visits, ({ place }) => place?.name ?? withheld)].sort(
    ([one, ones], [two, twos]) =>
      Number(one === withheld) - Number(two === withheld) || twos.length - ones.length,
  );
  return [tableBy('Effort by place', 'Place', new Map(places))];
}

function tableBy(
  caption: string,
  name: string,
  rows: ReadonlyMap<string, readonly VisitDigest[]>,
): Block {
  const all = [...rows.values()].flat();
  return table(
    caption,
    [{ name }, ...COLUMNS],
    [
      ...[...rows].map(([label, some]) => [label, ...cellsOf(some)]),
      ...(rows.size > 1 ? [['All', ...cellsOf(all)]] : []),
    ],
  );
}

function cellsOf(visits: readonly VisitDigest[]): string[] {
  const inTime = [...visits].sort((one, two) => one.epoch - two.epoch);
  const metres = visits.flatMap(({ distance }) => distance ?? []);
  return [
    String(visits.length),
    String(visits.filter(({ watched }) => watched !== null).length),
    String(visits.filter(({ complete }) => complete).length),
    hoursWords(watchedIn(visits)),
    metres.length === 0 ? '–' : (metres.reduce((sum, each) => sum + each, 0) / 1000).toFixed(1),
    String(speciesCount(taxaSeen(inTime))),
  ];
}

function watchedIn(visits: readonly VisitDigest[]): number {
  return visits.reduce((sum, { watched }) => sum + (watched ?? 0), 0);
}

function monthName(date: string, visits: readonly VisitDigest[]): string {
  const several = new Set(visits.map((visit) => yearOf(visit.date))).size > 1;
  const name = MONTHS[monthOf(date) - 1] ?? '';
  return several ? `${name} ${yearOf(date)}` : name;
}

/** Visits by a label, the labels in the order in which they come. */
function by(
  visits: readonly VisitDigest[],
  label: (visit: VisitDigest) => string,
): Map<string, VisitDigest[]> {
  const groups = new Map<string, VisitDigest[]>();
  for (const visit of visits) {
    const some = groups.get(label(visit)) ?? [];
    some.push(visit);
    groups.set(label(visit), some);
  }
  return groups;
}
