import { many } from '../../almanac/figures/figure.ts';
import { list, type Section, text } from './document.ts';
import type { Season } from './season.ts';
import { joinedWords } from './words.ts';

const HOUR = 3_600_000;

/** Who logged, and how many were out. */
export function observersSection({ asked, visits }: Season): Section {
  const known = visits.filter(({ observers }) => observers !== null);
  const numbers = known.map(({ observers }) => observers ?? 0);
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  const hours = known.reduce(
    (sum, { observers, watched }) => sum + ((observers ?? 0) * (watched ?? 0)) / HOUR,
    0,
  );
  const parties =
    known.length === 0
      ? 'No visit says how many observers there were.'
      : `${many(known.length, 'visit')} of ${visits.length} ${known.length === 1 ? 'says' : 'say'} how many observers there were: ${least === most ? least : `${least} to ${most}`}, together ${hours.toFixed(1)} hours times observers.`;
  return {
    id: 'observers',
    heading: 'Observers',
    blocks: [
      text(
        asked.by.length === 0 ? 'Who logged is not told.' : `Logged by ${joinedWords(asked.by)}.`,
      ),
      text(parties),
    ],
  };
}

/** What counts can show and what they can't, and what is withheld. */
export function cautionsSection(season: Season): Section {
  return {
    id: 'cautions',
    heading: 'What these figures can and can’t show',
    blocks: [
      ...list([
        'They are what was noticed and logged. What is not in them may have been there: hidden, silent, or passed over.',
        'A count is of what was seen at one time, not of all there were. Totals of several visits may hold the same individuals more than once.',
        'Visits were made when and where it suited, so months, places and years differ in effort, weather and eyes. A change in these figures is no proof of a change in nature.',
        'Species that are easy to see, hear and name stand out; others are under-recorded.',
        'Names are the observers’ own. Uncertain and unnamed entries are left out of the figures; a name may be corrected later, and then the report changes.',
      ]),
      text(withheldWords(season)),
    ],
  };
}

function withheldWords({ asked, hidden, visits }: Season): string {
  if (asked.exact)
    return 'Exact places: for your own use, and for those who may know where threatened species are, such as the body that looks after the site. Pass it on to nobody else; local law goes first.';
  if (asked.place !== null)
    return 'A report of one place leaves out visits whose place may not be given out; it does not say whether there were any, and all its figures are of the others alone.';
  if (hidden === 0) return 'No place is withheld.';
  return `The places of ${hidden} of ${many(visits.length, 'visit')} are withheld, for the sake of threatened or sensitive species or of private or protected ground.`;
}
