import { occasionOf } from '../../taxa/expected.ts';
import { placeKey } from '../../visit/place.ts';
import { type Result, type Session, sayingSo, stampNow, still, toLine } from '../field/session.ts';
import { type Board, type Layout, layoutOf, openBoard } from './board.ts';

/** The key of the place for which letters are kept; empty for none. */
export function placeOf({ visit }: Session): string {
  return visit.place === null ? '' : placeKey(visit.place.name);
}

/** A Board for the session's visit, with the letters of a layout or, for null, with what is expected. */
export function laidFor(session: Session, layout: Layout | null): Board {
  const { index, known, visit } = session;
  const now = stampNow(session);
  return openBoard({ index, known, visit, layout }, occasionOf(visit, now), now);
}

/** The letters are kept for the place: fingers learn them. */
export function keptLetters(session: Session): Result {
  const { board } = session;
  if (!board) return still(session);
  const place = placeOf(session);
  const layout = layoutOf(board);
  const layouts = { ...session.layouts, [place]: layout };
  return { session: { ...session, layouts }, effects: [{ kind: 'keep letters', place, layout }] };
}

/** The same with the first stroke at a place: from then on its letters only change when told to. */
export function keptOnce(session: Session): Result {
  return session.layouts[placeOf(session)] === undefined ? keptLetters(session) : still(session);
}

/** A Board opened before the notebook was read, and not used yet, is laid by what the notebook tells. */
export function relaid(session: Session): Session {
  const { board } = session;
  if (!board || board.last !== null || session.layouts[placeOf(session)]) return session;
  return { ...session, board: { ...board, taxa: laidFor(session, null).taxa } };
}

/** All letters by what is expected now: another season has other species. */
export function laidAnew(session: Session): Result {
  const { board } = session;
  if (!board) return still(session);
  const { taxa } = laidFor(session, null);
  const words = 'The letters are laid anew, by what is expected here at this time of the year.';
  const laid = toLine({ ...session, board: { ...board, taxa, last: null } });
  return sayingSo(keptLetters(laid), 'done', words);
}
