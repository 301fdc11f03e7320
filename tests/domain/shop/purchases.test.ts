/**
 * From an approval to the shelf (shop days 1 (d), section 2: part delivery, back order, over, wrong, damaged, credit). All
 * prices are invented.
 */
import { describe, expect, test } from 'vitest';
import { toDecimalText } from '@/lib/domain/base/exact';
import type { ApprovedLine } from '@/lib/domain/purchase-claims';
import {
  depositsOf,
  isOpen,
  lotName,
  nextLotNumber,
  onOrder,
  outstandingOf,
} from '@/lib/domain/shop/purchase-rows';
import type { PurchaseOrder } from '@/lib/domain/shop/purchase-rows';
import { onHand, stockKey } from '@/lib/domain/shop/stock';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const DOCUMENT = plan({
  items: {
    nut: { name: 'insert lock nut M10 class 8', reuse: 'once final', trace: 'lot' },
    washer: { name: 'washer M10' },
  },
  stages: { AX: { name: 'Axle' } },
  operations: { 'AX-010': { name: 'Hang', stage: 'AX' } },
});

const NUTS: ApprovedLine = {
  offer: 'H/nut/50',
  packs: 2,
  price: 420,
  cars: [
    { car: 'C1', quantity: '84' },
    { car: null, quantity: '16' },
  ],
};
const WASHERS: ApprovedLine = {
  offer: 'H/washer/100',
  packs: 1,
  price: 180,
  cars: [{ car: 'C1', quantity: '100' }],
};

/** Freight 6.50, free from 90; from ten packs on the nuts cost less; no order below 8. */
const opened = (): Shop => {
  const shop = shopWith(DOCUMENT);
  shop.does('leo', {
    type: 'set-supplier',
    supplier: 'H',
    name: 'Thornby Fixings',
    orderDays: [3],
    lead: 2,
    minimumValue: 800,
    freight: {
      by: 'value',
      steps: [
        { from: 0, fee: 650 },
        { from: 9000, fee: 0 },
      ],
    },
  });
  shop.does('leo', {
    type: 'set-offer',
    supplier: 'H',
    item: 'nut',
    pack: '50',
    prices: [
      { fromPacks: 1, price: 420 },
      { fromPacks: 10, price: 400 },
    ],
  });
  shop.does('leo', {
    type: 'set-offer',
    supplier: 'H',
    item: 'washer',
    pack: '100',
    prices: [{ fromPacks: 1, price: 180 }],
  });
  return shop;
};

const approving = (lines: readonly ApprovedLine[], freight = 650, first = '1') =>
  ({
    type: 'approve-order',
    first,
    orders: [{ supplier: 'H', ordered: '2026-03-04', freight, lines }],
  }) as const;
const approved = (): Shop => {
  const shop = opened();
  shop.does('ada', approving([NUTS, WASHERS]));
  return shop;
};
const orderIn = (shop: Shop): PurchaseOrder => {
  const order = shop.world.shop.orders['1'];
  if (order === undefined) throw new Error('no order');
  return order;
};
const left = (shop: Shop): readonly string[] =>
  orderIn(shop).lines.map((line) => toDecimalText(outstandingOf(line)));
const have = (shop: Shop, item: string, lot: string | null = null): string => {
  const row = shop.world.stock[stockKey({ item, lot })];
  return row === undefined ? 'nothing' : toDecimalText(onHand(row));
};

describe('approving', () => {
  test('freezes what was seen: lines, prices, freight, who and when', () => {
    const order = orderIn(approved());
    expect(order).toMatchObject({ id: '1', supplier: 'H', goods: 1020, freight: 650, approvedBy: 'ada' });
    expect(order.lines.map(({ item, packs, price }) => [item, packs, price])).toEqual([
      ['nut', 2, 420],
      ['washer', 1, 180],
    ]);
  });

  test('a later price changes nothing of it', () => {
    const shop = approved();
    shop.does('leo', {
      type: 'set-offer',
      supplier: 'H',
      item: 'nut',
      pack: '50',
      prices: [{ fromPacks: 1, price: 990 }],
    });
    expect(orderIn(shop)).toMatchObject({ goods: 1020, lines: [{ price: 420 }, { price: 180 }] });
  });

  test('only an owner approves', () => {
    expect(opened().codes('leo', approving([NUTS, WASHERS]))).toEqual(['not-allowed']);
  });

  test('a price that is another by now is refused, and every one of them is named', () => {
    const seen = [
      { ...NUTS, price: 410 },
      { ...WASHERS, price: 170 },
    ];
    const refusals = opened().refused('ada', approving(seen));
    expect(refusals.map(({ code, details }) => [code, details])).toEqual([
      ['price-changed', { item: 'nut', supplier: 'Thornby Fixings', pack: '50', seen: 410, now: 420 }],
      ['price-changed', { item: 'washer', supplier: 'Thornby Fixings', pack: '100', seen: 170, now: 180 }],
    ]);
  });

  test('the price is that of the step that so many packs reach; the freight that of the goods', () => {
    const shop = opened();
    const many = [{ ...NUTS, packs: 24, price: 400 }];
    expect(shop.codes('ada', approving([{ ...NUTS, packs: 24 }], 0))).toEqual(['price-changed']);
    expect(shop.codes('ada', approving(many, 650))).toEqual(['freight-changed']);
    shop.does('ada', approving(many, 0));
    expect(orderIn(shop)).toMatchObject({ goods: 9600, freight: 0 });
  });

  test.each([
    ['below what the supplier takes', [WASHERS], ['order-too-small']],
    ['twice the same pack', [NUTS, NUTS], ['given-before']],
    ['a pack that nobody sells', [{ ...NUTS, offer: 'H/nut/7' }], ['unknown-thing']],
  ] as const)('%s is refused', (_, lines, codes) => {
    expect(opened().codes('ada', approving(lines))).toEqual(codes);
  });

  test('an offer that has ended is none', () => {
    const shop = opened();
    shop.does('leo', { type: 'end-offer', offer: 'H/nut/50' });
    expect(shop.codes('ada', approving([NUTS, WASHERS]))).toEqual(['unknown-thing']);
  });

  test('two suppliers at once: all or none; numbers are never used again', () => {
    const shop = approved();
    const [first] = approving([NUTS, WASHERS]).orders;
    const bad = { ...first, lines: [{ ...NUTS, price: 1 }] };
    const both = { type: 'approve-order', first: '2' } as const;
    expect(shop.codes('ada', { ...both, orders: [first, bad] })).toEqual(['price-changed']);
    shop.does('ada', { ...both, orders: [first, first] });
    expect(Object.keys(shop.world.shop.orders)).toEqual(['1', '2', '3']);
  });
});

describe('what happened since it was shown', () => {
  test('somebody approved in another window: nothing is ordered twice', () => {
    const shop = approved();
    expect(shop.refused('ada', approving([NUTS, WASHERS]))).toMatchObject([
      { code: 'ordered-since', details: { order: '1' } },
    ]);
    shop.does('ada', approving([NUTS, WASHERS], 650, '2'));
  });

  test('its order day is over', () => {
    const shop = opened();
    shop.later('3 d');
    expect(shop.codes('ada', approving([NUTS, WASHERS]))).toEqual(['order-day-past']);
  });

  test('what was insisted on was for this order; the next begins anew', () => {
    const shop = opened();
    shop.does('ada', { type: 'pin-line', item: 'nut', supplier: 'H' });
    shop.does('ada', approving([NUTS, WASHERS]));
    expect(shop.world.shop.pins['nut']?.pin).toBeNull();
  });
});

describe('goods in', () => {
  test('part of it: a lot of the nuts, washers into their bin, the rest on back order', () => {
    const shop = approved();
    shop.does('leo', {
      type: 'receive-order',
      order: '1',
      note: '88210',
      lines: [
        { line: 0, good: '50', certificate: '3.1 / 7' },
        { line: 1, good: '100' },
      ],
    });
    expect(left(shop)).toEqual(['50', '0']);
    expect([have(shop, 'nut', 'L-0001'), have(shop, 'washer')]).toEqual(['50', '100']);
    // What one nut cost: 4.20 for fifty.
    expect(shop.world.shop.lots['L-0001']).toMatchObject({ order: '1', cost: '8.4', certificate: '3.1 / 7' });
    expect(onOrder(shop.world.shop.orders)).toMatchObject([
      { item: 'nut', source: { kind: 'order', order: '1', due: '2026-03-06' } },
    ]);
    shop.does('leo', { type: 'receive-order', order: '1', lines: [{ line: 0, good: '50' }] });
    expect(isOpen(orderIn(shop))).toBe(false);
    expect(orderIn(shop).lines[0]?.lots).toEqual(['L-0001', 'L-0002']);
  });

  test('damaged and wrong goods are no stock and are still to come; over is taken in', () => {
    const shop = approved();
    shop.does('leo', {
      type: 'receive-order',
      order: '1',
      lines: [
        { line: 0, good: '48', damaged: '2', wrong: '50' },
        { line: 1, good: '120' },
      ],
    });
    expect(left(shop)).toEqual(['52', '0']);
    expect([have(shop, 'nut', 'L-0001'), have(shop, 'washer')]).toEqual(['48', '120']);
  });

  test('a certificate that is asked for and missing: received, and kept apart (D58)', () => {
    const shop = approved();
    shop.does('leo', {
      type: 'receive-order',
      order: '1',
      lines: [{ line: 0, good: '100', certificateAsked: true }],
    });
    expect(shop.world.shop.lots['L-0001']?.quarantined).toBe('certificate missing');
  });

  test('what had been found before is booked with the goods: all of them are there', () => {
    const shop = approved();
    shop.does('tom', { type: 'draw-stock', item: 'washer', quantity: '7', reason: 'lost' });
    shop.does('leo', { type: 'receive-order', order: '1', lines: [{ line: 1, good: '100' }] });
    expect(have(shop, 'washer')).toBe('100');
  });

  test.each([
    ['nothing', [{ line: 0, good: '0' }], ['nothing-came']],
    ['what is no number', [{ line: 0, good: 'a bag' }], ['value-unreadable']],
    ['a line that the order has not', [{ line: 7, good: '1' }], ['unknown-thing']],
    [
      'a line twice',
      [
        { line: 0, good: '1' },
        { line: 0, good: '1' },
      ],
      ['given-before'],
    ],
  ])('%s is refused, and nothing comes in', (_, lines, codes) => {
    const shop = approved();
    expect(shop.codes('leo', { type: 'receive-order', order: '1', lines })).toEqual(codes);
    expect([have(shop, 'washer'), left(shop)]).toEqual(['nothing', ['100', '100']]);
  });

  test('a lot number that is taken is refused', () => {
    const shop = approved();
    shop.does('leo', { type: 'receive-lot', lot: 'L-0500', item: 'nut', quantity: 1 });
    const claim = {
      type: 'receive-order',
      order: '1',
      lines: [{ line: 0, good: '100', lot: 'L-0500' }],
    } as const;
    expect(shop.codes('leo', claim)).toEqual(['already-there']);
    expect(lotName(nextLotNumber(shop.world.shop.lots))).toBe('L-0501');
  });
});

describe('the rest of its life', () => {
  test('promised for later, ended, credited', () => {
    const shop = approved();
    shop.does('leo', { type: 'promise-order', order: '1', due: '2026-03-12' });
    expect(onOrder(shop.world.shop.orders)[0]?.source).toMatchObject({ due: '2026-03-12' });
    shop.does('leo', { type: 'receive-order', order: '1', lines: [{ line: 1, good: '100' }] });
    shop.does('leo', { type: 'end-order-line', order: '1', line: 0, why: 'credited' });
    shop.does('leo', { type: 'credit-order', order: '1', money: 840, why: 'nuts out of stock' });
    expect(isOpen(orderIn(shop))).toBe(false);
    expect(onOrder(shop.world.shop.orders)).toEqual([]);
    expect(orderIn(shop).credits).toMatchObject([{ money: 840, by: 'leo' }]);
  });

  test('a deposit is paid beside the goods, whatever the approval says of it, and comes back once', () => {
    const shop = opened();
    const prices = [{ fromPacks: 1, price: NUTS.price }];
    shop.does('leo', { type: 'set-offer', supplier: 'H', item: 'nut', pack: '50', prices, deposit: 900 });
    shop.does('ada', approving([NUTS, WASHERS]));
    const order = orderIn(shop);
    expect([order.goods, depositsOf(order)]).toEqual([2 * 420 + 180, { paid: 1800, open: 1800 }]);
    const back = {
      type: 'credit-order',
      order: '1',
      why: 'two old ones handed in',
      isDeposit: true,
    } as const;
    expect(shop.refused('leo', { ...back, money: 1900 })).toMatchObject([
      { code: 'deposit-not-owed', details: { money: 1900, open: 1800 } },
    ]);
    // Another credit leaves the deposit owed.
    shop.does('leo', { type: 'credit-order', order: '1', money: 300, why: 'short' });
    shop.does('leo', { ...back, money: 1800 });
    expect(depositsOf(orderIn(shop))).toEqual({ paid: 1800, open: 0 });
    expect(shop.codes('leo', { ...back, money: 1 })).toEqual(['deposit-not-owed']);
  });

  test('there is nothing to end of what has come', () => {
    const shop = approved();
    shop.does('leo', { type: 'receive-order', order: '1', lines: [{ line: 1, good: '100' }] });
    expect(shop.codes('leo', { type: 'end-order-line', order: '1', line: 1, why: 'cancelled' })).toEqual([
      'nothing-outstanding',
    ]);
  });

  test('an order that was not sent after all: every line that has not come', () => {
    const shop = approved();
    shop.does('leo', { type: 'receive-order', order: '1', lines: [{ line: 1, good: '100' }] });
    const events = shop.does('leo', { type: 'end-order-line', order: '1', why: 'cancelled' });
    expect(events).toMatchObject([{ item: 'nut', quantity: '100' }]);
    expect(isOpen(orderIn(shop))).toBe(false);
  });
});
