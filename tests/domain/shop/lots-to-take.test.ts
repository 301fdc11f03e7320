/** From which lots a joint and a piece of work are proposed to take, and what finishing says of the lots it used up. Values are invented. */
import { describe, expect, test } from 'vitest';
import { jointCase } from '@/lib/domain/decide/joints';
import { exact } from '@/lib/domain/base/exact';
import { catalogueOf } from '@/lib/domain/shop/item';
import { boxedOn, inBox } from '@/lib/domain/shop/kit';
import { workUsing } from '@/lib/domain/shop/lot-trace';
import { lotByLot, lotsAtHand } from '@/lib/domain/shop/lots-to-take';
import { proposedHardware } from '@/lib/domain/shop/proposed-hardware';
import { shelfOf } from '@/lib/domain/shop/shelf';
import type { OnShelf } from '@/lib/domain/shop/shelf';
import { onHand, quantityOf, stockText } from '@/lib/domain/shop/stock';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

/** A joint of four nuts on bolts that may be used again, with one cotter for all of it; then fluid. */
const DOCUMENT = plan({
  items: {
    nut: { name: 'insert lock nut M10 class 8', reuse: 'once fitted', trace: 'lot' },
    bolt: { name: 'bolt M10×1.5×40 8.8', reuse: '3 times', trace: 'lot' },
    washer: { name: 'washer M10' },
    paint: { name: 'slip-mark paint' },
    fluid: { name: 'brake fluid', unit: 'l', trace: 'lot' },
  },
  stages: { AX: { name: 'Axle' } },
  operations: {
    'AX-010': { name: 'Hang', stage: 'AX', body: ['snug J-1'], consumables: { paint: 1 } },
    'AX-020': { name: 'Fill', stage: 'AX', consumables: { fluid: '0.5 l' }, repeatable: true },
  },
  joints: {
    'J-1': {
      name: 'Eye',
      fasteners: 4,
      method: 'click',
      torque: '40 ± 4 N·m',
      source: 'invented',
      hardware: { nut: 4, bolt: 4, washer: 4 },
    },
  },
});
const CATALOGUE = catalogueOf([DOCUMENT]);

const opened = (): Shop => {
  const shop = shopWith(DOCUMENT);
  shop.startCar('C2', DOCUMENT);
  lot(shop, 'N-1', 'nut', 9, '2026-06-01');
  lot(shop, 'N-2', 'nut', 3, '2026-04-01');
  lot(shop, 'N-3', 'nut', 9, '2026-03-09');
  shop.does('leo', { type: 'quarantine-lot', lot: 'N-3', reason: 'soft' });
  lot(shop, 'B-1', 'bolt', 9);
  lot(shop, 'F-1', 'fluid', 0.75, '2026-05-01');
  lot(shop, 'F-2', 'fluid', 5, '2026-12-01');
  return shop;
};
const lot = (shop: Shop, id: string, item: string, quantity: number, expires?: string): void => {
  shop.does('leo', { type: 'receive-lot', lot: id, item, quantity, ...(expires && { expires }) });
};
const shelf = ({ world }: Shop): readonly OnShelf[] =>
  shelfOf(world.shop, world.stock, CATALOGUE, '2026-03-02', boxedOn(Object.values(world.cars)));
const proposed = (shop: Shop): ReturnType<typeof proposedHardware> => {
  const joint = shop.plan().joints.get('J-1');
  if (joint === undefined) throw new Error('no joint');
  const { row } = jointCase({ command: '', facts: shop.facts(), car: shop.car(), plan: shop.plan() }, joint);
  const box = inBox(shop.car(), 'AX-010');
  return proposedHardware(shop.plan(), joint, row, (item) => lotsAtHand(box, shelf(shop), item, 'C1'));
};
const left = (shop: Shop, item: string, of: string): string =>
  stockText(onHand(shop.world.stock[`${item}|${of}`] ?? { came: '0', went: '0' }));

describe('what is proposed for a joint', () => {
  test('what goes off first and is good, nut by nut; the lot that is kept apart is not', () => {
    expect(proposed(opened())).toEqual([
      { item: 'nut', lot: 'N-2', fasteners: [1, 2, 3] },
      { item: 'nut', lot: 'N-1', fasteners: [4] },
      { item: 'bolt', lot: 'B-1', fasteners: [1, 2, 3, 4] },
    ]);
  });

  test('what lies in the box of another car is not proposed; what lies in one’s own is, and first', () => {
    const shop = opened();
    const pick = (car: string, of: string, quantity: string): void => {
      shop.does('tess', {
        type: 'pick-kit',
        car,
        operation: 'AX-010',
        lines: [{ item: 'nut', lot: of, quantity }],
      });
    };
    pick('C2', 'N-2', '3');
    pick('C1', 'N-1', '1');
    expect(proposed(shop).filter(({ item }) => item === 'nut')).toEqual([
      { item: 'nut', lot: 'N-1', fasteners: [1, 2, 3, 4] },
    ]);
    pick('C2', 'N-1', '7');
    expect(proposed(shop).filter(({ item }) => item === 'nut')).toEqual([
      { item: 'nut', lot: 'N-1', fasteners: [1, 2] },
    ]);
  });

  test('what came off its own donor goes in first, traced or not; off another car’s donor it is not proposed', () => {
    const shop = opened();
    const keep = (car: string, item: string, of: string): void => {
      shop.does('tom', { type: 'keep-donor-hardware', donorOf: car, lines: [{ item, good: '3', lot: of }] });
    };
    keep('C1', 'bolt', 'D-1');
    keep('C1', 'washer', 'D-2');
    keep('C2', 'bolt', 'D-3');
    const own = proposed(shop).filter(({ item }) => item !== 'nut');
    expect(own).toEqual([
      { item: 'bolt', lot: 'D-1', fasteners: [1, 2, 3] },
      { item: 'bolt', lot: 'B-1', fasteners: [4] },
      { item: 'washer', lot: 'D-2', fasteners: [1, 2, 3] },
    ]);
    shop.begin('tom', 'AX-010');
    shop.does('tom', { type: 'snug-joint', joint: 'J-1', hardware: proposed(shop) });
    expect([left(shop, 'bolt', 'D-1'), left(shop, 'bolt', 'D-3'), left(shop, 'bolt', 'B-1')]).toEqual([
      '0',
      '3',
      '8',
    ]);
  });

  test('what another plan may use again is not proposed where this one wants it new', () => {
    const shop = opened();
    const nuts = { id: 'D-9', item: 'nut', quantity: exact(4), onlyFor: null, goodUntil: '2026-03-15' };
    const source = { kind: 'donor', lot: 'D-9', car: 'C9' } as const;
    const there = [{ supply: { ...nuts, source }, isGood: true }, ...shelf(shop)];
    const joint = shop.plan().joints.get('J-1');
    if (joint === undefined) throw new Error('no joint');
    const { row } = jointCase(
      { command: '', facts: shop.facts(), car: shop.car(), plan: shop.plan() },
      joint,
    );
    const found = proposedHardware(shop.plan(), joint, row, (item) => lotsAtHand([], there, item, 'C1'));
    expect(found.filter(({ item }) => item === 'nut').map(({ lot: id }) => id)).toEqual(['N-2', 'N-1']);
  });

  test('signed as proposed the books and the joint agree; of a joint that was opened, only what is spent goes in new', () => {
    const shop = opened();
    shop.begin('tom', 'AX-010');
    shop.does('tom', { type: 'snug-joint', joint: 'J-1', hardware: proposed(shop) });
    expect(shop.car().joints['J-1']?.lots.toSorted()).toEqual(['B-1', 'N-1', 'N-2']);
    expect([left(shop, 'nut', 'N-2'), left(shop, 'nut', 'N-1'), left(shop, 'bolt', 'B-1')]).toEqual([
      '0',
      '8',
      '5',
    ]);
    expect(proposed(shop)).toEqual([]);
    shop.does('tom', { type: 'open-joint', joint: 'J-1', fasteners: [2, 3] });
    expect(proposed(shop)).toEqual([{ item: 'nut', lot: 'N-1', fasteners: [2, 3] }]);
  });

  test('lot by lot what can be divided; what no lot holds is left over', () => {
    const shop = opened();
    const { taken, rest } = lotByLot(lotsAtHand([], shelf(shop), 'fluid', 'C1'), quantityOf('6'));
    expect(taken.map((each) => [each.lot, stockText(each.quantity)])).toEqual([
      ['F-1', '0.75'],
      ['F-2', '5'],
    ]);
    expect(stockText(rest)).toBe('0.25');
  });
});

describe('what finishing says it used up', () => {
  const done = (shop: Shop, lots?: readonly { item: string; lot: string; quantity?: string }[]) =>
    shop.does('tom', { type: 'finish-operation', operation: 'AX-020', ...(lots && { lots }) });
  const begun = (): Shop => {
    const shop = opened();
    shop.begin('tom', 'AX-020');
    return shop;
  };

  test('the lot that is named is drawn from, and the work is found again by it', () => {
    const shop = begun();
    const [finished] = done(shop, [{ item: 'fluid', lot: 'F-1' }]);
    expect(finished).toMatchObject({ drawn: [{ item: 'fluid', lot: 'F-1', quantity: '0.5' }] });
    expect(left(shop, 'fluid', 'F-1')).toBe('0.25');
    expect(workUsing(shop.car(), 'F-1')).toMatchObject([{ operation: 'AX-020', run: 1, quantity: '0.5' }]);
    expect(workUsing(shop.car(), 'F-2')).toEqual([]);
    shop.begin('tom', 'AX-020');
    done(shop, [
      { item: 'fluid', lot: 'F-1', quantity: '0.25' },
      { item: 'fluid', lot: 'F-2' },
    ]);
    expect([left(shop, 'fluid', 'F-1'), left(shop, 'fluid', 'F-2')]).toEqual(['0', '4.75']);
    expect(workUsing(shop.car(), 'F-1').map(({ run, quantity }) => [run, quantity])).toEqual([
      [1, '0.5'],
      [2, '0.25'],
    ]);
  });

  test('with none named it is taken all the same, for the next count to say from which', () => {
    const shop = begun();
    expect(done(shop)).toMatchObject([{ drawn: [{ item: 'fluid', lot: null, quantity: '0.5' }] }]);
    expect(shop.car().operations['AX-020']?.used).toBeUndefined();
  });

  test('more than the lots are said to have given goes with no lot; what is beyond the need is not drawn', () => {
    const shop = begun();
    const [finished] = done(shop, [{ item: 'fluid', lot: 'F-1', quantity: '0.2' }]);
    expect(finished).toMatchObject({
      drawn: [
        { lot: null, quantity: '0.3' },
        { lot: 'F-1', quantity: '0.2' },
      ],
    });
    const other = begun();
    expect(done(other, [{ item: 'fluid', lot: 'F-2', quantity: '4' }])).toMatchObject([
      { drawn: [{ lot: 'F-2', quantity: '0.5' }] },
    ]);
  });

  test.each([
    [{ item: 'fluid', lot: 'F-3' }, ['lot-quarantined']],
    [{ item: 'fluid', lot: 'F-4' }, ['lot-expired']],
    [{ item: 'fluid', lot: 'N-1' }, ['lot-of-other-item']],
    [{ item: 'fluid', lot: 'F-9' }, ['unknown-thing']],
    [{ item: 'fluid', lot: 'F-1', quantity: 'some' }, ['value-unreadable']],
    [{ item: 'nut', lot: 'N-1' }, ['unknown-thing']],
  ])('%j: %s', (named, codes) => {
    const shop = begun();
    lot(shop, 'F-3', 'fluid', 5);
    lot(shop, 'F-4', 'fluid', 5, '2026-02-01');
    shop.does('leo', { type: 'quarantine-lot', lot: 'F-3', reason: 'seal was broken' });
    expect(shop.codes('tom', { type: 'finish-operation', operation: 'AX-020', lots: [named] })).toEqual(
      codes,
    );
  });

  test('struck and signed again nothing is used up twice, and the first word of the lot stands', () => {
    const shop = begun();
    const [finished] = done(shop, [{ item: 'fluid', lot: 'F-1' }]);
    const signature = finished?.meta.command ?? '';
    shop.does('leo', { type: 'strike-signature', signature, reason: 'a line was left open' });
    shop.does('tom', { type: 'resume-operation', operation: 'AX-020' });
    expect(done(shop)).toMatchObject([{ drawn: [] }]);
    expect(left(shop, 'fluid', 'F-1')).toBe('0.25');
    expect(workUsing(shop.car(), 'F-1')).toHaveLength(1);
  });
});
