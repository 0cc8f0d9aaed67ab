import { cell, cut, type Row, span, widthOf, wrapped } from '../paint.ts';
import { type Binding, KEYMAP, keyWords } from './keymap.ts';

const WHERE: Record<Binding['at'], string> = {
  line: 'On the entry line',
  menu: 'In the menu (Esc), or / and the word on an empty line',
  change: 'While an entry is changed',
  pick: 'While an entry is picked',
  ask: 'On a question',
  complete: 'At the end: was everything logged?',
  ended: 'When the visit is ended',
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

/** Keys of every line that is typed; `editLine` knows them. */
const EDITING: readonly (readonly [string, string])[] = [
  ['Ctrl-U', 'empty the line'],
  ['Home End', 'to the start or the end of the line'],
  ['Backspace Delete', 'take away a letter'],
];

/** The whole help page; the keys are drawn from the table that dispatches them. */
export function helpRows(width: number): Row[] {
  const places = Object.keys(WHERE) as Binding['at'][];
  return [
    ...section('What to type', EXAMPLES, width),
    [],
    [span('Care', 'strong')],
    ...CAUTIONS.flatMap((words) => hanging('', 2, words, width)),
    ...places.flatMap((at) => {
      const keys = KEYMAP.filter((binding) => binding.at === at);
      return [
        [],
        ...section(
          WHERE[at],
          keys.map(({ key, words }) => [keyWords(key), words]),
          width,
        ),
      ];
    }),
    [],
    ...section('While you type', EDITING, width),
  ];
}

function section(title: string, pairs: readonly (readonly string[])[], width: number): Row[] {
  const left = width < 70 ? 18 : 26;
  return [
    [span(cut(title, width), 'strong')],
    ...pairs.flatMap(([typed = '', words = '']) => hanging(typed, left, words, width)),
  ];
}

/** Words beside what they explain, wrapped under themselves; a long left side gets a row of its own. */
function hanging(left: string, indent: number, words: string, width: number): Row[] {
  const gap = ' '.repeat(indent);
  const rows = wrapped(words, width - indent, 9).map((text) => gap + text);
  const [first = '', ...others] = rows;
  if (widthOf(left) + 3 > indent && left !== '')
    return [[span(cut(`  ${left}`, width))], ...rows.map((text): Row => [span(text)])];
  return [`${cell(`  ${left}`, indent)}${first.slice(indent)}`, ...others].map(
    (text): Row => [span(text)],
  );
}
