/** How often the search finds what is meant, by kind of query, beside fuse.js alone on the same list. */
import Fuse, { type IFuseOptions } from 'fuse.js';
import type { Taxon } from '../src/taxa/taxon.ts';
import { type Pair, pairs } from '../tests/search/queries.ts';
import { answersTo, isTypo, shareWithin } from '../tests/search/score.ts';
import { birds, hitsFor, namesOf } from '../tests/taxa/birds.ts';
import { printTable } from './measure.ts';

const FIRSTS = [1, 3, 8] as const;
const MOST = 8;
const THRESHOLDS = [0.2, 0.3, 0.4] as const;
const PLAIN = {
  keys: ['vernacularName', 'otherEnglishNames', 'scientificName'],
  ignoreLocation: true,
  ignoreDiacritics: true,
};
const WAYS: Record<string, IFuseOptions<Taxon>> = {
  plain: {},
  'no field norm': { ignoreFieldNorm: true },
  extended: { useExtendedSearch: true },
  'tokens, any': { useTokenSearch: true },
  'tokens, all': { useTokenSearch: true, tokenMatch: 'all' },
};

type Find = (typed: string) => string[];

const ours = once((typed) => namesOf(hitsFor(typed)));

/** Each query is put once: fuse.js takes some 3 ms for one. */
function once(find: Find): Find {
  const answers = new Map<string, string[]>();
  return (typed) => {
    const found = answers.get(typed) ?? find(typed);
    answers.set(typed, found);
    return found;
  };
}

function fuseFinder(options: IFuseOptions<Taxon>): Find {
  const fuse = new Fuse(birds.taxa, { ...PLAIN, ...options });
  return once((typed) =>
    fuse
      .search(typed, { limit: MOST })
      .map(({ item }) => item.vernacularName ?? item.scientificName),
  );
}

const figures = (asked: readonly Pair[], find: Find, firsts: readonly number[]) => {
  const answers = answersTo(asked, find);
  return firsts.map((first) => percent(shareWithin(answers, first)));
};

function percent(share: number): string {
  return Number.isNaN(share) ? '-' : (100 * share).toFixed(1);
}

const clear = pairs.filter(({ several }) => !several);
const doubtful = pairs.filter(({ several }) => several);

const settings = Object.entries(WAYS).flatMap(([way, options]) =>
  THRESHOLDS.map((threshold) => {
    const find = fuseFinder({ ...options, threshold });
    const share = shareWithin(answersTo(clear, find), 1);
    return { way, threshold, find, share };
  }),
);
const best = settings.reduce((one, two) => (two.share > one.share ? two : one));
const fuseAlone = best.find;

printTable(
  'fuse.js alone, by its settings: % of what can mean but one thing, and of what fits several.',
  ['settings', 'threshold', ...FIRSTS.map((first) => `first ${first}`), `several, first ${MOST}`],
  settings.map(({ way, threshold, find }) => [
    way,
    String(threshold),
    ...figures(clear, find, FIRSTS),
    ...figures(doubtful, find, [MOST]),
  ]),
);

function row(title: string, made: string, asked: readonly Pair[], firsts: readonly number[]) {
  const blank = FIRSTS.map(() => '-');
  const cells = (find: Find) =>
    firsts.length === 1
      ? [...blank.slice(1), ...figures(asked, find, firsts)]
      : figures(asked, find, firsts);
  return [title, made, String(asked.length), ...cells(ours), ...cells(fuseAlone)];
}

const MADE = ['hand', 'generated'] as const;
const kinds = [...new Set(pairs.map(({ kind }) => kind))];
const madeSo = (asked: readonly Pair[], made: string) => asked.filter((pair) => pair.made === made);
const groups: [string, readonly Pair[], readonly number[]][] = [
  ...kinds.map((kind): [string, Pair[], readonly number[]] => [
    kind,
    clear.filter((pair) => pair.kind === kind),
    FIRSTS,
  ]),
  ['all clear', clear, FIRSTS],
  ['all slips', clear.filter(isTypo), FIRSTS],
  ['fits several', doubtful, [MOST]],
];
const rows = groups.flatMap(([title, asked, firsts]) => [
  ...MADE.map((made) => row(title, made, madeSo(asked, made), firsts)).filter(
    ([, , count]) => count !== '0',
  ),
  ...(title.startsWith('all') || title === 'fits several'
    ? [row(title, 'both', asked, firsts)]
    : []),
]);
printTable(
  `What is meant among the first so many, in %. fuse.js: ${best.way}, threshold ${best.threshold}, the best above.`,
  ['query', 'made', 'queries', ...FIRSTS.map(String), ...FIRSTS.map((first) => `fuse ${first}`)],
  rows,
  2,
);
