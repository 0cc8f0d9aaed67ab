import { positionBehind, readPosition } from '../ground/read-position.ts';
import { readVisits, visitFiles } from '../notebook/notebook.ts';
import { readPlaces, rememberPlace } from '../notebook/places.ts';
import { reasonWords } from '../notebook/reason.ts';
import { type Known, knownFrom } from '../taxa/known.ts';
import { type Place, placeKey, placeNamed } from '../visit/place.ts';
import { positioned } from '../visit/positioned.ts';
import { loadGrids } from './load-grids.ts';
import { withPlaces } from './places-known.ts';
import { EXIT, Refusal } from './refusal.ts';

interface Io {
  answer(line: string): void;
  complain(line: string): void;
}

/** What can be said of a place; `none` takes back what was said. */
export interface PlaceOptions {
  position?: string;
  uncertainty?: string;
  habitat?: string;
  protection?: string;
}

/** What an option says to take back what was said. */
const NONE = 'none';
const MOST_UNCERTAINTY = 20_000_000;

/** Lists the places of a notebook, the latest first, with what is known of them. */
export async function listPlaces(notebook: string, io: Io): Promise<void> {
  const { known } = await placesOf(notebook, io);
  const places = [...known.places.values()].sort((one, two) =>
    one.last === two.last
      ? one.place.name.localeCompare(two.place.name, 'en')
      : one.last < two.last
        ? 1
        : -1,
  );
  for (const { place, visits, last } of places) io.answer(placeLine(place, visits, last));
  if (places.length === 0)
    io.answer('No place yet. tussock places set "Sallow Mere" --position "ST 401 285" makes one.');
}

/**
 * Sets what is known of a place, which need not have been visited: the next visit there begins with it.
 * Visits that stand keep what they have.
 */
export async function setPlace(
  notebookIn: () => Promise<string>,
  name: string,
  options: PlaceOptions,
  io: Io,
): Promise<void> {
  if (Object.values(options).every((value) => value === undefined))
    throw new Refusal(
      EXIT.usage,
      'Say what is to be known of it: --position, --uncertainty, --habitat or --protection.',
    );
  const words = nameIn(name);
  const change = await changeOf(options);
  // A refusal must not leave an empty folder behind.
  const notebook = await notebookIn();
  const { known, problem } = await placesOf(notebook, io);
  if (problem) throw new Refusal(EXIT.notebook, 'Nothing was changed.');
  const visited = known.places.get(placeKey(words));
  const place = change(visited?.place ?? placeNamed(words));
  await rememberPlace(notebook, place).catch((error: unknown) => {
    throw new Refusal(EXIT.notebook, `The place could not be kept: ${reasonWords(error)}.`);
  });
  io.answer(placeLine(place, visited?.visits ?? 0, visited?.last ?? ''));
  io.answer('The next visit there begins with this; earlier visits stay as they are.');
}

async function placesOf(notebook: string, io: Io): Promise<{ known: Known; problem: boolean }> {
  const { visits, problems } = await readVisits(await visitFiles(notebook));
  const { places, problem } = await readPlaces(notebook);
  for (const { words } of problems) io.complain(words);
  if (problem !== null) io.complain(problem);
  const known = withPlaces(knownFrom(visits.map(({ visit }) => visit)), places);
  return { known, problem: problem !== null };
}

/** The name of a place. Refuses one with a position behind it, and none at all. */
function nameIn(text: string): string {
  const typed = text.trim().replace(/\s+/g, ' ');
  if (typed === '') throw new Refusal(EXIT.usage, 'Name the place: places set "Sallow Mere".');
  const behind = positionBehind(typed, null);
  if (behind === null) return typed;
  throw new Refusal(
    EXIT.usage,
    `Write the position as an option: places set "${behind.name}" --position "${behind.verbatim}".`,
  );
}

/** What the options do to a place. Refuses what can't be read. */
async function changeOf(options: PlaceOptions): Promise<(place: Place) => Place> {
  const { position, uncertainty, habitat, protection } = options;
  const at = position === undefined ? undefined : await positionIn(position.trim());
  const said: Partial<Place> = {
    ...(uncertainty === undefined ? {} : { uncertainty: metres(uncertainty) }),
    ...(habitat === undefined ? {} : { habitat: orNone(habitat) }),
    ...(protection === undefined ? {} : { protection: protectionIn(protection) }),
  };
  return (place) => ({ ...(at === undefined ? place : positioned(place, at)), ...said });
}

async function positionIn(
  typed: string,
): Promise<Pick<Place, 'position' | 'verbatimCoordinates' | 'uncertainty'>> {
  if (typed === NONE) return { position: null, verbatimCoordinates: null, uncertainty: null };
  const read = readPosition(typed, await loadGrids());
  if ('problem' in read) throw new Refusal(EXIT.usage, `--position: ${read.problem}`);
  return { ...read, verbatimCoordinates: typed };
}

function metres(text: string): number | null {
  if (text.trim() === NONE) return null;
  const found = /^(\d+(?:\.\d+)?)\s*m?$/.exec(text.trim());
  const value = Number(found?.[1]);
  if (value > 0 && value <= MOST_UNCERTAINTY) return value;
  throw new Refusal(
    EXIT.usage,
    `--uncertainty "${text}" is no distance around the position: write metres above 0, for example 50, or none.`,
  );
}

function orNone(text: string): string | null {
  const words = text.trim();
  return words === '' || words === NONE ? null : words;
}

function protectionIn(text: string): Place['protection'] {
  const word = text.trim().toLowerCase();
  if (word === NONE) return null;
  if (word === 'protected' || word === 'private') return word;
  throw new Refusal(
    EXIT.usage,
    `--protection "${text}" is none: write protected, private or none.`,
  );
}

function placeLine(place: Place, visits: number, last: string): string {
  const { name, position, verbatimCoordinates, uncertainty, habitat, protection } = place;
  const degrees = position === null ? null : `${position.latitude}, ${position.longitude}`;
  const typed = verbatimCoordinates === degrees ? null : verbatimCoordinates;
  return [
    name,
    degrees === null ? 'no position' : degrees + (typed === null ? '' : ` (${typed})`),
    uncertainty === null ? '' : `within ${uncertainty} m`,
    habitat ?? '',
    protection === null ? '' : `${protection}: follow local law and ask before you go`,
    visits === 0 ? 'no visit yet' : `${visits} ${visits === 1 ? 'visit' : 'visits'}, last ${last}`,
  ]
    .filter((part) => part !== '')
    .join('  ');
}
