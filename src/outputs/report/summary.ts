import { highestCount } from '../../almanac/asking/taxon-page.ts';
import { many } from '../../almanac/figures/figure.ts';
import { numberOf } from '../../almanac/figures/number.ts';
import { isThreatened } from '../../taxa/red-list.ts';
import { sumWords } from '../count-words.ts';
import { type Block, type Section, text } from './document.ts';
import type { Season } from './season.ts';
import { dateWords, hoursWords, joinedWords } from './words.ts';

const MOST_MET = 5;

/** The season in a few sentences. */
export function summarySection(season: Season): Section {
  const blocks = [effortWords(season), speciesWords(season), openWords(season)]
    .filter((words) => words !== '')
    .map((words): Block => text(words));
  return { id: 'summary', heading: 'Summary', blocks };
}

function effortWords({ visits }: Season): string {
  const [first, last] = [visits[0], visits.at(-1)];
  if (!first || !last) return '';
  const ended = visits.flatMap(({ watched }) => watched ?? []);
  const hours = hoursWords(ended.reduce((sum, watched) => sum + watched, 0));
  const complete = visits.filter((visit) => visit.complete).length;
  const when =
    first.date === last.date
      ? `On ${dateWords(first.date)}`
      : `From ${dateWords(first.date)} to ${dateWords(last.date)}`;
  const open = visits.length - ended.length;
  return [
    `${when} there ${visits.length === 1 ? 'was' : 'were'} ${many(visits.length, 'visit')}, in which somebody watched for ${hours} hours, pauses not counted.`,
    open === 0
      ? ''
      : `${many(open, 'visit')} without an end ${open === 1 ? 'adds' : 'add'} no time.`,
    `${complete === 0 ? 'None was' : `${many(complete, 'visit')} ${complete === 1 ? 'was' : 'were'}`} complete: everything noticed was logged, for some groups or for all.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function speciesWords(season: Season): string {
  const { groups, visits, firsts, asked } = season;
  const species = groups.flatMap((each) => each.species);
  if (species.length === 0) return 'No species is on record.';
  const parts = groups
    .filter((each) => each.species.length > 0)
    .map((each) => `${each.group} ${each.species.length}`);
  const threatened = species.filter(({ taxon }) => isThreatened(taxon.redListCategory)).length;
  const ofThem =
    asked.place === null || asked.exact ? `, ${threatened} of them threatened (CR, EN or VU)` : '';
  const fresh = firsts.filter(({ first }) => first === 'first').length;
  const met = [...species].sort((one, two) => two.visits - one.visits).slice(0, MOST_MET);
  const counts = species.flatMap(({ key, name }) => {
    const highest = highestCount(visits, key);
    return highest === null ? [] : { name, highest, number: numberOf(highest.total).number ?? 0 };
  });
  const [most] = counts.sort((one, two) => two.number - one.number);
  return [
    `${species.length} species ${species.length === 1 ? 'is' : 'are'} on record (${joinedWords(parts)})${ofThem}.`,
    `${fresh === 0 ? 'None was' : fresh === 1 ? 'One was' : `${fresh} were`} new to this notebook.`,
    `Met on most visits: ${joinedWords(met.map((each) => `${each.name} (${each.visits} of ${visits.length})`))}.`,
    most === undefined
      ? ''
      : `The highest count of a visit was of ${most.name}: ${sumWords(most.highest.total)} on ${dateWords(most.highest.date)}.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function openWords({ visits }: Season): string {
  const entries = visits.flatMap((visit) => visit.entries);
  const unnamed = entries.filter(({ taxon }) => taxon === null).length;
  const uncertain = entries.filter((entry) => entry.uncertain && entry.taxon !== null).length;
  if (unnamed + uncertain === 0) return '';
  const which = [
    unnamed === 0 ? '' : `${unnamed} without a name`,
    uncertain === 0 ? '' : `${uncertain} whose name is not certain`,
  ].filter((words) => words !== '');
  return `Not in the figures: ${joinedWords(which)}, of ${entries.length} entries.`;
}
