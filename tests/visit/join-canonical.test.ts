import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alike, bothMembers, canonical } from '../../src/visit/join-canonical.ts';

describe('the canonical text of a JSON value', () => {
  // RFC 8785, section 3.2.3: the example of sorting (from memory).
  test('sorts members by UTF-16 code units as RFC 8785 shows', () => {
    const given = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\u{1f600}': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    const names = ['Carriage', 'One', 'Control', 'Latin', 'Euro', 'Emoji', 'Hebrew'];
    const places = names.map((name) => canonical(given).indexOf(`:"${name}`));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual(places.toSorted((one, two) => one - two));
  });

  // RFC 8785, section 3.2.2: literals and numbers (from memory).
  test('writes literals and numbers as RFC 8785 shows', () => {
    const given = { numbers: [1e30, 4.5, 2e-3, 1e-27], literals: [null, true, false] };
    expect(canonical(given)).toBe(
      '{"literals":[null,true,false],"numbers":[1e+30,4.5,0.002,1e-27]}',
    );
  });

  test('reads back as the value', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 3 }), (value) => {
        expect(alike(JSON.parse(canonical(value)), value)).toBe(true);
        expect(JSON.parse(canonical(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
  });
});

test('the members of two objects are the same whichever comes first', () => {
  const objects = fc.dictionary(fc.constantFrom('a', 'b', 'c'), fc.jsonValue({ maxDepth: 2 }));
  fc.assert(
    fc.property(objects, objects, (one, two) => {
      const both = bothMembers(one, two);
      expect(canonical(bothMembers(two, one))).toBe(canonical(both));
      expect(Object.keys(both).sort()).toEqual(Object.keys({ ...one, ...two }).sort());
      expect(canonical(bothMembers(both, one))).toBe(canonical(both));
    }),
  );
});
