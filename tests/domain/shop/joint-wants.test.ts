/** What a joint takes anew now, apart from what planned work will put in later. Values are invented. */
import { expect, test } from 'vitest';
import { toDecimalText } from '@/lib/domain/base/exact';
import { catalogueOf } from '@/lib/domain/shop/item';
import { jointWants } from '@/lib/domain/shop/kit-need';
import { carNeed } from '@/lib/domain/shop/need';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

/** Snug on the bench, opened once more on the wheels: each time two new nuts. */
const DOCUMENT = plan({
  items: { nut: { name: 'insert lock nut M10 class 8', reuse: 'once fitted', trace: 'lot' } },
  stages: { AX: { name: 'Axle' }, WH: { name: 'Wheels' } },
  operations: {
    'AX-010': { name: 'Hang', stage: 'AX', body: ['snug J-1'] },
    'WH-010': { name: 'Look in', stage: 'WH', needs: ['AX-010'], body: ['open J-1', 'snug J-1'] },
  },
  joints: {
    'J-1': {
      name: 'Eye',
      fasteners: 2,
      method: 'click',
      torque: '40 ± 4 N·m',
      source: 'invented',
      hardware: { nut: 2 },
    },
  },
});
const CATALOGUE = catalogueOf([DOCUMENT]);

const wants = (shop: Shop): readonly string[] =>
  jointWants(carNeed(shop.plan(), shop.car(), shop.world.shop, CATALOGUE), 'J-1').map(
    ({ item, wanted }) => `${toDecimalText(wanted)} ${item}`,
  );

test('nothing that planned work brings; two nuts where the lot in it went bad, and none for the opening to come', () => {
  const shop = shopWith(DOCUMENT);
  shop.does('leo', { type: 'receive-lot', lot: 'L-1', item: 'nut', quantity: 6 });
  expect(wants(shop)).toEqual([]);
  shop.begin('tom', 'AX-010');
  shop.does('tom', { type: 'snug-joint', joint: 'J-1', hardware: [{ item: 'nut', lot: 'L-1' }] });
  expect(wants(shop)).toEqual([]);
  shop.does('tom', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft' });
  expect(wants(shop)).toEqual(['2 nut']);
});
