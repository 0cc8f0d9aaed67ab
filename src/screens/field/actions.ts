import { goneOn, paused } from '../../visit/effort.ts';
import { nameOf } from '../../visit/entry.ts';
import { nextInWords, updateVisit } from '../../visit/update.ts';
import { entryNumbered } from '../../visit/visit.ts';
import { revertedFlock } from '../board/strokes.ts';
import {
  type Result,
  type Session,
  saying,
  sayingSo,
  stampNow,
  still,
  toLine,
  withPart,
  withVisit,
  writtenNow,
} from './session.ts';

export function undoOrRedo(session: Session, way: 'undo' | 'redo'): Result {
  const what = nextInWords(session.visit, way);
  const visit = updateVisit(session.visit, { do: way, time: writtenNow(session) });
  const flock = revertedFlock(session, visit);
  const said = flock?.words ?? what;
  const words = way === 'undo' ? `Taken back: ${said}.` : `Done again: ${said}.`;
  const back = toLine(flock ? { ...session, board: flock.board } : session);
  return sayingSo(withVisit(back, visit), 'done', words);
}

/** Starts a pause, or ends the one that is open. */
export function pauseOrGoOn(session: Session): Result {
  const time = stampNow(session);
  const { effort } = session.visit;
  const back = toLine(session);
  if (paused(effort))
    return sayingSo(withPart(back, 'effort', goneOn(effort, time)), 'done', 'The visit goes on.');
  const pauses = [...effort.pauses, { start: time, end: null }];
  const words = 'Paused: this time does not count as effort. Esc z goes on.';
  return sayingSo(withPart(back, 'effort', { ...effort, pauses }), 'done', words);
}

/** Asks which entry; the latest stands chosen. */
export function pick(session: Session, to: 'change' | 'strike'): Result {
  const number = session.visit.entries.at(-1)?.number ?? 1;
  return still({ ...session, mode: { at: 'pick', to, number, typed: '' }, message: null });
}

/** Up and down go by the list as it is shown, newest first; digits name the entry. */
export function movePick(session: Session, step: 1 | -1): Session {
  if (session.mode.at !== 'pick') return session;
  const { number } = session.mode;
  const numbers = session.visit.entries.map((entry) => entry.number);
  const next =
    step === 1
      ? numbers.findLast((other) => other < number)
      : numbers.find((other) => other > number);
  return next === undefined
    ? session
    : { ...session, mode: { ...session.mode, number: next, typed: '' } };
}

export function typePick(session: Session, text: string): Session {
  if (session.mode.at !== 'pick') return session;
  if (!/^\d+$/.test(text))
    return saying(session, 'problem', 'Type the number of an entry, or choose with up and down.');
  const tries = [session.mode.typed + text, text];
  for (const typed of tries) {
    const entry = entryNumbered(session.visit, Number(typed));
    if (entry)
      return { ...session, mode: { ...session.mode, number: entry.number, typed }, message: null };
  }
  return saying(session, 'problem', `There is no entry ${tries[0]}.`);
}

export function takePicked(session: Session): Result {
  const { mode } = session;
  if (mode.at !== 'pick') return still(session);
  if (mode.to === 'change')
    return still({
      ...session,
      mode: { at: 'change', number: mode.number },
      chosen: 0,
      message: null,
    });
  const entry = entryNumbered(session.visit, mode.number);
  if (!entry) return still(toLine(session));
  const back = entry.struck !== null;
  const visit = updateVisit(session.visit, {
    do: back ? 'unstrike' : 'strike',
    time: writtenNow(session),
    number: entry.number,
  });
  const words = `${entry.number} ${nameOf(entry)} ${back ? 'stands again' : 'is struck out; its number stays'}.`;
  return sayingSo(withVisit(toLine(session), visit), 'done', words);
}
