import { positionBehind } from '../../ground/read-position.ts';
import { goneOn, readEffort, toldAnew } from '../../visit/effort.ts';
import { type Place, placeKey, readPlace } from '../../visit/place.ts';
import { positioned } from '../../visit/positioned.ts';
import type { Settable } from '../../visit/update.ts';
import { readWeather, weatherWords } from '../../visit/weather.ts';
import { weatherCaution } from '../../visit/weather-caution.ts';
import { answerPassing } from '../board/open.ts';
import { chosenOf } from './choices.ts';
import {
  type Message,
  type Question,
  type Result,
  type Session,
  saying,
  sayingSo,
  stampNow,
  still,
  toLine,
  typedLine,
  withoutLine,
  withPart,
} from './session.ts';
import { answerTime } from './time-answer.ts';

/** Opens a question; what was typed there before and not entered still stands. */
export function ask(session: Session, question: Question): Result {
  // No place is chosen until an arrow key says so: Enter takes what was typed.
  return still({ ...session, mode: { at: 'ask', question }, chosen: -1, message: null });
}

/** Enter on a question. A bad answer says what to mend and stays in the line. */
export function answer(session: Session): Result {
  if (session.mode.at !== 'ask') return still(session);
  const text = typedLine(session).text.trim();
  switch (session.mode.question) {
    case 'place':
      return answerPlace(session, text);
    case 'weather':
      return answerWeather(session, text);
    case 'description':
      return set(
        session,
        'description',
        text === '' ? null : text,
        text === '' ? 'No description.' : 'Description kept.',
      );
    case 'elsewhere': {
      if (text === '')
        return still(saying(session, 'problem', 'In which folder? Type for example /media/stick.'));
      const { visit } = session;
      const asked = saying(toLine(withoutLine(session)), 'done', `Writing to ${text} …`);
      return { session: asked, effects: [{ kind: 'save elsewhere', visit, folder: text }] };
    }
    case 'time':
      return answerTime(session, text);
    case 'passing':
      return answerPassing(session, text);
    case 'effort': {
      const read = readEffort(text);
      if ('problem' in read) return still(saying(session, 'problem', read.problem));
      const value = toldAnew(session.visit.effort, read.effort);
      const asking: Session = { ...withoutLine(session), mode: { at: 'complete' }, message: null };
      return withPart(asking, 'effort', value);
    }
    case 'groups': {
      const groups = text
        .split(/[,;]/)
        .map((group) => group.trim())
        .filter((group) => group !== '');
      if (groups.length === 0)
        return still(saying(session, 'problem', 'For which groups? Type for example birds.'));
      return finish(withoutLine(session), true, groups);
    }
  }
}

function answerPlace(session: Session, text: string): Result {
  const choice = chosenOf(session);
  if (choice?.kind === 'place') return setPlace(session, choice.place);
  if (text === '') return still(samePlace(session));
  const { place } = session.visit;
  const found = positionBehind(text, session.grids);
  // A bare position belongs to the place that the visit already has.
  if (found?.name === '' && place !== null) {
    if ('problem' in found.read) return still(saying(session, 'problem', found.read.problem));
    return setPlace(session, positioned(place, { ...found.read, verbatimCoordinates: text }));
  }
  const read = readPlace(text, session.grids);
  if ('problem' in read) return still(saying(session, 'problem', read.problem));
  const remembered = session.known?.places.get(placeKey(read.place.name))?.place;
  if (read.place.position === null && remembered) return setPlace(session, remembered);
  const { position } = read.place;
  if (position === null) return setPlace(session, read.place);
  const { name } = read.place;
  return setPlace(session, positioned({ ...(remembered ?? read.place), name }, read.place));
}

/** Nothing typed: the place stays, and one that was only assumed is now said to be right. */
function samePlace(session: Session): Session {
  const { place } = session.visit;
  const back = toLine(session);
  if (place === null || !session.placeAssumed) return back;
  return saying({ ...back, placeAssumed: false }, 'done', `Place: ${place.name}, as last time.`);
}

function setPlace(session: Session, place: Place): Result {
  const words = place.position
    ? `Place: ${place.name}.`
    : `Place: ${place.name}, without coordinates: sunrise is unknown. Esc p and for example 51.12, -2.85 adds them.`;
  const { session: after, effects } = set(
    { ...session, placeAssumed: false },
    'place',
    place,
    words,
  );
  if (place.position === null || session.readOnly !== null) return { session: after, effects };
  return { session: after, effects: [...effects, { kind: 'remember place', place }] };
}

function answerWeather(session: Session, text: string): Result {
  if (text === '') return still(toLine(session));
  const read = readWeather(text);
  if ('problem' in read) return still(saying(session, 'problem', read.problem));
  const weather = { time: stampNow(session), ...read.reading };
  const caution = weatherCaution(weather);
  const words = caution ?? `Weather: ${weatherWords(weather, session.units)}.`;
  const readings = [...session.visit.weather, weather];
  return set(session, 'weather', readings, words, caution === null ? 'done' : 'caution');
}

function set<Part extends keyof Settable>(
  session: Session,
  part: Part,
  value: Settable[Part],
  words: string,
  kind: Message['kind'] = 'done',
): Result {
  return sayingSo(withPart(toLine(withoutLine(session)), part, value), kind, words);
}

/**
 * Ends the visit: an open pause is closed and the answer about completeness kept. The screen stays
 * until it is left, so that an end by mistake can be taken back.
 */
export function finish(
  session: Session,
  complete: boolean | null,
  groups: string[] | null,
): Result {
  const time = stampNow(session);
  const effort = { ...goneOn(session.visit.effort, time), complete, groups };
  const summed = withPart(session, 'effort', effort).session;
  return withPart({ ...summed, mode: { at: 'ended' }, message: null }, 'end', time);
}
