import { randomUUID } from 'node:crypto';
import { render } from 'ink';
import { readVisits, visitFiles } from '../notebook/notebook.ts';
import { saveQueue } from '../notebook/save-queue.ts';
import { visitStore } from '../notebook/visit-store.ts';
import { FieldScreen } from '../screens/field/FieldScreen.tsx';
import { type Effect, newSession } from '../screens/field/session.ts';
import { updateField } from '../screens/field/update.ts';
import { createStore } from '../screens/store.ts';
import { knownFrom } from '../taxa/known.ts';
import { indexTaxa } from '../taxa/taxon-index.ts';
import { clockOf } from '../visit/time.ts';
import { beginVisit } from './begin-visit.ts';
import { leavingWords, unsavedWords } from './leaving.ts';
import { EXIT, Refusal } from './refusal.ts';
import { groupsOf, shippedLists } from './shipped-lists.ts';
import { rawInput, terminalProblem, terminalSize, WIPE } from './terminal.ts';

/** Often enough that the clock of the head line is never a minute behind. */
const TICK = 5000;

/** Opens the Field screen and stays until it is left. Returns the exit code. */
export async function fieldScreen(notebook: string, place: string | undefined): Promise<number> {
  const problem = terminalProblem();
  if (problem !== null) throw new Refusal(EXIT.usage, problem);
  const input = rawInput();
  try {
    return await openScreen(notebook, place, input);
  } finally {
    input.pause();
  }
}

async function openScreen(
  notebook: string,
  place: string | undefined,
  input: ReturnType<typeof rawInput>,
): Promise<number> {
  const machineZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const [lists, beginning] = await Promise.all([
    shippedLists(),
    beginVisit(notebook, place, Date.now(), machineZone),
  ]);
  const { visit, opened } = beginning;
  const notices = [...lists.flatMap((list) => list.problems), ...beginning.problems];
  let leave: (code: number) => void = () => {};
  const left = new Promise<number>((resolve) => {
    leave = resolve;
  });
  let suspend: ((meanwhile: () => Promise<void>) => Promise<void>) | null = null;

  const perform = (effect: Effect) => {
    if (effect.kind === 'save') saves.add(effect.visit);
    else if (effect.kind === 'leave') leave(effect.code);
    else if (effect.kind === 'redraw') void suspend?.(async () => {});
    else void suspend?.(() => stopped(input));
  };
  const store = createStore(
    newSession({
      visit,
      index: indexTaxa(lists.flatMap((list) => list.taxa)),
      groups: groupsOf(lists),
      placeAssumed: beginning.placeAssumed,
      now: Date.now(),
      message: openingMessage(notices, opened !== null ? clockOf(visit.start) : null),
      file: opened?.path ?? null,
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

  // Ink draws nothing on its own where the environment says CI; a person at a terminal is there.
  const screen = render(
    <FieldScreen
      store={store}
      size={terminalSize()}
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
      maxFps: 60,
    },
  );
  // Ink sends only what changed in a row; after a resize the terminal may have moved all of them.
  process.stdout.prependListener('resize', () => {
    screen.clear();
    process.stdout.write(WIPE);
  });
  input.listen((key) => store.dispatch({ kind: 'key', key, now: Date.now(), id: randomUUID() }));
  const ticking = setInterval(() => store.dispatch({ kind: 'tick', now: Date.now() }), TICK);
  for (const signal of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const)
    process.on(signal, () => leave(SIGNAL_CODES[signal]));
  void learn(notebook, visit.id, store);

  const code = await left;
  clearInterval(ticking);
  await saves.idle();
  screen.unmount();
  await screen.waitUntilExit();
  const session = store.get();
  const unsaved = unsavedWords(session);
  if (unsaved !== null) {
    process.stderr.write(unsaved);
    return EXIT.notebook;
  }
  process.stdout.write(leavingWords(session));
  return code;
}

/** Exit codes after a signal, 128 and its number, as shells count them (POSIX). */
const SIGNAL_CODES = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const;

function openingMessage(notices: readonly string[], since: string | null) {
  const first = notices[0];
  if (first !== undefined)
    return {
      kind: 'problem' as const,
      words: notices.length > 1 ? `${first} (${notices.length - 1} more)` : first,
    };
  if (since === null) return null;
  return { kind: 'done' as const, words: `The visit begun at ${since} goes on. Esc e ends it.` };
}

/** Reads the rest of the notebook behind the screen; the keys do not wait for it. */
async function learn(
  notebook: string,
  current: string,
  store: { dispatch(event: Parameters<typeof updateField>[1]): void },
): Promise<void> {
  const { visits, problems } = await readVisits(await visitFiles(notebook));
  store.dispatch({
    kind: 'known',
    known: knownFrom(visits.map((read) => read.visit).filter((other) => other.id !== current)),
  });
  const first = problems[0];
  if (first !== undefined)
    store.dispatch({
      kind: 'notice',
      words: problems.length > 1 ? `${first} (${problems.length - 1} more)` : first,
    });
}

/** Stops the process as Ctrl-Z does, until the shell says go on; Windows has no such thing. */
async function stopped(input: ReturnType<typeof rawInput>): Promise<void> {
  if (process.platform === 'win32') return;
  input.pause();
  const goesOn = new Promise<void>((resolve) => process.once('SIGCONT', () => resolve()));
  process.kill(process.pid, 'SIGSTOP');
  await goesOn;
  input.resume();
  // Ink draws from where the cursor stands.
  process.stdout.write('\r\n');
}
