import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  Count,
  countText,
  GROUP_SIZES,
  mostOf,
  readCount,
  stepCount,
} from '../../src/visit/count.ts';

const whole = fc.integer({ min: 0, max: 9_999_999 });
const anyCount: fc.Arbitrary<Count> = fc.oneof(
  whole.map((value): Count => ({ kind: 'exact', value })),
  whole.map((value): Count => ({ kind: 'at least', value })),
  whole.map((value): Count => ({ kind: 'about', value })),
  fc
    .tuple(whole, whole)
    .filter(([one, two]) => one !== two)
    .map(
      ([one, two]): Count => ({ kind: 'range', low: Math.min(one, two), high: Math.max(one, two) }),
    ),
);

describe('a count', () => {
  test.each<[string, Count]>([
    ['0', { kind: 'exact', value: 0 }],
    ['12', { kind: 'exact', value: 12 }],
    ['007', { kind: 'exact', value: 7 }],
    ['12+', { kind: 'at least', value: 12 }],
    ['~12', { kind: 'about', value: 12 }],
    ['~ 12', { kind: 'about', value: 12 }],
    ['10-15', { kind: 'range', low: 10, high: 15 }],
    ['15–10', { kind: 'range', low: 10, high: 15 }],
    ['10-10', { kind: 'exact', value: 10 }],
    ['9999999', { kind: 'exact', value: 9_999_999 }],
  ])('%j is read', (text, want) => {
    expect(readCount(text)).toEqual(want);
  });

  test.each([
    '',
    ' ',
    '-1',
    '1.5',
    '1,5',
    '12 +',
    '+12',
    '~12+',
    '10-',
    '1-2-3',
    '10000000',
    '٣',
    '1e3',
    'x',
  ])('%j is no count', (text) => {
    expect(readCount(text)).toBeNull();
  });

  test('as text reads back as the same count, and passes the schema', () => {
    fc.assert(
      fc.property(anyCount, (count) => {
        expect(readCount(countText(count))).toEqual(count);
        expect(Count.safeParse(count).success).toBe(true);
      }),
    );
  });

  test('has an upper end only where the observer gave one', () => {
    expect(mostOf({ kind: 'exact', value: 5 })).toBe(5);
    expect(mostOf({ kind: 'range', low: 5, high: 9 })).toBe(9);
    expect(mostOf({ kind: 'at least', value: 5 })).toBeNull();
    expect(mostOf({ kind: 'about', value: 5 })).toBeNull();
    expect(mostOf({ kind: 'present' })).toBeNull();
  });

  test('that is present and not counted is no number anywhere', () => {
    expect(countText({ kind: 'present' })).toBe('');
    expect(readCount(countText({ kind: 'present' }))).toBeNull();
  });
});

describe('the group size', () => {
  // Blocks of 10, 20, 50 and 100 for flocks: BC RISC Standards No. 20, section 3.1.6.
  test('goes up from one by one to blocks of a hundred', () => {
    const climbed: Count[] = [];
    let count: Count = { kind: 'present' };
    for (let step = 0; step < 9; step += 1) {
      count = stepCount(count, 1);
      climbed.push(count);
    }
    expect(climbed.map(countText)).toEqual(['1', '2', '5', '10', '20', '50', '100', '100', '100']);
  });

  test('goes from any number to the next step on that side, and keeps the kind', () => {
    fc.assert(
      fc.property(anyCount, fc.constantFrom(1 as const, -1 as const), (count, direction) => {
        const next = stepCount(count, direction);
        if (next === count || count.kind === 'range') return;
        if (!('value' in next) || !('value' in count)) throw new Error(next.kind);
        expect(next.kind).toBe(count.kind);
        expect(Math.sign(next.value - count.value)).toBe(direction);
        expect(GROUP_SIZES).toContain(next.value);
        const between = GROUP_SIZES.filter(
          (size) => (size - count.value) * direction > 0 && (next.value - size) * direction > 0,
        );
        expect(between).toEqual([]);
      }),
    );
  });

  test('stays at either end: a zero count can be raised and never goes below', () => {
    expect(stepCount({ kind: 'exact', value: 0 }, 1)).toEqual({ kind: 'exact', value: 1 });
    const zero: Count = { kind: 'exact', value: 0 };
    const one: Count = { kind: 'exact', value: 1 };
    const many: Count = { kind: 'at least', value: 100 };
    const present: Count = { kind: 'present' };
    expect(stepCount(zero, -1)).toBe(zero);
    expect(stepCount(one, -1)).toBe(one);
    expect(stepCount(many, 1)).toBe(many);
    expect(stepCount(present, -1)).toBe(present);
  });

  test('leaves a range at the end that lies in its direction', () => {
    expect(stepCount({ kind: 'range', low: 10, high: 15 }, 1)).toEqual({
      kind: 'exact',
      value: 20,
    });
    expect(stepCount({ kind: 'range', low: 10, high: 15 }, -1)).toEqual({
      kind: 'exact',
      value: 5,
    });
  });
});
