import { BEAUFORT } from '../../visit/weather-wind.ts';
import { cell, cut, type Row, span, widthOf, wrapped } from '../paint.ts';
import { type Binding, KEYMAP, keyWords } from './keymap.ts';

const WHERE: Record<Binding['at'], string> = {
  line: 'On the entry line',
  menu: 'In the menu (Esc), or / and the word on an empty line',
  board: 'On the Board (Esc b)',
  put: 'While a species is put on a letter of the Board',
  letter: 'When the Board asks for a letter',
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
  ['@07:40', 'seen then, and what is typed after it; @now goes back'],
];

const CAUTIONS = [
  'Keep your distance from animals, nests and dens; if one reacts to you, you are too close.',
  'Look up from the screen near water, edges and roads.',
  'Collecting, handling, bats and caves: follow local law and the land manager, and ask a licensed person.',
  'Red List categories are global; they do not replace local protection lists.',
];

/** Lines of weather and what they mean; each is tried against the reader in the tests. */
export const WEATHER_EXAMPLES: readonly (readonly [string, string])[] = [
  ['7c, 45f', 'temperature'],
  ['f3', 'Beaufort force, as below'],
  ['4 m/s, 15 km/h, 8 kn', 'a measured speed; the force is found'],
  ['sw, 240°', 'where the wind comes from'],
  ['6/8', 'cloud in oktas: any cloud is at least 1, any gap at most 7; 9/8 is a hidden sky'],
  ['drizzle, rain, snow', 'also dry, showers, sleet, hail, mist, fog, thunder'],
  ['vis good, vis 2 km', 'how far you see: poor, moderate, good, excellent'],
];

const FORCES = BEAUFORT.flatMap(({ name, landSign }, force) =>
  landSign === null ? [] : [[`f${force} ${name}`, landSign]],
);

/** Keys of every line that is typed; `editLine` knows them. */
const EDITING: readonly (readonly [string, string])[] = [
  ['Ctrl-U', 'empty the line'],
  ['Home End', 'to the start or the end of the line'],
  ['Backspace Delete', 'take away a letter'],
];

/** The whole help page; the keys are drawn from the table that dispatches them. */
export function helpRows(width: number, keymap: readonly Binding[] = KEYMAP): Row[] {
  const places = Object.keys(WHERE) as Binding['at'][];
  return [
    ...section('What to type', EXAMPLES, width),
    [],
    [span('Care', 'strong')],
    ...CAUTIONS.flatMap((words) => hanging('', 2, words, width)),
    ...places.flatMap((at) => {
      const keys = keymap.filter((binding) => binding.at === at);
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
    ...section('Weather, in one line', WEATHER_EXAMPLES, width),
    [],
    ...section('Wind on land', FORCES, width),
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
