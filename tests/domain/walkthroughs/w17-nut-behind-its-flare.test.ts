/** W17. A tube nut can't be renewed alone: its pipe is cut and flared again (D57), whatever the reason that it goes. All invented. */
import { expect, test } from 'vitest';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const pipes = plan({
  stages: { S1: { name: 'Lines' } },
  operations: { 'LN-010': { name: 'Make and hang the pipe', stage: 'S1', body: ['final J-310'] } },
  joints: {
    'J-310': {
      name: 'tube nut',
      fasteners: 1,
      method: 'click',
      torque: '14 ± 2 N·m',
      source: 'invented',
      hardware: { nut: { quantity: 1, dueAgain: ['LN-010'] } },
    },
  },
  items: { nut: { name: 'tube nut M10×1 for 4.75 mm', reuse: '5 times', trace: 'lot' } },
});

const made = (): Shop => {
  const shop = shopWith(pipes);
  shop.does('leo', { type: 'receive-lot', lot: 'L-0941', item: 'nut', quantity: 10 });
  shop.begin('tom', 'LN-010');
  shop.tighten('tom', 'J-310', undefined, { hardware: [{ item: 'nut', lot: 'L-0941' }] });
  shop.finish('tom', 'LN-010');
  return shop;
};
const opened = (shop: Shop): string | undefined => {
  shop.does('tom', { type: 'open-joint', joint: 'J-310' });
  return shop.car().operations['LN-010']?.status;
};

test('a good nut goes in again, and its pipe stays as it is', () => {
  expect(opened(made())).toBe('finished');
});

test('a nut of a lot that is kept apart has its pipe made again', () => {
  const shop = made();
  shop.does('tom', { type: 'quarantine-lot', lot: 'L-0941', reason: 'soft threads' });
  expect(opened(shop)).toBe('due-again');
  // It is not spent: cleared, it may go in again.
  expect(shop.car().joints['J-310']?.fasteners['1']?.['nut']?.spent).toBe(false);
});

test('an over-torqued nut has its pipe made again', () => {
  const shop = made();
  shop.does('tom', { type: 'report-over-torque', joint: 'J-310', fastener: 1, reading: '25', unit: 'N·m' });
  expect(opened(shop)).toBe('due-again');
});
