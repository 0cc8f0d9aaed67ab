import { occasionOf, priorFor } from '../../taxa/expected.ts';
import { type Hit, type Prior, search } from '../../taxa/search.ts';
import { type Entry, nameOf } from '../../visit/entry.ts';
import { readEntryLine } from '../../visit/entry-line.ts';
import { type Place, placeKey } from '../../visit/place.ts';
import { dateOf } from '../../visit/time.ts';
import { entryNumbered } from '../../visit/visit.ts';
import { type Binding, menuNow } from './keymap.ts';
import { type Session, stampNow, typedLine } from './session.ts';

/** A row that Enter can take. */
export type Choice =
  | { kind: 'taxon'; hit: Hit }
  | { kind: 'words'; words: string }
  | { kind: 'stands'; entry: Entry }
  | { kind: 'place'; place: Place; visits: number; last: string }
  | { kind: 'action'; binding: Binding };

const MOST_PLACES = 8;

/** The rows under the line, best first; the first is the one that Enter takes unless another is chosen. */
export function choicesOf(session: Session): Choice[] {
  const { mode } = session;
  const { text } = typedLine(session);
  if (mode.at === 'ask') return mode.question === 'place' ? placeChoices(session, text) : [];
  if (mode.at !== 'line' && mode.at !== 'change' && mode.at !== 'put') return [];
  if (mode.at === 'line' && text.startsWith('@')) return [];
  if (mode.at === 'line' && text.startsWith('/')) return actionChoices(session, text);
  return taxonChoices(session, text);
}

export function chosenOf(session: Session): Choice | null {
  return choicesOf(session)[session.chosen] ?? null;
}

function taxonChoices(session: Session, text: string): Choice[] {
  const { words } = readEntryLine(text);
  if (words === '') return [];
  const hits = taxonHits(session, words);
  const named = hits.map((hit): Choice => ({ kind: 'taxon', hit }));
  // A letter of the Board needs a taxon.
  if (session.mode.at === 'put') return named;
  const asWords: Choice = { kind: 'words', words };
  // A guess is never taken by itself: a wrong name is worse than none.
  const sure = hits[0] !== undefined && hits[0].how !== 'loose';
  const choices = sure ? [...named, asWords] : [asWords, ...named];
  const { mode, visit } = session;
  const entry = mode.at === 'change' ? entryNumbered(visit, mode.number) : null;
  // Who only mends the count must not give the bird another name.
  return entry && nameOf(entry) === words ? [{ kind: 'stands', entry }, ...choices] : choices;
}

/** The last value of what is asked for again with the same parts: by the key handler, then by the frame. */
function remembered<Value>(): (of: readonly unknown[], make: () => Value) => Value {
  let last: { of: readonly unknown[]; value: Value } | null = null;
  return (of, make) => {
    if (last === null || of.some((part, at) => part !== last?.of[at])) last = { of, value: make() };
    return last.value;
  };
}

const priorOf = remembered<Prior>();
const hitsOf = remembered<Hit[]>();

function taxonHits(session: Session, words: string): Hit[] {
  const { index, known, visit } = session;
  const now = stampNow(session);
  const prior = priorOf([index, known, visit, dateOf(now)], () =>
    priorFor(index, known, occasionOf(visit, now)),
  );
  return hitsOf([index, prior, words], () => search(index, words, prior));
}

function placeChoices(session: Session, text: string): Choice[] {
  if (!session.known) return [];
  const wanted = placeKey(text);
  return [...session.known.places.entries()]
    .filter(([key]) => wanted === '' || key.includes(wanted))
    .sort(([, one], [, two]) => (one.last < two.last ? 1 : -1))
    .slice(0, MOST_PLACES)
    .map(([, known]): Choice => ({ kind: 'place', ...known }));
}

function actionChoices(session: Session, text: string): Choice[] {
  const word = text.slice(1).trimStart().split(/\s/)[0]?.toLowerCase() ?? '';
  return menuNow(session)
    .filter(({ action, words }) => action.startsWith(word) || words.startsWith(word))
    .map((binding): Choice => ({ kind: 'action', binding }));
}
