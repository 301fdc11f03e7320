/**
 * Hardware that came off the donor with its parts: what is good goes back in and is not bought, what is tightened once is
 * thrown away. Shop days: donor intake; design: supply is good lots, what is on order, and donor hardware graded good. Every
 * number is invented.
 */
import { beforeEach, describe, expect, test } from 'vitest';
import { toDecimalText } from '@/lib/domain/base/exact';
import { catalogueOf } from '@/lib/domain/shop/item';
import { boxedOn } from '@/lib/domain/shop/kit';
import { coveredWords } from '@/lib/domain/shop/need-words';
import { reachFor, shelfOf } from '@/lib/domain/shop/shelf';
import { pricesOf } from '@/lib/domain/shop/unit-price';
import { onHand } from '@/lib/domain/shop/stock';
import { shopNeed } from '@/lib/domain/shop-need';
import type { ShopNeed } from '@/lib/domain/shop-need';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const FIRM = { method: 'firm', torque: 'no value published', firmMeans: 'no gap' } as const;
const ITEMS: NonNullable<PlanDocument['items']> = {
  bolt: { name: 'bolt 7/16-20 x 2 gr 8', trace: 'lot' },
  lock: { name: 'lock nut 7/16-20', reuse: 'once final', trace: 'lot' },
  stay: { name: 'insert nut M6', reuse: '3 times' },
  BF: { name: 'brake fluid DOT 4', unit: 'l' },
  rag: { name: 'lint-free cloth' },
};

/** The arm is critical: its bolts may be used again, its lock nuts may not. The stay is opened twice more by the plan. */
const arms = plan({
  stages: { AX: { name: 'Axles' } },
  operations: {
    'AX-1': { name: 'Arms on', stage: 'AX', minutes: 60, body: ['final J-1', 'final J-2'] },
    'AX-2': {
      name: 'Stay off and on',
      stage: 'AX',
      minutes: 60,
      needs: ['AX-1'],
      body: ['open J-2', 'final J-2'],
      consumables: { BF: '0.5 l', rag: 2 },
    },
    'AX-3': { name: 'Stay off and on', stage: 'AX', needs: ['AX-2'], body: ['open J-2', 'final J-2'] },
  },
  joints: {
    'J-1': {
      name: 'arm to frame',
      fasteners: 4,
      critical: true,
      verify: 'seen',
      ...FIRM,
      hardware: { bolt: 4, lock: 4 },
    },
    'J-2': { name: 'stay', fasteners: 2, ...FIRM, hardware: { stay: 2 } },
  },
  items: ITEMS,
});
/** Another model whose maker wants these bolts new. */
const strict = plan({
  plan: 'Lintel GT',
  stages: { AX: { name: 'Axles' } },
  operations: { 'AX-1': { name: 'Arms on', stage: 'AX', minutes: 60, body: ['final J-1'] } },
  joints: { 'J-1': { name: 'arm to frame', fasteners: 4, ...FIRM, hardware: { bolt: 4 } } },
  items: { ...ITEMS, bolt: { name: 'bolt 7/16-20 x 2 gr 8', reuse: 'once fitted', trace: 'lot' } },
});

let shop: Shop;
beforeEach(() => {
  shop = shopWith(arms, { also: [strict] });
  shop.startCar('C2', arms);
});

const keep = (
  lines: readonly { item: string; good: string; scrapped?: string; lot?: string; bin?: string }[],
) => ({ type: 'keep-donor-hardware', donorOf: 'C1', lines }) as const;
const bolts = keep([{ item: 'bolt', good: '4', scrapped: '2', lot: 'L-9', bin: '4a' }]);

const need = (): ShopNeed =>
  shopNeed(
    shop.world,
    Object.fromEntries([arms, strict].map((each) => [`${each.plan} r${each.revision}`, each])),
    catalogueOf([arms, strict]),
    { today: '2026-03-02', minutesADay: 420, days: { shut: [6, 7], closed: [] } },
  );
const names = {
  thing: () => null,
  item: () => null,
  car: (id: string) => id,
  person: () => null,
  day: (day: string) => day,
  dayOf: (at: string) => at,
};
/** What is to be bought of an item, and what covers the rest. */
const asked = (item: string): readonly string[] => {
  const line = need().demand.find((each) => each.item === item);
  return line === undefined
    ? []
    : [`buy ${toDecimalText(line.buy)}`, ...coveredWords(line.allocations, 'pc', names)];
};
const left = (lot: string, item = 'bolt'): string => {
  const row = shop.world.stock[`${item}|${lot}`];
  return row === undefined ? 'nothing' : toDecimalText(onHand(row));
};
const fitArm = (car: string, hardware: readonly FittedClaim[]): void => {
  shop.begin('tom', 'AX-1', car);
  shop.does('tom', { type: 'snug-joint', car, joint: 'J-1', hardware });
};

describe('what is good', () => {
  test('covers its own car before anything is bought, and no other car', () => {
    expect(asked('bolt')).toEqual(['buy 8']);
    shop.does('tom', bolts);
    expect(asked('bolt')).toEqual(['buy 4', '4 off the donor, lot L-9']);
    expect(
      need()
        .demand.find(({ item }) => item === 'bolt')
        ?.short.map(({ car }) => car),
    ).toEqual(['C2']);
  });

  test('is a lot with a bin of its own, and remembers what was thrown away', () => {
    const events = shop.does('tom', bolts);
    expect(events.map(({ type }) => type)).toEqual(['donor-hardware-kept', 'lot-received']);
    expect(shop.world.shop.lots['L-9']).toMatchObject({
      item: 'bolt',
      quantity: 4,
      bin: '04A',
      donor: { car: 'C1', isShared: false, scrapped: '2' },
    });
  });

  test('is named by itself where nobody names it, after the lots that are there', () => {
    shop.does('leo', { type: 'receive-lot', lot: 'L-0007', item: 'bolt', quantity: 1 });
    shop.does(
      'tom',
      keep([
        { item: 'bolt', good: '3' },
        { item: 'stay', good: '2' },
      ]),
    );
    expect(Object.keys(shop.world.shop.lots)).toEqual(['L-0007', 'L-0008', 'L-0009']);
  });

  test('goes in as any lot does: the event draws it, the joint remembers it, and it is the second time', () => {
    shop.does('tom', bolts);
    fitArm('C1', [{ item: 'bolt', lot: 'L-9' }]);
    expect(left('L-9')).toBe('0');
    expect(shop.car().joints['J-1']?.fasteners['1']?.['bolt']).toMatchObject({ lot: 'L-9', uses: 2 });
    expect(asked('bolt')).toEqual(['buy 4']);
    // Should the donor turn out to have been flooded, every joint that has its bolts is in doubt.
    shop.does('tom', { type: 'quarantine-lot', lot: 'L-9', reason: 'the donor was under water' });
    expect(new Set(shop.doubts('J-1').map(({ cause }) => cause))).toEqual(new Set(['lot-quarantined']));
  });

  test('out of a kit it goes in without a word', () => {
    shop.does('tom', bolts);
    shop.does('tom', {
      type: 'pick-kit',
      operation: 'AX-1',
      lines: [{ item: 'bolt', lot: 'L-9', quantity: '4' }],
    });
    expect(asked('bolt')).toEqual(['buy 4', '4 off the donor, lot L-9']);
    fitArm('C1', []);
    expect(left('L-9')).toBe('0');
    expect(shop.car().joints['J-1']?.fasteners['3']?.['bolt']?.lot).toBe('L-9');
  });

  test('is the first that its car reaches for, and lies in nobody else’s reach', () => {
    shop.does('tom', bolts);
    shop.does('leo', { type: 'receive-lot', lot: 'L-0001', item: 'bolt', quantity: 8 });
    const reach = (car: string) => {
      const { world } = shop;
      const boxed = boxedOn(Object.values(world.cars));
      const shelf = shelfOf(world.shop, world.stock, catalogueOf([arms]), '2026-03-02', boxed);
      const { lot, bin, good } = reachFor(world.shop, shelf, 'bolt', car);
      return [lot, bin, toDecimalText(good)];
    };
    expect(reach('C1')).toEqual(['L-9', '04A', '12']);
    expect(reach('C2')).toEqual(['L-0001', null, '8']);
    // What lies in its box already is not reached for once more.
    shop.does('tom', {
      type: 'pick-kit',
      operation: 'AX-1',
      lines: [{ item: 'bolt', lot: 'L-9', quantity: '3' }],
    });
    expect(reach('C1')).toEqual(['L-9', '04A', '9']);
    // Taken without a word it is the new ones that went.
    fitArm('C2', []);
    expect(reach('C1')).toEqual(['L-9', '04A', '5']);
  });

  test('cost nothing: it came with the donor', () => {
    shop.does('tom', bolts);
    const { lots, orders, offers } = shop.world.shop;
    const price = pricesOf({ lots, orders, offers, catalogue: catalogueOf([arms]) })('bolt', 'L-9', null);
    expect(price).toMatchObject({ basis: 'lot', goods: { num: 0n } });
  });
});

describe('what is not', () => {
  test('is whatever the plan tightens once, or uses up; thrown away it may be said of anything', () => {
    expect(
      shop.refused(
        'tom',
        keep([
          { item: 'lock', good: '4' },
          { item: 'BF', good: '1' },
          { item: 'rag', good: '1' },
        ]),
      ),
    ).toMatchObject([
      { code: 'must-be-new', details: { item: 'lock', joint: null } },
      { code: 'must-be-new', details: { item: 'BF', rule: 'used up by the work' } },
      { code: 'must-be-new', details: { item: 'rag', rule: 'used up by the work' } },
    ]);
    shop.does('tom', keep([{ item: 'lock', good: '0', scrapped: '4' }]));
    expect(asked('lock')).toEqual(['buy 8']);
    expect(shop.world.shop.lots).toEqual({});
  });

  test('is said line by line, and all of it at once', () => {
    const lines = [
      { item: 'bolt', good: 'four' },
      { item: 'bolt', good: '0' },
      { item: 'rivet', good: '1' },
      { item: 'bolt', good: '1', bin: 'there' },
      { item: 'bolt', good: '1', lot: 'L-3' },
      { item: 'bolt', good: '1', lot: 'L-3' },
    ];
    expect(shop.refused('tom', keep(lines)).map(({ code }) => code)).toEqual([
      'value-unreadable',
      'value-unreadable',
      'unknown-thing',
      'value-unreadable',
      'already-there',
    ]);
    expect(shop.codes('tom', { ...bolts, donorOf: 'C9' })).toEqual(['unknown-thing']);
  });

  test('goes into another car, until somebody shares it', () => {
    shop.does('tom', bolts);
    const other = {
      type: 'snug-joint',
      car: 'C2',
      joint: 'J-1',
      hardware: [{ item: 'bolt', lot: 'L-9' }],
    } as const;
    shop.begin('tom', 'AX-1', 'C2');
    expect(shop.refused('tom', other)).toMatchObject([
      { code: 'lot-of-other-car', details: { lot: 'L-9', car: 'C1' } },
    ]);
    expect(
      shop.codes('tom', {
        type: 'pick-kit',
        car: 'C2',
        operation: 'AX-1',
        lines: [{ item: 'bolt', lot: 'L-9', quantity: '1' }],
      }),
    ).toEqual(['lot-of-other-car']);
    expect(shop.codes('tom', { type: 'share-donor-lot', lot: 'L-9' })).toEqual(['not-allowed']);
    shop.does('leo', { type: 'share-donor-lot', lot: 'L-9' });
    shop.does('tom', other);
    expect(left('L-9')).toBe('0');
    expect(shop.does('leo', { type: 'share-donor-lot', lot: 'L-9' })).toEqual([]);
  });

  test('is good for a plan that wants it new, shared or not', () => {
    shop.startCar('C3', strict);
    expect(asked('bolt')).toEqual(['buy 12']);
    shop.does('tom', keep([{ item: 'bolt', good: '20', lot: 'L-9' }]));
    shop.does('leo', { type: 'share-donor-lot', lot: 'L-9' });
    expect(asked('bolt')).toEqual(['buy 4', '4 off the donor, lot L-9', '4 off the donor of C1, lot L-9']);
    shop.begin('tom', 'AX-1', 'C3');
    const used = [{ item: 'bolt', lot: 'L-9' }] as const;
    expect(
      shop.refused('tom', { type: 'snug-joint', car: 'C3', joint: 'J-1', hardware: used }),
    ).toMatchObject([{ code: 'must-be-new', details: { item: 'bolt', joint: 'J-1' } }]);
    expect(
      shop.codes('tom', {
        type: 'pick-kit',
        car: 'C3',
        operation: 'AX-1',
        lines: [{ item: 'bolt', lot: 'L-9', quantity: '4' }],
      }),
    ).toEqual(['must-be-new']);
  });
});

test('what may go in three times went in once before: what the plan opens again asks for new ones in time', () => {
  expect(asked('stay')).toEqual(['buy 4']);
  shop.does('tom', keep([{ item: 'stay', good: '2', lot: 'L-5' }]));
  expect(asked('stay')).toEqual(['buy 4', '2 off the donor, lot L-5']);
  shop.begin('tom', 'AX-1');
  shop.does('tom', { type: 'final-joint', joint: 'J-2', hardware: [{ item: 'stay', lot: 'L-5' }] });
  expect(shop.car().joints['J-2']?.fasteners['1']?.['stay']?.uses).toBe(2);
  expect(asked('stay')).toEqual(['buy 4']);
});
