import { cell, cut, type Row, span } from '../paint.ts';
import { type Binding, KEYMAP, keyWords } from './keymap.ts';

const WHERE: Record<Binding['at'], string> = {
  line: 'On the entry line',
  menu: 'In the menu (Esc), or / and the word on an empty line',
  change: 'While an entry is changed',
  pick: 'While an entry is picked',
  ask: 'On a question',
  complete: 'At the end: was everything logged?',
  help: 'On this page',
  anywhere: 'Anywhere',
};

/** Entry lines and what they mean; each is tried against the parser in the tests. */
export const EXAMPLES: readonly (readonly [string, string])[] = [
  ['tuf 12', 'twelve; 12 tuf and tuf12 are the same'],
  ['tuf 12+', 'at least twelve'],
  ['tuf ~12', 'about twelve'],
  ['tuf 10-15', 'from ten to fifteen'],
  ['tuf 5 3m 2f', '3 males, 2 females; j is juvenile, a adult'],
  ['tuf: asleep by the raft', 'a description behind the colon'],
  ['tuf?', 'the name is not certain'],
  ['gbbg, tudu, ayt ful', 'initials, four-letter codes, scientific names'],
  ['small brown bird', 'no name yet: kept in your words'],
];

const CAUTIONS = [
  'Keep your distance from animals, nests and dens; if one reacts to you, you are too close.',
  'Look up from the screen near water, edges and roads.',
  'Collecting, handling, bats and caves: follow local law and the land manager, and ask a licensed person.',
  'Red List categories are global; they do not replace local protection lists.',
];

/** The whole help page; the keys are drawn from the table that dispatches them. */
export function helpRows(width: number): Row[] {
  const places = Object.keys(WHERE) as Binding['at'][];
  return [
    [span('What to type', 'strong')],
    ...EXAMPLES.map(([typed, words]) => pair(typed, words, width)),
    ...places.flatMap((at) => [
      [],
      [span(cut(WHERE[at], width), 'strong')],
      ...KEYMAP.filter((binding) => binding.at === at).map(({ key, words }) =>
        pair(keyWords(key), words, width),
      ),
    ]),
    [],
    [span('Care', 'strong')],
    ...CAUTIONS.map((words) => [span(cut(words, width))]),
  ];
}

function pair(left: string, right: string, width: number): Row {
  return [span(cut(`  ${cell(left, 24)} ${right}`, width))];
}
