/** Exit codes: done, some input not taken, wrong usage, the notebook can't be used. */
export const EXIT = { done: 0, notTaken: 1, usage: 2, notebook: 3 } as const;

/** Ends the program with one sentence and an exit code; for bad input, never for bugs. */
export class Refusal extends Error {
  readonly code: number;

  constructor(code: number, sentence: string) {
    super(sentence);
    this.code = code;
  }
}
