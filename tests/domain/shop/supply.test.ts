/** Who gets what is there: tables, and a second way to count for lots alone. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ZERO, add, compare, exact, toDecimalText } from '@/lib/domain/base/exact';
import { needBy } from '@/lib/domain/shop/need-days';
import { quantityText } from '@/lib/domain/shop/need-words';
import { allocate } from '@/lib/domain/shop/supply';
import type { Allocated, Supply, Wanted } from '@/lib/domain/shop/supply';
import { compilePlan } from '@/lib/domain/plan/compile';
import { runs } from '@/tests/support/rules';
import { plan, shopWith } from '@/tests/support/shop';

const want = (car: string, by: string, quantity: number): Wanted => ({ car, by, quantity: exact(quantity) });
const lot = (
  name: string,
  quantity: number,
  goodUntil: string | null = null,
  onlyFor: string | null = null,
): Supply => ({
  item: 'nut',
  quantity: exact(quantity),
  source: { kind: 'lot', lot: name },
  goodUntil,
  onlyFor,
});
const order = (name: string, quantity: number, due: string): Supply => ({
  ...lot(name, quantity),
  source: { kind: 'order', order: name, due },
});
const donor = (name: string, quantity: number, onlyFor: string): Supply => ({
  ...lot(name, quantity, null, onlyFor),
  source: { kind: 'donor', lot: name, car: 'C1' },
});

const told = ({ allocations, unmet, left }: Allocated): readonly string[] => [
  ...allocations.map(({ car, quantity, source, isLate }) => {
    const from = source.kind === 'order' ? source.order : source.kind === 'bulk' ? 'the shelf' : source.lot;
    return `${car} ${toDecimalText(quantity)} ${from}${isLate ? ' late' : ''}`;
  }),
  ...unmet.map(({ car, by, quantity }) => `${car} lacks ${toDecimalText(quantity)} by ${by}`),
  `left ${toDecimalText(left)}`,
];

describe('sharing out', () => {
  test('the earliest need goes first, whichever car it is', () => {
    expect(told(allocate([want('B', '2026-12-03', 4), want('A', '2026-12-01', 4)], [lot('L-1', 6)]))).toEqual(
      ['A 4 L-1', 'B 2 L-1', 'B lacks 2 by 2026-12-03', 'left 0'],
    );
  });

  test('what goes off first is used first, and never after its last day', () => {
    const lots = [lot('L-9', 5), lot('L-1', 3, '2026-12-02'), lot('L-2', 5, '2026-12-31')];
    expect(told(allocate([want('A', '2026-12-01', 2), want('B', '2026-12-03', 4)], lots))).toEqual([
      'A 2 L-1',
      // One of L-1 is left, too old by then.
      'B 4 L-2',
      'left 7',
    ]);
    expect(told(allocate([want('A', '2026-12-02', 1)], [lot('L-1', 1, '2026-12-02')]))[0]).toBe('A 1 L-1');
  });

  test('what is put aside for a car is nobody else’s', () => {
    const supply = [donor('P-9', 2, 'B'), lot('L-1', 1)];
    expect(told(allocate([want('A', '2026-12-01', 2), want('B', '2026-12-02', 2)], supply))).toEqual([
      'A 1 L-1',
      'B 2 P-9',
      'A lacks 1 by 2026-12-01',
      'left 0',
    ]);
  });

  test('what is on order counts, and says where it comes too late', () => {
    const supply = [order('PO-2', 5, '2026-12-04'), lot('L-1', 1), order('PO-1', 2, '2026-11-30')];
    expect(told(allocate([want('A', '2026-12-01', 4)], supply))).toEqual([
      'A 1 L-1',
      'A 2 PO-1',
      'A 1 PO-2 late',
      'left 4',
    ]);
  });

  test('nothing wanted, all is left', () => {
    expect(told(allocate([], [lot('L-1', 3)]))).toEqual(['left 3']);
    expect(told(allocate([want('A', '2026-12-01', 1)], []))).toEqual(['A lacks 1 by 2026-12-01', 'left 0']);
  });

  /** The most that can be served of single pieces, by augmenting paths: shares no line with the rule. */
  const most = (days: readonly number[], lasts: readonly number[]): number => {
    const taker = new Map<number, number>();
    const serve = (one: number, seen: Set<number>): boolean =>
      lasts.some((last, piece) => {
        if (seen.has(piece) || last < (days[one] ?? 0)) return false;
        seen.add(piece);
        const holder = taker.get(piece);
        if (holder !== undefined && !serve(holder, seen)) return false;
        taker.set(piece, one);
        return true;
      });
    return days.filter((_, one) => serve(one, new Set())).length;
  };

  test('of lots alone nobody could serve more', () => {
    const day = fc.integer({ min: 1, max: 9 });
    fc.assert(
      fc.property(fc.array(day, { maxLength: 7 }), fc.array(day, { maxLength: 7 }), (days, lasts) => {
        const wanted = days.map((each, index) => want(`C${String(index)}`, `2026-12-0${String(each)}`, 1));
        const lots = lasts.map((each, index) => lot(`L-${String(index)}`, 1, `2026-12-0${String(each)}`));
        const served = allocate(wanted, lots).allocations.reduce(
          (sum, { quantity }) => add(sum, quantity),
          ZERO,
        );
        expect(compare(served, exact(most(days, lasts)))).toBe(0);
      }),
      runs(300),
    );
  });
});

describe('need-by days', () => {
  const simple = plan({
    stages: { S1: { name: 'One' }, S2: { name: 'Two' } },
    operations: {
      'O-2': { name: 'later', stage: 'S2', minutes: 100 },
      'O-1': { name: 'first', stage: 'S1', minutes: 800 },
      'O-3': { name: 'last', stage: 'S2', minutes: 100 },
    },
  });
  const at = { today: '2026-11-25', minutesADay: 420, days: { shut: [6, 7], closed: [] } };

  test('are reckoned from the work that stands before, stage by stage', () => {
    const shop = shopWith(simple);
    const by = (work: string | null): ReturnType<typeof needBy> =>
      needBy(compilePlan(simple, {}), shop.car(), work, at);
    expect(by('O-1')).toEqual({ day: '2026-11-25', basis: 'plan-minutes', minutesBefore: 0 });
    // 800 minutes are one whole day and a part of the next.
    expect(by('O-2')).toEqual({ day: '2026-11-26', basis: 'plan-minutes', minutesBefore: 800 });
    expect(by('O-3')).toEqual({ day: '2026-11-27', basis: 'plan-minutes', minutesBefore: 900 });
    expect(by(null)).toEqual({ day: '2026-11-25', basis: 'now', minutesBefore: 0 });
    shop.perform('tom', 'O-1');
    expect(by('O-3').minutesBefore).toBe(100);
  });

  test('skip Saturday and Sunday', () => {
    const shop = shopWith(simple);
    const friday = { ...at, today: '2026-11-27', minutesADay: 800 };
    expect(needBy(compilePlan(simple, {}), shop.car(), 'O-2', friday).day).toBe('2026-11-30');
  });
});

test.each([
  [exact(4), 'pc', '4'],
  [exact(1, 2), 'pc', '1/2'],
  [exact(21, 5), 'pc', '4.2'],
  [exact(641, 100), 'm', '6.41 m'],
  [exact(3), '5 l', '3'],
])('%o %s is said as %s', (quantity, unit, said) => {
  expect(quantityText(quantity, unit)).toBe(said);
});
