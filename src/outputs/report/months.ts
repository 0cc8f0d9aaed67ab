import { completeFor } from '../../almanac/asking/complete.ts';
import { MONTHS, monthOf } from '../../almanac/asking/days.ts';
import { type TaxonPage, taxonPage } from '../../almanac/asking/taxon-page.ts';
import { type Block, type Section, table, text } from './document.ts';
import { monthsPicture } from './months-picture.ts';
import type { GroupSeen, Season } from './season.ts';
import { capital, joinedWords } from './words.ts';

/** More rows than this don't fit on a page. */
const MOST_ROWS = 25;

/** In which share of the visits of each month a species was met. */
export function monthsSection(season: Season): Section {
  const groups = season.groups.filter(({ species }) => species.length > 0);
  const isComplete = ({ group }: GroupSeen) =>
    season.visits.some((visit) => completeFor(visit, group));
  const shown = groups.filter(isComplete);
  const silent = groups.filter((each) => !isComplete(each)).map(({ group }) => group);
  return {
    id: 'months',
    heading: 'Presence by month',
    blocks: [
      text(
        'Share of the visits that were complete for the group, since only those say by their silence that a species was not noticed. A share of few visits says little: their number stands beside it.',
      ),
      ...shown.flatMap((each) => groupBlocks(each, season)),
      ...(silent.length === 0
        ? []
        : [
            text(
              `No visit is complete for ${joinedWords(silent)}, so there is no share. Say at the end of a visit that everything was logged.`,
            ),
          ]),
    ],
  };
}

function groupBlocks({ group, species }: GroupSeen, season: Season): Block[] {
  const { visits, groupOf } = season;
  const complete = visits.filter((visit) => completeFor(visit, group));
  const pages = species.flatMap(({ key }) => taxonPage(visits, key, groupOf) ?? []);
  const shown = new Set(mostMet(pages));
  const ofMonth = MONTHS.map(
    (_, at) => complete.filter(({ date }) => monthOf(date) === at + 1).length,
  );
  const svg = monthsPicture(
    `months-${group}`,
    `${capital(group)}: share of complete visits by month`,
    ofMonth,
    pages
      .filter((page) => shown.has(page))
      .map(({ name, months }) => ({
        name,
        months: months.map(({ share, visitsWith }) => ({ share, met: visitsWith > 0 })),
      })),
  );
  const some =
    shown.size < pages.length
      ? ` The ${shown.size} species met on most visits; the table has all.`
      : '';
  return [
    { kind: 'subheading', text: capital(group) },
    {
      kind: 'picture',
      svg,
      words: `${capital(group)}. A full bar: met on every complete visit of the month. A line: on none. A dot: only on visits that were not complete. Nothing: no complete visit.${some}`,
    },
    table(
      `${capital(group)}: complete visits with the species, of all complete visits of the month`,
      [
        { name: 'Species' },
        ...MONTHS.map((name) => ({ name: name.slice(0, 3), number: true as const })),
      ],
      pages.map(({ name, months }) => [name, ...months.map(cellOf)]),
    ),
  ];
}

function mostMet(pages: readonly TaxonPage[]): TaxonPage[] {
  return [...pages].sort((one, two) => two.visitsWith - one.visitsWith).slice(0, MOST_ROWS);
}

function cellOf({ complete, completeWith, visitsWith }: TaxonPage['months'][number]): string {
  if (completeWith > 0) return `${completeWith}/${complete}`;
  const met = visitsWith > 0 ? 'met' : '';
  return complete === 0 ? met || '–' : met || `0/${complete}`;
}
