/** The week's order as a problem, and back. All invented; the day is Wednesday, 25 November 2026. */
import { describe, expect, test } from 'vitest';
import { ZERO, add, compare, exact, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { DatedLine, DemandLine } from '@/lib/domain/shop/demand';
import { catalogueOf } from '@/lib/domain/shop/item';
import type { OfferRow, PinRow, SupplierRow } from '@/lib/domain/shop/offer-rows';
import { arrivalOf } from '@/lib/domain/shop/order';
import type { Wanted } from '@/lib/domain/shop/supply';
import { dayFrom, dayNumber, weekOf } from '@/lib/domain/shop/week';
import type { WeekAsk } from '@/lib/domain/shop/week';
import { weekSheets } from '@/lib/domain/shop/week-answer';
import { solveOrder } from '@/lib/solve/order/solve';

const document: PlanDocument = {
  plan: 'Corbel',
  revision: '1',
  stages: {},
  items: {
    NUT: { name: 'insert lock nut M10 class 8' },
    PEN: { name: 'slip-mark pen' },
    HOSE: { name: 'fuel hose 8 mm', unit: 'm' },
    M8x25: {
      name: 'bolt M8×1.25×25 8.8 zinc',
      substitutes: {
        M8x30: { condition: 'still clears by 3 mm', notIn: ['J-320'] },
        'M8x25-10': { asksLead: true },
        M10x30: {},
      },
    },
    M8x30: { name: 'bolt M8×1.25×30 8.8 zinc' },
    'M8x25-10': { name: 'bolt M8×1.25×25 10.9 black' },
    M10x30: { name: 'bolt M10×1.5×30 8.8 zinc' },
  },
};
const catalogue = catalogueOf([document]);

const supplier = (id: string, lead: number, terms: Partial<SupplierRow> = {}): SupplierRow => ({
  id,
  name: id,
  orderDays: [3],
  lead,
  takesToday: false,
  minimumValue: 0,
  freight: { by: 'value', steps: [{ from: 0, fee: 0 }] },
  mail: null,
  ...terms,
});
const offer = (seller: string, item: string, packSize: string, price: number): OfferRow => ({
  id: `${seller}/${item}/${packSize}`,
  supplier: seller,
  item,
  packSize,
  steps: [{ fromPacks: 1, price }],
  weight: 0,
  number: null,
  ended: false,
});
const byId = <Row extends { readonly id: string }>(rows: readonly Row[]) =>
  Object.fromEntries(rows.map((row) => [row.id, row]));

const wanted = (car: string, by: string, quantity: Exact): Wanted => ({ car, by, quantity });
const demandFor = (item: string, short: readonly Wanted[], shelf = ZERO, at = 'J-1'): DemandLine => {
  const need = short.reduce((sum, { quantity }) => add(sum, quantity), ZERO);
  const demand = add(need, shelf);
  const lines = short.map(({ car, by, quantity }): DatedLine => ({
    car,
    item,
    what: 'item',
    quantity,
    cause: { kind: 'planned' },
    at,
    before: null,
    due: 0,
    undecided: [],
    by: { day: by, basis: 'plan-minutes', minutesBefore: 0 },
  }));
  const unit = catalogue[item]?.unit ?? 'pc';
  const [first] = short;
  return {
    item,
    what: 'item',
    unit,
    need,
    lines,
    undecided: [],
    allocations: [],
    short,
    minimum: shelf,
    left: ZERO,
    demand,
    buy: demand,
    by: first?.by ?? null,
  };
};

const ask = (
  demand: readonly DemandLine[],
  offers: readonly OfferRow[],
  {
    suppliers = [supplier('H', 2)],
    pins = [],
    ...more
  }: {
    readonly suppliers?: readonly SupplierRow[];
    readonly pins?: readonly PinRow[];
  } & Partial<Pick<WeekAsk, 'today' | 'buffer'>> = {},
): WeekAsk => ({
  demand,
  catalogue,
  supply: { suppliers: byId(suppliers), offers: byId(offers), pins: byId(pins) },
  planOf: () => document,
  today: '2026-11-25',
  shut: [6, 7],
  buffer: 1,
  ...more,
});

describe('when goods come', () => {
  test.each([
    ['the day after tomorrow', '2026-11-25', 2, '2026-11-27'],
    ['not on a day on which the shop is shut', '2026-11-25', 4, '2026-12-01'],
    ['on Monday what is brought the same day on a Saturday', '2026-11-28', 0, '2026-11-30'],
  ])('%s', (_, from, lead, comes) => {
    expect(dayFrom(arrivalOf(dayNumber(from), lead, [6, 7]))).toBe(comes);
  });
});

describe('what can’t wait for the next order', () => {
  /** H comes on 4 December from the order of the 2nd, B, four days off, on the 8th; a day in hand. */
  const both = [supplier('H', 2), supplier('B', 4)];
  test.each<[string, string, readonly OfferRow[], boolean]>([
    ['needed before H could bring it again', '2026-12-04', [offer('H', 'NUT', '50', 1)], true],
    ['needed when H has brought it again', '2026-12-05', [offer('H', 'NUT', '50', 1)], false],
    [
      'while one of two could not any more',
      '2026-12-08',
      [offer('H', 'NUT', '50', 1), offer('B', 'NUT', '10', 1)],
      true,
    ],
    ['both can', '2026-12-09', [offer('H', 'NUT', '50', 1), offer('B', 'NUT', '10', 1)], false],
    ['late already', '2026-11-20', [offer('H', 'NUT', '50', 1)], true],
  ])('%s', (_, by, offers, isNow) => {
    const week = weekOf(ask([demandFor('NUT', [wanted('C1', by, exact(4))])], offers, { suppliers: both }));
    expect([week.groups.length, week.later.length]).toEqual(isNow ? [1, 0] : [0, 1]);
  });

  test('the shelf is filled up to its minimum with every order, and is never late', () => {
    const week = weekOf(ask([demandFor('NUT', [], exact(20))], [offer('H', 'NUT', '50', 1)]));
    expect(week.problem.lines).toMatchObject([{ key: 'NUT@shelf', quantity: 20, cars: [] }]);
  });

  test('what nobody offers is told, and is in no line', () => {
    const ended = { ...offer('H', 'PEN', '1', 1), ended: true };
    const week = weekOf(ask([demandFor('PEN', [wanted('C1', '2026-11-27', exact(1))])], [ended]));
    expect([week.unoffered.map(({ item }) => item), week.problem.lines]).toEqual([['PEN'], []]);
  });

  test('what was insisted on is bought with it, though it could wait', () => {
    const far = [wanted('C1', '2027-03-01', exact(4))];
    const pin = { supplier: null, quantity: '10', buyToday: false, isExcluded: false };
    const pins = [{ id: 'NUT', pin, since: '2026-11-25' }];
    const week = weekOf(ask([demandFor('NUT', far)], [offer('H', 'NUT', '50', 1)], { pins }));
    expect(week.problem).toMatchObject({ lines: [{ quantity: 4 }], pins: [{ group: 'NUT', quantity: 10 }] });
  });
});

describe('whole numbers', () => {
  test('a sum is rounded up once: two halves of a pen are one, and two cars get it', () => {
    const short = [wanted('C1', '2026-11-26', exact(1, 2)), wanted('C2', '2026-11-27', exact(1, 2))];
    const week = weekOf(ask([demandFor('PEN', short)], [offer('H', 'PEN', '1', 320)]));
    expect(week.groups.map(({ steps }) => steps)).toEqual([1, 0]);
    expect(week.problem.lines).toHaveLength(1);
  });

  test('metres are cut into steps in which every pack and every need is whole', () => {
    const short = [wanted('C1', '2026-11-26', exact(641, 100)), wanted('C2', '2026-11-27', exact(12, 10))];
    const offers = [offer('H', 'HOSE', '7.5', 1290), offer('H', 'HOSE', '25', 3100)];
    const week = weekOf(ask([demandFor('HOSE', short)], offers));
    expect(week.stepsOf.get('HOSE')).toBe(100);
    expect(week.problem.lines.map(({ quantity }) => quantity)).toEqual([641, 120]);
    expect(week.problem.offers.map(({ packSize }) => packSize)).toEqual([750, 2500]);
  });

  test('a need that never ends is rounded up in steps that the packs allow', () => {
    const short = [3, 1999].map((den) => wanted('C1', '2026-11-26', exact(1, den)));
    const { problem } = weekOf(ask([demandFor('HOSE', short)], [offer('H', 'HOSE', '0.5', 1)]));
    expect([problem.offers[0]?.packSize, problem.lines[0]?.quantity]).toEqual([3, 3]);
  });
});

describe('what may come in its place', () => {
  const short = [wanted('C1', '2026-11-26', exact(4))];
  const offers = ['M8x30', 'M8x25-10', 'M10x30'].map((item) => offer('H', item, '50', 100));

  test('what the plan names, of the same thread, without a lead’s word; nobody need offer the thing itself', () => {
    const week = weekOf(ask([demandFor('M8x25', short)], offers));
    expect(week.problem.lines).toMatchObject([{ item: 'M8x25', substitutes: ['M8x30'] }]);
  });

  test('not in a joint that the plan shuts out, nor on the shelf', () => {
    const inJoint = weekOf(ask([demandFor('M8x25', short, ZERO, 'J-320@L')], offers));
    expect(inJoint.unoffered).toHaveLength(1);
    const shelf = weekOf(ask([demandFor('M8x25', [], exact(10))], offers));
    expect(shelf.unoffered).toHaveLength(1);
  });
});

test('a quantity goes to the earliest first, what is over to the last; supplier and the rest to all', () => {
  const short = ['26', '27'].map((day) => wanted('C1', `2026-11-${day}`, exact(4)));
  const week = (quantity: string | null) => {
    const pin = { supplier: 'H', quantity, buyToday: true, isExcluded: false };
    const pins = [{ id: 'NUT', pin, since: '2026-11-25' }];
    return weekOf(ask([demandFor('NUT', short)], [offer('H', 'NUT', '50', 1)], { pins })).problem.pins;
  };
  expect(week('6').map(({ quantity }) => quantity)).toEqual([4, 2]);
  expect(week('11').map(({ quantity }) => quantity)).toEqual([4, 7]);
  expect(week(null)).toMatchObject([
    { line: 'NUT@2026-11-26', group: 'NUT', supplier: 'H', buyToday: true },
    { line: 'NUT@2026-11-27', group: 'NUT', supplier: 'H', buyToday: true },
  ]);
});

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
