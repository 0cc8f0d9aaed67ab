import { isThreatened } from '../../taxa/red-list.ts';
import { sumShown } from '../../visit/sums.ts';
import { durationWords } from '../../visit/time.ts';
import { MONTHS } from '../asking/days.ts';
import type { FirstRecord } from '../asking/firsts.ts';
import type { TaxonSeen } from '../asking/taxa-seen.ts';
import type { TaxonPage } from '../asking/taxon-page.ts';
import { many } from '../figures/figure.ts';
import { barRows } from '../plots/bars.ts';
import type { PlaceReport } from './place-report.ts';
import { headed, indented, sentenceRows, tableRows } from './rows.ts';

const MOST_TAXA = 20;
const MOST_PLACES = 8;
const MOST_FIRSTS = 20;

/** The page of a species as rows of ASCII but for the names in it. */
export function speciesRows(page: TaxonPage, width: number): string[] {
  const { taxon, name, visits, visitsWith, visitsNone, uncertain, highest, places, years } = page;
  const letters = isThreatened(taxon.redListCategory) ? ` [${taxon.redListCategory}]` : '';
  const latin = name === taxon.scientificName ? '' : ` (${taxon.scientificName})`;
  const said = [
    `First ${page.first}, last ${page.last}.`,
    `With it: ${many(visitsWith, 'visit')}; without: ${visits - visitsWith}.`,
    ...(visitsNone > 0 ? [`Looked for and noted as none: ${many(visitsNone, 'visit')}.`] : []),
    ...(uncertain > 0
      ? [
          `${uncertain === 1 ? '1 entry' : `${uncertain} entries`} with a question mark, not counted here.`,
        ]
      : []),
    highest === null
      ? 'It was never counted.'
      : `Highest count ${sumShown(highest.total)}, ${highest.date}${highest.place === null ? '' : `, ${highest.place}`}${highest.rule === 'highest' ? ' (the highest of that visit)' : ''}.`,
  ];
  return [
    '',
    ...sentenceRows(`${name}${latin}${letters}`, width),
    ...said.flatMap((sentence) => sentenceRows(sentence, width, '  ')),
    ...monthRows(page, width),
    ...headed(
      'Places: visits with it of all there, and the last',
      tableRows(
        places.map((place) => [place.name, `${place.visitsWith} of ${place.visits}`, place.last]),
        width,
      ),
      width,
      MOST_PLACES,
    ),
    ...headed(
      'Years: visits with it of all',
      tableRows(
        years.map((each) => [`${each.year}`, `${each.visitsWith} of ${each.visits}`]),
        width,
      ),
      width,
    ),
  ];
}

function monthRows({ months }: TaxonPage, width: number): string[] {
  const made = months.filter(({ visits }) => visits > 0);
  const bars = made.map(({ month, visits, visitsWith, complete, completeWith, share }) => ({
    label: (MONTHS[month - 1] ?? '').slice(0, 3),
    value: share,
    beside:
      complete === visits
        ? `${completeWith} of ${complete}`
        : `${completeWith} of ${complete}, all ${visitsWith} of ${visits}`,
  }));
  return headed(
    'Months: share of the complete visits that had it (all: with the others)',
    indented(barRows(bars, width - 2)),
    width,
  );
}

/** The report of a place as rows. */
export function placeRows(place: PlaceReport, width: number): string[] {
  const { name, visits, first, last, watched, species, bestDays, newIn, newThere, likely } = place;
  return [
    '',
    name,
    ...sentenceRows(
      `${many(visits, 'visit')} from ${first} to ${last}, ${durationWords(watched)} hours; ${species} species.`,
      width,
      '  ',
    ),
    ...headed(
      'Best days: species',
      tableRows(
        bestDays.map((day) => [day.date, `${day.species}`]),
        width,
      ),
      width,
    ),
    ...firstRows(`New here in ${newIn}`, newThere, ['first'], width),
    ...headed(
      'Likely here today: visits with it here, and in all',
      tableRows(
        likely.map((each) => [each.name, `${each.visitsHere}`, `${each.visits}`]),
        width,
      ),
      width,
    ),
    ...taxaRows('Its list: visits, first and last', place.taxa, width),
  ];
}

/** Taxa on record as rows: Red List category where it says more than least concern, visits, dates. */
export function taxaRows(heading: string, taxa: readonly TaxonSeen[], width: number): string[] {
  const cells = taxa.map(({ name, taxon, visits, first, last }) => [
    name,
    ['LC', 'NE'].includes(taxon.redListCategory) ? '' : taxon.redListCategory,
    `${visits}`,
    first,
    last,
  ]);
  return headed(heading, tableRows(cells, width), width, MOST_TAXA);
}

/** Firsts as rows: name, date, and what it was the first of and where, as far as that is asked for. */
export function firstRows(
  heading: string,
  firsts: readonly FirstRecord[],
  beside: readonly ('first' | 'place')[],
  width: number,
): string[] {
  const cells = firsts.map((record) => [
    record.name,
    record.date,
    ...beside.map((each) => (each === 'first' ? record.first : (record.place?.name ?? ''))),
  ]);
  return headed(heading, tableRows(cells, width), width, MOST_FIRSTS);
}
