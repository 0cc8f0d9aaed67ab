import { dayOf, daysInMonth, MONTHS, monthOf, yearOf } from '../asking/days.ts';

/** The columns of the days 1 to 31, with every fifth one named. */
const SCALE = '    1   5    10   15   20   25   30';

/** How many visits each day (`YYYY-MM-DD`) of a year had: a row a month, the days from 1. */
function daysOfYear(dates: readonly string[], year: number): number[][] {
  const months = MONTHS.map((_, at) => Array.from({ length: daysInMonth(year, at + 1) }, () => 0));
  for (const date of dates) {
    const month = yearOf(date) === year ? months[monthOf(date) - 1] : undefined;
    const at = dayOf(date) - 1;
    const before = month?.[at];
    if (month && before !== undefined) month[at] = before + 1;
  }
  return months;
}

/**
 * The visits of a year as rows of ASCII, 41 columns wide: a row a month, a sign a day: `.` for none, the
 * number of visits up to 9, `+` for more; at the end the visits of the month.
 */
export function calendarRows(dates: readonly string[], year: number): string[] {
  const months = daysOfYear(dates, year);
  const rows = months.map((days, at) => {
    const visits = days.reduce((sum, number) => sum + number, 0);
    const signs = days.map((number) => (number > 9 ? '+' : number === 0 ? '.' : String(number)));
    const name = (MONTHS[at] ?? '').slice(0, 3);
    return `${name} ${signs.join('').padEnd(31)} ${visits === 0 ? '' : String(visits).padStart(5)}`.trimEnd();
  });
  return [String(year), SCALE, ...rows];
}
