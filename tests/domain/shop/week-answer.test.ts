/** The week's order solved and read back. All invented; the day is Wednesday, 25 November 2026. */
import { describe, expect, test } from 'vitest';
import { ZERO, add, compare, exact, toDecimalText } from '@/lib/domain/base/exact';
import type { SupplierRow } from '@/lib/domain/shop/offer-rows';
import { weekOf } from '@/lib/domain/shop/week';
import { weekSheets } from '@/lib/domain/shop/week-answer';
import { solveOrder } from '@/lib/solve/order/solve';
import { ask, demandFor, offer, supplier, wanted } from '@/tests/support/week';

describe('an invented week, solved and read back', () => {
  // H: 2 days, freight 6.50, free from 20.00; M: tomorrow, freight 4.20.
  const freight = (fee: number, free: number): Partial<SupplierRow> => ({
    freight: {
      by: 'value',
      steps: [
        { from: 0, fee },
        { from: free, fee: 0 },
      ],
    },
  });
  const suppliers = [supplier('H', 2, freight(650, 2000)), supplier('M', 1, freight(420, 6000))];
  const offers = [
    offer('H', 'NUT', '50', 420),
    offer('H', 'NUT', '25', 260),
    offer('M', 'NUT', '10', 150),
    offer('H', 'HOSE', '7.5', 1290),
    offer('M', 'HOSE', '5', 700),
    offer('M', 'PEN', '1', 320),
  ];
  const demand = [
    demandFor('NUT', [wanted('C1', '2026-11-27', exact(8)), wanted('C2', '2026-11-30', exact(30))], exact(6)),
    demandFor('HOSE', [
      wanted('C1', '2026-11-27', exact(641, 100)),
      wanted('C2', '2026-11-27', exact(12, 10)),
    ]),
    demandFor('PEN', [wanted('C1', '2026-11-25', exact(1, 2)), wanted('C2', '2026-11-27', exact(1, 2))]),
  ];

  test('by hand: what looks dearer saves a freight; the pen, which one alone has, is a day late', async () => {
    // All but the pen from H: 4.20 + 2 × 12.90, freight free, and the pen 3.20 + 4.20: 37.40. The hose from M too:
    // 4.20 + 6.50 + 14.00 + 3.20 + 4.20 = 32.10. The nuts as well: 14.00 + 5 × 1.50 + 3.20 + 4.20 = 28.90.
    const week = weekOf(ask(demand, offers, { suppliers }));
    const { answer, score, proved } = await solveOrder(week.problem, 10);
    expect([proved, score?.money, score?.lateCarDays]).toEqual([true, 2890, 1]);
    const sheets = answer === null ? [] : weekSheets(week, answer);
    expect(sheets).toMatchObject([{ supplier: 'M', arrives: '2026-11-26', goods: 2470, freight: 420 }]);
    const told = sheets[0]?.lines.map(({ item, cars, shelf, spare, packs, others, late, by }) => [
      item,
      by,
      late,
      cars.map(({ car, quantity }) => `${car} ${toDecimalText(quantity)}`).join(', '),
      toDecimalText(shelf),
      toDecimalText(spare),
      packs.map((each) => `${String(each.packs)} × ${toDecimalText(each.packSize)}`).join(', '),
      others
        .map(
          (each) =>
            `${each.supplier} ${String(each.packs)} × ${toDecimalText(each.packSize)}: ${String(each.cost)}`,
        )
        .join(', '),
    ]);
    expect(told?.toSorted()).toEqual([
      ['HOSE', '2026-11-27', 0, 'C1 6.41, C2 1.2', '0', '2.39', '2 × 5', 'H 2 × 7.5: 2580'],
      ['NUT', '2026-11-27', 0, 'C1 8, C2 30', '6', '6', '5 × 10', 'H 1 × 50: 420, H 2 × 25: 520'],
      ['PEN', '2026-11-25', 1, 'C1 0.5, C2 0.5', '0', '0', '1 × 1', ''],
    ]);
  });

  test.each([
    ['as it is cheapest', null],
    ['with the nuts from H', { supplier: 'H', quantity: null, buyToday: false, isExcluded: false }],
  ])('%s, what the cars and the shelf get is what is asked for', async (_, pin) => {
    const pins = [{ id: 'NUT', pin, since: '2026-11-25' }];
    const week = weekOf(ask(demand, offers, { suppliers, pins }));
    const { answer } = await solveOrder(week.problem, 10);
    const lines = answer === null ? [] : weekSheets(week, answer).flatMap((sheet) => sheet.lines);
    for (const { item, demand: asked } of demand) {
      const own = lines.filter((line) => line.item === item);
      const got = own.reduce(
        (sum, { cars, shelf }) => cars.reduce((total, { quantity }) => add(total, quantity), add(sum, shelf)),
        ZERO,
      );
      expect([item, toDecimalText(got)]).toEqual([item, toDecimalText(asked)]);
      for (const { spare } of own) expect(compare(spare, ZERO)).toBeGreaterThanOrEqual(0);
    }
    if (pin !== null) expect(lines.find(({ item }) => item === 'NUT')?.packs[0]?.supplier).toBe('H');
  });
});
