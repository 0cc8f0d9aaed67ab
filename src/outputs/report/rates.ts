import { drawsFrom } from '../../almanac/figures/draws.ts';
import { NEEDS } from '../../almanac/figures/figure.ts';
import { type Rate, rate } from '../../almanac/figures/rate.ts';
import { type Block, list, type Section, table, text } from './document.ts';
import type { GroupSeen, Season } from './season.ts';
import { capital, joinedWords, rateWords } from './words.ts';

/** Any will do, as long as it stays: the same visits then have the same intervals. */
const SEED = 20_260_101;

/** The project's own choice: the interval of a species met on fewer visits spans nearly everything. */
const LEAST_MET = 5;

type Rated = Rate & { name: string; notes: readonly string[] };

/** How many an hour of each species, with 95 % intervals, or why there is no such number. */
export function ratesSection(season: Season): Section {
  const groups = season.groups.filter(({ species }) => species.length > 0);
  const rated = groups
    .filter(({ species }) => metEnough(species).length > 0)
    .map((each) => groupRates(each, season));
  const rare = groups.filter(({ species }) => metEnough(species).length === 0);
  return {
    id: 'rates',
    heading: 'Individuals an hour',
    blocks: [
      text(
        `${NEEDS.rate} The rate is all individuals through all hours of the visits complete for the group, those without the species too; the interval holds 95 % of what the same visits, drawn anew 1,999 times, give. It tells how much visits differ, not how many were overlooked.`,
      ),
      ...rated.flatMap(({ blocks }) => blocks),
      ...list(rated.flatMap(({ reasons }) => reasons)),
      ...(rare.length === 0
        ? []
        : [
            text(
              `No species was met on at least ${LEAST_MET} visits of these groups: ${joinedWords(rare.map(({ group }) => group))}.`,
            ),
          ]),
    ],
  };
}

function metEnough(species: GroupSeen['species']): GroupSeen['species'] {
  return species.filter(({ visits }) => visits >= LEAST_MET);
}

/** The tables of a group, and the reasons for species that have no rate. */
function groupRates(
  { group, species }: GroupSeen,
  { visits }: Season,
): { blocks: Block[]; reasons: string[] } {
  const met = metEnough(species);
  const rates: Rated[] = [];
  const refusals = new Map<string, string[]>();
  for (const { key, name } of met) {
    const figure = rate(visits, { key, group }, 'hour', drawsFrom(SEED));
    if ('refused' in figure)
      refusals.set(figure.refused, [...(refusals.get(figure.refused) ?? []), name]);
    else rates.push({ ...figure, name });
  }
  const fewer = species.length - met.length;
  const left =
    fewer === 0
      ? []
      : [text(`Met on fewer than ${LEAST_MET} visits and left out: ${fewer} species.`)];
  return {
    blocks:
      rates.length === 0
        ? []
        : [{ kind: 'subheading', text: capital(group) }, ...rateTable(group, rates), ...left],
    reasons: [...refusals].map(([refused, names]) =>
      names.length === met.length ? refused : `${joinedWords(names)}: ${refused}`,
    ),
  };
}

function rateTable(group: string, rates: readonly Rated[]): Block[] {
  const [first] = rates;
  if (!first) return [];
  const shared = first.notes.filter((note) => rates.every(({ notes }) => notes.includes(note)));
  const own = rates.map(({ notes }) => notes.filter((note) => !shared.includes(note)).join(' '));
  const noted = own.some((note) => note !== '');
  return [
    table(
      `${capital(group)}: individuals an hour over ${first.visits} visits and ${first.effort.toFixed(1)} hours`,
      [
        { name: 'Species' },
        { name: 'An hour', number: true },
        { name: '95 % interval', number: true },
        { name: 'Individuals', number: true },
        ...(noted ? [{ name: 'Of the counts' }] : []),
      ],
      rates.map(({ name, interval: [low, high], individuals, rate: hourly }, at) => [
        name,
        rateWords(hourly),
        `${rateWords(low)} to ${rateWords(high)}`,
        String(individuals),
        ...(noted ? [own[at] ?? ''] : []),
      ]),
    ),
    ...shared.map(text),
  ];
}
