import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as z from 'zod';
import { type Place, Place as PlaceShape, placeKey } from '../visit/place.ts';
import { createDurably, isCode, replaceDurably } from './durable-file.ts';
import { parsedJson } from './json-text.ts';
import { reasonWords } from './reason.ts';

/** The number in `places.json`; it rises when an older program could misread a newer file. */
const FORMAT_VERSION = 1;

/** What a notebook remembers of places: its `places.json`. Fields that this version does not know are kept. */
const Places = z.looseObject({
  format: z.literal('tussock-places'),
  formatVersion: z.literal(FORMAT_VERSION),
  places: z.array(PlaceShape),
});
type Places = z.infer<typeof Places>;

const NONE: Places = { format: 'tussock-places', formatVersion: FORMAT_VERSION, places: [] };

export interface PlacesRead {
  /** As they stand in the file; none where there is no file or it can't be read. */
  places: Place[];
  problem: string | null;
}

/** The remembered places of a notebook; a sentence where the file can't be read. */
export async function readPlaces(notebook: string): Promise<PlacesRead> {
  const { file, problem } = await readFileOf(notebook);
  return { places: file.places, problem };
}

/**
 * Remembers a place in the stead of what was remembered under its name; durable when it resolves. Rejects with a
 * sentence where the file that stands can't be read, and is then left, else with the system's error.
 */
export async function rememberPlace(notebook: string, place: Place): Promise<void> {
  const { file, problem } = await readFileOf(notebook);
  if (problem !== null) throw new Error(problem);
  const key = placeKey(place.name);
  const at = file.places.findIndex((other) => placeKey(other.name) === key);
  const places = at < 0 ? [...file.places, place] : file.places.with(at, place);
  const path = placesPath(notebook);
  const text = `${JSON.stringify({ ...file, places }, null, 2)}\n`;
  if (!(await createDurably(path, text))) await replaceDurably(path, text);
}

function placesPath(notebook: string): string {
  return join(notebook, 'places.json');
}

async function readFileOf(notebook: string): Promise<{ file: Places; problem: string | null }> {
  const path = placesPath(notebook);
  const none = (why: string) => ({
    file: NONE,
    problem: `${path} can't be read (${why}). Places are taken from the visits; mend it or move it away.`,
  });
  try {
    // Some editors put a byte order mark before the text.
    const parsed = parsedJson((await readFile(path, 'utf8')).replace(/^\ufeff/, ''));
    if ('problem' in parsed) return none(parsed.problem);
    const version = (parsed.data as { formatVersion?: unknown } | null)?.formatVersion;
    if (typeof version === 'number' && version > FORMAT_VERSION)
      return none(
        `it was written by a newer Tussock, format ${version}; this one reads ${FORMAT_VERSION}`,
      );
    const read = Places.safeParse(parsed.data);
    if (read.success) return { file: read.data, problem: null };
    const issue = read.error.issues[0];
    return none(`at ${issue?.path.join('.') || 'its start'}: ${issue?.message}`);
  } catch (error) {
    return isCode(error, 'ENOENT') ? { file: NONE, problem: null } : none(reasonWords(error));
  }
}
