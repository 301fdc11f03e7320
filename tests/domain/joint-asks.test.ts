/** What a joint asks of whoever opens its sheet, and that it asks nothing once all is signed. */
import { expect, test } from 'vitest';
import { jointCase } from '@/lib/domain/decide/joints';
import { askOf, isAsked, offeredActs } from '@/lib/domain/joint-asks';
import type { JointAsk } from '@/lib/domain/joint-asks';
import { ARM, plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const document = plan({
  stages: { S1: { name: 'Axles' }, S2: { name: 'Wheels' } },
  operations: {
    'AX-010': { name: 'Arms on', stage: 'S1', body: ['final J-1', 'final J-2', 'snug J-3'] },
  },
  joints: {
    'J-1': ARM,
    // A second person may look at it, and nobody asks them to.
    'J-2': {
      name: 'Stay',
      fasteners: 1,
      method: 'dial',
      torque: '20 ± 2 N·m',
      source: 'invented',
      dueLevel: 'final',
      verify: 'seen',
    },
    'J-3': { name: 'Clip', fasteners: 1, method: 'dial', torque: 'no value yet', source: 'invented' },
  },
});

const asks = (shop: Shop, key: string): { ask: JointAsk; isAsked: boolean; verify: boolean } => {
  const joint = shop.plan().joints.get(key);
  if (joint === undefined) throw new Error(`no ${key}`);
  const at = jointCase({ command: '', facts: shop.facts('tom'), car: shop.car(), plan: shop.plan() }, joint);
  const offered = offeredActs(at);
  const ask = askOf(at, offered);
  return { ask, isAsked: isAsked(ask), verify: offered.verify };
};

test('from open to verified each step is asked, and then nothing, until it is opened or doubted', () => {
  const shop = shopWith(document);
  expect(asks(shop, 'J-1')).toMatchObject({ ask: 'snug', isAsked: true });
  shop.begin('tom', 'AX-010');
  expect(asks(shop, 'J-1')).toMatchObject({ ask: 'final', isAsked: true });
  shop.tighten('tom', 'J-1');
  expect(asks(shop, 'J-1')).toEqual({ ask: 'verify', isAsked: true, verify: true });
  shop.verify('vera', 'J-1');
  expect(asks(shop, 'J-1')).toEqual({ ask: 'rest', isAsked: false, verify: false });
  shop.does('tess', { type: 'report-disturbed', joint: 'J-1', cause: 'moved' });
  expect(asks(shop, 'J-1')).toMatchObject({ ask: 'final', isAsked: true });
  shop.does('tess', { type: 'open-joint', joint: 'J-1' });
  expect(asks(shop, 'J-1').isAsked).toBe(true);
});

test('a second look that the plan does not ask for is offered and not asked', () => {
  const shop = shopWith(document);
  shop.begin('tom', 'AX-010');
  shop.tighten('tom', 'J-2');
  expect(asks(shop, 'J-2')).toEqual({ ask: 'rest', isAsked: false, verify: true });
});

test('what can only be snug asks nothing once it is', () => {
  const shop = shopWith(document);
  shop.begin('tom', 'AX-010');
  expect(asks(shop, 'J-3').ask).toBe('snug');
  shop.does('tom', { type: 'snug-joint', joint: 'J-3' });
  expect(asks(shop, 'J-3')).toMatchObject({ ask: 'rest', isAsked: false });
});
