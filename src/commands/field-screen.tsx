import { randomUUID } from 'node:crypto';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { render } from 'ink';
import { readVisits, visitFiles } from '../notebook/notebook.ts';
import { saveQueue } from '../notebook/save-queue.ts';
import { visitStore } from '../notebook/visit-store.ts';
import { FieldScreen } from '../screens/field/FieldScreen.tsx';
import { type Effect, type FieldEvent, newSession } from '../screens/field/session.ts';
import { updateField } from '../screens/field/update.ts';
import { createStore } from '../screens/store.ts';
import { knownFrom } from '../taxa/known.ts';
import { indexTaxa } from '../taxa/taxon-index.ts';
import type { Place } from '../visit/place.ts';
import { clockOf } from '../visit/time.ts';
import { type Visit, zoneOf } from '../visit/visit.ts';
import { askedPlace, beginVisit } from './begin-visit.ts';
import { type Ending, listenForEnding } from './ending.ts';
import { leavingWords, unsavedWords } from './leaving.ts';
import { groupsOf, listsInUse, taxaInUse } from './lists-in-use.ts';
import { EXIT, Refusal } from './refusal.ts';

import { type RawInput, rawInput, sizeNow, stopJob, terminalProblem, WIPE } from './terminal.ts';

/** Often enough that the clock of the head line is never a minute behind. */
const TICK = 5000;

interface FieldStore {
  dispatch(event: FieldEvent): void;
}

/** Ink's way to hand the terminal over for a while. */
type Suspend = (meanwhile: () => Promise<void>) => Promise<void>;

/** Opens the Field screen and stays until it is left. Returns the exit code. */
export async function fieldScreen(
  notebookIn: () => Promise<string>,
  place: string | undefined,
): Promise<number> {
  const problem = terminalProblem();
  if (problem !== null) throw new Refusal(EXIT.usage, problem);
  // A refusal must not leave an empty folder behind.
  const asked = askedPlace(place);
  const notebook = await notebookIn();
  const ending = listenForEnding();
  const input = rawInput();
  try {
    return await openScreen(notebook, asked, input, ending);
  } finally {
    input.pause();
  }
}

async function openScreen(
  notebook: string,
  asked: Place | null,
  input: RawInput,
  ending: Ending,
): Promise<number> {
  const machineZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const beginning = await beginVisit(notebook, asked, Date.now(), machineZone);
  const { visit, opened } = beginning;
  let suspend: Suspend | null = null;
  let handedOver = false;
  // Ink hands the terminal over to one at a time, and throws at the second.
  const handOver = (meanwhile: () => Promise<void>) => {
    if (suspend === null || handedOver) return;
    handedOver = true;
    suspend(meanwhile)
      .finally(() => {
        handedOver = false;
      })
      .catch(ending.fail);
  };
  const perform = (effect: Effect) => {
    if (effect.kind === 'save') saves.add(effect.visit);
    else if (effect.kind === 'leave') ending.leave(effect.code);
    else if (effect.kind === 'redraw') handOver(async () => {});
    else
      handOver(async () => {
        const words = 'There is no shell to go back to. Esc q leaves the program.';
        if (!(await stopJob(input))) store.dispatch({ kind: 'notice', words });
      });
  };
  const store = createStore(
    newSession({
      visit,
      index: indexTaxa([]),
      groups: {},
      placeAssumed: beginning.placeAssumed,
      now: Date.now(),
      message: openingMessage(beginning.problems, visit, opened?.visit ?? null),
      size: sizeNow(),
      // A pause or coordinates that opening added are not on disk yet.
      saved: { changes: opened?.visit.changes.length ?? 0, file: opened?.path ?? null },
    }),
    updateField,
    perform,
  );
  const saves = saveQueue(visitStore(notebook, opened), {
    saved(state, { path, leftAlone }) {
      store.dispatch({ kind: 'saved', changes: state.changes.length, file: path });
      if (leftAlone === null) return;
      const words = `Another program changed ${leftAlone}. It is left as it is; this visit goes on in ${path}.`;
      store.dispatch({ kind: 'notice', words });
    },
    failed: (_, why) => store.dispatch({ kind: 'save failed', why }),
  });

  // Before Ink's own listener, which draws at once.
  process.stdout.prependListener('resize', () => store.dispatch({ kind: 'size', size: sizeNow() }));
  // Ink draws nothing on its own where the environment says CI; a person at a terminal is there.
  const screen = render(
    <FieldScreen
      store={store}
      onReady={(suspendTerminal) => {
        suspend = suspendTerminal;
      }}
    />,
    {
      exitOnCtrlC: false,
      patchConsole: false,
      alternateScreen: true,
      interactive: true,
      incrementalRendering: true,
      // Ink holds a frame back for so long after the one before, and a save draws one behind each Enter.
      maxFps: 250,
    },
  );
  // Ink sends only what changed in a row; after a resize the terminal may have moved all of them.
  process.stdout.prependListener('resize', () => {
    screen.clear();
    process.stdout.write(WIPE);
  });
  const ticking = setInterval(() => store.dispatch({ kind: 'tick', now: Date.now() }), TICK);
  if (opened !== null && visit !== opened.visit) saves.add(visit);
  takeLists(notebook, visit, store)
    // What was typed meanwhile waits for the lists, or it would be logged without a name.
    .finally(() =>
      input.listen((key) =>
        store.dispatch({ kind: 'key', key, now: Date.now(), id: randomUUID() }),
      ),
    )
    .then(() => learn(notebook, visit.id, store))
    .catch((error: Error) => store.dispatch({ kind: 'notice', words: error.message }));

  let code: number;
  try {
    code = await Promise.race([ending.left, screen.waitUntilExit().then(() => EXIT.done)]);
  } finally {
    clearInterval(ticking);
    await saves.idle();
    screen.unmount();
    await screen.waitUntilExit().catch(() => {});
    process.stderr.write(unsavedWords(store.get()) ?? '');
  }
  if (unsavedWords(store.get()) !== null) return EXIT.notebook;
  process.stdout.write(leavingWords(store.get()));
  return code;
}

function openingMessage(notices: readonly string[], visit: Visit, asLeft: Visit | null) {
  const faults = faultWords(notices);
  if (faults !== null) return { kind: 'problem' as const, words: faults };
  if (asLeft === null) return null;
  const begun = `The visit begun at ${clockOf(visit.start)} goes on`;
  const pause = visit.effort === asLeft.effort ? undefined : visit.effort.pauses.at(-1);
  const words = pause
    ? `${begun}; from ${clockOf(pause.start)} on nobody logged, which counts as a pause. Esc u takes that back.`
    : `${begun}. Esc e ends it.`;
  return { kind: 'done' as const, words };
}

/** The first of several faults, with their number; null for none. */
function faultWords(faults: readonly string[]): string | null {
  const [first = null] = faults;
  return faults.length > 1 ? `${faults.length} faults. ${first}` : first;
}

/** Reads the species lists once the first frame is out: it does not wait for them. */
async function takeLists(notebook: string, visit: Visit, store: FieldStore): Promise<void> {
  await nextTurn();
  const inUse = await listsInUse(notebook, zoneOf(visit)).catch((error: Error) => {
    throw new Error(`The species lists can't be read: ${error.message}`);
  });
  const index = indexTaxa(taxaInUse(inUse));
  store.dispatch({ kind: 'lists', index, groups: groupsOf(inUse.lists) });
  const faults = faultWords(inUse.problems);
  if (faults !== null) store.dispatch({ kind: 'notice', words: faults });
}

/** Reads the rest of the notebook behind the screen; the keys do not wait for it. */
async function learn(notebook: string, current: string, store: FieldStore): Promise<void> {
  const { visits, problems } = await visitFiles(notebook)
    .then(readVisits)
    .catch((error: Error) => {
      throw new Error(`Earlier visits can't be read: ${error.message}`);
    });
  store.dispatch({
    kind: 'known',
    known: knownFrom(visits.map((read) => read.visit).filter((other) => other.id !== current)),
  });
  const faults = faultWords(problems.map(({ words }) => words));
  if (faults !== null) store.dispatch({ kind: 'notice', words: faults });
}
