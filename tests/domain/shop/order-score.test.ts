/** What an order costs, and what is wrong with it. Prices and days are invented. */
import { describe, expect, test } from 'vitest';
import { shipmentsOf } from '@/lib/domain/shop/order';
import type { OrderAnswer, OrderProblem, Pin } from '@/lib/domain/shop/order';
import { orderScore } from '@/lib/domain/shop/order-score';

/** Wednesday, 25 November 2026. */
const WEDNESDAY = 20_782;

const problem: OrderProblem = {
  today: WEDNESDAY,
  lines: [
    {
      key: 'axle',
      item: 'M8x25',
      quantity: 23,
      needBy: WEDNESDAY + 2,
      cars: ['3', '5'],
      substitutes: ['M8x30'],
    },
    { key: 'seat', item: 'M8x30', quantity: 4, needBy: WEDNESDAY + 9, cars: ['3'], substitutes: [] },
  ],
  suppliers: [
    {
      key: 'H',
      orderDays: [3],
      takesToday: true,
      lead: 4,
      minimumValue: 1200,
      freight: {
        by: 'value',
        steps: [
          { from: 0, fee: 650 },
          { from: 9000, fee: 0 },
        ],
      },
    },
    {
      key: 'M',
      orderDays: [5],
      takesToday: true,
      lead: 1,
      minimumValue: 0,
      freight: {
        by: 'weight',
        steps: [
          { from: 0, fee: 420 },
          { from: 1000, fee: 800 },
        ],
      },
    },
  ],
  offers: [
    {
      key: 'h25',
      supplier: 'H',
      item: 'M8x25',
      packSize: 10,
      steps: [
        { fromPacks: 2, price: 500 },
        { fromPacks: 5, price: 400 },
      ],
      weight: 100,
    },
    {
      key: 'm30',
      supplier: 'M',
      item: 'M8x30',
      packSize: 25,
      steps: [{ fromPacks: 1, price: 430 }],
      weight: 500,
    },
    {
      key: 'm99',
      supplier: 'M',
      item: 'M9x99',
      packSize: 1,
      steps: [{ fromPacks: 1, price: 100 }],
      weight: 1,
    },
  ],
  pins: [],
};
const [H, , M] = ['H@20782', 'M@20782', 'M@20784'];
const answer: OrderAnswer = {
  packs: [
    { shipment: H, offer: 'h25', packs: 3 },
    { shipment: M, offer: 'm30', packs: 1 },
  ],
  given: [
    { line: 'axle', shipment: H, item: 'M8x25', quantity: 23 },
    { line: 'seat', shipment: M, item: 'M8x30', quantity: 4 },
  ],
};
const faults = (change: Partial<OrderAnswer>, ...pins: readonly Pin[]) =>
  orderScore({ ...problem, pins }, { ...answer, ...change }).faults;

test('orders go out on order days, and today where a supplier takes that', () => {
  expect(shipmentsOf(problem).map(({ key, arrives }) => [key, arrives - WEDNESDAY])).toEqual([
    ['H@20782', 4],
    ['M@20782', 1],
    ['M@20784', 3],
  ]);
});

test('money is goods by their step and freight by its table; a car is late by its latest line', () => {
  const score = orderScore(problem, answer);
  expect(score.faults).toEqual([]);
  expect([score.goods, score.freight, score.money]).toEqual([1930, 1070, 3000]);
  expect(score.late).toEqual([
    { car: '3', days: 2 },
    { car: '5', days: 2 },
  ]);
  expect(score.lateCarDays).toBe(4);
  const more = orderScore(problem, {
    ...answer,
    packs: [
      { shipment: H, offer: 'h25', packs: 5 },
      { shipment: M, offer: 'm30', packs: 2 },
    ],
  });
  expect([more.goods, more.freight]).toEqual([2860, 1450]);
});

describe('what is wrong is told', () => {
  test('of what is bought', () => {
    expect(
      faults({ packs: [{ shipment: H, offer: 'h25', packs: 1 }, ...answer.packs.slice(1)] }).map(
        ({ code }) => code,
      ),
    ).toEqual(['too-few-packs', 'below-minimum-order', 'given-twice']);
    expect(faults({ packs: [...answer.packs, { shipment: M, offer: 'm99', packs: 1 }] })).toEqual([
      { code: 'nobody-wants', item: 'M9x99', offer: 'm99' },
    ]);
    expect(faults({ packs: [...answer.packs, { shipment: H, offer: 'm30', packs: 1 }] })).toEqual([
      { code: 'other-supplier', offer: 'm30', shipment: H },
    ]);
    expect(
      faults({ packs: [...answer.packs, { shipment: 'X', offer: 'y', packs: 0.5 }] }).map(({ code }) => code),
    ).toEqual(['not-a-count', 'unknown-offer', 'unknown-shipment']);
  });

  test('of who gets it', () => {
    expect(faults({ given: answer.given.slice(1) })).toEqual([
      { code: 'line-short', line: 'axle', given: 0, wanted: 23 },
    ]);
    const swapped = answer.given.map((each) => ({ ...each, shipment: M, item: 'M8x30', quantity: 23 }));
    expect(faults({ given: swapped })).toEqual([
      { code: 'given-twice', shipment: M, item: 'M8x30', given: 46, bought: 25 },
    ]);
    const back = [...answer.given, { line: 'seat', shipment: H, item: 'M8x25', quantity: 1 }];
    expect(faults({ given: back })).toEqual([{ code: 'no-such-substitute', line: 'seat', item: 'M8x25' }]);
  });

  test('of pins', () => {
    expect(faults({}, { line: 'axle', supplier: 'M' })).toEqual([
      { code: 'against-a-pin', line: 'axle', shipment: H },
    ]);
    expect(faults({}, { line: 'seat', buyToday: true })).toEqual([
      { code: 'against-a-pin', line: 'seat', shipment: M },
    ]);
    expect(faults({}, { line: 'axle', quantity: 30 })).toEqual([
      { code: 'line-short', line: 'axle', given: 23, wanted: 30 },
    ]);
    expect(faults({}, { line: 'seat', isExcluded: true })).toEqual([
      { code: 'against-a-pin', line: 'seat', shipment: M },
    ]);
  });
});
