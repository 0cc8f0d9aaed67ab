import { clockOf } from '../visit/time.ts';
import type { Visit } from '../visit/visit.ts';

/** What the screen says when it opens: a fault, that a visit goes on, or nothing. */
export function openingMessage(notices: readonly string[], visit: Visit, asLeft: Visit | null) {
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
export function faultWords(faults: readonly string[]): string | null {
  const [first = null] = faults;
  return faults.length > 1 ? `${faults.length} faults. ${first}` : first;
}
