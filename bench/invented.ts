import { randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { groupsOf } from '../src/commands/lists-in-use.ts';
import { visitText } from '../src/notebook/visit-file.ts';
import { visitPath } from '../src/notebook/visit-name.ts';
import { observationOf } from '../src/taxa/observation.ts';
import type { SpeciesList } from '../src/taxa/species-list.ts';
import type { Taxon } from '../src/taxa/taxon.ts';
import { indexTaxa, type TaxonIndex } from '../src/taxa/taxon-index.ts';
import { readEntryLine } from '../src/visit/entry-line.ts';
import type { Place } from '../src/visit/place.ts';
import { stamp } from '../src/visit/time.ts';
import { updateVisit } from '../src/visit/update.ts';
import { newVisit, type Visit } from '../src/visit/visit.ts';

export const ROOT = fileURLToPath(new URL('../', import.meta.url));
export const ZONE = 'Europe/London';
const MINUTE = 60_000;
const WEEK = 7 * 24 * 60 * MINUTE;

/** An invented place. */
export const SALLOW_MERE: Place = {
  name: 'Sallow Mere',
  position: { latitude: 51.12, longitude: -2.85 },
  verbatimCoordinates: '51.12, -2.85',
  uncertainty: null,
  habitat: null,
  protection: null,
  timeZone: ZONE,
};

/** The species lists for Sallow Mere that ship with the program. */
export async function shipped(): Promise<{
  taxa: Taxon[];
  index: TaxonIndex;
  groups: Record<string, string>;
}> {
  const file = join(ROOT, 'dist', 'lists', 'britain-ireland.json');
  const lists: SpeciesList[] = JSON.parse(await readFile(file, 'utf8'));
  const taxa = lists.flatMap((list) => list.taxa);
  return { taxa, index: indexTaxa(taxa), groups: groupsOf(lists) };
}

/** What one line of an invented visit says. */
export interface Line {
  taxon: Taxon;
  typed: string;
}

/** A visit to Sallow Mere with these lines logged a minute apart; `start` in epoch milliseconds. */
export function visitOf(lines: readonly Line[], start: number, ended: boolean): Visit {
  const empty = newVisit({
    id: randomUUID(),
    timeZone: ZONE,
    start: stamp(start, ZONE),
    place: SALLOW_MERE,
  });
  const visit = lines.reduce(
    (before, { taxon, typed }, place) =>
      updateVisit(before, {
        do: 'log',
        id: randomUUID(),
        time: stamp(start + place * MINUTE, ZONE),
        observation: observationOf(typed, readEntryLine(typed), taxon),
      }),
    empty,
  );
  if (!ended) return visit;
  const time = stamp(start + lines.length * MINUTE, ZONE);
  return updateVisit(visit, { do: 'set', time, part: 'end', value: time });
}

/** Lines for a visit: common taxa in an order that another `turn` shifts, with counts from 1 to 60. */
export function linesOf(taxa: readonly Taxon[], entries: number, turn: number): Line[] {
  const common = taxa.filter((taxon) => taxon.frequency !== null && taxon.frequency <= 2);
  return Array.from({ length: entries }, (_, place) => {
    const taxon = common[(place * 7 + turn * 11) % common.length];
    if (!taxon) throw new Error('The species lists hold no common taxon.');
    const name = taxon.vernacularName ?? taxon.scientificName;
    return { taxon, typed: `${name} ${1 + ((place * 13 + turn * 5) % 60)}` };
  });
}

/** Ended visits, one a week, the last a week before `before` (epoch milliseconds). */
export function weeklyVisits(
  taxa: readonly Taxon[],
  size: { visits: number; entries: number },
  before: number,
): Visit[] {
  return Array.from({ length: size.visits }, (_, week) =>
    visitOf(linesOf(taxa, size.entries, week), before - (size.visits - week) * WEEK, true),
  );
}

/** Writes visits into a notebook folder under the names that the program gives them. */
export async function writeVisits(notebook: string, visits: readonly Visit[]): Promise<void> {
  await mkdir(notebook, { recursive: true });
  for (const visit of visits) {
    const path = visitPath(notebook, visit);
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, visitText(visit));
  }
}

/**
 * Hands over a folder of its own and takes it away afterwards. It lies in the checkout, since the
 * system's temporary folder is often memory, where flushing costs nothing.
 */
export async function inFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const cache = join(ROOT, 'node_modules', '.cache');
  await mkdir(cache, { recursive: true });
  const folder = await mkdtemp(join(cache, 'bench-'));
  try {
    return await work(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
