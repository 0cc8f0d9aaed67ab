import type { Grids } from '../../ground/read-position.ts';
import type { Known } from '../../taxa/known.ts';
import type { TaxonIndex } from '../../taxa/taxon-index.ts';
import { GROUP_SIZES } from '../../visit/count.ts';
import { effortText } from '../../visit/effort.ts';
import { entryText } from '../../visit/entry.ts';
import type { Place } from '../../visit/place.ts';
import { stamp } from '../../visit/time.ts';
import { type UnitsShown, USUAL_UNITS } from '../../visit/units-shown.ts';
import { type Settable, updateVisit, type VisitAction } from '../../visit/update.ts';
import { entryNumbered, type Visit, zoneOf } from '../../visit/visit.ts';
import type { Board, Layout } from '../board/board.ts';
import type { Key } from '../keyboard.ts';
import { EMPTY_LINE, type Line, lineOf } from '../line.ts';
import type { Size } from '../paint.ts';

/** What is asked for in a line of its own. */
export type Question =
  | 'place'
  | 'weather'
  | 'description'
  | 'effort'
  | 'groups'
  | 'elsewhere'
  | 'passing'
  | 'time';

/** Where the keys go. */
export type Mode =
  | { at: 'line' }
  | { at: 'board' }
  /** A species is chosen for a letter of the Board; null for the next free one. */
  | { at: 'put'; letter: string | null }
  /** The next letter says which species is meant. */
  | { at: 'letter'; to: 'put' | 'turn' }
  | { at: 'menu' }
  | { at: 'help'; from: number }
  | { at: 'pick'; to: 'change' | 'strike'; number: number; typed: string }
  | { at: 'change'; number: number }
  | { at: 'ask'; question: Question }
  | { at: 'complete' }
  | { at: 'ended' };

/** One sentence under the entries; a caution is shown with its sign. */
export interface Message {
  kind: 'done' | 'problem' | 'caution';
  words: string;
}

/** The Field screen's whole state: plain data, changed by `updateField` alone. */
export interface Session {
  visit: Visit;
  mode: Mode;
  /** What is typed and not yet entered, by where it is typed; Esc leaves it there. */
  drafts: Record<string, Line>;
  /** The suggestion that Enter takes, from 0. */
  chosen: number;
  /** The Board, while it is open. */
  board: Board | null;
  /** Which species stand on which letters, by the keys of places. */
  layouts: Readonly<Record<string, Layout>>;
  message: Message | null;
  index: TaxonIndex;
  /** The groups of the lists in use, such as `birds`, by the names of the lists. */
  groups: Readonly<Record<string, string>>;
  /** The steps of the count, rising. */
  groupSizes: readonly number[];
  /** Units in which values are shown. */
  units: UnitsShown;
  /** Reads grid references; null until its libraries are loaded, behind the first frame. */
  grids: Grids | null;
  /** What other visits tell; null until they have been read. */
  known: Known | null;
  /** The place was taken over from the last visit and nobody has said that it is right. */
  placeAssumed: boolean;
  /** Why the visit can only be read here; null where it can be changed. */
  readOnly: string | null;
  /** Epoch milliseconds. */
  now: number;
  /** When that was seen which is typed now, in epoch milliseconds; null while it is now. */
  moment: number | null;
  /** Of the window, for what scrolls by its height. */
  size: Size;
  /** How many of the visit's changes are flushed to disk, where, and why no more are. */
  saved: { changes: number; file: string | null; failure: string | null };
}

/** What the shell tells the screen. `id` is a fresh UUID, for an entry if one is made. */
export type FieldEvent =
  | { kind: 'key'; key: Key; now: number; id: string }
  | { kind: 'tick'; now: number }
  | { kind: 'size'; size: Size }
  | { kind: 'lists'; index: TaxonIndex; groups: Session['groups'] }
  | ({ kind: 'settings'; observers: number | null } & Pick<Session, 'groupSizes' | 'units'>)
  | { kind: 'layouts'; layouts: Session['layouts'] }
  | { kind: 'known'; known: Known }
  | { kind: 'grids'; grids: Grids }
  | { kind: 'notice'; words: string; done?: boolean }
  | { kind: 'saved'; changes: number; file: string }
  | { kind: 'save failed'; why: string };

/** What the screen asks of the shell. */
export type Effect =
  | { kind: 'save'; visit: Visit }
  | { kind: 'save elsewhere'; visit: Visit; folder: string }
  | { kind: 'keep letters'; place: string; layout: Layout }
  | { kind: 'remember place'; place: Place }
  | { kind: 'leave'; code: number }
  | { kind: 'suspend' }
  | { kind: 'redraw' };

export interface Result {
  session: Session;
  effects: Effect[];
}

/** What a key comes with. */
export interface Moment {
  now: number;
  id: string;
}

export function newSession(
  given: Pick<
    Session,
    'visit' | 'index' | 'groups' | 'placeAssumed' | 'now' | 'message' | 'size'
  > & {
    saved: Pick<Session['saved'], 'changes' | 'file'>;
    readOnly?: string | null;
    moment?: number | null;
  },
): Session {
  return {
    readOnly: null,
    moment: null,
    ...given,
    mode: { at: 'line' },
    drafts: {},
    chosen: 0,
    board: null,
    layouts: {},
    groupSizes: GROUP_SIZES,
    units: USUAL_UNITS,
    grids: null,
    known: null,
    saved: { ...given.saved, failure: null },
  };
}

export function still(session: Session): Result {
  return { session, effects: [] };
}

export function saying(session: Session, kind: Message['kind'], words: string): Session {
  return { ...session, message: { kind, words } };
}

/** The same, for what a key came to. */
export function sayingSo(
  { session, effects }: Result,
  kind: Message['kind'],
  words: string,
): Result {
  return { session: saying(session, kind, words), effects };
}

/** Back to where entries are made: the Board while it is open, else the entry line. */
export function toLine(session: Session): Session {
  return { ...session, mode: { at: session.board ? 'board' : 'line' }, chosen: 0 };
}

/** The session with another visit, which is then saved; one that can only be read stays. */
export function withVisit(session: Session, visit: Visit): Result {
  if (visit === session.visit || session.readOnly !== null) return still(session);
  return { session: { ...session, visit }, effects: [{ kind: 'save', visit }] };
}

/** The session with a part of its visit set whole, and saved where that changed anything. */
export function withPart<Part extends keyof Settable>(
  session: Session,
  part: Part,
  value: Settable[Part],
): Result {
  const set = { do: 'set', time: writtenNow(session), part, value } as VisitAction;
  return withVisit(session, updateVisit(session.visit, set));
}

/** Numbers of the entries whose last change is not on disk yet. */
export function unsavedNumbers({ visit, saved }: Session): Set<number> {
  const open = visit.changes.slice(saved.changes);
  return new Set(open.flatMap((change) => ('number' in change ? [change.number] : [])));
}

/** The moment of what is observed: now, or what was said for what is typed later. */
export function stampNow(session: Session): string {
  return stamp(session.moment ?? session.now, zoneOf(session.visit));
}

/** The moment at which it is written down. */
export function writtenNow(session: Session): string {
  return stamp(session.now, zoneOf(session.visit));
}

/** The name under which what is typed now is kept; null where nothing can be typed. */
export function draftName(mode: Mode): string | null {
  if (mode.at === 'line') return 'line';
  if (mode.at === 'menu') return 'line';
  if (mode.at === 'put') return 'put';
  if (mode.at === 'change') return `change ${mode.number}`;
  return mode.at === 'ask' ? mode.question : null;
}

/** The line being typed: the draft, else what stands there to be edited. */
export function typedLine(session: Session): Line {
  const name = draftName(session.mode);
  return (name === null ? null : session.drafts[name]) ?? startingLine(session);
}

function startingLine({ mode, visit, groups, units }: Session): Line {
  if (mode.at === 'change') {
    const entry = entryNumbered(visit, mode.number);
    return entry ? lineOf(entryText(entry)) : EMPTY_LINE;
  }
  if (mode.at !== 'ask') return EMPTY_LINE;
  if (mode.question === 'description') return lineOf(visit.description ?? '');
  if (mode.question === 'effort') return lineOf(effortText(visit.effort, units.distance));
  if (mode.question === 'groups')
    return lineOf((visit.effort.groups ?? groupsLogged(visit, groups)).join(', '));
  return EMPTY_LINE;
}

/** The groups of what was logged: of those the observer can say whether everything was. */
function groupsLogged(visit: Visit, groups: Session['groups']): string[] {
  const lists = new Set(visit.entries.map((entry) => entry.taxon?.list));
  const logged = Object.entries(groups).filter(([list]) => lists.has(list));
  return [...new Set(logged.map(([, group]) => group))];
}

export function withLine(session: Session, line: Line): Session {
  const name = draftName(session.mode);
  return name === null ? session : { ...session, drafts: { ...session.drafts, [name]: line } };
}

/** Forgets what was typed here: it has been entered. */
export function withoutLine(session: Session): Session {
  const { [draftName(session.mode) ?? '']: _entered, ...drafts } = session.drafts;
  return { ...session, drafts, chosen: 0 };
}
