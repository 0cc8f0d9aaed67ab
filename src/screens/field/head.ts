import { sunDay } from '../../sky/sun.ts';
import { sunWords } from '../../sky/words.ts';
import { paused } from '../../visit/effort.ts';
import { durationWords, epochOf, stamp } from '../../visit/time.ts';
import { zoneOf } from '../../visit/visit.ts';
import { weatherWords } from '../../visit/weather.ts';
import { cut, ends, type Row, span, widthOf } from '../paint.ts';
import type { Session } from './session.ts';

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A local date in words, `Sat 14 Nov 2026` or, short, `14 Nov`. */
export function dateWords(isoDate: string, length: 'long' | 'short'): string {
  const [year = 0, month = 1, day = 1] = isoDate.split('-').map(Number);
  const name = `${day} ${MONTHS[month - 1]}`;
  return length === 'short' ? name : `${WEEKDAYS[weekday(year, month, day)]} ${name} ${year}`;
}

/** Day of the week from 0 for Sunday, by Sakamoto's rule for the Gregorian calendar (1992; from memory). */
function weekday(year: number, month: number, day: number): number {
  const shift = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4][month - 1] ?? 0;
  const from = month < 3 ? year - 1 : year;
  return (
    (from + Math.floor(from / 4) - Math.floor(from / 100) + Math.floor(from / 400) + shift + day) %
    7
  );
}

/** The two rows that stand at the top: when, where and how long; sun and weather. */
export function headRows(session: Session, width: number): Row[] {
  const { visit, now } = session;
  const moment = stamp(now, zoneOf(visit));
  const date = dateWords(moment.slice(0, 10), width < 70 ? 'short' : 'long');
  const gone = `${durationWords(now - epochOf(visit.start))}${paused(visit.effort) ? ' PAUSED' : ' since start'}`;
  const time = `${moment.slice(11, 16)} ${moment.slice(19)}`;
  const short = gone.replace(' since start', '');
  const right = width < 70 ? short : gone;
  return [
    [span(ends(`${date}  ${time}  ${placeWords(session)}`, right, width), 'strong')],
    [span(cut(skyWords(session, moment.slice(0, 10), width), width))],
  ];
}

function placeWords({ visit, placeAssumed }: Session): string {
  if (visit.place === null) return 'no place yet (Esc p)';
  return placeAssumed ? `${visit.place.name} (as last time?)` : visit.place.name;
}

function skyWords(session: Session, date: string, width: number): string {
  const { visit, now } = session;
  const weather = visit.weather.at(-1);
  const said = weather ? weatherWords(weather) : '';
  const position = visit.place?.position ?? null;
  if (position === null) {
    const why =
      visit.place === null
        ? 'sunrise is shown once the place is known'
        : 'sunrise needs coordinates (Esc p)';
    return said === '' ? why : `${said} | ${why}`;
  }
  const zone = zoneOf(visit);
  const day = sunDay(position, date, zone);
  const both = (sun: string) => (said === '' ? sun : `${sun} | ${said}`);
  const long = both(sunWords(day, now, zone, 'long'));
  return widthOf(long) <= width ? long : both(sunWords(day, now, zone, 'short'));
}
