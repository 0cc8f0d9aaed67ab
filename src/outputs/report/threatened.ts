import { highestCount } from '../../almanac/asking/taxon-page.ts';
import { CATEGORY_WORDS, isThreatened } from '../../taxa/red-list.ts';
import { sumWords } from '../count-words.ts';
import { type Block, type Section, table, text } from './document.ts';
import type { Season } from './season.ts';
import { dayWords } from './words.ts';

/** What was met of threatened taxa; where is not told. */
export function threatenedSection(season: Season): Section {
  const taxa = season.groups
    .flatMap(({ species, coarser }) => [...species, ...coarser])
    .filter(({ taxon }) => isThreatened(taxon.redListCategory));
  const rows = taxa.map(({ key, name, taxon, visits, first, last }) => {
    const highest = highestCount(season.visits, key);
    return [
      name,
      `${taxon.redListCategory}, ${CATEGORY_WORDS[taxon.redListCategory]}`,
      taxon.redListSource ?? 'not told',
      String(visits),
      dayWords(first, season),
      dayWords(last, season),
      highest === null ? 'not counted' : String(sumWords(highest.total)),
      { scientific: taxon.scientificName },
    ];
  });
  const shown: Block =
    rows.length === 0
      ? text(noneWords(season))
      : table(
          'Threatened species (CR, EN, VU)',
          [
            { name: 'Species' },
            { name: 'Category' },
            { name: 'By' },
            { name: 'Visits', number: true },
            { name: 'First', number: true },
            { name: 'Last', number: true },
            { name: 'Highest count', number: true },
            { name: 'Scientific name' },
          ],
          rows,
        );
  return {
    id: 'threatened',
    heading: 'Threatened species',
    blocks: [
      shown,
      text(
        'Red List categories are a global assessment and do not replace local protection lists. Keep your distance, from nests and dens above all; pass on no place of a threatened species. Local law and the land manager go first.',
      ),
    ],
  };
}

/** A report of one place can't say that there is none: it would be wrong, and its absence would tell. */
function noneWords({ asked }: Season): string {
  return asked.place !== null && !asked.exact
    ? 'Visits that met a threatened or sensitive species are not in a report of one place.'
    : 'No threatened species is on record.';
}
