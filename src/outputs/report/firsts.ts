import { type Block, list, type Section, table, text } from './document.ts';
import type { FirstGiven, Season } from './season.ts';
import { dayWords } from './words.ts';

/** What was new to the notebook, and what to a place. */
export function firstsSection(season: Season): Section {
  const { firsts } = season;
  const fresh = firsts.filter(({ first }) => first === 'first');
  const here = firsts.filter(({ first }) => first === 'first here');
  const again = firsts.length - fresh.length - here.length;
  return {
    id: 'firsts',
    heading: 'Firsts',
    blocks: [
      text(
        'New to this notebook, which need not be new to the place: it says when somebody first logged it.',
      ),
      ...freshTable(fresh, season),
      ...hereList(here, season),
      ...(again === 0
        ? []
        : [
            text(
              `${again} more ${again === 1 ? 'record was the first of its species' : 'records were the first of their species'} in the year.`,
            ),
          ]),
    ],
  };
}

function freshTable(fresh: readonly FirstGiven[], season: Season): Block[] {
  if (fresh.length === 0) return [text('No species was new to the notebook.')];
  const rows = fresh.map((each) => [
    each.name,
    dayWords(each.date, season),
    each.place ?? (each.hidden ? 'withheld' : 'not given'),
  ]);
  const columns = [{ name: 'Species' }, { name: 'Date', number: true as const }, { name: 'Place' }];
  return [table('New to this notebook', columns, rows)];
}

function hereList(here: readonly FirstGiven[], season: Season): Block[] {
  const byPlace = new Map<string, string[]>();
  for (const { place, name, date } of here)
    if (place !== null)
      byPlace.set(place, [...(byPlace.get(place) ?? []), `${name} (${dayWords(date, season)})`]);
  if (byPlace.size === 0) return [];
  return [
    { kind: 'subheading', text: 'Known before, new to a place' },
    ...list([...byPlace].map(([place, names]) => `${place}: ${names.join(', ')}.`)),
  ];
}
