import { Temporal } from 'temporal-polyfill';
import { moonWords } from '../../sky/moon.ts';
import { sunDay } from '../../sky/sun.ts';
import { sunWords } from '../../sky/words.ts';
import { paused } from '../../visit/effort.ts';
import { clockOf, dateOf, durationWords, epochOf, offsetOf } from '../../visit/time.ts';
import { zoneOf } from '../../visit/visit.ts';
import { weatherWords } from '../../visit/weather.ts';
import { cut, ends, type Row, span, widthOf } from '../paint.ts';
import { type Session, stampNow } from './session.ts';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A local date in words, `Sat 14 Nov 2026` or, short, `14 Nov`. */
export function dateWords(isoDate: string, length: 'long' | 'short'): string {
  const { day, month, year, dayOfWeek } = Temporal.PlainDate.from(isoDate);
  const name = `${day} ${MONTHS[month - 1]}`;
  return length === 'short' ? name : `${WEEKDAYS[dayOfWeek - 1]} ${name} ${year}`;
}

/** The two rows that stand at the top: when, where and how long; sun, moon and weather. */
export function headRows(session: Session, width: number): Row[] {
  const { visit, now } = session;
  const moment = stampNow(session);
  const date = dateWords(dateOf(moment), width < 70 ? 'short' : 'long');
  const since = paused(visit.effort) ? ' PAUSED' : width < 70 ? '' : ' since start';
  const gone =
    session.moment === null ? durationWords(now - epochOf(visit.start)) + since : 'TYPED LATER';
  const time = `${clockOf(moment)} ${offsetOf(moment)}`;
  return [
    [span(ends(`${date}  ${time}  ${placeWords(session)}`, gone, width), 'strong')],
    [span(cut(skyWords(session, dateOf(moment), width), width))],
  ];
}

function placeWords({ visit, placeAssumed }: Session): string {
  if (visit.place === null) return 'no place yet (Esc p)';
  return placeAssumed ? `${visit.place.name} (as last time?)` : visit.place.name;
}

function skyWords(session: Session, date: string, width: number): string {
  const { visit } = session;
  const now = epochOf(stampNow(session));
  const weather = visit.weather.at(-1);
  const said = weather ? weatherWords(weather, session.units) : '';
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
  const line = (...parts: string[]) => [...parts, said].filter((part) => part !== '').join(' | ');
  const fits = (words: string) => widthOf(words) <= width;
  const long = sunWords(day, now, zone, 'long');
  if (!fits(line(long))) {
    const middle = line(sunWords(day, now, zone, 'middle'));
    return fits(middle) ? middle : line(sunWords(day, now, zone, 'short'));
  }
  // The moon only joins where nothing of the sun and the weather has to give way.
  const moon = line(long, moonWords(now, null));
  if (!fits(moon)) return line(long);
  const course = line(long, moonWords(now, { position, timeZone: zone }));
  return fits(course) ? course : moon;
}
