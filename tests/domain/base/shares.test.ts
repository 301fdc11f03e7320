/** Shares that add up. The cases are hand-worked; the method is Hamilton's (Balinski and Young, Fair Representation, from memory). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ZERO, compare, exact, subtract, toNumber } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { byValue, inWholes, nearestWhole, sumOf } from '@/lib/domain/base/shares';
import { runs } from '@/tests/support/rules';

describe('whole units for parts of a whole', () => {
  test.each<readonly [string, number, readonly Exact[], readonly number[]]>([
    ['thirds: the first of equals', 100, [exact(100, 3), exact(100, 3), exact(100, 3)], [34, 33, 33]],
    ['who lost most', 10, [exact(34, 10), exact(27, 10), exact(39, 10)], [3, 3, 4]],
    ['nothing lost', 6, [exact(1), exact(2), exact(3)], [1, 2, 3]],
    ['money that came back', 1, [exact(25, 10), exact(-15, 10)], [3, -2]],
    ['of nothing', 0, [], []],
  ])('%s', (_, total, parts, wanted) => {
    expect(inWholes(total, parts)).toEqual(wanted);
  });

  const amount = fc
    .tuple(fc.integer({ min: -50_000, max: 500_000 }), fc.integer({ min: 1, max: 97 }))
    .map(([top, bottom]) => exact(top, bottom));

  test('they add up to the sum, and none is a whole unit off', () => {
    fc.assert(
      fc.property(fc.array(amount, { minLength: 1, maxLength: 40 }), (parts) => {
        const total = nearestWhole(sumOf(parts));
        const wholes = inWholes(total, parts);
        expect(wholes.reduce((sum, each) => sum + each, 0)).toBe(total);
        for (const [index, part] of parts.entries())
          expect(Math.abs(toNumber(subtract(part, exact(wholes[index] ?? 0))))).toBeLessThan(1);
      }),
      runs(200),
    );
  });

  test('a half goes away from zero', () => {
    expect([exact(5, 2), exact(-5, 2), exact(7, 3), ZERO].map(nearestWhole)).toEqual([3, -3, 2, 0]);
  });
});

describe('an amount shared out by value', () => {
  test.each<readonly [string, readonly (number | null)[], readonly Exact[]]>([
    ['by value', [300, 100], [exact(300), exact(100)]],
    ['one that nobody knows carries none', [300, null, 100], [exact(300), ZERO, exact(100)]],
    ['evenly where none is known', [null, null, null], [exact(400, 3), exact(400, 3), exact(400, 3)]],
  ])('%s', (_, values, wanted) => {
    const shares = byValue(
      exact(400),
      values.map((each) => (each === null ? null : exact(each))),
    );
    expect(shares).toEqual(wanted);
    expect(compare(sumOf(shares), exact(400))).toBe(0);
  });
});
