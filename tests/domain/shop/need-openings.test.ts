/** Found by a random run: opening a joint renews the one beside it that may be tightened only once. All invented. */
import { expect, test } from 'vitest';
import { compilePlan } from '@/lib/domain/plan/compile';
import { catalogueOf } from '@/lib/domain/shop/item';
import { carNeed } from '@/lib/domain/shop/need';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const CLICK = { fasteners: 1, method: 'click', torque: '45 ± 3 N·m', source: 'invented' } as const;

const beside = plan({
  stages: { S1: { name: 'One' } },
  operations: {
    'O-1': { name: 'Tighten all', stage: 'S1', body: ['final J-1', 'final J-2', 'final J-3'] },
    'O-2': {
      name: 'Set it again',
      stage: 'S1',
      needs: ['O-1'],
      body: ['open J-1', 'final J-1', 'final J-2', 'final J-3'],
    },
  },
  joints: {
    'J-1': { name: 'arm', ...CLICK, disturbs: ['J-2'] },
    'J-2': { name: 'cap', ...CLICK, useOnce: true, hardware: { stretch: 1, bolt: 1 }, disturbs: ['J-3'] },
    'J-3': { name: 'cover', ...CLICK, useOnce: true, hardware: { pin: 1 } },
  },
  items: {
    stretch: { name: 'stretch bolt', reuse: 'once final' },
    bolt: { name: 'bolt', reuse: 'always' },
    pin: { name: 'pin', reuse: 'once fitted' },
  },
});

const needs = (shop: Shop): readonly string[] => {
  const car = shop.car();
  const need = carNeed(compilePlan(beside, car.options), car, shop.world.shop, catalogueOf([beside]));
  return need.lines.map(({ item, cause }) => `${item} ${cause.kind}`);
};

test('both that stand beside it, one behind the other, are counted before anything is opened', () => {
  const shop = shopWith(beside);
  expect(needs(shop)).toEqual([
    'stretch planned',
    'stretch reopening',
    'bolt planned',
    'pin planned',
    'pin reopening',
  ]);
  shop.perform('tom', 'O-1');
  expect(needs(shop)).toEqual(['stretch reopening', 'pin reopening']);
});

test('opened, the doubt takes the place of the plan, and nothing is counted twice', () => {
  const shop = shopWith(beside);
  shop.perform('tom', 'O-1');
  shop.begin('tom', 'O-2');
  shop.does('tom', { type: 'open-joint', joint: 'J-1' });
  expect(needs(shop)).toEqual(['stretch renew', 'pin renew']);
  shop.does('tom', { type: 'open-joint', joint: 'J-2' });
  expect(needs(shop)).toEqual(['stretch opened', 'pin renew']);
});
