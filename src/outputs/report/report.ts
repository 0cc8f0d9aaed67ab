import { accumulationSection } from './accumulation.ts';
import { cautionsSection, observersSection } from './closing.ts';
import type { Report } from './document.ts';
import { effortSection } from './effort.ts';
import { firstsSection } from './firsts.ts';
import { monthsSection } from './months.ts';
import { ratesSection } from './rates.ts';
import type { Season } from './season.ts';
import { speciesSection } from './species.ts';
import { summarySection } from './summary.ts';
import { threatenedSection } from './threatened.ts';
import { dateWords, joinedWords } from './words.ts';

/** The report of a season, in plain text and tables; `htmlReport` and `markdownReport` write it. */
export function reportOf(season: Season): Report {
  const { asked } = season;
  const of = [placeOf(season), asked.group, periodWords(asked)].filter((words) => words !== null);
  const by = asked.by.length === 0 ? '' : `Logged by ${joinedWords(asked.by)}. `;
  return {
    title: `Season report: ${of.join(', ')}`,
    subtitle: `${by}Made on ${dateWords(asked.made)} from ${season.visits.length} ${season.visits.length === 1 ? 'visit' : 'visits'}.`,
    sections: [
      summarySection(season),
      speciesSection(season),
      monthsSection(season),
      effortSection(season),
      ratesSection(season),
      accumulationSection(season),
      threatenedSection(season),
      firstsSection(season),
      observersSection(season),
      cautionsSection(season),
    ],
  };
}

/** As the latest visit writes it: the option may have been typed in other letters. */
function placeOf({ asked, visits }: Season): string | null {
  if (asked.place === null) return null;
  return visits.findLast(({ place }) => place !== null)?.place?.name ?? null;
}

function periodWords({ from, to }: Season['asked']): string {
  if (from === null && to === null) return 'all years';
  if (from === null) return `up to ${dateWords(to ?? '')}`;
  if (to === null) return `from ${dateWords(from)} on`;
  const year = from.slice(0, 4);
  return from === `${year}-01-01` && to === `${year}-12-31`
    ? year
    : `${dateWords(from)} to ${dateWords(to)}`;
}
