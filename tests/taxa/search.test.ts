import { describe, expect, test } from 'vitest';
import { hitsFor, namesOf } from './birds.ts';

// What an observer means by these words: common practice, no source.
const FIRST: Record<string, Record<string, string>> = {
  'word starts': {
    tuf: 'Tufted Duck',
    mall: 'Mallard',
    rob: 'Robin',
    gre: 'Great Tit',
    'great t': 'Great Tit',
    'gr sp wo': 'Great Spotted Woodpecker',
    'col dov': 'Collared Dove',
    'ho sp': 'House Sparrow',
    'ho mart': 'House Martin',
    wag: 'Pied Wagtail',
    pig: 'Woodpigeon',
    sparrow: 'House Sparrow',
    heron: 'Grey Heron',
    crow: 'Carrion Crow',
    dov: 'Rock Dove',
    sw: 'Swift',
    swa: 'Swallow',
    tit: 'Blue Tit',
    'whi st': 'White Stork',
  },
  'words in any order': {
    'duck tuf': 'Tufted Duck',
    'gull herr': 'Herring Gull',
    'dove col': 'Collared Dove',
    'tit lon': 'Long-tailed Tit',
    'woodp spo gre': 'Great Spotted Woodpecker',
  },
  initials: {
    gbbg: 'Great Black-backed Gull',
    lbbg: 'Lesser Black-backed Gull',
    gsw: 'Great Spotted Woodpecker',
    lsw: 'Lesser Spotted Woodpecker',
    bhg: 'Black-headed Gull',
    ltt: 'Long-tailed Tit',
    rtd: 'Red-throated Diver',
  },
  'initials and words': {
    'bh gull': 'Black-headed Gull',
    'lbb gull': 'Lesser Black-backed Gull',
    'black-h gull': 'Black-headed Gull',
    'g tit': 'Great Tit',
    'b tit': 'Blue Tit',
    btit: 'Blue Tit',
    greti: 'Great Tit',
    bhgull: 'Black-headed Gull',
  },
  codes: {
    tudu: 'Tufted Duck',
    blti: 'Blue Tit',
    grti: 'Great Tit',
    cago: 'Canada Goose',
    bhgu: 'Black-headed Gull',
    dunl: 'Dunlin',
    KING: 'Kingfisher',
  },
  'scientific names': {
    'ayt ful': 'Tufted Duck',
    fuligula: 'Tufted Duck',
    'Aythya fuligula': 'Tufted Duck',
    'anas pla': 'Mallard',
    erithacus: 'Robin',
    'carduelis chloris': 'Greenfinch',
    'larus ridibundus': 'Black-headed Gull',
    'anas penelope': 'Wigeon',
  },
  'other English names': {
    'common loon': 'Great Northern Diver',
    peewit: 'Lapwing',
    yaffle: 'Green Woodpecker',
    dabchick: 'Little Grebe',
    bonxie: 'Great Skua',
    'feral pigeon': 'Rock Dove',
  },
  slips: {
    heorn: 'Grey Heron',
    malard: 'Mallard',
    talfted: 'Tufted Duck',
    pocahrd: 'Pochard',
    sparow: 'House Sparrow',
    robn: 'Robin',
    blackbrd: 'Blackbird',
    'balck headed gull': 'Black-headed Gull',
    'great crested greeb': 'Great Crested Grebe',
    'golden plovver': 'Golden Plover',
  },
  'ways of writing': {
    cettis: "Cetti's Warbler",
    'CETTI’S WARBLER': "Cetti's Warbler",
    cettiʼs: "Cetti's Warbler",
    woodpigeon: 'Woodpigeon',
    'wood pigeon': 'Woodpigeon',
    bluetit: 'Blue Tit',
    'gold finch': 'Goldfinch',
    'long tailed tit': 'Long-tailed Tit',
    Máĺlärd: 'Mallard',
    'st. curlew': 'Stone-curlew',
    'blue tits': 'Blue Tit',
    mallards: 'Mallard',
    goldfinches: 'Goldfinch',
  },
};
const queries = Object.entries(FIRST).flatMap(([way, table]) =>
  Object.entries(table).map(([words, name]) => [way, words, name] as const),
);

describe('the shipped list, in a new notebook', () => {
  test.each(queries)('%s: %j finds %s first', (_, words, name) => {
    expect(namesOf(hitsFor(words))[0]).toBe(name);
  });

  test.each([
    ['b', ['Blue Tit']],
    ['gr', ['Great Tit', 'Grey Heron', 'Greenfinch']],
    ['gull', ['Herring Gull', 'Common Gull', 'Black-headed Gull']],
    ['gold', ['Goldfinch', 'Goldcrest', 'Goldeneye']],
    ['house', ['House Sparrow', 'House Martin']],
    ['owl', ['Barn Owl', 'Tawny Owl', 'Little Owl']],
    ['duck', ['Tufted Duck']],
    ['woodpecker', ['Great Spotted Woodpecker', 'Green Woodpecker']],
    ['finch', ['Finch, species not named', 'Chaffinch']],
    ['shank', ['Redshank', 'Greenshank']],
    ['hawk', ['Sparrowhawk']],
    ['green', ['Green Woodpecker']],
    ['white', ['Whitethroat']],
    ['blackie', ['Black-headed Gull']],
  ])('%j has among the first three %j', (words, names) => {
    expect(namesOf(hitsFor(words)).slice(0, 3)).toEqual(expect.arrayContaining(names));
  });

  test('is asked by at least sixty queries', () => {
    expect(queries.length).toBeGreaterThanOrEqual(60);
  });

  test.each(['', ' ', "'", '?!', 'zzqxv', 'xyz', 'qw'])('%j finds nothing', (words) => {
    expect(hitsFor(words)).toEqual([]);
  });

  test.each(['blue tits', 'gulls', 'coots', 'goldfinches'])(
    'takes the plural %j for no guess',
    (words) => {
      expect(hitsFor(words)[0]?.how).toBe('near');
    },
  );

  test('says which name matched, where another is shown', () => {
    expect(hitsFor('peewit')[0]).toMatchObject({ matched: 'Peewit', how: 'named' });
    expect(hitsFor('carduelis chloris')[0]?.matched).toBe('Carduelis chloris');
  });

  // Spellings by ear and by hand, made up here.
  test.each([
    ['kormorant', 'Cormorant'],
    ['fesant', 'Pheasant'],
    ['pereguin', 'Peregrine'],
    ['canada geese', 'Canada Goose'],
    ['oystr catcher', 'Oystercatcher'],
    ['king fischer', 'Kingfisher'],
    ['sparow hawk', 'Sparrowhawk'],
    ['tarmigan', 'Ptarmigan'],
    ['blackbackedgull', 'Lesser Black-backed Gull'],
  ])('guesses from %j that %s may be meant', (words, name) => {
    expect(hitsFor(words)[0]).toMatchObject({ how: 'loose', taxon: { vernacularName: name } });
  });
});
