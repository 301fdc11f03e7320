/** A signature keeps what its signer and the tool were that day; no later change of the books alters it. */
import { expect, test } from 'vitest';
import { plan, shopWith } from '@/tests/support/shop';

const one = plan({
  stages: { AX: { name: 'Axle' } },
  operations: { 'AX-010': { name: 'Rod', stage: 'AX', body: ['final J-1'] } },
  joints: {
    'J-1': { name: 'Rod', fasteners: 1, method: 'dial', torque: '45 ± 3 N·m', source: 'Invented' },
  },
});

test('name, roles, qualifications that held, tool and its calibration stand in the event', () => {
  const shop = shopWith(one);
  shop.begin('tom', 'AX-010');
  const events = shop.does('tom', {
    type: 'final-joint',
    joint: 'J-1',
    tool: 'T-05',
    passes: [[1]],
    readings: ['45'],
  });
  const marked = events.find((event) => event.type === 'joint-marked');
  const as = marked?.type === 'joint-marked' ? marked.signed.as : undefined;
  expect(as).toMatchObject({
    name: shop.world.shop.people['tom']?.name,
    roles: ['technician'],
    tool: 'T-05',
  });
  expect(as?.calibration).toEqual(shop.world.shop.tools['T-05']?.calibrations.at(-1));
  expect(marked?.meta).toMatchObject({ by: 'tom' });
  expect(marked?.meta.receivedAt).toBeDefined();
  expect(marked?.meta.doneAt).toBeDefined();
});
