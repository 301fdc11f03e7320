/** The week’s order against counting all orders, and against a second solver that knows nothing of the first. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { daysLate, itemsFor, shipmentsOf } from '@/lib/domain/shop/order';
import type { Offer, OrderProblem, Supplier } from '@/lib/domain/shop/order';
import { compareOrders, orderScore } from '@/lib/domain/shop/order-score';
import { highs } from '@/lib/solve/highs';
import { handOut } from '@/lib/solve/order/hand-out';
import { goodsModel } from '@/lib/solve/order/model';
import { asRows } from '@/lib/solve/order/narrow';
import { pinCosts } from '@/lib/solve/order/pin-costs';
import { solveOrder } from '@/lib/solve/order/solve';
import { solveBySplits } from '@/lib/solve/order/splits';
import { wantsOf } from '@/lib/solve/order/wants';
import { solveProgram } from '@/lib/solve/program';
import { runs } from '@/tests/support/rules';
import { leastByGlpk } from '@/tests/support/order-glpk';

/** A Wednesday. */
const TODAY = 20_782;
const MOST_PACKS = 5;

interface Best {
  readonly lateCarDays: number;
  readonly money: number;
}

/** Fewest late car-days that what was bought allows; null where it is not enough. */
const leastLate = (problem: OrderProblem, supply: ReadonlyMap<string, number>): number | null => {
  const left = new Map(supply);
  const late = new Map<string, number>();
  const shipments = shipmentsOf(problem);
  const units = problem.lines.flatMap((line) => Array.from({ length: line.quantity }, () => line));
  let best: number | null = null;
  const give = (index: number): void => {
    const sum = [...late.values()].reduce((days, each) => days + each, 0);
    if (best !== null && sum >= best) return;
    const line = units[index];
    if (line === undefined) {
      best = sum;
      return;
    }
    for (const shipment of shipments)
      for (const item of itemsFor(line)) {
        const key = `${shipment.key} ${item}`;
        const there = left.get(key) ?? 0;
        if (there === 0) continue;
        const before = line.cars.map((car) => [car, late.get(car) ?? 0] as const);
        left.set(key, there - 1);
        for (const [car, days] of before) late.set(car, Math.max(days, daysLate(line, shipment)));
        give(index + 1);
        for (const [car, days] of before) late.set(car, days);
        left.set(key, there);
      }
  };
  give(0);
  return best;
};

/** The best of all orders of up to so many packs of each offer. */
const bestOfAll = (problem: OrderProblem): Best | null => {
  const choices = shipmentsOf(problem).flatMap((shipment) =>
    problem.offers
      .filter(({ supplier }) => supplier === shipment.supplier.key)
      .map((offer) => ({ shipment, offer })),
  );
  // With more than anybody needs on every shipment.
  const never = leastLate(
    problem,
    new Map(choices.map(({ shipment, offer }) => [`${shipment.key} ${offer.item}`, 99])),
  );
  let best: Best | null = null;
  const buy = (index: number, packs: readonly number[]): void => {
    if (index < choices.length) {
      for (let count = 0; count <= MOST_PACKS; count += 1) buy(index + 1, [...packs, count]);
      return;
    }
    const rows = choices.flatMap(({ shipment, offer }, at) =>
      (packs[at] ?? 0) > 0 ? [{ shipment: shipment.key, offer: offer.key, packs: packs[at] ?? 0 }] : [],
    );
    const { money, faults } = orderScore(problem, { packs: rows, given: [] });
    if (faults.some(({ code }) => code !== 'line-short')) return;
    if (best?.lateCarDays === never && money >= best.money) return;
    const supply = new Map<string, number>();
    choices.forEach(({ shipment, offer }, at) => {
      const key = `${shipment.key} ${offer.item}`;
      supply.set(key, (supply.get(key) ?? 0) + (packs[at] ?? 0) * offer.packSize);
    });
    const lateCarDays = leastLate(problem, supply);
    if (lateCarDays === null) return;
    if (best === null || compareOrders({ lateCarDays, money }, best) < 0) best = { lateCarDays, money };
  };
  buy(0, []);
  return best;
};

const supplier = (key: string) =>
  fc
    .record({
      lead: fc.integer({ min: 0, max: 4 }),
      takesToday: fc.constant(false),
      orderDays: fc.constantFrom([3], [4]),
      minimumValue: fc.constantFrom(0, 5, 9),
      freight: fc.constantFrom<Supplier['freight']>(
        {
          by: 'value',
          steps: [
            { from: 0, fee: 4 },
            { from: 12, fee: 0 },
          ],
        },
        { by: 'value', steps: [{ from: 0, fee: 2 }] },
        {
          by: 'weight',
          steps: [
            { from: 0, fee: 1 },
            { from: 4, fee: 5 },
          ],
        },
      ),
    })
    .map((rest): Supplier => ({ key, ...rest }));

const offer = (of: string, item: string) =>
  fc
    .record({
      packSize: fc.integer({ min: 1, max: 3 }),
      weight: fc.integer({ min: 1, max: 3 }),
      steps: fc.constantFrom<Offer['steps']>(
        [{ fromPacks: 1, price: 4 }],
        [{ fromPacks: 1, price: 6 }],
        [
          { fromPacks: 1, price: 7 },
          { fromPacks: 2, price: 4 },
        ],
        [{ fromPacks: 2, price: 5 }],
      ),
    })
    .map((rest): Offer => ({ key: `${of}-${item}`, supplier: of, item, ...rest }));

const smallOrder = fc
  .record({
    suppliers: fc.tuple(supplier('H'), supplier('M')),
    offers: fc.tuple(offer('H', 'bolt'), offer('M', 'bolt'), offer('H', 'nut'), offer('M', 'nut')),
    lines: fc.array(
      fc.record({
        item: fc.constantFrom('bolt', 'nut'),
        quantity: fc.integer({ min: 1, max: 2 }),
        needBy: fc.integer({ min: TODAY, max: TODAY + 4 }),
        cars: fc.subarray(['3', '5']),
        substitutes: fc.constantFrom([], ['nut']),
      }),
      { minLength: 1, maxLength: 2 },
    ),
  })
  .map(({ suppliers, offers, lines }): OrderProblem => ({
    today: TODAY,
    suppliers,
    offers,
    lines: lines.map((line, index) => ({ key: String(index), ...line })),
    pins: [],
  }));

test('no small order is better, and none is said to be', async () => {
  await fc.assert(
    fc.asyncProperty(smallOrder, async (problem) => {
      const best = bestOfAll(problem);
      const { score, bound, proved } = await solveOrder(problem, 5);
      expect(score?.faults).toEqual([]);
      expect({ lateCarDays: score?.lateCarDays, money: score?.money }).toEqual(best);
      expect(bound).toEqual(best);
      expect(proved).toBe(true);
    }),
    { ...runs(40), endOnFailure: true },
  );
});

/** Items of which one may come in place of the one before it, in time with one, two or all of three suppliers; invented. */
const standIns = fc
  .record({
    offers: fc.array(
      fc.record({
        price: fc.integer({ min: 20, max: 900 }),
        packSize: fc.constantFrom(1, 3, 10),
        fromPacks: fc.constantFrom(1, 2),
        isSold: fc.boolean(),
      }),
      { minLength: 9, maxLength: 9 },
    ),
    lines: fc.array(
      fc.record({
        item: fc.integer({ min: 0, max: 2 }),
        quantity: fc.integer({ min: 1, max: 12 }),
        needBy: fc.integer({ min: TODAY, max: TODAY + 2 }),
        mayBeNext: fc.boolean(),
      }),
      { minLength: 2, maxLength: 5 },
    ),
  })
  .map(({ offers, lines }): OrderProblem => ({
    today: TODAY,
    suppliers: [0, 1, 2].map((lead) => ({
      key: String(lead),
      orderDays: [3],
      takesToday: false,
      lead,
      minimumValue: 0,
      freight: { by: 'value', steps: [{ from: 0, fee: 0 }] },
    })),
    offers: offers.flatMap(({ price, packSize, fromPacks, isSold }, index) =>
      isSold || index % 3 === 0
        ? [
            {
              key: String(index),
              supplier: String(index % 3),
              item: String(Math.floor(index / 3)),
              packSize,
              steps: [
                { fromPacks, price },
                { fromPacks: fromPacks + 3, price: Math.ceil(price * 0.8) },
              ],
              weight: 0,
            },
          ]
        : [],
    ),
    lines: lines.map(({ item, quantity, needBy, mayBeNext }, index) => ({
      key: String(index),
      item: String(item),
      quantity,
      needBy,
      cars: ['3'],
      substitutes: mayBeNext && item < 2 ? [String(item + 1)] : [],
    })),
    pins: [],
  }));

test('of items that stand in for one another, tables and a program find the same least money', async () => {
  const solver = await highs();
  fc.assert(
    fc.property(standIns, (problem) => {
      const { wants } = wantsOf(problem);
      const cluster = solveBySplits(problem, wants);
      fc.pre(cluster !== null);
      const { program } = goodsModel(problem, wants, false);
      expect(cluster.least).toBe(Math.round(solveProgram(solver, program, 20).bound));
      const bought = cluster.bought ?? [];
      const rows = asRows(bought);
      expect(orderScore(problem, { packs: rows, given: handOut(wants, bought) ?? [] })).toMatchObject({
        money: cluster.least,
        faults: [],
      });
    }),
    { ...runs(20), endOnFailure: true },
  );
});

/** Eight items, three suppliers; invented. */
const middlingOrder = fc
  .record({
    prices: fc.array(fc.integer({ min: 20, max: 900 }), { minLength: 24, maxLength: 24 }),
    packs: fc.array(fc.constantFrom(1, 10, 25, 50), { minLength: 24, maxLength: 24 }),
    wanted: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 8, maxLength: 8 }),
  })
  .map(({ prices, packs, wanted }): OrderProblem => ({
    today: TODAY,
    suppliers: [650, 980, 420].map((fee, index) => ({
      key: String(index),
      orderDays: [3],
      takesToday: false,
      lead: index,
      minimumValue: 1200,
      freight: {
        by: 'value',
        steps: [
          { from: 0, fee },
          { from: 12 * fee, fee: 0 },
        ],
      },
    })),
    lines: wanted.map((quantity, index) => ({
      key: String(index),
      item: String(index),
      quantity,
      needBy: TODAY + 9,
      cars: [],
      substitutes: [],
    })),
    offers: prices.map((price, index) => ({
      key: String(index),
      supplier: String(index % 3),
      item: String(Math.floor(index / 3)),
      packSize: packs[index] ?? 1,
      steps: [
        { fromPacks: 1, price },
        ...(index % 4 === 0 ? [{ fromPacks: 3, price: Math.ceil(price * 0.8) }] : []),
      ],
      weight: 0,
    })),
    pins: [],
  }));

test('GLPK finds the same least money in middling orders', async () => {
  await fc.assert(
    fc.asyncProperty(middlingOrder, async (problem) => {
      const { score, proved } = await solveOrder(problem, 20);
      expect(proved).toBe(true);
      expect(await leastByGlpk(problem)).toBe(score?.money);
    }),
    { ...runs(2), endOnFailure: true },
  );
});

test('a pin costs what the order without it saves', async () => {
  const [first, second] = ['H', 'M'].map((key): Supplier => ({
    key,
    orderDays: [3],
    takesToday: false,
    lead: 1,
    minimumValue: 0,
    freight: { by: 'value', steps: [{ from: 0, fee: key === 'H' ? 650 : 420 }] },
  }));
  const offers = [
    { key: 'h', supplier: 'H', price: 300 },
    { key: 'm', supplier: 'M', price: 370 },
  ].map(({ price, ...rest }) => ({
    ...rest,
    item: 'bolt',
    packSize: 10,
    steps: [{ fromPacks: 1, price }],
    weight: 0,
  }));
  const problem: OrderProblem = {
    today: TODAY,
    suppliers: [first, second].flatMap((each) => each ?? []),
    offers,
    lines: [{ key: 'axle', item: 'bolt', quantity: 10, needBy: TODAY + 9, cars: [], substitutes: [] }],
    pins: [{ line: 'axle', supplier: 'H' }],
  };
  const solution = await solveOrder(problem, 5);
  // H: 3.00 and 6.50; M: 3.70 and 4.20.
  expect(solution.score?.money).toBe(950);
  expect(await pinCosts(problem, solution, 5)).toEqual([
    { line: 'axle', money: 160, lateCarDays: 0, proved: true },
  ]);
  const today = { ...problem, pins: [{ line: 'axle', supplier: 'X' }] };
  expect((await solveOrder(today, 5)).unserved).toEqual(['axle']);
});
