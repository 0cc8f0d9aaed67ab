/** Days before each month in a year of 365. */
const MONTH_STARTS = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334] as const;
const YEAR = 365;

export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** Year of a local date `YYYY-MM-DD`. */
export function yearOf(date: string): number {
  return Number(date.slice(0, 4));
}

/** Month of a local date, from 1. */
export function monthOf(date: string): number {
  return Number(date.slice(5, 7));
}

/** Day of the month of a local date, from 1. */
export function dayOf(date: string): number {
  return Number(date.slice(8, 10));
}

/** Month and day, `MM-DD`: what the dates of several years are compared by. */
export function dayInYear(date: string): string {
  return date.slice(5);
}

/** Days since New Year in a year of 365; a leap day is taken for the first of March. */
function dayNumber(date: string): number {
  return (MONTH_STARTS[monthOf(date) - 1] ?? 0) + dayOf(date) - 1;
}

/** Days between two dates around the year, whatever their years: 0 to 182. */
export function daysApartInYear(one: string, two: string): number {
  const apart = Math.abs(dayNumber(one) - dayNumber(two));
  return Math.min(apart, YEAR - apart);
}

/** Days from one date to another, each year taken for 365: negative where `two` is earlier. */
export function daysBetween(one: string, two: string): number {
  return YEAR * (yearOf(two) - yearOf(one)) + dayNumber(two) - dayNumber(one);
}

/** How many days a month (from 1) of a year has, by the Gregorian calendar. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
