import { METHODS } from '../../visit/effort.ts';
import { taxonName } from '../../visit/entry.ts';
import { durationWords } from '../../visit/time.ts';
import { distanceShown, type UnitsShown } from '../../visit/units-shown.ts';
import { speciesSeen, standing, watched } from '../../visit/visit.ts';
import { fitting, type Row, span, widthOf, wrapped } from '../paint.ts';
import { choicesOf } from './choices.ts';
import { type Binding, keymapOf, keyWords, menuNow, wordsNow } from './keymap.ts';
import { type Message, type Session, typedLine } from './session.ts';
import { steps } from './typing.ts';

const SIGN = { done: '', problem: '! ', caution: '! ' } as const;

/** What can't be saved stands there until it is, above the last message. */
export function messageRows(session: Session, width: number): Row[] {
  const { saved, message } = session;
  if (saved.failure !== null) {
    const words = `! NOT SAVED: ${saved.failure}. Trying again; leave the program open, or Esc o saves elsewhere.`;
    const rows = wrapped(words, width, 2).map((text): Row => [span(text, 'problem')]);
    return message === null ? rows : [...rows, ...saidRows(message, width)];
  }
  return message === null ? [] : saidRows(message, width);
}

function saidRows(message: Message, width: number): Row[] {
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
  const { mode, visit, units } = session;
  if (mode.at === 'pick')
    return `Which entry to ${mode.to === 'change' ? 'change' : 'strike out, or to bring back'}? Type its number or choose it.`;
  if (mode.at === 'letter')
    return mode.to === 'put'
      ? 'On which letter? 0 lays all anew for this season.'
      : 'Whose sum? Its letter turns it.';
  if (mode.at === 'put') return putWords(session, mode.letter);
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
      return `As in ${weatherExample(units)} sw 6/8 drizzle: temperature, Beaufort (or ${SPEEDS[units.wind]}), direction, oktas, rain`;
    case 'elsewhere':
      return 'A folder on another disk, such as /media/stick: the whole visit is written there.';
    case 'time':
      return 'When was it seen? 07:45, yesterday 07:45 or 2026-11-14 07:45. Enter alone is now.';
    case 'passing':
      return 'Where are they heading, and intervals of how many minutes (5, 10, 15, 60)? sw 15. Enter alone stops it.';
    case 'description':
      return 'One line on the visit as a whole.';
    case 'effort': {
      const time = durationWords(watched(visit, session.now));
      const { distance } = visit.effort;
      return `Watched for ${time}${distance === null ? '' : `, ${distanceShown(distance, units.distance)}`}. As in ${units.distance === 'km' ? '3.2 km' : '2 mi'} 2 people on foot (or ${METHODS.join(', ')})`;
    }
    case 'groups':
      return 'For which groups was everything logged?';
  }
}

/** One light wind in each unit; with Beaufort, what may be typed in place of it. */
const SPEEDS: Record<UnitsShown['wind'], string> = {
  Beaufort: '15 km/h',
  'm/s': '4 m/s',
  'km/h': '15 km/h',
  mph: '10 mph',
  kn: '8 kn',
};

function weatherExample({ temperature }: UnitsShown): string {
  return `${temperature === 'C' ? '7c' : '45f'} f3`;
}

function putWords({ board }: Session, letter: string | null): string {
  if (letter === null) return 'Which species? A count behind the name is logged at once.';
  const stands = board?.taxa[letter];
  return stands
    ? `Which species on ${letter} in place of ${taxonName(stands)}? Enter alone frees the letter.`
    : `Which species on ${letter}?`;
}

function endedWords({ visit, now }: Session): string {
  const entries = standing(visit).length;
  return `The visit is ended: ${entries} ${entries === 1 ? 'entry' : 'entries'}, ${speciesSeen(visit)} species, watched for ${durationWords(watched(visit, now))}.`;
}

function menuRows(session: Session, width: number): Row[] {
  const cells = menuNow(session).map((binding) => {
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
  const hints = [...lead, ...merged(keymapOf(session.groupSizes).filter(works)), ...tail];
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
