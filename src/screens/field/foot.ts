import { distanceWords } from '../../visit/effort.ts';
import { durationWords } from '../../visit/time.ts';
import { speciesSeen, standing, watched } from '../../visit/visit.ts';
import { fitting, type Row, span, widthOf, wrapped } from '../paint.ts';
import { choicesOf } from './choices.ts';
import { type Binding, KEYMAP, keyWords, MENU, wordsNow } from './keymap.ts';
import { type Session, typedLine } from './session.ts';
import { steps } from './typing.ts';

const SIGN = { done: '', problem: '! ', caution: '! ' } as const;

/** What can't be saved stands there until it is; else the last message. */
export function messageRows(session: Session, width: number): Row[] {
  const { saved, message } = session;
  if (saved.failure !== null)
    return wrapped(
      `! NOT SAVED: ${saved.failure}. Trying again; leave the program open.`,
      width,
      2,
    ).map((text) => [span(text, 'problem')]);
  if (message === null) return [];
  const look =
    message.kind === 'done' ? 'plain' : message.kind === 'problem' ? 'problem' : 'threat';
  return wrapped(SIGN[message.kind] + message.words, width, 2).map((text) => [span(text, look)]);
}

/** What is asked or can be chosen now, above the hint line. */
export function askRows(session: Session, width: number): Row[] {
  const { mode } = session;
  if (mode.at === 'menu') return menuRows(session, width);
  const text = questionWords(session);
  return text === '' ? [] : wrapped(text, width, 2).map((row) => [span(row)]);
}

function questionWords(session: Session): string {
  const { mode, visit } = session;
  if (mode.at === 'pick')
    return `Which entry to ${mode.to === 'change' ? 'change' : 'strike out, or to bring back'}? Type its number or choose it.`;
  if (mode.at === 'complete')
    return 'Was everything that you noticed logged, so that what is not here was not seen?';
  if (mode.at === 'ended') return endedWords(session);
  if (mode.at !== 'ask') return '';
  switch (mode.question) {
    case 'place': {
      const words = 'A name, and decimal degrees if you know them: Sallow Mere 51.12, -2.85';
      return visit.place === null ? words : `${words}. Enter alone keeps ${visit.place.name}.`;
    }
    case 'weather':
      return 'As in 7c f3 sw 6/8 drizzle: temperature, Beaufort, direction, oktas, rain';
    case 'description':
      return 'One line on the visit as a whole.';
    case 'effort': {
      const time = durationWords(watched(visit, session.now));
      const { distance } = visit.effort;
      return `Watched for ${time}${distance === null ? '' : `, ${distanceWords(distance)}`}. How far, how many people, how? 3.2 km 2 people on foot`;
    }
    case 'groups':
      return 'For which groups was everything logged?';
  }
}

function endedWords({ visit, now }: Session): string {
  const entries = standing(visit).length;
  return `The visit is ended: ${entries} ${entries === 1 ? 'entry' : 'entries'}, ${speciesSeen(visit)} species, watched for ${durationWords(watched(visit, now))}.`;
}

function menuRows(session: Session, width: number): Row[] {
  const cells = MENU.map((binding) => {
    const off = binding.unless?.(session) != null;
    return {
      text: off
        ? `(${keyWords(binding.key)} ${wordsNow(binding, session)})`
        : `${keyWords(binding.key)} ${wordsNow(binding, session)}`,
      off,
    };
  });
  const rows: { text: string; off: boolean }[][] = [[]];
  for (const each of cells) {
    const row = rows.at(-1) ?? [];
    const used = row.reduce((sum, other) => sum + widthOf(other.text) + 3, 0);
    if (used + widthOf(each.text) > width) rows.push([each]);
    else row.push(each);
  }
  return rows.map((row) =>
    row.flatMap((each, index) => [
      ...(index > 0 ? [span(' | ', 'quiet')] : []),
      span(each.text, each.off ? 'quiet' : 'plain'),
    ]),
  );
}

/** The keys that work now, from the table that dispatches them; those that do not fit are left out. */
export function hintRow(session: Session, width: number): Row {
  const { mode } = session;
  const empty = typedLine(session).text === '';
  const many = choicesOf(session).length > 1;
  const works = ({ at, action, key, quiet }: Binding) => {
    if (quiet || at !== mode.at || (mode.at === 'menu' && key !== 'escape')) return false;
    if (action === 'log') return !empty;
    if (action === 'more' || action === 'fewer') return steps(session);
    if (action === 'next' || action === 'previous')
      return many || mode.at === 'pick' || mode.at === 'help';
    return true;
  };
  const lead =
    mode.at === 'menu' ? ['one letter'] : mode.at === 'line' && empty ? ['type a name'] : [];
  const tail = mode.at === 'line' && empty ? ['/ and a word does the same'] : [];
  const hints = [...lead, ...merged(KEYMAP.filter(works)), ...tail];
  return [span(fitting(hints, GAP, width), 'quiet')];
}

const GAP = ' | ';

/** Keys that do the same stand together: `Up Down choose`. */
function merged(bindings: readonly Binding[]): string[] {
  const byWords = new Map<string, string[]>();
  for (const { key, hint, words } of bindings)
    byWords.set(hint ?? words, [...(byWords.get(hint ?? words) ?? []), keyWords(key)]);
  return [...byWords].map(([words, keys]) => `${keys.join(' ')} ${words}`);
}
