import { readFile, stat } from 'node:fs/promises';
import { basename, relative } from 'node:path';
import { readGpx } from '../ground/gpx.ts';
import { type Segment, summed, type TrackSummary } from '../ground/track.ts';
import { positionsOf } from '../ground/track-position.ts';
import { readVisits, visitFiles } from '../notebook/notebook.ts';
import { reasonWords } from '../notebook/reason.ts';
import { newerWords, type OpenedVisit } from '../notebook/visit-file.ts';
import { visitStore } from '../notebook/visit-store.ts';
import { clockOf, dateOf, stamp } from '../visit/time.ts';
import { distanceShown } from '../visit/units-shown.ts';
import { zoneOf } from '../visit/visit.ts';
import { alone, refuseForeign } from './alone.ts';
import { visitNamed } from './named-visit.ts';
import { EXIT, Refusal } from './refusal.ts';
import { overlapping, spanOf, type WalkedTrack, withTrack } from './track-into-visit.ts';

/** The most bytes of a file that is read: some six days at a point a second. */
const MOST_BYTES = 64 * 1024 * 1024;

interface Io {
  answer(line: string): void;
  complain(line: string): void;
}

/**
 * Takes the distance of a recorded track into a visit, and from it the positions of the entries that
 * have none: into the visit named, else the latest that the track's times overlap. Says what it did.
 * Returns the exit code: 1 where something that stands was left.
 */
export async function takeTrack(
  notebook: string,
  file: string,
  options: { visit?: string; replace?: boolean },
  now: number,
  io: Io,
): Promise<number> {
  const segments = await segmentsOf(file);
  const summary = summed(segments);
  const track = walked(file, segments, summary);
  const chosen = await visitFor(notebook, options.visit, track, io);
  return alone(notebook, chosen.visit, async () => {
    // Read again: another program may have held it until now.
    const opened = await visitNamed(notebook, chosen.path);
    const newer = newerWords(opened.visit);
    if (newer !== null) throw new Refusal(EXIT.notTaken, `This visit ${newer}`);
    const time = stamp(now, zoneOf(opened.visit));
    const { visit, lines, left } = withTrack(opened.visit, track, time, options.replace === true);
    let { path } = opened;
    if (visit !== opened.visit)
      ({ path } = await visitStore(notebook, opened)
        .save(visit)
        .catch((error: unknown) => {
          throw new Refusal(EXIT.notebook, `It could not be saved: ${reasonWords(error)}.`);
        }));
    io.answer(`${basename(file)}: ${trackWords(summary, zoneOf(visit))}`);
    io.answer(`Into ${relative(notebook, path)}:`);
    for (const line of lines) io.answer(`  ${line}`);
    for (const line of left) io.complain(line);
    return left.length > 0 ? EXIT.notTaken : EXIT.done;
  });
}

async function segmentsOf(file: string): Promise<Segment[]> {
  const text = await textOf(file).catch((error: unknown) => {
    if (error instanceof Refusal) throw error;
    throw new Refusal(EXIT.notTaken, `${file} can't be read: ${reasonWords(error)}.`);
  });
  const read = readGpx(text);
  if ('problem' in read)
    throw new Refusal(EXIT.notTaken, `${file}: ${read.problem} Nothing was changed.`);
  return read.gpx.segments;
}

async function textOf(file: string): Promise<string> {
  const { size } = await stat(file);
  if (size <= MOST_BYTES) return readFile(file, 'utf8');
  throw new Refusal(
    EXIT.notTaken,
    `${file} is larger than ${MOST_BYTES / 1024 ** 2} MB: export one day of it as a file of its own.`,
  );
}

function walked(file: string, segments: readonly Segment[], summary: TrackSummary): WalkedTrack {
  const { start, end, distance, movingTime, climb } = summary;
  if (start === null || end === null)
    throw new Refusal(
      EXIT.notTaken,
      `${file} has no times, so nobody can tell when it was walked. Its ${distanceShown(distance)} can be given by hand: Esc e in the Field screen.`,
    );
  return {
    file: basename(file),
    start,
    end,
    distance: Math.round(distance),
    movingTime,
    climb: climb === null ? null : Math.round(climb),
    positionAt: positionsOf(segments),
  };
}

async function visitFor(
  notebook: string,
  name: string | undefined,
  track: WalkedTrack,
  io: Io,
): Promise<OpenedVisit> {
  if (name !== undefined) {
    const named = await visitNamed(notebook, name);
    await refuseForeign(notebook, named.path);
    return named;
  }
  const { visits, problems } = await readVisits(await visitFiles(notebook));
  for (const { words } of problems) io.complain(words);
  const fitting = visits
    .filter(({ visit }) => overlapping(visit, track))
    .sort((one, two) => spanOf(one.visit).start - spanOf(two.visit).start);
  const [latest, other] = fitting.toReversed();
  if (latest === undefined)
    throw new Refusal(
      EXIT.notTaken,
      `No visit in ${notebook} was under way when ${track.file} was recorded, ${periodWords(track, 'UTC')}. Name the visit: --visit 2026-11-14-sallow-mere.`,
    );
  if (other !== undefined)
    io.complain(
      `${fitting.length} visits overlap the track; the latest is taken. --visit names another.`,
    );
  return latest;
}

function trackWords(summary: TrackSummary, zone: string): string {
  const { distance, movingTime, climb, start, end } = summary;
  const minutes = Math.round(movingTime / 60_000);
  return [
    start === null || end === null ? '' : periodWords({ start, end }, zone),
    distanceShown(distance),
    `moving for ${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`,
    climb === null ? 'no heights' : `climbed ${Math.round(climb)} m`,
  ]
    .filter((part) => part !== '')
    .join(', ')
    .concat('.');
}

function periodWords({ start, end }: { start: number; end: number }, zone: string): string {
  const [from, to] = [stamp(start, zone), stamp(end, zone)];
  const day = dateOf(from) === dateOf(to) ? '' : `${dateOf(to)} `;
  return `${dateOf(from)} ${clockOf(from)} to ${day}${clockOf(to)}${zone === 'UTC' ? ' UTC' : ''}`;
}
