import { randomUUID } from 'node:crypto';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { render } from 'ink';
import { keepLetters, readLetters } from '../notebook/letters.ts';
import { rememberPlace } from '../notebook/places.ts';
import { reasonWords } from '../notebook/reason.ts';
import { saveQueue } from '../notebook/save-queue.ts';
import type { Values } from '../notebook/settings-keys.ts';
import { visitStore } from '../notebook/visit-store.ts';
import { FieldScreen } from '../screens/field/FieldScreen.tsx';
import { type Effect, type FieldEvent, newSession } from '../screens/field/session.ts';
import { updateField } from '../screens/field/update.ts';
import { createStore } from '../screens/store.ts';
import { indexTaxa } from '../taxa/taxon-index.ts';
import { type Visit, zoneOf } from '../visit/visit.ts';
import { askedPlace } from './begin-visit.ts';
import { type Ending, listenForEnding } from './ending.ts';
import { type Hold, holdVisit } from './hold-visit.ts';
import { learn } from './learn.ts';
import { leavingWords, unsavedWords } from './leaving.ts';
import { groupsOf, listsInUse, taxaInUse } from './lists-in-use.ts';
import { faultWords, openingMessage } from './opening.ts';
import { EXIT, Refusal } from './refusal.ts';
import { saveElsewhere } from './save-elsewhere.ts';
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
  { place, when }: { place?: string; when?: string },
  options: Partial<Values> = {},
): Promise<number> {
  const problem = terminalProblem();
  if (problem !== null) throw new Refusal(EXIT.usage, problem);
  // A refusal must not leave an empty folder behind.
  const asked = await askedPlace(place);
  const notebook = await notebookIn();
  const ending = listenForEnding();
  const input = rawInput();
  let hold: Hold | null = null;
  try {
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
    hold = await holdVisit(notebook, asked, Date.now(), timeZone, when ?? null);
    return await openScreen(notebook, hold, { input, ending, options });
  } finally {
    hold?.release();
    input.pause();
  }
}

async function openScreen(
  notebook: string,
  { beginning, readOnly }: Hold,
  { input, ending, options }: { input: RawInput; ending: Ending; options: Partial<Values> },
): Promise<number> {
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
    else if (effect.kind === 'remember place')
      rememberPlace(notebook, effect.place).catch((error: Error) => {
        const words = `The place is in this visit, but can't be remembered: ${reasonWords(error)}.`;
        store.dispatch({ kind: 'notice', words });
      });
    else if (effect.kind === 'keep letters')
      keepLetters(notebook, effect.place, effect.layout).catch((error: Error) => {
        const words = `The letters of the Board can't be kept: ${reasonWords(error)}.`;
        store.dispatch({ kind: 'notice', words });
      });
    else if (effect.kind === 'save elsewhere')
      saveElsewhere(effect.folder, effect.visit)
        .then((said) => store.dispatch({ kind: 'notice', ...said }))
        .catch(ending.fail);
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
      moment: beginning.moment,
      readOnly: readOnly?.onScreen ?? null,
      now: Date.now(),
      message:
        readOnly === null
          ? openingMessage(beginning.problems, visit, opened?.visit ?? null)
          : { kind: 'problem', words: readOnly.onScreen },
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
  takeLists(notebook, visit, store, options)
    // What was typed meanwhile waits for the lists, or it would be logged without a name.
    .finally(() =>
      input.listen((key) =>
        store.dispatch({ kind: 'key', key, now: Date.now(), id: randomUUID() }),
      ),
    )
    .then(() => learn(notebook, visit.id, store.dispatch))
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

/** Reads the settings and the species lists once the first frame is out: it does not wait for them. */
async function takeLists(
  notebook: string,
  visit: Visit,
  store: FieldStore,
  options: Partial<Values>,
): Promise<void> {
  await nextTurn();
  const inUse = await listsInUse(notebook, zoneOf(visit), options).catch((error: Error) => {
    throw new Error(`The species lists can't be read: ${error.message}`);
  });
  const { groupSizes, units, observers } = inUse.read.settings;
  store.dispatch({ kind: 'settings', groupSizes, units, observers: observers.number });
  const index = indexTaxa(taxaInUse(inUse));
  store.dispatch({ kind: 'lists', index, groups: groupsOf(inUse.lists) });
  store.dispatch({ kind: 'layouts', layouts: await readLetters(notebook) });
  const faults = faultWords(inUse.problems);
  if (faults !== null) store.dispatch({ kind: 'notice', words: faults });
}
