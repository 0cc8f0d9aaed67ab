import { describe, expect, test } from 'vitest';
import type { Session } from '../../../src/screens/field/session.ts';
import { knownFrom } from '../../../src/taxa/known.ts';
import { countText } from '../../../src/visit/count.ts';
import { nameOf } from '../../../src/visit/entry.ts';
import { press, SALLOW_MERE, session, tell } from './drive.ts';

function logged(at: Session): string[] {
  return at.visit.entries.map((entry) =>
    [
      entry.number,
      `${nameOf(entry)}${entry.uncertain ? '?' : ''}`,
      entry.count.kind === 'present' ? 'present' : countText(entry.count),
      entry.struck === null ? '' : 'struck',
    ]
      .join(' ')
      .trim(),
  );
}
const keyed = (typed: string, from = session()) => press(from, typed).session;

describe('typing a line', () => {
  test('Tufted Duck times twelve takes seven keys', () => {
    const { session: at, effects } = press(session(), 'tuf 12<enter>');
    expect(logged(at)).toEqual(['1 Tufted Duck 12']);
    expect(effects).toEqual([{ kind: 'save', visit: at.visit }]);
    expect(at.drafts).toEqual({});
  });

  test('without a count one bird is logged', () => {
    expect(logged(keyed('wren<enter>'))).toEqual(['1 Wren 1']);
  });

  test('right and left step the count of the chosen suggestion, and it is seen in the line', () => {
    const at = keyed('tuf<right><right><right>');
    expect(at.drafts.line?.text).toBe('tuf 10');
    expect(logged(press(at, '<left><enter>').session)).toEqual(['1 Tufted Duck 5']);
  });

  test('down chooses the next suggestion, up from the first the words themselves', () => {
    expect(logged(keyed('pochard<down><enter>'))).toEqual(['1 Red-crested Pochard 1']);
    const [entry] = keyed('pochard<up><enter>').visit.entries;
    expect(entry).toMatchObject({ taxon: null, words: 'pochard', count: { kind: 'present' } });
  });

  test('words that are no name become an unnamed entry, as typed', () => {
    const at = keyed('Small BROWN bird 2: white rump<enter>');
    expect(at.visit.entries[0]).toMatchObject({
      taxon: null,
      words: 'Small BROWN bird',
      description: 'white rump',
      typed: 'Small BROWN bird 2: white rump',
      count: { kind: 'exact', value: 2 },
    });
  });

  test('a line that contradicts itself stays, with the cursor at the fault', () => {
    const at = keyed('5 tuf 12: x<enter>');
    expect(at.visit.entries).toEqual([]);
    expect(at.drafts.line).toEqual({ text: '5 tuf 12: x', cursor: 8 });
    expect(at.message).toEqual({ kind: 'problem', words: 'Two counts, 5 and 12: keep one.' });
  });

  test.each(['<enter>', '   <enter>', '12<enter>', ':<enter>'])(
    '%s logs nothing and says why',
    (typed) => {
      const at = keyed(typed);
      expect(at.visit.entries).toEqual([]);
      expect(at.message?.kind).toBe('problem');
    },
  );

  test('a threatened species brings its caution', () => {
    expect(keyed('pochard<enter>').message).toMatchObject({ kind: 'caution' });
    expect(keyed('pochard<enter>').message?.words).toContain('VU, vulnerable: keep your distance');
  });

  test('in a description left and right move the cursor', () => {
    expect(keyed('tuf: ab<left>x').drafts.line?.text).toBe('tuf: axb');
  });
});

describe('the menu', () => {
  test('Esc keeps what is typed, and Esc again goes back to it', () => {
    const at = keyed('tuf 12<escape>');
    expect(at.mode.at).toBe('menu');
    expect(logged(press(at, '<escape><enter>').session)).toEqual(['1 Tufted Duck 12']);
  });

  test('undo and redo go through the whole visit, and numbers never shift', () => {
    const all = keyed('wren<enter>robin 2<enter>coot 3<enter>');
    const undone = keyed('<escape>u<escape>u', all);
    expect(logged(undone)).toEqual(['1 Wren 1', '2 Robin 2 struck', '3 Coot 3 struck']);
    expect(logged(keyed('<escape>r<escape>r', undone))).toEqual([
      '1 Wren 1',
      '2 Robin 2',
      '3 Coot 3',
    ]);
    expect(logged(keyed('teal<enter>', undone)).at(-1)).toBe('4 Teal 1');
    expect(keyed('<escape>u<escape>u<escape>u<escape>u', all).message?.words).toBe(
      'There is nothing to undo.',
    );
  });

  test('a key that does nothing says why', () => {
    expect(keyed('<escape>c').message?.words).toBe('There is no entry yet.');
    expect(keyed('<escape>k').message?.words).toBe('"k" is none of these keys.');
  });

  test('an entry is changed in place, and its earlier value stays in the changes', () => {
    const at = keyed(
      'wren<enter>robin<enter><escape>c1<enter><ctrl-u>goldcrest 4: in the pines<enter>',
    );
    expect(logged(at)).toEqual(['1 Goldcrest 4', '2 Robin 1']);
    expect(at.visit.changes.at(-1)).toMatchObject({ part: 'entry', number: 1 });
    expect(at.visit.changes.at(-1)?.before).toMatchObject({ taxon: { vernacularName: 'Wren' } });
    expect(logged(keyed('<escape>u', at))[0]).toBe('1 Wren 1');
  });

  test('an entry that is opened and kept as it was makes no change', () => {
    const at = keyed('5 wren 3m 2f?: on the sluice<enter><escape>c<enter>');
    expect(at.drafts['change 1'] ?? null).toBeNull();
    const kept = keyed('<enter>', at);
    expect(kept.visit.changes).toHaveLength(1);
    expect(kept.mode.at).toBe('line');
  });

  test('who only mends the count keeps the name, also where there is none', () => {
    const at = keyed('pochard 3: far out<up><enter>');
    expect(at.visit.entries[0]).toMatchObject({ taxon: null, words: 'pochard' });
    const mended = keyed('<escape>c<enter><home><delete>4<enter>', at);
    expect(logged(mended)).toEqual(['1 pochard 4']);
    expect(mended.visit.entries[0]).toMatchObject({ taxon: null, description: 'far out' });
    const renamed = keyed('<escape>c<enter><down><enter>', at);
    expect(logged(renamed)).toEqual(['1 Pochard 3']);
  });

  test('leaving a change with Esc leaves the entry, and says what was typed and not kept', () => {
    const at = keyed('wren<enter><escape>c<enter> 4<escape>');
    expect(logged(at)).toEqual(['1 Wren 1']);
    expect(at.message?.words).toBe('Nothing changed. Not kept: 1 Wren 4');
    expect(keyed('<escape>c<enter><enter>', at).visit).toBe(at.visit);
  });

  test('striking out and bringing back keep the number', () => {
    const at = keyed('wren<enter>robin<enter><escape>x1<enter>');
    expect(logged(at)).toEqual(['1 Wren 1 struck', '2 Robin 1']);
    expect(logged(keyed('<escape>x1<enter>', at))).toEqual(['1 Wren 1', '2 Robin 1']);
  });

  test("a lone slash does nothing, a slash in the menu begins a word, and the menu's words work", () => {
    const at = keyed('wren<enter>/<enter>');
    expect(logged(at)).toEqual(['1 Wren 1']);
    expect(at.message?.kind).toBe('problem');
    expect(logged(keyed('<escape>/undo<enter>', keyed('wren<enter>')))).toEqual([
      '1 Wren 1 struck',
    ]);
    expect(keyed('/describe a still morning<enter>').visit.description).toBe('a still morning');
  });

  test('an action can be named behind a slash, with its answer', () => {
    expect(keyed('/weather 7c f3 sw 6/8 drizzle<enter>').visit.weather[0]).toMatchObject({
      temperature: 7,
      windForce: 3,
    });
    expect(logged(keyed('wren<enter>/undo<enter>'))).toEqual(['1 Wren 1 struck']);
    expect(keyed('/dance<enter>').message?.words).toContain('There is no action /dance.');
    expect(keyed('/dance<enter>').drafts.line?.text).toBe('/dance');
  });
});

describe('place, weather and effort', () => {
  test('the place can be given during the visit, with the zone found from it', () => {
    const at = keyed('wren<enter><escape>pSallow Mere 51.12, -2.85<enter>', session(null));
    expect(at.visit.place).toEqual(SALLOW_MERE);
  });

  test('coordinates alone go to the place that is there', () => {
    const at = keyed('<escape>pSallow Mere<enter><escape>p51.12, -2.85<enter>', session(null));
    expect(at.visit.place).toEqual(SALLOW_MERE);
  });

  test('a place of an earlier visit comes back with its coordinates', () => {
    const known = knownFrom([keyed('wren<enter>').visit]);
    const at = tell(session(null), { kind: 'known', known });
    expect(keyed('<escape>psallow mere<enter>', at).visit.place).toEqual(SALLOW_MERE);
    expect(keyed('<escape>p<down><enter>', at).visit.place).toEqual(SALLOW_MERE);
  });

  test('a bad answer says what to mend and stays', () => {
    const at = keyed('<escape>w7c f14<enter>');
    expect(at.message?.words).toContain('f0 to f12');
    expect(at.drafts.weather?.text).toBe('7c f14');
    expect(at.visit.weather).toEqual([]);
  });

  test('a pause does not count, and the end closes it', () => {
    const at = keyed('<escape>z<escape>e3.2 km 2 people on foot<enter>n');
    expect(at.visit.effort).toMatchObject({
      distance: 3200,
      observers: 2,
      method: 'on foot',
      complete: false,
    });
    expect(at.visit.effort.pauses[0]?.end).toBe(at.visit.end);
  });

  test('the end asks for effort, completeness and groups, and waits to be left', () => {
    const { session: at, effects } = press(session(), 'wren<enter><escape>e<enter>y<enter>');
    expect(at.visit.effort).toMatchObject({ complete: true, groups: ['birds'] });
    expect(at.visit.end).not.toBeNull();
    expect(effects.at(-1)).toEqual({ kind: 'save', visit: at.visit });
    expect(press(at, '<enter>').effects).toEqual([{ kind: 'leave', code: 0 }]);
  });

  test('an end by mistake is taken back', () => {
    const ended = keyed('wren<enter><escape>e<enter><enter>');
    expect(ended.visit.end).not.toBeNull();
    const back = keyed('urobin<enter>', ended);
    expect(back.visit.end).toBeNull();
    expect(logged(back)).toEqual(['1 Wren 1', '2 Robin 1']);
  });

  test('an empty answer keeps a place that was only assumed, as said to be right', () => {
    const at = keyed('<escape>p<enter>', { ...session(), placeAssumed: true });
    expect(at.placeAssumed).toBe(false);
    expect(at.visit).toEqual(session().visit);
  });

  test('Esc goes back one question at a time', () => {
    const at = keyed('<escape>e<enter>y');
    expect(at.mode).toEqual({ at: 'ask', question: 'groups' });
    expect(keyed('<escape>', at).mode).toEqual({ at: 'complete' });
    expect(keyed('<escape><escape>', at).mode).toEqual({ at: 'ask', question: 'effort' });
    expect(keyed('<escape><escape><escape>', at).mode).toEqual({ at: 'line' });
    expect(at.visit.end).toBeNull();
  });
});

test('Ctrl-C leaves at once with 130, from anywhere, and loses nothing', () => {
  for (const typed of ['', 'tuf', '<escape>', '<escape>p', '<escape>h'])
    expect(press(session(), `wren<enter>${typed}<ctrl-c>`).effects.at(-1)).toEqual({
      kind: 'leave',
      code: 130,
    });
});
