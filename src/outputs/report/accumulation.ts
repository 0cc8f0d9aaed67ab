import { completeFor } from '../../almanac/asking/complete.ts';
import { type Accumulated, accumulationOf } from '../../almanac/figures/accumulation.ts';
import { NEEDS } from '../../almanac/figures/figure.ts';
import type { Plot } from '../../almanac/plots/lines.ts';
import { MOST_SERIES, topOf } from '../../almanac/plots/lines.ts';
import { type Block, list, type Section, table, text } from './document.ts';
import type { Season } from './season.ts';
import { linesSvg } from './svg-lines.ts';
import { capital, hoursWords, joinedWords } from './words.ts';

const STEPS = [1, 2, 3, 5, 10, 20, 50, 100, 200, 500, 1000];

interface Curve {
  group: string;
  steps: readonly Accumulated[];
  notes: readonly string[];
  /** Mean milliseconds of the complete visits that have an end; null without one. */
  mean: number | null;
}

/** How many species to expect of so many complete visits, with the hours that they take. */
export function accumulationSection(season: Season): Section {
  const { curves, refusals } = curvesOf(season);
  return {
    id: 'accumulation',
    heading: 'Species and effort',
    blocks: [
      text(
        `${NEEDS.accumulation} The curve is the mean over all orders of the visits; where it still climbs at its end, more visits would have found more species. Hours are the mean length of the complete visits times their number.`,
      ),
      ...pictureOf(curves),
      ...(curves.length === 0
        ? []
        : [
            table(
              'Species to expect of so many complete visits',
              [
                { name: 'Group' },
                { name: 'Complete visits', number: true },
                { name: 'Hours, about', number: true },
                { name: 'Species', number: true },
                { name: 'Standard deviation', number: true },
              ],
              curves.flatMap(rowsOf),
            ),
          ]),
      ...list(curves.flatMap(({ notes }) => notes)),
      ...list(refusals),
    ],
  };
}

function curvesOf({ visits, groups, groupOf }: Season): { curves: Curve[]; refusals: string[] } {
  const curves: Curve[] = [];
  const refusals: string[] = [];
  for (const { group, species } of groups) {
    if (species.length === 0) continue;
    const figure = accumulationOf(visits, group, groupOf);
    const ended = visits
      .filter((visit) => completeFor(visit, group))
      .flatMap(({ watched }) => watched ?? []);
    const mean =
      ended.length === 0 ? null : ended.reduce((sum, each) => sum + each, 0) / ended.length;
    if ('refused' in figure) refusals.push(figure.refused);
    else curves.push({ group, steps: figure.steps, notes: figure.notes, mean });
  }
  return { curves, refusals };
}

function pictureOf(curves: readonly Curve[]): Block[] {
  const shown = curves.slice(0, MOST_SERIES);
  const most = Math.max(0, ...shown.map(({ steps }) => steps.length));
  if (most < 2) return [];
  const plot: Plot = {
    series: shown.map(({ group, steps }) => ({
      name: group,
      points: steps.map(({ visits, species }) => [visits, species] as const),
    })),
    from: 1,
    to: most,
    ticks: ticksTo(most),
    stepped: false,
  };
  const picture = {
    id: 'accumulated',
    title: 'Species to expect of so many complete visits',
    width: 620,
    height: 300 + shown.length * 18,
  };
  const left =
    curves.length > shown.length
      ? ` Only in the table: ${joinedWords(curves.slice(MOST_SERIES).map(({ group }) => group))}.`
      : '';
  return [
    {
      kind: 'picture',
      svg: linesSvg(plot, picture),
      words: `Species (upwards) to expect of so many complete visits (to the right).${left}`,
    },
  ];
}

/** About five round numbers of visits. */
function ticksTo(most: number): { x: number; label: string }[] {
  const step = Math.max(1, topOf([{ name: '', points: [[0, most / 5]] }]));
  const ticks = [1];
  for (let x = step; x <= most; x += step) if (x > 1) ticks.push(x);
  return ticks.map((x) => ({ x, label: String(x) }));
}

function rowsOf({ group, steps, mean }: Curve): string[][] {
  return steps
    .filter(({ visits }) => STEPS.includes(visits) || visits === steps.length)
    .map(({ visits, species, sd }) => [
      capital(group),
      String(visits),
      mean === null ? 'no end given' : hoursWords(mean * visits),
      species.toFixed(1),
      sd.toFixed(1),
    ]);
}
