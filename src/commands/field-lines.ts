import { randomUUID } from 'node:crypto';
import { createInterface } from 'node:readline';
import { readVisits, visitFiles } from '../notebook/notebook.ts';
import { reasonWords } from '../notebook/reason.ts';
import type { Values } from '../notebook/settings-keys.ts';
import { visitStore } from '../notebook/visit-store.ts';
import { harmless } from '../screens/paint.ts';
import { occasionOf, priorFor } from '../taxa/expected.ts';
import { firstOf, knownFrom } from '../taxa/known.ts';
import { observationOf } from '../taxa/observation.ts';
import { CATEGORY_WORDS, categoryLetters, isThreatened } from '../taxa/red-list.ts';
import { clearHit, type Hit, type Prior, search } from '../taxa/search.ts';
import { indexTaxa, type TaxonIndex } from '../taxa/taxon-index.ts';
import { countShown, partsText } from '../visit/count.ts';
import {
  type Entry,
  isAbsence,
  nameOf,
  type Observation,
  type RedListCategory,
  taxonName,
} from '../visit/entry.ts';
import { type EntryLine, readEntryLine } from '../visit/entry-line.ts';
import { readMoment } from '../visit/moment.ts';
import { clockOf, stamp } from '../visit/time.ts';
import { updateVisit } from '../visit/update.ts';
import { withObservers, zoneOf } from '../visit/visit.ts';
import { askedPlace, type Beginning } from './begin-visit.ts';
import { holdVisit } from './hold-visit.ts';
import { listsInUse, taxaInUse } from './lists-in-use.ts';
import { EXIT, Refusal } from './refusal.ts';

interface LinesIo {
  input: NodeJS.ReadableStream;
  answer(line: string): void;
  complain(line: string): void;
}

/** What a line comes to: an answer, and the reason where it could not be taken as it stands. */
interface Taken {
  hit: Hit | null;
  problem: string | null;
}

/**
 * Logs entry lines from standard input, one a line, each on disk before it is answered. A line that
 * can't be taken stays in the visit as unnamed with its words, and is told with its number. Returns
 * the exit code: 1 if there was any such line.
 */
export async function fieldLines(
  notebookIn: () => Promise<string>,
  { place, when }: { place?: string; when?: string },
  io: LinesIo,
  options: Partial<Values> = {},
): Promise<number> {
  const asked = await askedPlace(place);
  const notebook = await notebookIn();
  const machineZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const hold = await holdVisit(notebook, asked, Date.now(), machineZone, when ?? null);
  try {
    if (hold.readOnly !== null) throw new Refusal(EXIT.notebook, hold.readOnly.forLines);
    return await logLines(notebook, hold.beginning, io, options);
  } finally {
    hold.release();
  }
}

async function logLines(
  notebook: string,
  beginning: Beginning,
  io: LinesIo,
  options: Partial<Values>,
): Promise<number> {
  const inUse = await listsInUse(notebook, zoneOf(beginning.visit), options);
  const index = indexTaxa(taxaInUse(inUse));
  const { visits, problems } = await readVisits(await visitFiles(notebook));
  for (const words of [...inUse.problems, ...problems.map((each) => each.words)])
    io.complain(words);
  const store = visitStore(notebook, beginning.opened);
  const { observers } = inUse.read.settings;
  let visit =
    beginning.opened === null ? withObservers(beginning.visit, observers.number) : beginning.visit;
  const known = knownFrom(
    visits.map((read) => read.visit).filter((other) => other.id !== visit.id),
  );
  if ('isTTY' in io.input && io.input.isTTY)
    io.complain('type one entry a line, such as tuf 12; Ctrl-D ends.');
  let { moment } = beginning;
  let lineNumber = 0;
  let refused = 0;
  for await (const typed of createInterface({
    input: io.input,
    crlfDelay: Number.POSITIVE_INFINITY,
  })) {
    lineNumber += 1;
    if (typed.trim() === '') continue;
    const now = Date.now();
    const timeZone = zoneOf(visit);
    if (typed.trim().startsWith('@')) {
      const said = typed.trim().slice(1).trim();
      const read =
        said === 'now' ? { moment: null } : readMoment(said, { now, day: moment ?? now, timeZone });
      if ('problem' in read) {
        refused += 1;
        io.complain(`line ${lineNumber}: ${read.problem} Nothing was logged by it.`);
      } else moment = read.moment;
      continue;
    }
    const time = stamp(now, timeZone);
    const at = stamp(moment ?? now, timeZone);
    const prior = priorFor(index, known, occasionOf(visit, at));
    const line = readEntryLine(typed);
    const taken = take(line, index, prior);
    const observation = observed(typed, line, taken);
    visit = updateVisit(visit, { do: 'log', time, at, id: randomUUID(), observation });
    const { leftAlone } = await store.save(visit).catch((error: Error) => {
      const words = `line ${lineNumber} could not be saved: ${reasonWords(error)}. It and the lines after it are not in the notebook.`;
      throw new Refusal(EXIT.notebook, words);
    });
    if (leftAlone !== null)
      io.complain(`Another program changed ${leftAlone}; this visit goes on in a file of its own.`);
    const entry = visit.entries.at(-1);
    if (entry) io.answer(harmless(answerWords(entry, firstOf(known, visit, entry))));
    if (taken.problem !== null) {
      refused += 1;
      io.complain(`line ${lineNumber}: ${taken.problem} Kept unnamed as entry ${entry?.number}.`);
    }
  }
  return refused > 0 ? EXIT.notTaken : EXIT.done;
}

/** A line that contradicts itself says nothing that could be counted: all of it becomes its words. */
function observed(typed: string, line: EntryLine, taken: Taken): Observation {
  const read = observationOf(typed, line, taken.hit?.taxon ?? null);
  if (line.problem === null) return read;
  const words = typed.trim();
  return {
    ...read,
    words,
    uncertain: false,
    count: { kind: 'present' },
    parts: [],
    description: null,
  };
}

function take(line: EntryLine, index: TaxonIndex, prior: Prior): Taken {
  if (line.problem) return { hit: null, problem: line.problem.words };
  if (line.words === '') {
    const problem =
      line.description === null
        ? 'There is a count and no name.'
        : 'There is a description and no name.';
    return { hit: null, problem };
  }
  const hits = search(index, line.words, prior);
  const hit = clearHit(hits);
  if (hit) return { hit, problem: null };
  if (hits.length === 0 || hits[0]?.how === 'loose') {
    const guess = hits[0] ? ` Perhaps ${shown(hits[0])}?` : '';
    return { hit: null, problem: `"${line.words}" is no name in the lists.${guess}` };
  }
  return {
    hit: null,
    problem: `"${line.words}" fits ${hits.slice(0, 3).map(shown).join(', ')}${hits.length > 3 ? ' and more' : ''}: write more of the name.`,
  };
}

function shown(hit: Hit): string {
  return taxonName(hit.taxon);
}

/** One line an entry: number, time, name, count, category in letters and words, first. */
function answerWords(entry: Entry, first: string | null): string {
  const category = entry.taxon?.redListCategory ?? null;
  const caution = category && isThreatened(category) ? cautionOf(entry, category) : '';
  return [
    String(entry.number),
    clockOf(entry.time),
    entry.uncertain ? `${nameOf(entry)}?` : nameOf(entry),
    countShown(entry.count),
    partsText(entry.parts),
    entry.taxon === null ? 'unnamed' : categoryLetters(entry.taxon) + caution,
    first ?? '',
  ]
    .filter((part) => part !== '')
    .join('  ');
}

function cautionOf(entry: Entry, category: RedListCategory): string {
  return ` ${CATEGORY_WORDS[category]}${isAbsence(entry) ? '' : ', keep your distance'}`;
}
