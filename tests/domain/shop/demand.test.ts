/** Cars put together: boxes, days, minimum stock. All invented. */
import { expect, test } from 'vitest';
import { exact, toDecimalText } from '@/lib/domain/base/exact';
import { compilePlan } from '@/lib/domain/plan/compile';
import { demandOf } from '@/lib/domain/shop/demand';
import type { DemandLine } from '@/lib/domain/shop/demand';
import { catalogueOf } from '@/lib/domain/shop/item';
import { carNeed } from '@/lib/domain/shop/need';
import { shopNeed } from '@/lib/domain/shop-need';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const FIRM = { method: 'firm', torque: 'no value published', firmMeans: 'no gap' } as const;

const dampers = plan({
  stages: { S1: { name: 'One' } },
  operations: {
    'D-1': { name: 'Dampers on', stage: 'S1', minutes: 500, body: ['final J-1'], hardware: { set: 1 } },
    'D-2': { name: 'Stays on', stage: 'S1', minutes: 500, body: ['final J-2'], needs: ['D-1'] },
  },
  joints: {
    'J-1': { name: 'stem', fasteners: 2, ...FIRM, hardware: { stem: 2 } },
    'J-2': { name: 'stay', fasteners: 4, ...FIRM, hardware: { stem: 4 } },
  },
  items: {
    set: { name: 'damper set', reuse: 'once fitted' },
    stem: { name: 'stem nut', reuse: 'once final', trace: 'lot' },
  },
});

const at = { today: '2026-11-25', minutesADay: 420, days: { shut: [6, 7], closed: [] } };
const catalogue = catalogueOf([dampers], { set: { comesWith: { stem: 3 } } });

const demandFor = (shop: Shop, terms = catalogue): readonly DemandLine[] =>
  demandOf(
    Object.values(shop.world.cars).map((car) => {
      const compiled = compilePlan(dampers, car.options);
      return { plan: compiled, car, need: carNeed(compiled, car, shop.world.shop, terms) };
    }),
    [],
    terms,
    at,
  );
const told = (lines: readonly DemandLine[], item: string): unknown => {
  const line = lines.find((each) => each.item === item);
  return line === undefined
    ? null
    : {
        need: toDecimalText(line.need),
        buy: toDecimalText(line.buy),
        by: line.by,
        short: line.short.map(({ car, by, quantity }) => `${car} ${by} ${toDecimalText(quantity)}`),
      };
};

test('what lies in the box covers the earliest needs of its own car, once', () => {
  const shop = shopWith(dampers);
  shop.startCar('C2', dampers);
  expect(told(demandFor(shop), 'stem')).toEqual({
    need: '6',
    buy: '6',
    by: '2026-11-26',
    short: ['C1 2026-11-26 3', 'C2 2026-11-26 3'],
  });
  expect(told(demandFor(shop), 'set')).toMatchObject({ need: '2', buy: '2', by: '2026-11-25' });
});

test('a minimum is asked for though no car needs any, with no day to it', () => {
  const shop = shopWith(dampers);
  for (const operation of ['D-1', 'D-2']) shop.perform('tom', operation);
  const terms = catalogueOf([dampers], { stem: { minimum: exact(5) } });
  expect(told(demandFor(shop, terms), 'stem')).toEqual({ need: '0', buy: '5', by: null, short: [] });
  expect(told(demandFor(shop), 'stem')).toBeNull();
});

test('of a lot only what does not stand in joints is left; one kept apart is none', () => {
  const shop = shopWith(dampers);
  shop.startCar('C2', dampers);
  shop.does('leo', { type: 'receive-lot', lot: 'L-1', item: 'stem', quantity: 10 });
  shop.begin('tom', 'D-1');
  shop.tighten('tom', 'J-1', undefined, { hardware: [{ item: 'stem', lot: 'L-1' }] });
  const lines = (): readonly DemandLine[] =>
    shopNeed(shop.world, { [shop.car().plan]: dampers }, catalogueOf([dampers]), at).demand;
  // Eight of ten: four for C1's stays, and four of the six that C2 takes.
  expect(told(lines(), 'stem')).toMatchObject({ need: '10', buy: '2', short: ['C2 2026-11-26 2'] });
  shop.does('tom', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft' });
  expect(told(lines(), 'stem')).toMatchObject({ need: '12', buy: '12' });
});
