import { readVisits, visitFiles } from '../notebook/notebook.ts';
import { readPlaces } from '../notebook/places.ts';
import type { FieldEvent } from '../screens/field/session.ts';
import { knownFrom } from '../taxa/known.ts';
import { loadGrids } from './load-grids.ts';
import { faultWords } from './opening.ts';
import { withPlaces } from './places-known.ts';

/**
 * Reads behind the screen what the Field screen can begin without: the rest of the notebook, then what
 * reads grid references. The keys do not wait for it. `current` is the id of the visit that is logged into.
 */
export async function learn(
  notebook: string,
  current: string,
  dispatch: (event: FieldEvent) => void,
): Promise<void> {
  try {
    await learnVisits(notebook, current, dispatch);
  } finally {
    dispatch({ kind: 'grids', grids: await loadGrids() });
  }
}

async function learnVisits(
  notebook: string,
  current: string,
  dispatch: (event: FieldEvent) => void,
): Promise<void> {
  const { visits, problems } = await visitFiles(notebook)
    .then(readVisits)
    .catch((error: Error) => {
      throw new Error(`Earlier visits can't be read: ${error.message}`);
    });
  const known = knownFrom(visits.map((read) => read.visit).filter((other) => other.id !== current));
  // A fault of the places is told when the visit begins.
  const { places } = await readPlaces(notebook);
  dispatch({ kind: 'known', known: withPlaces(known, places) });
  const faults = faultWords(problems.map(({ words }) => words));
  if (faults !== null) dispatch({ kind: 'notice', words: faults });
}
