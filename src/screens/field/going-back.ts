import { draftName, type Session, saying, toLine, withoutLine } from './session.ts';

/** Esc goes one step back: within the questions at the end to the one before, else to the line. */
export function oneBack(session: Session): Session {
  const { mode } = session;
  if (mode.at === 'complete')
    return { ...session, mode: { at: 'ask', question: 'effort' }, chosen: -1 };
  if (mode.at === 'change') return withoutChange(session);
  if (mode.at === 'ask' && mode.question === 'groups')
    return { ...session, mode: { at: 'complete' } };
  return toLine(session);
}

/** What was typed for a change is not kept for later: by then it may not be what the entry says. */
function withoutChange(session: Session): Session {
  const typed = session.drafts[draftName(session.mode) ?? ''];
  const back = toLine(withoutLine(session));
  return typed ? saying(back, 'done', `Nothing changed. Not kept: ${typed.text}`) : back;
}
