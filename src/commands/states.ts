import { relative } from 'node:path';
import { reasonWords } from '../notebook/reason.ts';
import { type KeptState, keptStates } from '../notebook/states.ts';
import { newerWords, type OpenedVisit } from '../notebook/visit-file.ts';
import { visitStore } from '../notebook/visit-store.ts';
import { clockOf, dateOf, stamp } from '../visit/time.ts';
import { standing, type Visit, zoneOf } from '../visit/visit.ts';
import { alone, refuseForeign } from './alone.ts';
import { visitNamed } from './named-visit.ts';
import { EXIT, Refusal } from './refusal.ts';

interface Answers {
  answer(line: string): void;
}

/** Lists the kept earlier states of a visit, newest first. */
export async function listStates(notebook: string, file: string, io: Answers): Promise<void> {
  const { visit } = await visitNamed(notebook, file);
  const states = await keptStates(notebook, visit.id);
  io.answer(`Now: ${sizeWords(visit)}`);
  states.forEach((state, at) => {
    io.answer(`${String(at + 1).padStart(3)}  ${stateWords(state, visit)}`);
  });
  io.answer(
    states.length === 0
      ? 'No earlier state of this visit is kept.'
      : 'tussock states VISIT --bring-back NUMBER makes one of them the visit again.',
  );
}

/** Makes a kept state the visit again, by its number in the list; what stood is kept as a state first. */
export async function bringBack(
  notebook: string,
  file: string,
  number: string,
  io: Answers,
): Promise<void> {
  const named = await visitNamed(notebook, file);
  await refuseForeign(notebook, named.path);
  await alone(notebook, named.visit, async () => {
    // Read again: another program may have held it until now.
    const opened = await visitNamed(notebook, named.path);
    const state = stateNumbered(await keptStates(notebook, opened.visit.id), number);
    await putBack(notebook, opened, state, io);
  });
}

function stateNumbered(states: readonly KeptState[], number: string): KeptState {
  const state = /^\d+$/.test(number) ? states[Number(number) - 1] : undefined;
  if (state !== undefined) return state;
  const which =
    states.length === 0 ? 'none is kept of this visit' : `give one from 1 to ${states.length}`;
  throw new Refusal(EXIT.usage, `There is no state ${number}: ${which}.`);
}

async function putBack(
  notebook: string,
  opened: OpenedVisit,
  { read, written }: KeptState,
  io: Answers,
): Promise<void> {
  if ('problem' in read)
    throw new Refusal(EXIT.notTaken, `That state can't be read (${read.problem}).`);
  for (const visit of [opened.visit, read.visit]) {
    const newer = newerWords(visit);
    if (newer !== null) throw new Refusal(EXIT.notTaken, `This visit ${newer}`);
  }
  const { path } = await visitStore(notebook, opened)
    .save(read.visit)
    .catch((error: unknown) => {
      throw new Refusal(EXIT.notebook, `It could not be saved: ${reasonWords(error)}.`);
    });
  const moment = momentWords(written, opened.visit);
  io.answer(
    `${relative(notebook, path)} is again as it was on ${moment}: ${sizeWords(read.visit)}; before, ${sizeWords(opened.visit)}. What stood is kept as a state.`,
  );
}

function stateWords({ written, read }: KeptState, visit: Visit): string {
  const moment = momentWords(written, visit);
  if ('problem' in read) return `${moment}  can't be read: ${read.problem}`;
  const size = `${Math.ceil((read.mark?.size ?? 0) / 1024)} KiB`;
  return `${moment}  ${sizeWords(read.visit)}, ${size}`;
}

/** By the clock of the visit, to the second. */
function momentWords(written: number, visit: Visit): string {
  const moment = stamp(written, zoneOf(visit));
  return `${dateOf(moment)} ${clockOf(moment)}${moment.slice(16, 19)}`;
}

function sizeWords(visit: Visit): string {
  const entries = standing(visit).length;
  const changes = visit.changes.length;
  return `${entries} ${entries === 1 ? 'entry' : 'entries'}, ${changes} ${changes === 1 ? 'change' : 'changes'}`;
}
