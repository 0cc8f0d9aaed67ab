import type { Chosen } from './export-chosen.ts';
import type { Choice, Form } from './export-options.ts';

/** What there is to say of an export when it is done. */
export interface Tally {
  visits: number;
  /** Visits whose place is hidden. */
  hidden: number;
  /** Entries without a name. */
  unnamed: number;
}

/** The same visits, counted as they go by. */
export async function* tallied(
  chosen: AsyncIterable<Chosen>,
  tally: Tally,
): AsyncGenerator<Chosen> {
  for await (const each of chosen) {
    tally.visits += 1;
    if (each.visit.hiding !== null) tally.hidden += 1;
    tally.unnamed += each.visit.entries.filter(({ taxon }) => taxon === null).length;
    yield each;
  }
}

/** What the reader of an export has to know and can't see in it. */
export function tallyWords(tally: Tally, form: Form, choice: Choice, exact: boolean): string[] {
  const { visits, hidden, unnamed } = tally;
  const words: string[] = [];
  if (exact)
    words.push(
      'Exact places: for your own use, and for those who may know where threatened species are, such as the body that looks after the site. Pass it on to nobody else; local law goes first.',
    );
  if (hidden > 0) {
    const many = visits === 1 ? 'of the visit' : `of ${hidden} of ${visits} visits`;
    words.push(
      `Place and notes ${many} are withheld, for the sake of threatened or sensitive species or of private or protected ground; --exact writes them.`,
    );
  }
  if (hidden > 0 && 'place' in choice && choice.place !== null)
    words.push(
      'You chose the visits by their place: whoever is told so knows the place that is withheld.',
    );
  const withoutNames = form.as === 'table' ? form.table !== 'entries' : isDarwinCore(form);
  if (withoutNames && unnamed > 0)
    words.push(
      `${unnamed} ${unnamed === 1 ? 'entry without a name is' : 'entries without a name are'} left out; --table entries has them.`,
    );
  return words;
}

function isDarwinCore({ as }: Form): boolean {
  return as === 'darwin-core' || as === 'archive';
}
