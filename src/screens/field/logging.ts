import { firstOf } from '../../taxa/known.ts';
import { observationOf } from '../../taxa/observation.ts';
import { isThreatened } from '../../taxa/red-list.ts';
import { countShown } from '../../visit/count.ts';
import { type Entry, isAbsence, nameOf, type Observation, taxonKey } from '../../visit/entry.ts';
import { readEntryLine } from '../../visit/entry-line.ts';
import { updateVisit } from '../../visit/update.ts';
import { entryNumbered } from '../../visit/visit.ts';
import { cut } from '../paint.ts';
import { threatWords } from '../threat-words.ts';
import { chosenOf } from './choices.ts';
import {
  type Moment,
  type Result,
  type Session,
  saying,
  sayingSo,
  stampNow,
  still,
  toLine,
  typedLine,
  withLine,
  withoutLine,
  withVisit,
  writtenNow,
} from './session.ts';

/** Enter on the entry line: the line becomes an entry, or says what to mend and stays. */
export function logLine(session: Session, moment: Moment): Result {
  if (session.readOnly !== null) return still(saying(session, 'problem', session.readOnly));
  const read = observed(session);
  if ('result' in read) return read.result;
  const visit = updateVisit(session.visit, {
    do: 'log',
    time: writtenNow(session),
    at: stampNow(session),
    id: moment.id,
    observation: read.observation,
  });
  return told(withVisit(withoutLine(session), visit), visit.entries.at(-1) ?? null);
}

/** Enter while an entry is changed: its number, time and earlier value stay. */
export function saveChange(session: Session): Result {
  if (session.mode.at !== 'change') return still(session);
  const { number } = session.mode;
  const before = entryNumbered(session.visit, number);
  const read = observed(session);
  if ('result' in read) return read.result;
  if (!before) return still(toLine(session));
  if (sameLine(before, read.observation))
    return still(
      saying(toLine(withoutLine(session)), 'done', `${number} ${nameOf(before)} stays as it was.`),
    );
  const visit = updateVisit(session.visit, {
    do: 'amend',
    time: writtenNow(session),
    number,
    observation: read.observation,
  });
  return told(withVisit(toLine(withoutLine(session)), visit), entryNumbered(visit, number));
}

/** An entry opened and kept without a change must not become one. */
function sameLine(before: Observation, after: Observation): boolean {
  const told = ({ taxon, words, uncertain, count, parts, description }: Observation) =>
    JSON.stringify([
      taxon === null ? words : taxonKey(taxon),
      uncertain,
      count,
      parts,
      description,
    ]);
  return told(before) === told(after);
}

function observed(session: Session): { observation: Observation } | { result: Result } {
  const typed = typedLine(session);
  const line = readEntryLine(typed.text);
  if (line.problem) {
    const cursor = line.problem.at;
    return {
      result: still(
        saying(withLine(session, { text: typed.text, cursor }), 'problem', line.problem.words),
      ),
    };
  }
  if (line.words === '' && line.description === null) {
    const words =
      line.count || line.parts.length > 0
        ? 'A count of what? Type a name, or any words for what you saw.'
        : 'Type a name first: a few letters are enough.';
    return { result: still(saying(session, 'problem', words)) };
  }
  const choice = chosenOf(session);
  const taxon = choice?.kind === 'taxon' ? choice.hit.taxon : null;
  const observation = observationOf(typed.text, line, taxon);
  if (choice?.kind !== 'stands') return { observation };
  const { taxon: stands, words } = choice.entry;
  return { observation: { ...observation, taxon: stands, words } };
}

/** Names in a message are cut, so that what follows them is read. */
const NAME_WIDTH = 40;

function told(result: Result, entry: Entry | null): Result {
  if (!entry) return result;
  const { session } = result;
  const name = cut(nameOf(entry), NAME_WIDTH);
  if (entry.taxon !== null && isThreatened(entry.taxon.redListCategory) && !isAbsence(entry))
    return sayingSo(result, 'caution', threatWords(name, entry.taxon));
  const line = [`${entry.number} ${name}`, countShown(entry.count)].join(' ');
  return sayingSo(result, 'done', `${line}${endingOf(session, entry)}.`);
}

function endingOf({ known, visit }: Session, entry: Entry): string {
  if (entry.taxon === null)
    return entry.words === '' ? ', without a name yet' : ', kept in your words: name it later';
  const first = known ? firstOf(known, visit, entry) : null;
  return first ? `, ${first}: worth a picture` : '';
}
