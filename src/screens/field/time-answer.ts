import { readMoment } from '../../visit/moment.ts';
import { clockOf, epochOf, stamp } from '../../visit/time.ts';
import { zoneOf } from '../../visit/visit.ts';
import { type Result, type Session, saying, still, toLine, withoutLine } from './session.ts';

/** When that was seen which is typed from now on; `now`, or nothing, goes back to the clock. */
export function answerTime(session: Session, text: string): Result {
  const back = toLine(withoutLine(session));
  if (text === '' || text.toLowerCase() === 'now')
    return still(saying({ ...back, moment: null }, 'done', 'What is typed is seen now.'));
  const { now, moment, visit } = session;
  const read = readMoment(text, { now, day: moment ?? now, timeZone: zoneOf(visit) });
  if ('problem' in read) return still(saying(session, 'problem', read.problem));
  if (read.moment < epochOf(visit.start)) {
    const words = `The visit began at ${clockOf(visit.start)}; what was seen before belongs to another: tussock field --when "${text}".`;
    return still(saying(session, 'problem', words));
  }
  const clock = clockOf(stamp(read.moment, zoneOf(visit)));
  const words = `What is typed from now on was seen at ${clock}. Esc t and Enter go back to the clock.`;
  return still(saying({ ...back, moment: read.moment }, 'done', words));
}
