/** A bad lot is found in every joint it is in, fastener by fastener, and in none that it has left. Values are invented. */
import { expect, test } from 'vitest';
import { toDecimalText } from '@/lib/domain/base/exact';
import { compilePlan } from '@/lib/domain/plan/compile';
import { lotIn } from '@/lib/domain/shop/lot-trace';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const DOCUMENT = plan({
  items: {
    nut: { name: 'insert lock nut M10 class 8', reuse: 'once fitted', trace: 'lot' },
    gasket: { name: 'gasket', trace: 'lot' },
  },
  stages: { AX: { name: 'Axle' } },
  operations: { 'AX-010': { name: 'Hang', stage: 'AX', body: ['snug J-1', 'snug J-2'] } },
  joints: Object.fromEntries(
    ['J-1', 'J-2'].map((key) => [
      key,
      {
        name: key,
        fasteners: 4,
        method: 'firm',
        torque: 'no value published',
        hardware: { nut: 4, gasket: { quantity: 1, per: 'joint' } },
      } as const,
    ]),
  ),
});

const where = (shop: Shop, lot: string): readonly string[] => {
  const car = shop.world.cars['C1'];
  if (car === undefined) throw new Error('no car');
  return lotIn(compilePlan(DOCUMENT, {}), car, lot, shop.world.shop).map(
    ({ joint, quantity, fasteners, inDoubt }) =>
      `${joint.stateKey}: ${toDecimalText(quantity)} at ${fasteners.join(', ') || 'the joint'}${inDoubt ? ', in doubt' : ''}`,
  );
};

test('two lots in one joint, a gasket for the whole, a nut that came off again', () => {
  const shop = shopWith(DOCUMENT);
  for (const lot of ['L-1', 'L-2']) shop.does('leo', { type: 'receive-lot', lot, item: 'nut', quantity: 20 });
  shop.does('leo', { type: 'receive-lot', lot: 'L-3', item: 'gasket', quantity: 5 });
  shop.does('tom', { type: 'start-operation', car: 'C1', operation: 'AX-010' });
  const gasket = { item: 'gasket', lot: 'L-3' };
  const snug = (joint: string, hardware: { item: string; lot: string; fasteners?: number[] }[]): void => {
    shop.does('tom', { type: 'snug-joint', car: 'C1', joint, hardware });
  };
  snug('J-1', [
    { item: 'nut', lot: 'L-1', fasteners: [1, 3] },
    { item: 'nut', lot: 'L-2', fasteners: [2, 4] },
    gasket,
  ]);
  snug('J-2', [{ item: 'nut', lot: 'L-1' }, gasket]);
  expect(where(shop, 'L-1')).toEqual(['J-1: 2 at 1, 3', 'J-2: 4 at 1, 2, 3, 4']);
  expect(where(shop, 'L-2')).toEqual(['J-1: 2 at 2, 4']);
  expect(where(shop, 'L-3')).toEqual(['J-1: 1 at the joint', 'J-2: 1 at the joint']);

  // Spent when it was opened: it promises nothing any more, and the lot has left that place.
  shop.does('tom', { type: 'open-joint', car: 'C1', joint: 'J-1', fasteners: [3] });
  expect(where(shop, 'L-1')).toEqual(['J-1: 1 at 1', 'J-2: 4 at 1, 2, 3, 4']);

  shop.does('tom', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft' });
  expect(where(shop, 'L-1')).toEqual(['J-1: 1 at 1, in doubt', 'J-2: 4 at 1, 2, 3, 4, in doubt']);
  expect(where(shop, 'L-3')).toEqual(['J-1: 1 at the joint', 'J-2: 1 at the joint']);
});
