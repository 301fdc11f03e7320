/** Stock as two sums: what came, what went. Invariant 5; what a shop does with its shelf in a week (shop days, section 2). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ZERO, compare, exact, parseDecimal, subtract, toDecimalText } from '@/lib/domain/base/exact';
import { evolveAll } from '@/lib/domain/evolve';
import { binOf } from '@/lib/domain/shop/rows';
import { drawnOf, foundBeyond, onHand, stockKey, summed } from '@/lib/domain/shop/stock';
import { stockHalf } from '@/lib/domain/stock-half';
import { EMPTY_WORLD } from '@/lib/domain/world';
import { runs } from '@/tests/support/rules';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

/** Two joints of four bolts, each with a washer; a nut that is used once and traced. Everything here is invented. */
const DOCUMENT = plan({
  items: {
    nut: { name: 'insert lock nut M10 class 8', reuse: 'once final', trace: 'lot' },
    washer: { name: 'washer M10' },
    fluid: { name: 'brake fluid', unit: 'l', trace: 'lot' },
  },
  stages: { AX: { name: 'Axle' } },
  operations: {
    'AX-010': {
      name: 'Hang',
      stage: 'AX',
      body: ['final J-1', 'final J-2'],
      consumables: { fluid: '0.5 l' },
      repeatable: true,
    },
  },
  joints: Object.fromEntries(
    ['J-1', 'J-2'].map((key) => [
      key,
      {
        name: `Joint ${key}`,
        fasteners: 4,
        method: 'firm',
        torque: 'no value published',
        hardware: { nut: 4, washer: 4 },
      } as const,
    ]),
  ),
});

const opened = (): Shop => {
  const shop = shopWith(DOCUMENT);
  shop.does('leo', { type: 'receive-lot', lot: 'L-1', item: 'nut', quantity: 20 });
  shop.does('leo', { type: 'receive-stock', goods: [{ item: 'washer', quantity: '6' }] });
  shop.does('tom', { type: 'start-operation', car: 'C1', operation: 'AX-010' });
  return shop;
};

const place = (shop: Shop, item: string, lot: string | null = null): string => {
  const row = shop.world.stock[stockKey({ item, lot })];
  return row === undefined
    ? 'nothing'
    : `${toDecimalText(onHand(row))}, found ${toDecimalText(foundBeyond(row))}`;
};
const snug = (shop: Shop, joint: string, hardware = [{ item: 'nut', lot: 'L-1' }]): void => {
  shop.does('tom', { type: 'snug-joint', car: 'C1', joint, hardware });
};

describe('fitting', () => {
  test('takes what goes in new from its lot, and bulk from its item', () => {
    const shop = opened();
    snug(shop, 'J-1');
    expect([place(shop, 'nut', 'L-1'), place(shop, 'washer')]).toEqual(['16, found 0', '2, found 0']);
  });

  test('a bolt in hand is fitted though the books have none: found, never fewer than none', () => {
    const shop = opened();
    snug(shop, 'J-1');
    snug(shop, 'J-2');
    expect(place(shop, 'washer')).toBe('0, found 2');
  });

  test('of a traced thing whose lot nobody said, the item itself is drawn', () => {
    const shop = opened();
    snug(shop, 'J-1', []);
    expect([place(shop, 'nut', 'L-1'), place(shop, 'nut')]).toEqual(['20, found 0', '0, found 4']);
  });

  test('what went in again is not taken again; one nut of four renewed is one nut', () => {
    const shop = opened();
    snug(shop, 'J-1');
    shop.does('tom', { type: 'final-joint', car: 'C1', joint: 'J-1' });
    shop.does('tom', { type: 'open-joint', car: 'C1', joint: 'J-1', fasteners: [2] });
    snug(shop, 'J-1');
    expect([place(shop, 'nut', 'L-1'), place(shop, 'washer')]).toEqual(['15, found 0', '2, found 0']);
  });

  test('finished work has used up its consumables, each time it is done', () => {
    const shop = opened();
    for (const joint of ['J-1', 'J-2']) {
      snug(shop, joint);
      shop.does('tom', { type: 'final-joint', car: 'C1', joint });
    }
    shop.does('tom', { type: 'finish-operation', car: 'C1', operation: 'AX-010' });
    expect(place(shop, 'fluid')).toBe('0, found 0.5');
    // Struck and signed again, nothing more is poured in.
    const [signed] = Object.entries(shop.car().signatures).filter(
      ([, { act }]) => act === 'finish-operation',
    );
    shop.does('tom', {
      type: 'strike-signature',
      car: 'C1',
      signature: signed?.[0] ?? '',
      reason: 'too soon',
    });
    shop.does('tom', { type: 'resume-operation', car: 'C1', operation: 'AX-010' });
    shop.does('tom', { type: 'finish-operation', car: 'C1', operation: 'AX-010' });
    expect(place(shop, 'fluid')).toBe('0, found 0.5');
  });
});

describe('the shelf', () => {
  test('a count is believed, whatever the books said, and somebody looked', () => {
    const shop = opened();
    snug(shop, 'J-1');
    snug(shop, 'J-2');
    shop.does('tess', { type: 'count-stock', counts: [{ item: 'washer', counted: '7' }] });
    expect(place(shop, 'washer')).toBe('7, found 0');
    expect(shop.world.stock[stockKey({ item: 'washer', lot: null })]?.counted?.by).toBe('tess');
    const [again] = shop.does('tess', { type: 'count-stock', counts: [{ item: 'washer', counted: '5' }] });
    expect(again).toMatchObject({ counted: '5', had: '7', more: '0', fewer: '2', found: '0' });
    expect(place(shop, 'washer')).toBe('5, found 0');
  });

  test('a list is counted whole or not at all, with every reason', () => {
    const shop = opened();
    const counts = [
      { item: 'washer', counted: '40' },
      { item: 'nut', lot: 'L-9', counted: '3' },
      { item: 'fluid', counted: '-1' },
    ];
    expect(shop.codes('tess', { type: 'count-stock', counts })).toEqual([
      'unknown-thing',
      'value-unreadable',
    ]);
    expect(place(shop, 'washer')).toBe('6, found 0');
  });

  test('goods that come after something was found are all there', () => {
    const shop = opened();
    snug(shop, 'J-1');
    snug(shop, 'J-2');
    shop.does('leo', { type: 'receive-stock', goods: [{ item: 'washer', quantity: '100' }] });
    expect(place(shop, 'washer')).toBe('100, found 0');
  });

  test('taken, lost, scrapped, sent back: gone, each with its reason; and put back again', () => {
    const shop = opened();
    const of = { item: 'nut', lot: 'L-1' };
    shop.does('tom', { type: 'draw-stock', ...of, quantity: '1', reason: 'lost', forCar: 'C1' });
    shop.does('tom', { type: 'draw-stock', ...of, quantity: '2', reason: 'scrapped' });
    shop.does('tom', { type: 'put-back', ...of, quantity: '1' });
    expect(place(shop, 'nut', 'L-1')).toBe('18, found 0');
  });

  test('a lot lies where it was put, else where its item lies', () => {
    const shop = opened();
    expect(binOf(shop.world.shop, 'nut', 'L-1')).toBeNull();
    shop.does('tom', { type: 'put-away', places: [{ item: 'nut', bin: '9c' }] });
    expect(binOf(shop.world.shop, 'nut', 'L-1')).toBe('09C');
    shop.does('tom', { type: 'put-away', places: [{ item: 'nut', lot: 'L-1', bin: '12 A' }] });
    expect([binOf(shop.world.shop, 'nut', 'L-1'), binOf(shop.world.shop, 'nut', null)]).toEqual([
      '12A',
      '09C',
    ]);
  });

  test.each([
    [{ type: 'receive-stock', goods: [{ item: 'washer', quantity: '0' }] }, 'value-unreadable'],
    [{ type: 'count-stock', counts: [{ item: 'washer', counted: 'some' }] }, 'value-unreadable'],
    [
      {
        type: 'count-stock',
        counts: [
          { item: 'washer', counted: '3' },
          { item: 'washer', counted: '4' },
        ],
      },
      'already-there',
    ],
    [{ type: 'count-stock', counts: [{ item: 'washer', lot: 'L-1', counted: '3' }] }, 'lot-of-other-item'],
    [{ type: 'put-back', item: 'nut', lot: 'L-9', quantity: '3' }, 'unknown-thing'],
    [{ type: 'put-away', places: [{ item: 'nut', bin: 'by the door' }] }, 'value-unreadable'],
    [{ type: 'draw-stock', item: 'nut', lot: 'L-9', quantity: '1', reason: 'lost' }, 'unknown-thing'],
  ] as const)('%j is refused: %s', (claim, code) => {
    expect(opened().codes('leo', claim)).toEqual([code]);
  });

  test('what went is gone, whatever it was called: the lot says what it held', () => {
    const [event] = opened().does('tom', {
      type: 'draw-stock',
      item: 'washer',
      lot: 'L-1',
      quantity: '1',
      reason: 'scrapped',
    });
    expect(event).toMatchObject({ item: 'nut', lot: 'L-1', quantity: '1' });
  });
});

test('a third of a line is drawn as near as anybody can count', () => {
  const third = { item: 'strip', lot: null, quantity: exact(1, 3) };
  expect(drawnOf([third])).toEqual([{ item: 'strip', lot: null, quantity: '0.333333' }]);
  expect(drawnOf([third, third, third])).toEqual([{ item: 'strip', lot: null, quantity: '1' }]);
});

test('no order of what happens brings a place below none, and it is the sum of its events in any order (invariant 5)', () => {
  const act = fc.record({ what: fc.nat({ max: 4 }), count: fc.nat({ max: 9 }), isLot: fc.boolean() });
  fc.assert(
    fc.property(fc.array(act, { maxLength: 14 }), (acts) => {
      const shop = opened();
      for (const { what, count, isLot } of acts) {
        const of = isLot ? { item: 'nut', lot: 'L-1' } : { item: 'washer' };
        const quantity = String(count + 1);
        if (what === 0) shop.does('leo', { type: 'receive-stock', goods: [{ item: 'washer', quantity }] });
        if (what === 1) shop.does('tom', { type: 'draw-stock', ...of, quantity, reason: 'lost' });
        if (what === 2) shop.does('tom', { type: 'put-back', ...of, quantity });
        if (what === 3) {
          shop.does('tom', { type: 'count-stock', counts: [{ ...of, counted: String(count) }] });
          expect(place(shop, of.item, 'lot' in of ? of.lot : null)).toBe(`${String(count)}, found 0`);
        }
        if (what === 4) {
          shop.does('tom', { type: 'open-joint', car: 'C1', joint: 'J-1' });
          snug(shop, 'J-1');
        }
      }
      const sums = summed(shop.heard.flatMap(stockHalf).reverse());
      for (const { item, lot, came, went } of sums) {
        const row = shop.world.stock[stockKey({ item, lot })];
        if (row === undefined) throw new Error(`no ${item}`);
        expect([row.came, row.went]).toEqual([toDecimalText(came), toDecimalText(went)]);
        expect(compare(onHand(row), ZERO)).not.toBe(-1);
        const balance = subtract(parseDecimal(row.came) ?? ZERO, parseDecimal(row.went) ?? ZERO);
        expect(subtract(onHand(row), foundBeyond(row))).toEqual(balance);
      }
      expect(Object.keys(shop.world.stock)).toHaveLength(sums.length);
      expect(evolveAll(EMPTY_WORLD, shop.heard).stock).toEqual(shop.world.stock);
    }),
    runs(60),
  );
});
