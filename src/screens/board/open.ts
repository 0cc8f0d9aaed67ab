import type { Taxon } from '../../taxa/taxon.ts';
import { taxonKey, taxonName } from '../../visit/entry.ts';
import { readEntryLine } from '../../visit/entry-line.ts';
import { COMPASS } from '../../visit/weather.ts';
import { chosenOf } from '../field/choices.ts';
import { logLine } from '../field/logging.ts';
import {
  type Moment,
  type Result,
  type Session,
  saying,
  sayingSo,
  still,
  toLine,
  typedLine,
  withoutLine,
} from '../field/session.ts';
import { freeLetter, INTERVALS, letterOf } from './board.ts';
import { keptLetters, laidFor, placeOf } from './letters.ts';
import { turnRule, withBoard } from './strokes.ts';

/** Opens the Board, or goes back to the entry line. */
export function openOrClose(session: Session): Result {
  if (session.board) return still(toLine({ ...session, board: null, message: null }));
  const laid = laidFor(session, session.layouts[placeOf(session)] ?? null);
  const board = { ...laid, step: session.groupSizes[0] ?? laid.step };
  return still(toLine({ ...session, board, message: null }));
}

/** The letter that was asked for. */
export function lettered(session: Session, letter: string): Result {
  if (session.mode.at !== 'letter') return still(session);
  if (session.mode.to === 'turn') return turnRule(session, letter);
  return still({ ...session, mode: { at: 'put', letter }, chosen: 0, message: null });
}

/** Enter on the line of the Board: the species gets a letter, and what was counted is logged. */
export function putSpecies(session: Session, moment: Moment): Result {
  const { mode, board } = session;
  if (mode.at !== 'put' || !board) return still(session);
  const text = typedLine(session).text.trim();
  if (text === '' && mode.letter !== null) return emptied(session, mode.letter);
  const choice = chosenOf(session);
  if (choice?.kind !== 'taxon') {
    const words =
      text === ''
        ? 'Type a name first: a few letters are enough.'
        : 'Choose a species of the lists. Esc leaves this, and Esc b leads to the entry line for others.';
    return still(saying(session, 'problem', words));
  }
  const { taxon } = choice.hit;
  const guessed = `Is it ${taxonName(taxon)}? Enter once more takes it.`;
  // A guess is never taken by itself: a wrong name is worse than none.
  if (choice.hit.how === 'loose' && session.message?.words !== guessed)
    return still(saying(session, 'problem', guessed));
  const letter = mode.letter ?? letterOf(board.taxa, taxonKey(taxon)) ?? freeLetter(board.taxa);
  if (letter === null)
    return still(
      saying(
        session,
        'problem',
        'Every letter has a species: a point and a letter put another there.',
      ),
    );
  const counted = readEntryLine(text).count !== null;
  const logged = counted ? logLine(session, moment) : still(withoutLine(session));
  if (logged.session.visit === session.visit && counted) return logged;
  const put = placed(logged.session, letter, taxon);
  const done = { ...keptLetters(put), effects: [...logged.effects, ...keptLetters(put).effects] };
  return sayingSo(done, 'done', `${letter} ${taxonName(taxon)}: ${letter} counts it from now on.`);
}

/** The Board with a taxon on a letter, and on no other. */
function placed(session: Session, letter: string, taxon: Taxon): Session {
  const others = Object.entries(session.board?.taxa ?? {}).filter(
    ([other, stands]) => other !== letter && taxonKey(stands) !== taxonKey(taxon),
  );
  const taxa = { ...Object.fromEntries(others), [letter]: taxon };
  return toLine(withBoard(session, { taxa, last: letter }));
}

function emptied(session: Session, letter: string): Result {
  const { [letter]: gone, ...taxa } = session.board?.taxa ?? {};
  const words = gone ? `${letter} is free; what was counted stays.` : `${letter} is free.`;
  return sayingSo(
    keptLetters(toLine(withBoard(withoutLine(session), { taxa, last: null }))),
    'done',
    words,
  );
}

const INTERVAL_WORDS = INTERVALS.join(', ');

/** The answer on passing birds: `sw 15`, or nothing to stop counting them. */
export function answerPassing(session: Session, text: string): Result {
  const home = toLine(withoutLine(session));
  if (text === '') {
    const words = 'Birds are counted where they are, not in passing.';
    return still(saying(withBoard(home, { passing: null }), 'done', words));
  }
  const [point = '', length = '15'] = text.toUpperCase().split(/[\s,]+/);
  const heading = COMPASS.find((name) => name === point);
  const minutes = INTERVALS.find((each) => String(each) === length);
  if (!heading)
    return still(
      saying(session, 'problem', `"${point}" is no point of the compass: write sw or nne.`),
    );
  if (!minutes)
    return still(
      saying(session, 'problem', `"${length}" is no interval: write ${INTERVAL_WORDS} minutes.`),
    );
  const words = `Birds heading ${heading} are counted by intervals of ${minutes} minutes.`;
  return still(saying(withBoard(home, { passing: { heading, minutes } }), 'done', words));
}
