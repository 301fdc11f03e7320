/** What lies on the shelf as supply, and where to reach for it. Values are invented. */
import { describe, expect, test } from 'vitest';
import { toDecimalText } from '@/lib/domain/base/exact';
import { catalogueOf } from '@/lib/domain/shop/item';
import { reachFor, shelfOf } from '@/lib/domain/shop/shelf';
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
const TODAY = '2026-03-02';

const opened = (): Shop => {
  const shop = shopWith(DOCUMENT);
  shop.does('leo', { type: 'receive-lot', lot: 'L-1', item: 'nut', quantity: 20 });
  shop.later('1 d');
  shop.does('leo', { type: 'receive-lot', lot: 'L-2', item: 'nut', quantity: 30, expires: '2026-06-30' });
  return shop;
};
const shelf = ({ world }: Shop, today = TODAY): ReturnType<typeof shelfOf> =>
  shelfOf(world.shop, world.stock, catalogueOf([DOCUMENT]), today);
const told = (shop: Shop, today = TODAY): readonly string[] =>
  shelf(shop, today).map(
    ({ supply: { item, quantity, source }, isGood }) =>
      `${toDecimalText(quantity)} ${source.kind === 'lot' ? source.lot : item}${isGood ? '' : ', held'}`,
  );

describe('what is there', () => {
  test('lots in the order they came, bulk by its item', () => {
    const shop = opened();
    shop.does('leo', { type: 'receive-stock', goods: [{ item: 'washer', quantity: '80' }] });
    expect(told(shop)).toEqual(['80 washer', '20 L-1', '30 L-2']);
  });

  test('what nobody said the lot of is missing from the oldest good lots first', () => {
    const shop = opened();
    shop.does('tom', { type: 'draw-stock', item: 'nut', quantity: '24', reason: 'lost' });
    expect(told(shop)).toEqual(['26 L-2']);
    shop.does('tom', { type: 'draw-stock', item: 'nut', quantity: '40', reason: 'lost' });
    expect(told(shop)).toEqual([]);
  });

  test('kept apart or gone off: it lies there and is not good, and nobody took the missing ones from it', () => {
    const shop = opened();
    shop.does('tom', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft' });
    shop.does('tom', { type: 'draw-stock', item: 'nut', quantity: '5', reason: 'lost' });
    expect(told(shop)).toEqual(['20 L-1, held', '25 L-2']);
    expect(told(shop, '2026-07-01')).toEqual(['20 L-1, held', '30 L-2, held']);
  });
});

test('two boxes of one car hold two times their own: nothing is put aside twice', () => {
  const { world } = opened();
  const box = { car: 'C1', item: 'nut', lot: 'L-1', quantity: '12' };
  const lying = shelfOf(world.shop, world.stock, catalogueOf([DOCUMENT]), TODAY, [
    box,
    { ...box, quantity: '6' },
  ]);
  expect(
    lying.map(({ supply: { quantity, onlyFor }, isBoxed }) => [toDecimalText(quantity), onlyFor, isBoxed]),
  ).toEqual([
    ['2', null, undefined],
    ['6', 'C1', true],
    ['12', 'C1', true],
    ['30', null, undefined],
  ]);
});

describe('where to reach', () => {
  const reach = (shop: Shop, item: string): unknown => {
    const { bin, lot, good } = reachFor(shop.world.shop, shelf(shop), item);
    return [bin, lot, toDecimalText(good)];
  };

  test('what goes off first is taken first, from the bin of its item', () => {
    const shop = opened();
    shop.does('tom', { type: 'put-away', places: [{ item: 'nut', bin: '09C' }] });
    expect(reach(shop, 'nut')).toEqual(['09C', 'L-2', '50']);
  });

  test('a lot that lies elsewhere is looked for there', () => {
    const shop = opened();
    shop.does('tom', { type: 'put-away', places: [{ item: 'nut', lot: 'L-2', bin: '12A' }] });
    expect(reach(shop, 'nut')).toEqual(['12A', 'L-2', '50']);
  });

  test('none of it: no lot, and the bin all the same', () => {
    const shop = opened();
    shop.does('tom', { type: 'put-away', places: [{ item: 'washer', bin: '01B' }] });
    expect(reach(shop, 'washer')).toEqual(['01B', null, '0']);
  });
});
