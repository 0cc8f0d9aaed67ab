import fc from 'fast-check';
import { expect, test } from 'vitest';
import { visitJson } from '../../src/notebook/visit-json.ts';
import { press, session } from '../screens/field/drive.ts';

// ECMA-262, JSON.stringify with a space of 2: the runtime's own is the reference.
const byRuntime = (value: unknown) => JSON.stringify(value, null, 2);

test('the text of a visit is what JSON.stringify gives, also the second time and after changes', () => {
  const pieces = fc.constantFrom(
    ...['wren 3<enter>', 'small bird: "changes": []<enter>', '漢字 🦆: a\\nb<enter>'],
    ...['<escape>u', '<escape>r', '<escape>w7c f3 sw<enter>', '<escape>d"entries": []<enter>'],
    ...['<escape>b', 'aaa', 'A', ' ', ',a'],
  );
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 12 }), (typed) => {
      const { visit } = press(session(), typed.join('')).session;
      for (const state of [visit, { ...visit, entries: [], changes: [] }, visit])
        expect(visitJson(state)).toBe(byRuntime(state));
    }),
    { numRuns: 150 },
  );
});

test('fields that this version does not know stay where they stand', () => {
  const { visit } = press(session(), 'wren<enter>').session;
  const other = { later: { changes: [] }, ...visit, '\n  "changes": []': [], more: ['x\n"y"'] };
  expect(visitJson(other)).toBe(byRuntime(other));
});
