/** What `mend` may do about a finding, without losing anything. */
export type Cure =
  | { do: 'set aside'; id: string | null }
  /** The file is set aside and the kept state, where there is one, put in its place. */
  | { do: 'restore'; id: string | null; state: string | null }
  | { do: 'unlock'; id: string };

/** One thing in a notebook that is not as it should be, or that is worth a look. */
export interface Finding {
  /** Below the notebook folder. */
  path: string;
  what: string;
  /** How a person can mend it; a whole sentence, or empty. */
  advice: string;
  fault: boolean;
  cure: Cure | null;
}

/** A finding that only a person can settle. */
export function told(path: string, what: string, advice: string, fault = true): Finding {
  return { path, what, advice, fault, cure: null };
}

const MENDING = {
  'set aside': 'tussock check --mend moves it to set-aside.',
  restore: 'tussock check --mend moves it to set-aside',
  unlock: 'tussock check --mend removes it.',
} as const;

/** A finding that `mend` settles. */
export function curable(path: string, what: string, cure: Cure): Finding {
  const ending =
    cure.do !== 'restore'
      ? ''
      : cure.state === null
        ? '; no earlier state of it is kept.'
        : ` and puts its newest kept state in its place, ${cure.state}.`;
  return { path, what, advice: MENDING[cure.do] + ending, fault: true, cure };
}
