/** What a car cost, worked by hand on a small plan (shop days, money per car). Everything in it is invented. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ZERO, exact, toDecimalText } from '@/lib/domain/base/exact';
import type { Event } from '@/lib/domain/events';
import { costOfCar } from '@/lib/domain/cost-of-car';
import type { CostBooks, CostOfCar } from '@/lib/domain/cost-of-car';
import { compilePlan } from '@/lib/domain/plan/compile';
import { COST_KINDS, carCost } from '@/lib/domain/shop/car-cost';
import type { CarCost, CostInput, OutsideWork } from '@/lib/domain/shop/car-cost';
import { catalogueOf } from '@/lib/domain/shop/item';
import { pricesOf } from '@/lib/domain/shop/unit-price';
import { runs } from '@/tests/support/rules';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const DOCUMENT = plan({
  items: {
    nut: { name: 'insert lock nut M10 class 8', reuse: 'once final', trace: 'lot' },
    washer: { name: 'washer M10' },
    fluid: { name: 'brake fluid', unit: 'l' },
    paint: { name: 'paint', unit: 'tin' },
  },
  stages: { AX: { name: 'Axle' }, WH: { name: 'Wheels' } },
  parts: {
    'P-1': { name: 'Radiator', origin: 'bought' },
    'P-2': { name: 'Hub', origin: 'donor', grade: 'refurbish', outside: '3 d' },
    'P-3': { name: 'Spare hub', origin: 'donor', grade: 'refurbish', outside: '3 d' },
    'P-4': { name: 'Propshaft', origin: 'donor', grade: 'reuse', outside: '6 d' },
  },
  operations: {
    'AX-010': {
      name: 'Hang',
      stage: 'AX',
      minutes: 90,
      crew: 2,
      body: ['final J-1'],
      consumables: { fluid: '0.5 l' },
    },
    'AX-020': { name: 'Plate', stage: 'AX', minutes: 10, outside: '5 d' },
    'WH-010': {
      name: 'Look in',
      stage: 'WH',
      minutes: 30,
      needs: ['AX-010'],
      body: ['open J-1', 'final J-1', 'fit P-1', 'fit P-2', 'fit P-4'],
      consumables: { paint: 1 },
    },
  },
  joints: {
    'J-1': {
      name: 'Arm',
      fasteners: 4,
      method: 'firm',
      torque: 'no value published',
      hardware: { nut: 4, washer: 4 },
    },
  },
});

/** 100 nuts at 8.40 pence with 5 freight on 840: from order 1. Washers were never bought and are offered at 1.50. */
const opened = (): Shop => {
  const shop = shopWith(DOCUMENT);
  shop.does('leo', { type: 'set-supplier', supplier: 'H', name: 'Thornby', orderDays: [3], lead: 2 });
  const offer = (item: string, pack: string, price: number): void => {
    shop.does('leo', { type: 'set-offer', supplier: 'H', item, pack, prices: [{ fromPacks: 1, price }] });
  };
  offer('nut', '50', 420);
  offer('washer', '100', 150);
  offer('fluid', '2', 900);
  offer('P-1', '1', 12_000);
  const lines = [{ offer: 'H/nut/50', packs: 2, price: 420, cars: [] }];
  shop.does('ada', {
    type: 'approve-order',
    first: '1',
    orders: [{ supplier: 'H', ordered: '2026-03-04', freight: 0, lines }],
  });
  shop.does('leo', { type: 'receive-order', order: '1', lines: [{ line: 0, good: '100', lot: 'L-1' }] });
  shop.does('ada', { type: 'set-rate', from: '2026-03-01', money: 3600 });
  return shop;
};

const booksOf = (shop: Shop, outside: readonly OutsideWork[] = []): CostBooks => {
  const { lots, orders, offers, rates, tools, quotes } = shop.world.shop;
  const catalogue = catalogueOf([DOCUMENT]);
  return {
    catalogue,
    facts: { tools, lots },
    priceOf: pricesOf({ lots, orders, offers, catalogue }),
    rates,
    outside,
    quotes,
    now: shop.now,
    dayOf: (at) => at.slice(0, 10),
  };
};
const costOf = (shop: Shop, outside: readonly OutsideWork[] = []): CostOfCar => {
  const car = shop.world.cars['C1'];
  if (car === undefined) throw new Error('no car');
  return costOfCar(compilePlan(DOCUMENT, {}), car, shop.heard, booksOf(shop, outside));
};
const NUTS = [{ item: 'nut', lot: 'L-1' }];
const hang = (shop: Shop): void => {
  shop.does('tom', { type: 'start-operation', operation: 'AX-010' });
  shop.does('tess', { type: 'join-operation', operation: 'AX-010' });
  shop.does('tom', { type: 'final-joint', joint: 'J-1', passes: [[1, 2, 3, 4]], hardware: NUTS });
  shop.later('1 h');
  shop.does('tom', { type: 'finish-operation', operation: 'AX-010' });
};

const reopen = (shop: Shop): void => {
  shop.does('tom', { type: 'start-operation', operation: 'WH-010' });
  shop.does('tom', { type: 'open-joint', joint: 'J-1' });
  shop.does('tom', { type: 'final-joint', joint: 'J-1', passes: [[1, 2, 3, 4]], hardware: NUTS });
};

describe('a plan before anything was done', () => {
  test('is its hardware, its planned re-openings, consumables and bought parts, and its minutes by crew and rate', () => {
    const { planned, stages, unpriced, total } = costOf(opened());
    // Axle: 4 nuts 33.6, 4 washers 6, half a litre 225; 3 h 10 at 36.00. Wheels: 4 nuts again 33.6, the radiator 12000; half an hour.
    expect(stages.map((each) => [each.stage, each.planned.material, each.planned.hours])).toEqual([
      [0, 265, 11_400],
      [1, 12_033, 1800],
    ]);
    expect(stages.map(({ minutes }) => minutes.planned)).toEqual([190, 30]);
    expect(planned).toEqual({ material: 12_298, hours: 13_200, outside: 0, freight: 0, total: 25_498 });
    expect(total).toBe(0);
    // Nobody offers paint. What is sent away has days in the plan and no price; the spare hub is fitted by no work, and the
    // propshaft is sent only if something is found on it.
    expect(unpriced.items).toEqual([{ item: 'paint', soFar: ZERO, planned: exact(1) }]);
    expect(unpriced.plannedOutside.map(({ key }) => key)).toEqual(['AX-020', 'P-2']);
  });

  test('work that is sent away at what was said of it, for every car of that plan; the last word holds', () => {
    const shop = opened();
    const quote = { type: 'quote-outside', plan: 'Corbel 54', key: 'P-2' } as const;
    shop.does('leo', { ...quote, money: 4000 });
    shop.does('leo', { ...quote, money: 4500 });
    shop.does('ada', { ...quote, key: 'AX-020', money: 700 });
    const { planned, stages, unpriced } = costOf(shop);
    expect(planned.outside).toBe(5200);
    expect(stages.map((each) => each.planned.outside)).toEqual([700, 4500]);
    expect(unpriced.plannedOutside).toEqual([]);
  });

  test.each<[string, { plan?: string; key?: string }]>([
    ['of a plan that is not there', { plan: 'Corbel 55' }],
    ['of work that is done here', { key: 'AX-010' }],
    ['of nothing that the plan has', { key: 'P-77' }],
  ])('no price is said %s', (_, wrong) => {
    const quote = { type: 'quote-outside', plan: 'Corbel 54', key: 'P-2', money: 1, ...wrong } as const;
    expect(opened().codes('leo', quote)).toEqual(['unknown-thing']);
  });

  test('without a rate its minutes are counted and named', () => {
    const shop = opened();
    const cost = costOfCar(compilePlan(DOCUMENT, {}), shop.world.cars['C1'] ?? never(), [], {
      ...booksOf(shop),
      rates: {},
    });
    expect([cost.planned.hours, cost.unpriced.minutes]).toEqual([0, { soFar: 0, planned: 220 }]);
  });
});

const never = (): never => {
  throw new Error('no car');
};

describe('a car so far', () => {
  test('what went in stands in the stage of its work, at what its lot cost; hours at the rate of their day', () => {
    const shop = opened();
    hang(shop);
    const cost = costOf(shop);
    // 4 nuts 33.6, 4 washers 6, half a litre 225. Tom 63 minutes, Tess 62 (a minute passes with each act): 125 at 0.60.
    expect(cost.stages[0]?.soFar).toEqual({
      material: 265,
      hours: 7500,
      outside: 0,
      freight: 0,
      total: 7765,
    });
    expect(cost.stages[0]?.minutes.soFar).toBe(125);
    expect(
      cost.materials.map(({ item, basis, quantity, money }) => [item, basis, toDecimalText(quantity), money]),
    ).toEqual([
      ['fluid', 'offer', '0.5', 225],
      ['nut', 'lot', '4', 34],
      ['washer', 'offer', '4', 6],
    ]);
  });

  test('a rate holds from its day on, and what was worked before keeps the one before', () => {
    const shop = opened();
    hang(shop);
    const before = costOf(shop).soFar.hours;
    shop.does('ada', { type: 'set-rate', from: '2026-03-03', money: 7200 });
    expect(costOf(shop).soFar.hours).toBe(before);
    shop.does('ada', { type: 'set-rate', from: '2026-03-02', money: 7200 });
    expect(costOf(shop).soFar.hours).toBe(2 * before);
    expect(shop.does('ada', { type: 'set-rate', from: '2026-03-02', money: 7200 })).toEqual([]);
  });

  test('what the plan opens again is no scrap; what was opened for another reason is, at what it cost', () => {
    const shop = opened();
    hang(shop);
    reopen(shop);
    expect(costOf(shop).scrapped).toEqual([]);
    const again = shop.heard.map((event) =>
      event.type === 'joint-opened' ? { ...event, run: { operation: 'WH-010', run: 2 } } : event,
    );
    const car = shop.world.cars['C1'] ?? never();
    // The same once more is nothing that the plan asks for.
    expect(costOfCar(compilePlan(DOCUMENT, {}), car, again, booksOf(shop)).scrap).toBe(33);
    // 264.6 and 33.6 are 298.2, in all 298: of two that lost as much the first is rounded up.
    expect(costOf(shop).stages.map(({ soFar }) => soFar.material)).toEqual([265, 33]);
    shop.does('tom', { type: 'open-joint', joint: 'J-1', fasteners: [2], reason: 'shimmed' });
    shop.does('tom', { type: 'final-joint', joint: 'J-1', passes: [[1, 2, 3, 4]], hardware: NUTS });
    const cost = costOf(shop);
    expect(cost.scrapped.map(({ item, scrap, for: at, money }) => [item, scrap, at, money])).toEqual([
      ['nut', 'renewed', 'J-1', 9],
    ]);
    // 8.4 beside 298.2: the whole is 307, and the scrap lost most.
    expect([cost.soFar.material, cost.scrap, cost.total]).toEqual([298, 9, cost.soFar.total + 9]);
  });

  test('damaged in its kit, taken for it and lost: scrap; taken for another car or sent back: none of it', () => {
    const shop = opened();
    const kit = { operation: 'AX-010', lines: [{ item: 'nut', lot: 'L-1', quantity: '4' }] } as const;
    shop.does('tom', { type: 'pick-kit', ...kit });
    shop.does('tom', {
      type: 'report-kit-line',
      operation: 'AX-010',
      item: 'nut',
      what: 'damaged',
      quantity: '2',
    });
    const draw = { type: 'draw-stock', item: 'washer', quantity: '10' } as const;
    shop.does('tom', { ...draw, reason: 'lost', forCar: 'C1' });
    shop.does('tom', { ...draw, reason: 'returned', forCar: 'C1' });
    shop.does('tom', { ...draw, reason: 'scrapped', forCar: 'C2' });
    const cost = costOf(shop);
    expect(cost.scrapped.map(({ item, scrap, money }) => [item, scrap, money])).toEqual([
      ['nut', 'damaged', 17],
      ['washer', 'lost', 15],
    ]);
    expect([cost.scrap, cost.total]).toEqual([32, 32]);
  });

  test('a bought part counts once it is here; events that say nothing of stock are counted', () => {
    const shop = opened();
    shop.does('tom', { type: 'receive-part', part: 'P-1' });
    hang(shop);
    const silent = shop.heard.map((event): Event => {
      if (event.type !== 'hardware-fitted') return event;
      const { drawn: _, ...rest } = event;
      return rest;
    });
    const car = shop.world.cars['C1'] ?? never();
    const cost = costOfCar(compilePlan(DOCUMENT, {}), car, silent, booksOf(shop));
    expect(cost.stages.map(({ soFar }) => soFar.material)).toEqual([225, 12_000]);
    expect(cost.unsaid).toBe(1);
  });

  test('work outside at its bill with its share of the trip; one that is not billed is named', () => {
    const of = { stage: 0, work: 'plating', trip: 'T-1' };
    const outside: readonly OutsideWork[] = [
      { ...of, part: 'P-1', money: 4000, freight: exact(500) },
      { ...of, part: 'P-2', money: null, freight: ZERO },
    ];
    const { soFar, unpriced } = costOf(opened(), outside);
    expect(soFar).toEqual({ material: 0, hours: 0, outside: 4000, freight: 500, total: 4500 });
    expect(unpriced.outside.map(({ part }) => part)).toEqual(['P-2']);
  });

  test('what work used up a second time is scrap, and so is a bought part that another replaced', () => {
    const shop = opened();
    shop.does('tom', { type: 'receive-part', part: 'P-1' });
    hang(shop);
    const twice = shop.heard.flatMap((event): readonly Event[] => {
      if (event.type === 'operation-finished') return [event, { ...event, run: 2 }];
      return event.type === 'part-received' ? [event, { ...event, piece: 2 }] : [event];
    });
    const car = shop.world.cars['C1'] ?? never();
    const cost = costOfCar(compilePlan(DOCUMENT, {}), car, twice, booksOf(shop));
    expect(cost.scrapped.map(({ item, scrap, money }) => [item, scrap, money])).toEqual([
      ['P-1', 'renewed', 12_000],
      ['fluid', 'again', 225],
    ]);
    expect(cost.soFar.material).toBe(12_265);
  });

  test('a part off another car, or back from outside work, was not bought', () => {
    const shop = opened();
    shop.does('tom', { type: 'receive-part', part: 'P-1' });
    const car = shop.world.cars['C1'] ?? never();
    const bought = (more: object): number => {
      const events = shop.heard.map((event) =>
        event.type === 'part-received' ? { ...event, ...more } : event,
      );
      return costOfCar(compilePlan(DOCUMENT, {}), car, events, booksOf(shop)).total;
    };
    expect([bought({}), bought({ from: 'C2' }), bought({ looked: 'true' })]).toEqual([12_000, 0, 0]);
  });

  test('what the shelf loses of bulk is no car’s', () => {
    const shop = opened();
    const books = booksOf(shop);
    const washer = { ...(books.catalogue['washer'] ?? never()), attrition: exact(1, 2) };
    const catalogue = { ...books.catalogue, washer };
    const car = shop.world.cars['C1'] ?? never();
    const { planned } = costOfCar(compilePlan(DOCUMENT, {}), car, [], { ...books, catalogue });
    expect(planned).toEqual(costOf(shop).planned);
  });

  test('what lay in a box is paid for with the box', () => {
    const shop = opened();
    hang(shop);
    reopen(shop);
    const books = booksOf(shop);
    const fluid = books.catalogue['fluid'] ?? never();
    const catalogue = { ...books.catalogue, fluid: { ...fluid, comesWith: { nut: 6 } } };
    const car = shop.world.cars['C1'] ?? never();
    // Half of a box: three of the eight nuts.
    const cost = costOfCar(compilePlan(DOCUMENT, {}), car, shop.heard, { ...books, catalogue });
    expect(cost.materials.find(({ item }) => item === 'nut')).toMatchObject({
      quantity: exact(5),
      money: 42,
    });
  });
});

/** Everything that a page shows of it adds up. */
const addsUp = (cost: CarCost): void => {
  const sum = (of: readonly number[]): number => of.reduce((all, each) => all + each, 0);
  for (const side of ['soFar', 'planned'] as const) {
    for (const kind of [...COST_KINDS, 'total'] as const)
      expect(sum(cost.stages.map((each) => each[side][kind])), `${side} ${kind}`).toBe(cost[side][kind]);
    for (const figures of [cost[side], ...cost.stages.map((each) => each[side])])
      expect(sum(COST_KINDS.map((kind) => figures[kind]))).toBe(figures.total);
  }
  expect(sum(cost.materials.map(({ money }) => money))).toBe(cost.soFar.material);
  expect(sum(cost.scrapped.map(({ money }) => money ?? 0))).toBe(cost.scrap);
  expect(cost.soFar.total + cost.scrap).toBe(cost.total);
};

test('whatever happened, stages, kinds and lines add up to the sums, and the sum is the exact one rounded once', () => {
  const part = fc.record({
    item: fc.constantFrom('a', 'b', 'c', 'none'),
    lot: fc.constant(null),
    quantity: fc
      .tuple(fc.integer({ min: 1, max: 900 }), fc.constantFrom(1, 3, 7, 8))
      .map(([n, d]) => exact(n, d)),
    stage: fc.constantFrom(0, 1, 2, null),
    at: fc.constant('2026-03-02T08:00:00.000Z'),
    for: fc.constant(null),
    scrap: fc.constantFrom(null, null, 'renewed' as const),
  });
  const worked = fc.record({
    stage: fc.constantFrom(0, 1, 2, null),
    milliseconds: fc.integer({ min: 0, max: 40_000_000 }),
    day: fc.constantFrom('2026-02-28', '2026-03-02'),
  });
  const priceOf: CostInput['priceOf'] = (item) =>
    item === 'none' ? null : { basis: 'paid', goods: exact(item.charCodeAt(0), 13), freight: exact(1, 11) };
  fc.assert(
    fc.property(fc.array(part, { maxLength: 30 }), fc.array(worked, { maxLength: 12 }), (drawings, hours) => {
      const cost = carCost({
        stages: 3,
        drawings,
        worked: hours,
        outside: [],
        planned: { materials: drawings, minutes: [{ stage: 1, minutes: 37 }], outside: [] },
        priceOf,
        rates: { '2026-03-01': { id: '2026-03-01', money: 3799 } },
        today: '2026-03-02',
      });
      addsUp(cost);
      const exactly = [
        ...drawings.flatMap(({ item, quantity }) => {
          const price = priceOf(item, null, null);
          const each = price === null ? 0 : Number(price.goods.num) / Number(price.goods.den) + 1 / 11;
          return [(Number(quantity.num) / Number(quantity.den)) * each];
        }),
        ...hours.flatMap(({ day, milliseconds }) =>
          day > '2026-03' ? [(milliseconds * 3799) / 3_600_000] : [],
        ),
      ].reduce((sum, each) => sum + each, 0);
      expect(Math.abs(cost.total - exactly)).toBeLessThan(0.501);
    }),
    runs(150),
  );
});
