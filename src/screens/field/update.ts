import { withObservers } from '../../visit/visit.ts';
import { laidAnew, relaid } from '../board/letters.ts';
import { lettered, openOrClose, putSpecies } from '../board/open.ts';
import { freshFlock, mark, stepTo, stroke } from '../board/strokes.ts';
import type { Key } from '../keyboard.ts';
import { lineOf } from '../line.ts';
import { pauseOrGoOn, pick, takePicked, typePick, undoOrRedo } from './actions.ts';
import { answer, ask, finish } from './answers.ts';
import { chosenOf } from './choices.ts';
import { oneBack } from './going-back.ts';
import { type ActionName, type Binding, keymapOf } from './keymap.ts';
import { logLine, saveChange } from './logging.ts';
import {
  type FieldEvent,
  type Mode,
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
import { answerTime } from './time-answer.ts';
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
    case 'settings':
      return still(settled(session, event));
    case 'layouts':
      return still({ ...session, layouts: event.layouts });
    case 'known':
      return still(relaid({ ...session, known: event.known }));
    case 'grids':
      return still({ ...session, grids: event.grids });
    case 'notice':
      return still(saying(session, event.done === true ? 'done' : 'problem', event.words));
    case 'saved':
      return still({
        ...session,
        saved: { changes: event.changes, file: event.file, failure: null },
      });
    case 'save failed':
      return still({ ...session, saved: { ...session.saved, failure: event.why } });
  }
}

/** Only a visit that is on no disk yet takes the usual number of observers: it is no change of it. */
function settled(
  session: Session,
  { groupSizes, units, observers }: Extract<FieldEvent, { kind: 'settings' }>,
): Session {
  const visit =
    session.saved.file === null ? withObservers(session.visit, observers) : session.visit;
  return { ...session, groupSizes, units, visit };
}

function pressed(session: Session, key: Key, moment: Moment): Result {
  const binding = bindingFor(session, key);
  if (binding) {
    const reason = binding.unless?.(session) ?? null;
    return reason === null
      ? act(binding.action, session, moment, key.name === 'text' ? key.text : '')
      : still(saying(toLine(session), 'problem', reason));
  }
  if (session.mode.at === 'pick' && key.name === 'text') return still(typePick(session, key.text));
  if (session.mode.at === 'menu' && key.name === 'text' && key.text === '/')
    return still(withLine(toLine(session), lineOf('/')));
  if (KEYS_ONLY.has(session.mode.at))
    return key.name === 'text'
      ? still(saying(session, 'problem', noKeyWords(key.text)))
      : still(session);
  return still(edited(session, key));
}

/** Several characters in one key are a paste, which must never run as commands. */
function noKeyWords(text: string): string {
  return [...text].length > 1
    ? 'Pasted text does nothing here: keys are typed one by one.'
    : `"${text}" is none of these keys.`;
}

/** Where keys do what they say and nothing is typed. */
const KEYS_ONLY: ReadonlySet<Mode['at']> = new Set([
  'menu',
  'complete',
  'ended',
  'board',
  'letter',
]);

function bindingFor(session: Session, key: Key): Binding | undefined {
  const { at } = session.mode;
  const fits = (binding: Binding) =>
    typeof binding.key === 'string'
      ? binding.key === key.name
      : key.name === 'text' &&
        ('letter' in binding.key
          ? binding.key.letter === key.text.toLowerCase()
          : binding.key.fits(key.text));
  // In a description the arrows move the cursor: there is no count to step.
  if ((key.name === 'left' || key.name === 'right') && !steps(session)) return undefined;
  return keymapOf(session.groupSizes).find(
    (binding) => (binding.at === at || binding.at === 'anywhere') && fits(binding),
  );
}

/** Enter on the entry line: an action behind a slash, a time behind an @, else an entry. */
function logged(session: Session, moment: Moment): Result {
  const { text } = typedLine(session);
  if (text.startsWith('/')) return runNamed(session, moment);
  return text.startsWith('@')
    ? answerTime(session, text.slice(1).trim())
    : logLine(session, moment);
}

function act(action: ActionName, session: Session, moment: Moment, text = ''): Result {
  switch (action) {
    case 'log':
      return logged(session, moment);
    case 'save':
      return saveChange(session);
    case 'board':
      return openOrClose(session);
    case 'stroke':
      return stroke(session, text, moment);
    case 'step':
      return stepTo(session, Number(text));
    case 'flock':
      return freshFlock(session);
    case 'about':
    case 'at least':
      return mark(session, action);
    case 'add':
      return still({ ...session, mode: { at: 'put', letter: null }, chosen: 0, message: null });
    case 'lay':
    case 'turn':
      return still({
        ...session,
        mode: { at: 'letter', to: action === 'lay' ? 'put' : 'turn' },
        message: null,
      });
    case 'letter':
      return lettered(session, text.toLowerCase());
    case 'lay anew':
      return laidAnew(session);
    case 'put':
      return putSpecies(session, moment);
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
    case 'passing':
    case 'time':
    case 'place':
    case 'weather':
    case 'description':
    case 'elsewhere':
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
