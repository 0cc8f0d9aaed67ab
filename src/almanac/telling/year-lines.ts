import { daysBetween, MONTHS } from '../asking/days.ts';
import type { YearSoFar } from '../asking/year-page.ts';
import { many } from '../figures/figure.ts';
import { barRows } from '../plots/bars.ts';
import { calendarRows } from '../plots/calendar.ts';
import { lineRows, MOST_SERIES, type Series } from '../plots/lines.ts';
import { firstRows, taxaRows } from './page-lines.ts';
import type { YearsTold } from './report.ts';
import { headed, indented, sentenceRows } from './rows.ts';

const PLOT_ROWS = 9;
/** Columns of a calendar with its indent; a narrower window goes without. */
const CALENDAR = 43;
const LAST_DAY = 364;

/** Years beside each other as rows: their species by a day, how they grew, and when visits were made. */
export function yearRows(years: YearsTold, width: number): string[] {
  const { asked, day, totals, dates, firsts, threatened } = years;
  if (totals.length === 0) return ['', 'No visit is on record yet.'];
  const to = day === '12-31' ? 'at the end of the year' : `by ${day}`;
  const bars = totals.map(({ year, visits, byThen, steps }) => {
    const whole = steps.at(-1)?.species ?? 0;
    const inAll = whole === byThen ? '' : `, ${whole} in all`;
    return {
      label: String(year),
      value: byThen,
      beside: `${byThen}${inAll}, ${many(visits, 'visit')}`,
    };
  });
  const missing = asked.filter((year) => totals.every((each) => each.year !== year));
  const series = seriesOf(totals, asked);
  const plot = { series, from: 0, to: LAST_DAY, ticks: ticks(width), stepped: true };
  return [
    ...headed(`Species ${to}`, indented(barRows(bars, width - 2)), width),
    ...missing.flatMap((year) => sentenceRows(`${year} has no visit.`, width, '  ')),
    ...headed(
      'Running total of species',
      indented(lineRows(plot, { columns: width - 2, rows: PLOT_ROWS })),
      width,
    ),
    ...asked
      .filter((year) => width >= CALENDAR && !missing.includes(year))
      .flatMap((year) => headed('Visits by day', indented(calendarRows(dates, year)), width)),
    ...firstRows('New in the notebook', firsts, ['place'], width),
    ...taxaRows('Threatened: visits, first and last', threatened, width),
  ];
}

/** The years asked for first, so that their signs lie above, then the latest others. */
function seriesOf(totals: readonly YearSoFar[], asked: readonly number[]): Series[] {
  const latest = [...totals].sort((one, two) => two.year - one.year);
  return [
    ...latest.filter(({ year }) => asked.includes(year)),
    ...latest.filter(({ year }) => !asked.includes(year)),
  ]
    .slice(0, MOST_SERIES)
    .map(({ year, steps }) => ({
      name: String(year),
      points: steps.map(({ date, species }) => [dayNumber(date), species] as const),
    }));
}

/** Days since New Year. */
function dayNumber(date: string): number {
  return daysBetween(`${date.slice(0, 4)}-01-01`, date);
}

function ticks(width: number): { x: number; label: string }[] {
  const every = width < 60 ? 3 : 1;
  return MONTHS.flatMap((month, at) =>
    at % every === 0
      ? [{ x: dayNumber(`2001-${String(at + 1).padStart(2, '0')}-01`), label: month.slice(0, 3) }]
      : [],
  );
}
