import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KEYS, type Key, type Values } from '../../src/notebook/settings-keys.ts';
import { readSettingsText } from '../../src/notebook/settings-text.ts';

describe('what is written', () => {
  test.each<[string, Partial<Values>]>([
    ['lists: by place', { lists: null }],
    ['lists: own-moths, own-bees', { lists: ['own-moths', 'own-bees'] }],
    ['languages.shown: pt-BR', { 'languages.shown': 'pt-br' }],
    ['languages.shown: no', { 'languages.shown': 'no' }],
    ['languages.searched: cy, EN', { 'languages.searched': ['cy', 'en'] }],
    ['group-sizes: 1,5,10', { 'group-sizes': [1, 5, 10] }],
    ['group-sizes: 1 5 1000', { 'group-sizes': [1, 5, 1000] }],
    ['observers: none', { observers: { number: null, names: [] } }],
    ['observers: "2"', { observers: { number: 2, names: [] } }],
    ['observers: Wren Alder', { observers: { number: 1, names: ['Wren Alder'] } }],
    ['units.wind: KN', { 'units.wind': 'kn' }],
    ['units.temperature: f', { 'units.temperature': 'F' }],
    ['', {}],
    ['# nothing yet', {}],
    ['---\nunits.distance: mi', { 'units.distance': 'mi' }],
  ])('as %j is read', (text, values) => {
    expect(readSettingsText(text)).toMatchObject({ values, faults: [], whole: true });
  });

  const bad = (key: Key) => (written: string) =>
    [`# mine\n\n${key}: ${written}\n`, 3, key] as const;
  test.each([
    ...['7', '[1]', '[]', '{a: b}', 'true', '""'].map(bad('lists')),
    ...['7', 'English!', '[en]', '""'].map(bad('languages.shown')),
    ...['[]', '[7]', '{}', 'x', '"en cy!"'].map(bad('languages.searched')),
    ...['5', '[1]', '[5, 2]', '[1, 1]', '[0, 2]', '[1, 1001]', '[1.5, 2]', '[-1, 2]', 'many'].map(
      bad('group-sizes'),
    ),
    ...['[1, 2, 3, 4, 5, 6, 7, 8, 9, 10]', '[1, .inf]', '.nan', '[1, [2]]', '1-5'].map(
      bad('group-sizes'),
    ),
    ...['0', '-1', '1.5', '10000', '[]', '""', '[1, 2]', 'true', '{a: b}'].map(bad('observers')),
    ...['K', '7', '[C]'].map(bad('units.temperature')),
    ...['m', 'nmi', ''].map(bad('units.distance')),
    ...['knots', 'force', '~'].map(bad('units.wind')),
  ])('as %j is told with its line, its key and what to write', (text, line, key) => {
    const read = readSettingsText(`${text}mine: 7
`);
    expect(read).toMatchObject({ whole: true, faults: [{ line }], unknown: [{ line: 4 }] });
    expect(read.faults[0]?.words).toMatch(new RegExp(`^${key} .+(: write|: write one| write ).+`));
    expect(read.values).toEqual({});
  });

  test.each([
    ['a: b\n\tc: d\n', 2, 'a tab stands where spaces belong'],
    ['units.wind: kn\nunits.wind: mph\n', 2, 'twice: keep one'],
    ['units.wind: "kn\nobservers: 2\n', 3, 'here or before, a quotation mark'],
    ['group-sizes: [1, 5\nobservers: 2\n', 2, 'a bracket before it is not closed'],
    ['lists: a: b\n', 1, 'quotation marks'],
    ['units.wind: kn\nobservers: @x\n', 2, 'quotation marks'],
    ['a: b\n\nlists:own\nobservers: 2\n', 3, 'write a key, a colon, a space'],
    ['- lists\n- by place\n', 1, 'write a key, a colon'],
    ['\n\nlists by place\n', 3, 'write a key, a colon'],
    ['observers: 2\n---\nobservers: 3\n', 2, 'take it away'],
    ['{', 1, 'not closed'],
    ['\u0000', 1, 'not understood'],
  ])('as %j is no file of settings, and is told by its line', (text, line, words) => {
    const read = readSettingsText(text);
    expect(read).toMatchObject({ values: {}, whole: false, faults: [{ line }] });
    expect(read.faults[0]?.words).toContain(words);
  });

  test('as a value borrowed from nowhere is told', () => {
    const { faults } = readSettingsText('mine: 7\nobservers: *us\n');
    expect(faults).toEqual([
      { line: 2, words: expect.stringMatching(/^observers borrows a value/) },
    ]);
  });

  test('with unknown keys is read around them', () => {
    const read = readSettingsText('unit.wind: kn\n7: x\n? [a]\n: b\nobservers: 2\n');
    expect(read.unknown).toMatchObject([
      { key: 'unit.wind', line: 1 },
      { key: '7', line: 2 },
      { line: 3 },
    ]);
    expect(read).toMatchObject({ faults: [], values: { observers: { number: 2 } } });
  });

  test('never makes the reader throw', () => {
    const pieces = fc.constantFrom(
      ...KEYS,
      ': ',
      '\n',
      '[',
      ']',
      '{',
      '}',
      '&a ',
      '*a',
      '- ',
      '"',
      '#',
      '\t',
      '  ',
      '1',
      '!!x ',
      '|',
      '<<',
      '? ',
      '---\n',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(pieces).map((all) => all.join('')),
        ),
        (text) => {
          for (const { line, words } of readSettingsText(text).faults) {
            expect(words).not.toBe('');
            expect(line ?? 1).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 1000 },
    );
    for (const deep of ['['.repeat(100_000), 'a: '.repeat(5000), '- '.repeat(20_000)])
      expect(readSettingsText(`lists: ${deep}`).values).toEqual({});
    const bomb = Array.from(
      { length: 30 },
      (_, at) => `a${at}: &a${at} [*a${at - 1}, *a${at - 1}]`,
    );
    const text = ['a: &a-1 [x]', ...bomb, 'lists: *a29'].join('\n');
    expect(readSettingsText(text).faults[0]?.words).toContain('lists');
  });
});
