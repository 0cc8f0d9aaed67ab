import { describe, expect, test } from 'vitest';
import { freeLetter, LETTERS, layoutOf, letterOf } from '../../../src/screens/board/board.ts';
import { shortName } from '../../../src/screens/board/species-cell.ts';
import type { Session } from '../../../src/screens/field/session.ts';
import { knownFrom } from '../../../src/taxa/known.ts';
import { indexTaxa } from '../../../src/taxa/taxon-index.ts';
import { taxonKey, taxonName } from '../../../src/visit/entry.ts';
import type { Visit } from '../../../src/visit/visit.ts';
import { press, session, tell } from '../field/drive.ts';
import { opened } from './model.ts';

const laid = (at: Session) => Object.values(at.board?.taxa ?? {}).map(taxonName);
const on = (at: Session, letter: string) => {
  const taxon = at.board?.taxa[letter];
  return taxon ? taxonName(taxon) : null;
};
/** Earlier visits to the same place, at this time of the year, with a line each. */
const visits = (line: string, many: number, start = '2025-11-10T08:00:00+00:00'): Visit[] =>
  Array.from({ length: many }, () => ({ ...press(session(), line).session.visit, start }));
const knowing = (earlier: Visit[]) => tell(session(), { kind: 'known', known: knownFrom(earlier) });

describe('the letters', () => {
  // ISO/IEC 9995-2 and the keyboards in use, from memory.
  test('begin with the home row, and are all 26 once', () => {
    expect(LETTERS.slice(0, 9).join('')).toBe('asdfghjkl');
    expect(LETTERS.toSorted().join('')).toBe('abcdefghijklmnopqrstuvwxyz');
  });

  test('hold the likeliest species, in the order of the list', () => {
    const at = opened();
    const order = [...new Set(at.index.names.map(({ taxon }) => taxonName(taxon)))];
    const places = laid(at).map((name) => order.indexOf(name));
    expect(laid(at)).toHaveLength(18);
    expect(places).toEqual(places.toSorted((one, two) => one - two));
    expect(laid(at)).toContain('Mallard');
  });

  test('follow what earlier visits to the place met in this season', () => {
    const line = 'smew 3<enter>bewick 9<enter>';
    expect(laid(opened())).not.toContain('Smew');
    expect(laid(opened(knowing(visits(line, 6))))).toContain('Smew');
    const summer = visits(line, 6, '2025-06-01T08:00:00+01:00');
    const winter = visits('swallow 3<enter>', 0);
    expect(laid(opened(knowing([...summer, ...winter])))).toContain('Smew');
  });

  test('of a Board opened before the notebook was read follow it, until one is struck', () => {
    const known = knownFrom(visits('smew 3<enter>', 6));
    expect(laid(tell(opened(), { kind: 'known', known }))).toContain('Smew');
    const struck = press(opened(), 'a').session;
    expect(laid(tell(struck, { kind: 'known', known }))).toEqual(laid(struck));
  });

  test('are kept for the place from the first stroke on, and only then', () => {
    const at = opened();
    const keeping = press(at, 'aas').effects.filter(({ kind }) => kind === 'keep letters');
    expect(keeping).toEqual([
      { kind: 'keep letters', place: 'sallow mere', layout: layoutOf(at.board ?? fail()) },
    ]);
    expect(press(at, '<escape>b<escape>b').effects).toEqual([]);
  });

  test('do not move when another visit would lay others', () => {
    const at = press(opened(), 'aas').session;
    const { layouts } = at;
    const later = tell(knowing(visits('smew 3<enter>bewick 9<enter>', 9)), {
      kind: 'layouts',
      layouts,
    });
    expect(laid(opened(later))).toEqual(laid(at));
  });

  test('are laid anew for the season when that is asked for', () => {
    const { layouts } = press(opened(), 'a').session;
    const later = opened(tell(knowing(visits('smew 3<enter>', 9)), { kind: 'layouts', layouts }));
    expect(laid(later)).not.toContain('Smew');
    const { session: anew, effects } = press(later, '.0');
    expect(laid(anew)).toContain('Smew');
    expect(effects).toMatchObject([{ kind: 'keep letters', place: 'sallow mere' }]);
    expect(press(later, ',0').session.message?.words).toBe('Only a letter says whose sum.');
  });

  test('have what the visit has already, as far as letters go', () => {
    const at = opened(press(session(), 'smew 3<enter>hoopoe<enter>').session);
    expect(on(at, letterOf(at.board?.taxa ?? {}, 'Mergellus albellus') ?? '')).toBe('Smew');
    expect(laid(at)).toContain('Hoopoe');
  });

  test('without a place are kept for no place', () => {
    const { session: at, effects } = press(opened(session(null)), 'a');
    expect(effects.at(-1)).toMatchObject({ kind: 'keep letters', place: '' });
    expect(at.visit.entries).toHaveLength(1);
  });

  test('of species that no list has any more are free', () => {
    const layouts = { 'sallow mere': { a: 'Fulica atra', s: 'Nusquam ignotus' } };
    const at = opened(tell(session(), { kind: 'layouts', layouts }));
    expect([on(at, 'a'), on(at, 's')]).toEqual(['Coot', null]);
    expect(freeLetter(at.board?.taxa ?? {})).toBe('s');
  });
});

function fail(): never {
  throw new Error('no Board is open');
}

describe('without species lists', () => {
  test('the Board says that no species stands on a letter, and what puts one there', () => {
    const at = press(opened({ ...session(), index: indexTaxa([]) }), 'a').session;
    expect(laid(at)).toEqual([]);
    expect(at.message?.words).toBe('No species stands on a. A point and a put one there.');
    expect(at.visit.changes).toEqual([]);
  });
});

describe('another species', () => {
  test('takes a point, a letter and its name', () => {
    const { session: at, effects } = press(opened(), '.asmew<enter>a');
    expect(on(at, 'a')).toBe('Smew');
    expect(at.visit.entries.map(({ words, count }) => [words, count])).toEqual([
      ['Smew', { kind: 'exact', value: 1 }],
    ]);
    expect(effects[0]).toMatchObject({ kind: 'keep letters', layout: { a: 'Mergellus albellus' } });
  });

  test('by Enter gets the next free letter, and a count behind its name is logged', () => {
    const at = press(opened(), '<enter>smew 3<enter>').session;
    expect(on(at, 'p')).toBe('Smew');
    expect(press(at, 'p').session.visit.entries[0]?.count).toEqual({ kind: 'exact', value: 4 });
  });

  test('that stands on a letter already moves, and the letter it leaves is free', () => {
    const at = press(opened(), '.zmallard<enter>').session;
    expect([on(at, 'z'), on(at, 'f')]).toEqual(['Mallard', null]);
  });

  test('is none where Enter stands alone: what was counted stays', () => {
    const at = press(opened(), 'aa.a<enter>').session;
    expect(on(at, 'a')).toBeNull();
    expect(at.visit.entries[0]?.count).toEqual({ kind: 'exact', value: 2 });
    expect(at.message?.words).toBe('a is free; what was counted stays.');
  });

  test('is only taken from a guess when Enter is pressed twice', () => {
    const at = press(opened(), '<enter>molard 3<enter>').session;
    expect(at.message?.words).toBe('Is it Mallard? Enter once more takes it.');
    expect(at.visit.entries).toEqual([]);
    expect(press(at, '<enter>').session.visit.entries[0]?.words).toBe('molard');
  });

  test('finds no letter once all 26 have one, and what was typed stays', () => {
    const full = press(
      opened(),
      ['smew', 'goosander', 'goldeneye', 'pochard', 'pintail', 'wigeon', 'gadwall', 'shoveler']
        .map((name) => `<enter>${name}<enter>`)
        .join(''),
    ).session;
    expect(laid(full)).toHaveLength(26);
    const at = press(full, '<enter>teal 4<enter>').session;
    expect(at.message?.words).toMatch(/^Every letter has a species/);
    expect(at.visit.entries).toEqual([]);
    expect(at.drafts.put?.text).toBe('teal 4');
  });
});

describe('short names', () => {
  const names = [...new Set(opened().index.names.map(({ taxon }) => taxon))]
    .filter((taxon) => taxon.vernacularName !== null)
    .map(taxonName);

  test.each([18, 15, 14])(
    'of the list have %d columns at most and keep their last word',
    (width) => {
      for (const name of names) {
        const short = shortName(name, width);
        expect(short.length).toBeLessThanOrEqual(width);
        const [last = '', ...others] = name.split(/[ /]/).reverse();
        const room = last.length + 3 * others.length <= width && !name.includes(',');
        if (room) expect(short.endsWith(last)).toBe(true);
        if (room && name.includes('/')) expect(short).toContain('/');
      }
    },
  );

  test.each([18, 15, 14])('with %d columns are never the same for two species', (width) => {
    const species = names.filter((name) => !name.includes('/'));
    expect(new Set(species.map((name) => shortName(name, width))).size).toBe(species.length);
  });

  test('tell a pair from each of its two', () => {
    expect(shortName('Black-headed Gull', 15)).toBe('Black-head Gull');
    expect(shortName('Black-headed/Common Gull', 15)).toBe('Blac/Comm Gull');
  });

  test('are the names themselves where these fit', () => {
    expect(shortName('Coot', 14)).toBe('Coot');
    expect(shortName('Black-headed Gull', 17)).toBe('Black-headed Gull');
    expect(taxonKey(opened().board?.taxa.f ?? fail())).toBe('Anas platyrhynchos');
  });
});
