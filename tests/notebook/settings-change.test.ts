import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changedText, newSettingsText } from '../../src/notebook/settings-change.ts';
import { KEYS, type Key, SETTINGS, type Values } from '../../src/notebook/settings-keys.ts';
import { readSettingsText } from '../../src/notebook/settings-text.ts';

const tag = fc.constantFrom('en', 'cy', 'pt-br', 'no', 'yes');
const word = fc
  .stringMatching(/^[a-z][a-z0-9 :#'"&*!-]{0,12}[a-z]$/)
  .filter((each) => each !== 'none');
const listName = fc.stringMatching(/^[a-zø蛾0-9][a-zø蛾0-9-]{0,12}$/u);

/** Any value of each setting. */
const VALUES: { [K in Key]: fc.Arbitrary<Values[K]> } = {
  lists: fc.option(fc.uniqueArray(listName, { minLength: 1, maxLength: 5 })),
  'languages.shown': tag,
  'languages.searched': fc.uniqueArray(tag, { minLength: 1 }),
  'group-sizes': fc
    .uniqueArray(fc.integer({ min: 1, max: 1000 }), { minLength: 2, maxLength: 9 })
    .map((sizes) => sizes.toSorted((one, two) => one - two)),
  observers: fc.oneof(
    fc.option(fc.integer({ min: 1, max: 9999 })).map((number) => ({ number, names: [] })),
    fc
      .uniqueArray(word, { minLength: 1, maxLength: 4 })
      .map((names) => ({ number: names.length, names })),
  ),
  'units.temperature': fc.constantFrom('C', 'F'),
  'units.distance': fc.constantFrom('km', 'mi'),
  'units.wind': fc.constantFrom('Beaufort', 'm/s', 'km/h', 'mph', 'kn'),
};
const change = fc
  .constantFrom(...KEYS)
  .chain((key) => VALUES[key].map((value) => ({ key, value: value as Values[Key] })));

/** Files as people write them: keys known and not, in any order, with comments above, behind and between. */
const LINES: readonly string[] = [
  'lists: own-moths % # %',
  'lists:\n  - own-moths # %\n  # %\n  - britain-ireland-birds % # %',
  'lists: [own-moths, # %\n  own-beetles] # %',
  'languages.shown: cy # %',
  'languages.searched: # %\n  - cy # %\n  - en',
  'group-sizes: # %\n  [1, 5, 10] # %',
  'group-sizes:\n  # %\n  - 2\n  - 4 # %',
  'observers: "Wren Alder; Jo Marsh" # %',
  'observers: 3 # %',
  'units.wind: kn # %',
  'units.wind: >- # %\n  km/h',
  'mine: |\n  a longer text\n  of mine',
  'ours:\n  deep: [1, {a: b}] # %\n  # %\n  other: x # %',
  '# %\n',
  '#%',
  '# units.wind: Beaufort %',
  '# group-sizes: [1, 2] %',
  '',
];
const file = fc
  .uniqueArray(fc.constantFrom(...LINES), { selector: (line) => /^#?.*?:|^.*$/.exec(line)?.[0] })
  .map((lines) => {
    let comment = 0;
    return `${lines.join('\n')}\n`.replaceAll(' % #', ' #').replaceAll('%', () => {
      comment += 1;
      return `comment${comment}.`;
    });
  });

const commentsOf = (text: string) => [...text.matchAll(/comment\d+\./g)].map(([each]) => each);

describe('a setting that is changed', () => {
  test('leaves every comment, every other setting and what is not known, in their order', () => {
    fc.assert(
      fc.property(
        fc.oneof(file, fc.constant(newSettingsText())),
        change,
        (text, { key, value }) => {
          const before = readSettingsText(text);
          expect(before.whole).toBe(true);
          const changed = changedText(text, key, value);
          const after = readSettingsText(changed);
          expect(after.faults).toEqual([]);
          expect(after.values).toEqual({ ...before.values, [key]: value });
          expect(after.unknown.map((each) => each.key)).toEqual(
            before.unknown.map((each) => each.key),
          );
          expect(commentsOf(changed).sort()).toEqual(commentsOf(text).sort());
          const others = ({ lines }: typeof before) =>
            Object.keys(lines).filter((each) => each !== key);
          expect(others(after)).toEqual(others(before));
          expect(changedText(changed, key, value)).toBe(changed);
        },
      ),
      { numRuns: 400 },
    );
  });

  test('in one value, leaves all other lines of a plain file as they are to the letter', () => {
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 8 }), change, (made, last) => {
        const text = made.reduce(
          (at, each) => changedText(at, each.key, each.value),
          newSettingsText(),
        );
        const rest = (of: string) =>
          of.split('\n').filter((line) => !line.startsWith(`${last.key}:`));
        expect(rest(changedText(text, last.key, last.value))).toEqual(rest(text));
      }),
    );
  });

  test('stands below the line that tells its usual value', () => {
    const text = changedText(newSettingsText(), 'group-sizes', [1, 5, 10]);
    expect(text).toContain(
      '\n# group-sizes: [1, 2, 5, 10, 20, 50, 100]\ngroup-sizes: [1, 5, 10]\n',
    );
  });

  test('keeps what was said of an item that is gone above the key', () => {
    const text = 'lists:\n  - own-moths # of the light trap\n  - own-bees # from Wren\n';
    const changed = changedText(text, 'lists', ['own-bees']);
    expect(changed).toContain('- own-bees # from Wren');
    expect(changed).toMatch(/^# of the light trap\nlists:/);
  });

  test('of which another line borrows the value is refused in words', () => {
    const text = 'observers: &us [Wren Alder, Jo Marsh]\nours: *us\n';
    expect(() => changedText(text, 'observers', { number: 3, names: [] })).toThrow(
      'another line borrows the value of observers',
    );
  });

  test('is written into a flow map and into a file of Windows line ends, too', () => {
    const flow = changedText('{lists: own-moths} # mine\n', 'units.wind', 'kn');
    expect(readSettingsText(flow).values).toEqual({ lists: ['own-moths'], 'units.wind': 'kn' });
    const windows = newSettingsText().replaceAll('\n', '\r\n');
    expect(readSettingsText(changedText(windows, 'units.wind', 'kn')).values).toEqual({
      'units.wind': 'kn',
    });
  });
});

describe('a new file', () => {
  test('puts nothing in force', () => {
    const read = readSettingsText(newSettingsText());
    expect(read).toEqual({ values: {}, lines: {}, unknown: [], faults: [], whole: true });
  });

  test.each(KEYS)('tells the usual value of %s, which is read without its sign', (key) => {
    const lines = newSettingsText().split('\n');
    const at = lines.indexOf(lines.find((line) => line.startsWith(`# ${key}: `)) ?? '');
    expect(lines[at - 1]).toMatch(/^# [A-Zk].+[.:]$/);
    const text = lines.with(at, (lines[at] ?? '').slice(2)).join('\n');
    const read = readSettingsText(text);
    expect(read.values).toEqual({ [key]: SETTINGS[key].usual });
    expect(read.lines).toEqual({ [key]: at + 1 });
  });
});
