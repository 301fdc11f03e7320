/** Invariant 5: balances are sums of moves and never below zero, whatever order things happen in. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ZERO, add, compare, exact, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { balancesOf, counting, countsAsked, placeKey, taking } from '@/lib/domain/shop/stock';
import type { StockMove, StockPlace } from '@/lib/domain/shop/stock';
import { runs } from '@/tests/support/rules';

const AT = '2026-11-25T08:00:00.000Z';
const bin: StockPlace = { item: 'W-M8', lot: null, bin: '09C' };
const received = (place: StockPlace, count: number): StockMove => ({
  ...place,
  quantity: exact(count),
  reason: 'received',
  at: AT,
});
const told = (moves: readonly StockMove[]): readonly string[] =>
  moves.map(({ quantity, reason }) => `${toDecimalText(quantity)} ${reason}`);
const have = (moves: readonly StockMove[], place: StockPlace): Exact =>
  balancesOf(moves).get(placeKey(place)) ?? ZERO;

describe('taking', () => {
  test('what is there goes', () => {
    expect(told(taking(bin, exact(10), exact(4), 'fitted', AT))).toEqual(['-4 fitted']);
    expect(told(taking(bin, exact(4), exact(4), 'fitted', AT))).toEqual(['-4 fitted']);
  });

  test('a bolt in hand with none on the books is found, then fitted, and a count is asked for', () => {
    const moves = [received(bin, 1), ...taking(bin, exact(1), exact(4), 'fitted', AT)];
    expect(told(moves)).toEqual(['1 received', '3 found', '-4 fitted']);
    expect(have(moves, bin)).toEqual(ZERO);
    expect(countsAsked(moves)).toEqual([bin]);
  });

  test('nothing taken is no move', () => {
    expect(taking(bin, exact(1), ZERO, 'lost', AT)).toEqual([]);
  });
});

describe('counting', () => {
  test('the books give way to the shelf, and nobody is asked any more', () => {
    const moves = [...taking(bin, ZERO, exact(2), 'fitted', AT), counting(bin, ZERO, exact(7), AT)];
    expect(toDecimalText(have(moves, bin))).toBe('7');
    expect(countsAsked(moves)).toEqual([]);
  });

  test('a count that agrees is kept: somebody looked', () => {
    expect(told([counting(bin, exact(3), exact(3), AT)])).toEqual(['0 counted']);
  });

  test('nobody counts fewer than none', () => {
    expect(told([counting(bin, exact(3), exact(-1), AT)])).toEqual(['-3 counted']);
  });
});

test('one item in two bins, or in two lots, is two places', () => {
  const other = { ...bin, bin: '12A' };
  const lot = { ...bin, lot: 'L-1' };
  const moves = [received(bin, 1), received(other, 2), received(lot, 4)];
  expect([bin, other, lot].map((place) => toDecimalText(have(moves, place)))).toEqual(['1', '2', '4']);
});

test('no order of events brings a balance below zero', () => {
  const act = fc.record({ what: fc.nat({ max: 3 }), count: fc.nat({ max: 6 }), place: fc.nat({ max: 1 }) });
  const places: readonly StockPlace[] = [bin, { item: 'NL-M8', lot: 'L-1', bin: null }];
  fc.assert(
    fc.property(fc.array(act, { maxLength: 20 }), (acts) => {
      let moves: readonly StockMove[] = [];
      for (const { what, count, place: index } of acts) {
        const place = places[index] ?? bin;
        const balance = have(moves, place);
        const reason = what === 1 ? 'fitted' : 'scrapped';
        const next =
          what === 0
            ? [received(place, count)]
            : what === 3
              ? [counting(place, balance, exact(count), AT)]
              : taking(place, balance, exact(count), reason, AT);
        for (const move of next) {
          moves = [...moves, move];
          // After each single move, not only at the end.
          expect(compare(have(moves, place), ZERO)).not.toBe(-1);
        }
      }
      const all = moves.reduce((sum, { quantity }) => add(sum, quantity), ZERO);
      expect([...balancesOf(moves).values()].reduce(add, ZERO)).toEqual(all);
    }),
    runs(150),
  );
});
