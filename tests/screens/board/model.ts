import { press, session } from '../field/drive.ts';

/** The Board at the invented Sallow Mere, with what a notebook without visits lays out. */
export function opened(from = session()) {
  return press(from, '<escape>b').session;
}

type Kind = 'exact' | 'about' | 'at least';
interface Flock {
  letter: string;
  time: number;
  count: number;
  kind: Kind;
  struck: boolean;
}
interface State {
  flocks: Flock[];
  highest: string[];
}
interface Done {
  before: State;
  letter: string | null;
}

/** What a total is expected to be: how many, how sure, of how many flocks. */
export interface Expected {
  value: number;
  kind: Kind;
  flocks: number;
}

const STEPS = [1, 2, 5, 10, 20, 50, 100];
const OPENNESS: Kind[] = ['exact', 'about', 'at least'];

/**
 * A tally kept with pencil and paper, to judge the Board by: it shares no code with the program. Keys are
 * letters, capitals, digits, Space, `<backspace>`, `<escape>r`, `,a`, `~` and `+`.
 */
export class PaperTally {
  private state: State = { flocks: [], highest: [] };
  private done: Done[] = [];
  private undone: Done[] = [];
  private step = 1;
  private boundary = 0;
  private last: string | null = null;
  private readonly laid: string;

  constructor(laid: string) {
    this.laid = laid;
  }

  press(key: string, time: number): void {
    if (key === ' ') this.boundary = this.state.flocks.length;
    else if (/^[1-7]$/.test(key)) this.step = STEPS[Number(key) - 1] ?? 1;
    else if (key === '<backspace>') this.back(this.done, this.undone);
    else if (key === '<escape>r') this.back(this.undone, this.done);
    else if (key === '~') this.mark('about');
    else if (key === '+') this.mark('at least');
    else if (key.startsWith(',')) this.turn(key.slice(1));
    else if (/^[a-z]$/.test(key)) this.add(key, time);
    else if (/^[A-Z]$/.test(key)) this.take(key.toLowerCase());
    else throw new Error(`The tally knows no key ${key}.`);
  }

  /** Of a letter's flocks that stand; null where there is none. */
  total(letter: string): Expected | null {
    const flocks = this.standing().filter((flock) => flock.letter === letter);
    if (flocks.length === 0) return null;
    const most = Math.max(...flocks.map(({ count }) => count));
    const highest = this.state.highest.includes(letter);
    const kinds = flocks.filter(({ count }) => !highest || count === most).map(({ kind }) => kind);
    return {
      value: highest ? most : flocks.reduce((sum, { count }) => sum + count, 0),
      kind: OPENNESS.findLast((kind) => kinds.includes(kind)) ?? 'exact',
      flocks: flocks.length,
    };
  }

  standing(): Flock[] {
    return this.state.flocks.filter(({ struck }) => !struck);
  }

  private flock(letter: string | null): Flock | undefined {
    return this.state.flocks.findLast(
      (flock, at) => at >= this.boundary && !flock.struck && flock.letter === letter,
    );
  }

  private change(letter: string | null, work: () => void): void {
    this.done.push({ before: structuredClone(this.state), letter });
    this.undone = [];
    work();
  }

  private add(letter: string, time: number): void {
    if (!this.laid.includes(letter)) return;
    this.last = letter;
    const flock = this.flock(letter);
    this.change(letter, () => {
      if (flock) flock.count += this.step;
      else this.state.flocks.push({ letter, time, count: this.step, kind: 'exact', struck: false });
    });
  }

  private take(letter: string): void {
    if (!this.laid.includes(letter)) return;
    this.last = letter;
    const flock = this.flock(letter);
    if (!flock) return;
    this.change(letter, () => {
      if (flock.count > this.step) flock.count -= this.step;
      else flock.struck = true;
    });
  }

  private mark(kind: Kind): void {
    const flock = this.flock(this.last);
    if (flock)
      this.change(this.last, () => {
        flock.kind = flock.kind === kind ? 'exact' : kind;
      });
  }

  private turn(letter: string): void {
    if (!this.laid.includes(letter)) return;
    this.change(null, () => {
      const { highest } = this.state;
      this.state.highest = highest.includes(letter)
        ? highest.filter((other) => other !== letter)
        : [...highest, letter];
    });
  }

  private back(from: Done[], to: Done[]): void {
    const change = from.pop();
    if (!change) return;
    to.push({ before: structuredClone(this.state), letter: change.letter });
    // A line once begun keeps its number: it is struck out, not torn out.
    const later = this.state.flocks.slice(change.before.flocks.length);
    this.state = {
      ...change.before,
      flocks: [...change.before.flocks, ...later.map((flock) => ({ ...flock, struck: true }))],
    };
    this.last = change.letter ?? this.last;
  }
}
