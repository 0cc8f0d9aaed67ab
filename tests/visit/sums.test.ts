import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Count, type CountPart, readCount } from '../../src/visit/count.ts';
import { plus, type Sum, sumOf, sumShown, totals } from '../../src/visit/sums.ts';
import { updateVisit } from '../../src/visit/update.ts';
import { minutesIn, POCHARD, visitAt, withLogged } from './made.ts';

/** `12`, `12+`, `~12`, `10-15` or `present`. */
function count(text: string): Count {
  const read = text === 'present' ? { kind: 'present' as const } : readCount(text);
  if (!read) throw new Error(text);
  return read;
}
const counted = (text: string, parts: CountPart[] = []) => ({ count: count(text), parts });
const sum = (...texts: string[]) =>
  sumOf(
    texts.map((text) => counted(text)),
    'adds up',
  );
const highest = (...texts: string[]) =>
  sumOf(
    texts.map((text) => counted(text)),
    'highest',
  );

const small = fc.integer({ min: 0, max: 9 });
const anyCount: fc.Arbitrary<Count> = fc.oneof(
  fc.record({ kind: fc.constantFrom('exact', 'at least', 'about'), value: small }),
  fc
    .tuple(small, fc.integer({ min: 1, max: 9 }))
    .map(([low, more]): Count => ({ kind: 'range', low, high: low + more })),
  fc.constant<Count>({ kind: 'present' }),
) as fc.Arbitrary<Count>;
const anyParts = fc.array(
  fc.record({ letter: fc.constantFrom('m' as const, 'f', 'j', 'a'), value: small }),
  { maxLength: 3 },
);
const anyCounted = fc.record({ count: anyCount, parts: anyParts });
const anySum = anyCounted.map((each): Sum => sumOf([each], 'adds up'));

/**
 * The true numbers that a sum allows, from and to. An estimate says only that some were there, and an
 * `at least` with an estimate in it no more.
 */
function allowed({ count: what, rounded }: Sum): [number, number] {
  const endless = Number.POSITIVE_INFINITY;
  if (what.kind === 'present') return [1, endless];
  if (what.kind === 'range') return [what.low, what.high];
  if (what.kind === 'about' || rounded) return [what.value > 0 ? 1 : 0, endless];
  return [what.value, what.kind === 'exact' ? what.value : endless];
}

describe('counts that add up', () => {
  // The table of `sumOf`; the project's own rules, from what each count says of the true number.
  test.each([
    [['3', '4'], '7'],
    [['3', '10-15'], '13-18'],
    [['10-15', '1-2'], '11-17'],
    [['~40', '3'], '~43'],
    [['~40', '10-15'], '~50'],
    [['~40', '~10'], '~50'],
    [['12+', '3'], '15+'],
    [['12+', '10-15'], '22+'],
    [['12+', '~40'], '~52+'],
    [['12+', '8+'], '20+'],
    [['present', '5'], '5+'],
    [['present', '10-15'], '10+'],
    [['present', '12+'], '12+'],
    [['present', '~40'], '~40+'],
    [['present', 'present'], 'present'],
    [['present', '0'], 'present'],
    [['0', '0'], 'none'],
    [['0', '12+'], '12+'],
    [['0', '~40'], '~40'],
    [['0', '10-15'], '10-15'],
    [['9999999', '9999999'], '19999998'],
    [[], 'none'],
  ])('%j are %s', (texts, shown) => {
    expect(sumShown(sum(...texts))).toBe(shown);
    expect(sumShown(sum(...texts.toReversed()))).toBe(shown);
  });

  test('come to the same in any order and in any groups', () => {
    fc.assert(
      fc.property(anySum, anySum, anySum, (one, two, three) => {
        expect(plus(one, two)).toEqual(plus(two, one));
        expect(plus(plus(one, two), three)).toEqual(plus(one, plus(two, three)));
      }),
      { numRuns: 2000 },
    );
  });

  test('allow every number that the true numbers can add up to', () => {
    fc.assert(
      fc.property(anySum, anySum, fc.nat(40), fc.nat(40), (one, two, above, besides) => {
        const truth = ([from, to]: [number, number], more: number) => Math.min(from + more, to);
        const total = truth(allowed(one), above) + truth(allowed(two), besides);
        const [from, to] = allowed(plus(one, two));
        expect(total).toBeGreaterThanOrEqual(from);
        expect(total).toBeLessThanOrEqual(to);
      }),
      { numRuns: 2000 },
    );
  });

  test('that are all exact or ranges allow no more than that: both ends can be true', () => {
    const closed = anySum.filter(({ count: { kind } }) => kind === 'exact' || kind === 'range');
    fc.assert(
      fc.property(closed, closed, (one, two) => {
        const [from, to] = allowed(one);
        const [other, until] = allowed(two);
        expect(allowed(plus(one, two))).toEqual([from + other, to + until]);
      }),
    );
  });

  test('lose nothing to an absence', () => {
    fc.assert(
      fc.property(anySum, (one) => {
        expect(plus(one, sum('0'))).toEqual(one);
      }),
    );
  });

  test('are added with their parts by sex and age, letter by letter', () => {
    const two = sumOf(
      [
        counted('5', [
          { letter: 'f', value: 2 },
          { letter: 'm', value: 3 },
        ]),
        counted('4', [{ letter: 'm', value: 1 }]),
        counted('6'),
      ],
      'adds up',
    );
    expect(two).toEqual({
      count: count('15'),
      rounded: false,
      parts: [
        { letter: 'm', value: 4 },
        { letter: 'f', value: 2 },
      ],
    });
  });
});

describe('the highest count', () => {
  test.each([
    [['3', '12', '7'], '12'],
    [['3', '10-15'], '10-15'],
    [['12', '10-15'], '12'],
    [['~40', '39'], '~40'],
    [['~40', '41'], '41'],
    [['12', '12+'], '12+'],
    [['12', '~12', '12-14'], '12-14'],
    [['12-14', '12-20'], '12-20'],
    [['present', '0'], 'present'],
    [['present', '1'], '1'],
    [['0', '0'], 'none'],
    [[], 'none'],
  ])('of %j is %s', (texts, shown) => {
    expect(sumShown(highest(...texts))).toBe(shown);
    expect(sumShown(highest(...texts.toReversed()))).toBe(shown);
  });

  test('is one of the counts with its parts, none has a greater lower number, and order is no matter', () => {
    const low = ({ count: what }: { count: Count }) =>
      what.kind === 'present' ? 0 : what.kind === 'range' ? what.low : what.value;
    fc.assert(
      fc.property(fc.array(anyCounted, { minLength: 1 }), (counts) => {
        const found = sumOf(counts, 'highest');
        expect(sumOf(counts.toReversed(), 'highest')).toEqual(found);
        for (const each of counts) expect(low(each)).toBeLessThanOrEqual(low(found));
        const alone = counts.map((each) => sumOf([each], 'highest'));
        expect(alone).toContainEqual(found);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('the totals of a visit', () => {
  const visit = withLogged(
    visitAt(),
    { count: count('3') },
    { taxon: POCHARD, count: count('~40') },
    { taxon: null, words: 'small brown bird', count: count('2') },
    { count: count('12+'), uncertain: true },
    { taxon: POCHARD, count: count('30') },
    { count: count('500') },
  );
  const struck = updateVisit(visit, { do: 'strike', number: 6, time: minutesIn(20) });

  test('add up each taxon, without what is struck out or unnamed', () => {
    expect(totals(struck).map((each) => [each.name, sumShown(each), each.entries])).toEqual([
      ['Mallard', '15+', [1, 4]],
      ['Pochard', '~70', [2, 5]],
    ]);
    expect(totals(struck).map(({ uncertain }) => uncertain)).toEqual([true, false]);
  });

  test('take the highest count of the taxa of which the visit says so', () => {
    const again = { ...struck, highest: ['Aythya ferina'] };
    expect(totals(again).map((each) => [each.key, each.rule, sumShown(each)])).toEqual([
      ['Anas platyrhynchos', 'adds up', '15+'],
      ['Aythya ferina', 'highest', '~40'],
    ]);
  });

  test('tell a taxon that was looked for and not there as none', () => {
    const absent = withLogged(visitAt(), { count: count('0') });
    expect(totals(absent).map(sumShown)).toEqual(['none']);
  });

  test('of an empty visit are none', () => {
    expect(totals(visitAt())).toEqual([]);
  });
});
