import type { Key } from '../keyboard.ts';
import { lineOf } from '../line.ts';
import { pauseOrGoOn, pick, takePicked, typePick, undoOrRedo } from './actions.ts';
import { answer, ask, finish } from './answers.ts';
import { chosenOf } from './choices.ts';
import { type ActionName, type Binding, KEYMAP } from './keymap.ts';
import { logLine, saveChange } from './logging.ts';
import {
  draftName,
  type FieldEvent,
  type Moment,
  type Result,
  type Session,
  saying,
  still,
  toLine,
  typedLine,
  withLine,
  withoutLine,
} from './session.ts';
import { choose, edited, scroll, stepCountBy, steps } from './typing.ts';

/** The Field screen's one rule: a session and what happened give the next session and what to do. */
export function updateField(session: Session, event: FieldEvent): Result {
  switch (event.kind) {
    case 'key':
      return pressed({ ...session, now: event.now }, event.key, event);
    case 'tick':
      return still({ ...session, now: event.now });
    case 'size':
      return still({ ...session, size: event.size });
    case 'lists':
      return still({ ...session, index: event.index, groups: event.groups });
    case 'known':
      return still({ ...session, known: event.known });
    case 'notice':
      return still(saying(session, 'problem', event.words));
    case 'saved':
      return still({
        ...session,
        saved: { changes: event.changes, file: event.file, failure: null },
      });
    case 'save failed':
      return still({ ...session, saved: { ...session.saved, failure: event.why } });
  }
}

function pressed(session: Session, key: Key, moment: Moment): Result {
  const binding = bindingFor(session, key);
  if (binding) {
    const reason = binding.unless?.(session) ?? null;
    return reason === null
      ? act(binding.action, session, moment)
      : still(saying(toLine(session), 'problem', reason));
  }
  if (session.mode.at === 'pick' && key.name === 'text') return still(typePick(session, key.text));
  if (session.mode.at === 'menu' && key.name === 'text' && key.text === '/')
    return still(withLine(toLine(session), lineOf('/')));
  if (session.mode.at === 'menu' || session.mode.at === 'complete' || session.mode.at === 'ended')
    return key.name === 'text'
      ? still(saying(session, 'problem', `"${key.text}" is none of these keys.`))
      : still(session);
  return still(edited(session, key));
}

function bindingFor(session: Session, key: Key): Binding | undefined {
  const { at } = session.mode;
  const fits = (binding: Binding) =>
    typeof binding.key === 'string'
      ? binding.key === key.name
      : key.name === 'text' && binding.key.letter === key.text.toLowerCase();
  // In a description the arrows move the cursor: there is no count to step.
  if ((key.name === 'left' || key.name === 'right') && !steps(session)) return undefined;
  return KEYMAP.find(
    (binding) => (binding.at === at || binding.at === 'anywhere') && fits(binding),
  );
}

/** Esc goes one step back: within the questions at the end to the one before, else to the line. */
function oneBack(session: Session): Session {
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

function act(action: ActionName, session: Session, moment: Moment): Result {
  switch (action) {
    case 'log':
      return typedLine(session).text.startsWith('/')
        ? runNamed(session, moment)
        : logLine(session, moment);
    case 'save':
      return saveChange(session);
    case 'menu':
      return still({ ...session, mode: { at: 'menu' }, message: null });
    case 'back':
      return still(oneBack({ ...session, message: null }));
    case 'next':
      return still(choose(session, 1));
    case 'previous':
      return still(choose(session, -1));
    case 'page down':
      return still(scroll(session, session.size.rows - 2));
    case 'page up':
      return still(scroll(session, 2 - session.size.rows));
    case 'more':
      return still(stepCountBy(session, 1));
    case 'fewer':
      return still(stepCountBy(session, -1));
    case 'undo':
    case 'redo':
      return undoOrRedo(session, action);
    case 'change':
    case 'strike':
      return pick(session, action);
    case 'take':
      return takePicked(session);
    case 'place':
    case 'weather':
    case 'description':
      return ask(session, action);
    case 'answer':
      return answer(session);
    case 'pause':
      return pauseOrGoOn(session);
    case 'end':
      return ask(session, 'effort');
    case 'yes':
      return ask(session, 'groups');
    case 'no':
      return finish(session, false, null);
    case 'unsaid':
      return finish(session, null, null);
    case 'help':
      return still({ ...session, mode: { at: 'help', from: 0 }, message: null });
    case 'quit':
      return { session, effects: [{ kind: 'leave', code: 0 }] };
    case 'stop':
      return { session, effects: [{ kind: 'leave', code: 130 }] };
    case 'suspend':
    case 'redraw':
      return { session, effects: [{ kind: action }] };
  }
}

/** `/weather 7c f3` on the entry line: the action of that word, with the rest as its answer. */
function runNamed(session: Session, moment: Moment): Result {
  const { text } = typedLine(session);
  const [word = '/'] = text.trim().split(/\s+/);
  const choice = chosenOf(session);
  if (word === '/' && session.chosen === 0)
    return still(saying(session, 'problem', 'Type an action behind the slash, or choose one.'));
  if (choice?.kind !== 'action')
    return still(saying(session, 'problem', `There is no action ${word}. Esc shows all of them.`));
  const { binding } = choice;
  const cleared = withoutLine(session);
  const reason = binding.unless?.(cleared) ?? null;
  if (reason !== null) return still(saying(cleared, 'problem', reason));
  const result = act(binding.action, cleared, moment);
  const rest = /^\/\s*\S*\s+(.*\S)/.exec(text)?.[1];
  if (rest === undefined || result.session.mode.at !== 'ask') return result;
  return answer(withLine(result.session, lineOf(rest)));
}
