import { readEntryLine, stepLine } from '../../visit/entry-line.ts';
import type { Key } from '../keyboard.ts';
import { editLine, lineOf } from '../line.ts';
import { movePick } from './actions.ts';
import { choicesOf, chosenOf } from './choices.ts';
import { helpRows } from './help.ts';
import { keymapOf } from './keymap.ts';
import { type Session, typedLine, withLine } from './session.ts';

/**
 * Do left and right step the count now, rather than move the cursor? They do on the entry line; an
 * entry that is changed stands there whole, and it is its letters that are to be mended.
 */
export function steps(session: Session): boolean {
  if (session.mode.at !== 'line') return false;
  const { text, cursor } = typedLine(session);
  const colon = text.indexOf(':');
  return text !== '' && !text.startsWith('/') && (colon === -1 || cursor <= colon);
}

/** An editing key on the line being typed: another text starts the choosing anew. */
export function edited(session: Session, key: Key): Session {
  const before = typedLine(session);
  const after = editLine(before, key);
  if (after === before) return session;
  const chosen = after.text === before.text ? session.chosen : session.mode.at === 'ask' ? -1 : 0;
  return {
    ...withLine(session, after),
    chosen,
    message: after.text === before.text ? session.message : null,
  };
}

/** The help page some rows on or back, as far as it goes. */
export function scroll(session: Session, rows: number): Session {
  if (session.mode.at !== 'help') return session;
  const { size, mode, groupSizes } = session;
  // The last row of the window is the hint line.
  const last = Math.max(0, helpRows(size.columns, keymapOf(groupSizes)).length - (size.rows - 1));
  return { ...session, mode: { at: 'help', from: Math.min(last, Math.max(0, mode.from + rows)) } };
}

/** Up and down: the next row of what can be chosen here. */
export function choose(session: Session, step: 1 | -1): Session {
  if (session.mode.at === 'pick') return movePick(session, step);
  if (session.mode.at === 'help') return scroll(session, step);
  const { length } = choicesOf(session);
  if (length === 0) return session;
  const from = session.chosen === -1 && step === -1 ? 0 : session.chosen;
  return { ...session, chosen: (from + step + length) % length };
}

/** Left and right: the count of the line one group size fewer or more. */
export function stepCountBy(session: Session, direction: 1 | -1): Session {
  const { text, cursor } = typedLine(session);
  const choice = chosenOf(session);
  const next = stepLine(
    text,
    direction,
    choice?.kind === 'taxon' && choice.hit.taxon.countedSingly,
    session.groupSizes,
  );
  if (next === text) return session;
  const atEnd = cursor === text.length;
  const end =
    readEntryLine(next).pieces.findLast((piece) => piece.role === 'count')?.end ?? next.length;
  return {
    ...withLine(session, atEnd ? lineOf(next) : { text: next, cursor: end }),
    message: null,
  };
}
