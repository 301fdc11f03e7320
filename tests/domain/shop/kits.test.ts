/** Kits: what is picked for a run of an operation, put aside, used and given back. Values are invented. */
import { describe, expect, test } from 'vitest';
import { toDecimalText } from '@/lib/domain/base/exact';
import { catalogueOf } from '@/lib/domain/shop/item';
import { boxedOn } from '@/lib/domain/shop/kit';
import { comesOn, kitWants, lackOf } from '@/lib/domain/shop/kit-need';
import { carNeed } from '@/lib/domain/shop/need';
import { reachFor, shelfOf } from '@/lib/domain/shop/shelf';
import { stockText, onHand } from '@/lib/domain/shop/stock';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const DOCUMENT = plan({
  items: {
    nut: {
      name: 'insert lock nut M10 class 8',
      reuse: 'once fitted',
      trace: 'lot',
      substitutes: { flange: {} },
    },
    flange: { name: 'flange nut M10' },
    washer: { name: 'washer M10' },
    grease: { name: 'grease', unit: 'g', trace: 'lot' },
  },
  stages: { AX: { name: 'Axle' }, WH: { name: 'Wheels' } },
  operations: {
    'AX-010': { name: 'Hang', stage: 'AX', body: ['snug J-1', 'snug J-2'], consumables: { grease: '5 g' } },
    'AX-020': { name: 'Bar', stage: 'AX', body: ['snug J-3'] },
  },
  joints: Object.fromEntries(
    ['J-1', 'J-2', 'J-3'].map((key) => [
      key,
      {
        name: key,
        fasteners: 2,
        method: 'click',
        torque: '40 ± 4 N·m',
        source: 'invented',
        hardware: { nut: 2, washer: 2 },
      },
    ]),
  ),
});
const CATALOGUE = catalogueOf([DOCUMENT]);
const KIT = { operation: 'AX-010' } as const;

const opened = (): Shop => {
  const shop = shopWith(DOCUMENT);
  shop.startCar('C2', DOCUMENT);
  shop.does('leo', { type: 'receive-lot', lot: 'L-1', item: 'nut', quantity: 6 });
  shop.does('leo', { type: 'receive-lot', lot: 'L-2', item: 'nut', quantity: 6, expires: '2026-03-03' });
  shop.does('leo', { type: 'receive-lot', lot: 'L-7', item: 'grease', quantity: 50 });
  shop.does('leo', { type: 'receive-stock', goods: [{ item: 'washer', quantity: '10' }] });
  return shop;
};
const pick = (shop: Shop, item: string, quantity: string, lot?: string, car = 'C1'): void => {
  shop.does('tess', { type: 'pick-kit', ...KIT, car, lines: [{ item, quantity, ...(lot && { lot }) }] });
};
const box = (shop: Shop, car = 'C1'): readonly string[] =>
  (shop.car(car).kits['AX-010']?.lines ?? []).map(({ item, lot, quantity }) => `${quantity} ${lot ?? item}`);
const wants = (shop: Shop, operation = 'AX-010'): readonly string[] =>
  kitWants(carNeed(shop.plan(), shop.car(), shop.world.shop, CATALOGUE), shop.car(), operation).map(
    ({ item, wanted, picked }) => `${item} ${toDecimalText(wanted)}, ${toDecimalText(picked)} in`,
  );
const shelf = (shop: Shop): ReturnType<typeof shelfOf> =>
  shelfOf(
    shop.world.shop,
    shop.world.stock,
    CATALOGUE,
    '2026-03-02',
    boxedOn(Object.values(shop.world.cars)),
  );
const good = (shop: Shop, item: string): string =>
  toDecimalText(reachFor(shop.world.shop, shelf(shop), item).good);
const has = (shop: Shop, key: string): string =>
  stockText(onHand(shop.world.stock[key] ?? { came: '0', went: '0' }));

describe('what a kit is', () => {
  test('what its own joints and its own work still take; a fitted joint asks nothing', () => {
    const shop = opened();
    expect(wants(shop)).toEqual(['nut 4, 0 in', 'washer 4, 0 in', 'grease 5, 0 in']);
    shop.begin('tom', 'AX-010');
    shop.does('tom', { type: 'snug-joint', joint: 'J-1' });
    expect(wants(shop)).toEqual(['nut 2, 0 in', 'washer 2, 0 in', 'grease 5, 0 in']);
    expect(wants(shop, 'AX-020')).toEqual(['nut 2, 0 in', 'washer 2, 0 in']);
  });

  test('a list adds to the box; what lies in it is the shop’s, put aside, and on nobody else’s shelf', () => {
    const shop = opened();
    pick(shop, 'washer', '3');
    pick(shop, 'washer', '4');
    expect([box(shop), has(shop, 'washer|'), good(shop, 'washer')]).toEqual([['7 washer'], '10', '3']);
    expect(shelf(shop).filter(({ supply }) => supply.onlyFor === 'C1')).toHaveLength(1);
    const [lack] = kitWants(
      carNeed(shop.plan('C2'), shop.car('C2'), shop.world.shop, CATALOGUE),
      shop.car('C2'),
      'AX-010',
    )
      .filter(({ item }) => item === 'washer')
      .map((want) => lackOf(want, reachFor(shop.world.shop, shelf(shop), 'washer').good));
    expect(lack).toEqual({ num: 1n, den: 1n });
  });

  test('when the next of it comes', () => {
    const order = (due: string) => ({ kind: 'order', order: due, due }) as const;
    const coming = ['2026-03-09', '2026-03-06'].map((due) => ({
      item: 'nut',
      quantity: { num: 1n, den: 1n },
      source: order(due),
      goodUntil: null,
      onlyFor: null,
    }));
    expect([comesOn(coming, 'nut'), comesOn(coming, 'washer')]).toEqual(['2026-03-06', null]);
  });
});

describe('what leaves the box', () => {
  test('fitting takes it out, names the one lot that was in it, and finishing gives back what is left', () => {
    const shop = opened();
    pick(shop, 'nut', '5', 'L-1');
    pick(shop, 'grease', '9', 'L-7');
    shop.begin('tom', 'AX-010');
    const [fitted] = shop.does('tom', { type: 'snug-joint', joint: 'J-1' });
    expect(fitted).toMatchObject({
      drawn: [
        { item: 'nut', lot: 'L-1', quantity: '2' },
        { item: 'washer', lot: null },
      ],
    });
    expect(shop.car().joints['J-1']?.lots).toEqual(['L-1']);
    expect(box(shop)).toEqual(['9 L-7', '3 L-1']);
    shop.does('tom', { type: 'snug-joint', joint: 'J-2', hardware: [{ item: 'nut', lot: 'L-2' }] });
    expect(box(shop)).toEqual(['9 L-7', '3 L-1']);
    const [finished] = shop.finish('tom', 'AX-010');
    expect(finished).toMatchObject({ drawn: [{ item: 'grease', lot: 'L-7', quantity: '5' }] });
    expect([shop.car().kits, good(shop, 'nut'), has(shop, 'grease|L-7')]).toEqual([{}, '8', '45']);
  });

  test('no lot is named where the box holds two, or too few, or for a joint of another box', () => {
    const shop = opened();
    pick(shop, 'nut', '1', 'L-1');
    shop.begin('tom', 'AX-010');
    shop.does('tom', { type: 'snug-joint', joint: 'J-1' });
    expect([shop.car().joints['J-1']?.lots, box(shop)]).toEqual([[], []]);
    pick(shop, 'nut', '2', 'L-1');
    pick(shop, 'nut', '2', 'L-2');
    shop.does('tom', { type: 'snug-joint', joint: 'J-2' });
    expect([shop.car().joints['J-2']?.lots, box(shop)]).toEqual([[], ['2 L-2']]);
    shop.finish('tom', 'AX-010');
    shop.begin('tom', 'AX-020');
    shop.does('tom', { type: 'snug-joint', joint: 'J-3' });
    expect(shop.car().joints['J-3']?.lots).toEqual([]);
  });

  test('a lot that went bad in the box is not fitted out of it', () => {
    const shop = opened();
    pick(shop, 'nut', '4', 'L-1');
    pick(shop, 'grease', '5', 'L-7');
    shop.begin('tom', 'AX-010');
    shop.does('leo', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft' });
    shop.does('leo', { type: 'quarantine-lot', lot: 'L-7', reason: 'grit' });
    expect(shop.codes('tom', { type: 'snug-joint', joint: 'J-1' })).toEqual(['lot-quarantined']);
    shop.does('tom', { type: 'empty-kit', ...KIT, lines: [{ item: 'nut', quantity: '9' }] });
    shop.does('tom', { type: 'snug-joint', joint: 'J-1' });
    shop.does('tom', { type: 'snug-joint', joint: 'J-2' });
    expect(shop.codes('tom', { type: 'finish-operation', operation: 'AX-010' })).toEqual(['lot-quarantined']);
  });

  test('wrong and missing leave the box, damaged is scrapped; the word stands until it is picked again', () => {
    const shop = opened();
    pick(shop, 'washer', '4');
    pick(shop, 'nut', '4', 'L-1');
    shop.does('tess', { type: 'report-kit-line', ...KIT, item: 'washer', what: 'wrong' });
    expect([box(shop), has(shop, 'washer|')]).toEqual([['4 L-1'], '10']);
    shop.does('tess', { type: 'report-kit-line', ...KIT, item: 'nut', what: 'damaged', quantity: '1' });
    expect([box(shop), has(shop, 'nut|L-1'), good(shop, 'nut')]).toEqual([['3 L-1'], '5', '8']);
    shop.does('tess', { type: 'report-kit-line', ...KIT, item: 'nut', what: 'missing' });
    expect([box(shop), has(shop, 'nut|L-1')]).toEqual([[], '5']);
    expect(shop.car().kits['AX-010']?.reports.map(({ item, what }) => [item, what])).toEqual([
      ['washer', 'wrong'],
      ['nut', 'missing'],
    ]);
    pick(shop, 'washer', '4');
    expect(shop.car().kits['AX-010']?.reports.map(({ item }) => item)).toEqual(['nut']);
  });
});

describe('a bin that is down', () => {
  const short = (shop: Shop, item: string, ...lines: readonly { quantity: string; lot?: string }[]) =>
    shop.does('tess', {
      type: 'pick-kit',
      ...KIT,
      lines: lines.map((line) => ({ item, ...line })),
      emptied: [item],
    });

  test('what there was is in the box and the bin is put down as empty, by one event; other boxes keep theirs', () => {
    const shop = opened();
    pick(shop, 'washer', '3', undefined, 'C2');
    const events = short(shop, 'washer', { quantity: '2' });
    expect(events).toMatchObject([
      { type: 'kit-picked', emptied: [{ item: 'washer', counted: '5', had: '10', fewer: '5', more: '0' }] },
    ]);
    expect([box(shop), has(shop, 'washer|'), good(shop, 'washer')]).toEqual([['2 washer'], '5', '0']);
    expect(shop.world.stock['washer|']?.counted?.by).toBe('tess');
  });

  test('every good lot of it is down, also the one that nothing was taken from; what is kept apart was not looked at', () => {
    const shop = opened();
    shop.does('leo', { type: 'receive-lot', lot: 'L-3', item: 'nut', quantity: 4 });
    shop.does('leo', { type: 'quarantine-lot', lot: 'L-3', reason: 'soft' });
    short(shop, 'nut', { quantity: '1', lot: 'L-2' });
    expect(['nut|L-1', 'nut|L-2', 'nut|L-3'].map((key) => has(shop, key))).toEqual(['0', '1', '4']);
    expect([box(shop), good(shop, 'nut')]).toEqual([['1 L-2'], '0']);
  });

  test('nothing was there at all; more was there than the books had; what went unsaid is accounted for', () => {
    const shop = opened();
    shop.does('leo', { type: 'draw-stock', item: 'nut', quantity: '5', reason: 'lost' });
    expect(good(shop, 'nut')).toBe('7');
    short(shop, 'nut');
    expect([box(shop), good(shop, 'nut')]).toEqual([[], '0']);
    shop.does('leo', { type: 'receive-lot', lot: 'L-4', item: 'nut', quantity: 8 });
    expect(good(shop, 'nut')).toBe('8');
    short(shop, 'washer', { quantity: '12' });
    expect([has(shop, 'washer|'), good(shop, 'washer')]).toEqual(['12', '0']);
  });

  test('the bin of another thing is refused; for work that is done nothing goes in, and the bin is still down', () => {
    const shop = opened();
    const down = (item: string, lines: readonly { item: string; quantity: string }[] = []) =>
      ({ type: 'pick-kit', ...KIT, lines, emptied: [item] }) as const;
    expect(shop.codes('tom', down('bracket'))).toEqual(['unknown-thing']);
    shop.perform('tom', 'AX-010');
    expect(shop.codes('tom', down('washer', [{ item: 'washer', quantity: '1' }]))).toEqual([
      'operation-already-finished',
    ]);
    shop.does('tom', down('washer'));
    expect([good(shop, 'washer'), shop.car().kits]).toEqual(['0', {}]);
  });
});

describe('what is not picked', () => {
  test.each([
    [{ item: 'nut', lot: 'L-7', quantity: '1' }, 'lot-of-other-item'],
    [{ item: 'nut', lot: 'L-9', quantity: '1' }, 'unknown-thing'],
    [{ item: 'flange', quantity: '0' }, 'value-unreadable'],
    [{ item: 'bracket', quantity: '1' }, 'unknown-thing'],
  ] as const)('%j: %s', (line, code) => {
    expect(opened().codes('tom', { type: 'pick-kit', ...KIT, lines: [line] })).toEqual([code]);
  });

  test('a lot kept apart or gone off, for another run, for work that is done', () => {
    const shop = opened();
    shop.does('leo', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft' });
    const line = (lot: string) =>
      ({ type: 'pick-kit', ...KIT, lines: [{ item: 'nut', lot, quantity: '1' }] }) as const;
    expect(shop.codes('tom', line('L-1'))).toEqual(['lot-quarantined']);
    expect(shop.codes('tom', { ...line('L-2'), run: 2 })).toEqual(['stale-run']);
    shop.later('3 d');
    expect(shop.codes('tom', line('L-2'))).toEqual(['lot-expired']);
    shop.perform('tom', 'AX-010');
    expect(
      shop.codes('tom', { type: 'pick-kit', ...KIT, lines: [{ item: 'washer', quantity: '1' }] }),
    ).toEqual(['operation-already-finished']);
  });
});
