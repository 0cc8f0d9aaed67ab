import type { TaxonSeen } from '../../almanac/asking/taxa-seen.ts';
import { highestCount } from '../../almanac/asking/taxon-page.ts';
import { NEEDS } from '../../almanac/figures/figure.ts';
import { COUNT_RULE } from '../../almanac/figures/number.ts';
import { categoryLetters } from '../../taxa/red-list.ts';
import { sumWords } from '../count-words.ts';
import { type Block, type Cell, type Column, type Section, table, text } from './document.ts';
import type { GroupSeen, Season } from './season.ts';
import { capital, dateWords, dayWords, joinedWords } from './words.ts';

const COLUMNS: readonly Column[] = [
  { name: 'Species' },
  { name: 'Category' },
  { name: 'Visits', number: true },
  { name: 'First', number: true },
  { name: 'Last', number: true },
  { name: 'Highest count', number: true },
  { name: 'On', number: true },
  { name: 'Scientific name' },
];

/** Every species with its first and last dates and its highest count, a table a group. */
export function speciesSection(season: Season): Section {
  const blocks = season.groups.flatMap((each) => groupBlocks(each, season));
  const [first, last] = [season.visits[0], season.visits.at(-1)];
  const looked =
    first && last
      ? `The first visit was on ${dateWords(first.date)}, the last on ${dateWords(last.date)}: ≤ marks what was there at the first and may have come before, ≥ what was there at the last and may have stayed.`
      : '';
  return {
    id: 'species',
    heading: 'Species, first and last dates and high counts',
    blocks: [
      text(`${NEEDS.firstAndLast} ${looked}`.trim()),
      text(
        `The highest count is the greatest total of one visit. ${COUNT_RULE} Category: IUCN Red List, as the species list had it on the day; threatened ones bear an exclamation mark.`,
      ),
      ...blocks,
    ],
  };
}

function groupBlocks({ group, species, coarser }: GroupSeen, season: Season): Block[] {
  const rows = species.map((each) => rowOf(each, season));
  const others = coarser.map(
    ({ name, taxon, visits }) =>
      `${[name, taxon.vernacularName === null ? taxon.identificationQualifier : null].filter(Boolean).join(' ')} (${visits})`,
  );
  return [
    { kind: 'subheading', text: capital(group) },
    ...(rows.length === 0
      ? []
      : [table(`${capital(group)} on record, of ${season.visits.length} visits`, COLUMNS, rows)]),
    ...(others.length === 0
      ? []
      : [text(`Not to the species, with the number of visits: ${joinedWords(others)}.`)]),
  ];
}

function rowOf({ key, name, taxon, visits, first, last }: TaxonSeen, season: Season): Cell[] {
  const highest = highestCount(season.visits, key);
  const [opened, closed] = [season.visits[0]?.date, season.visits.at(-1)?.date];
  return [
    name,
    categoryLetters(taxon),
    String(visits),
    `${first === opened ? '≤ ' : ''}${dayWords(first, season)}`,
    `${last === closed ? '≥ ' : ''}${dayWords(last, season)}`,
    highest === null ? 'not counted' : String(sumWords(highest.total)),
    highest === null ? '' : dayWords(highest.date, season),
    { scientific: taxon.scientificName },
  ];
}
