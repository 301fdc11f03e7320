/** Rework that was decided on finished work: its loose end names it, says which work it is on, and offers what clears it. */
import { expect, test } from 'vitest';
import { viewOf } from '@/tests/support/car-view';
import { plan, shopWith } from '@/tests/support/shop';

const document = plan({
  stages: { AX: { name: 'Axle' }, WH: { name: 'Wheels' } },
  operations: { 'AX-010': { name: 'Set the float', stage: 'AX', body: ['check K-1'] } },
  checks: { 'K-1': { name: 'Float', kind: 'visual' } },
});

test('a check of finished work fails, and rework is decided', () => {
  const shop = shopWith(document);
  shop.does('tom', { type: 'start-operation', operation: 'AX-010' });
  shop.does('tom', { type: 'pass-check', check: 'K-1' });
  shop.does('tom', { type: 'finish-operation', operation: 'AX-010' });
  shop.does('tess', { type: 'fail-check', check: 'K-1', reason: 'binds' });
  shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'rework', reason: 'set it again' });
  const end = () =>
    viewOf(shop)
      .ends.flatMap(({ rows }) => rows)
      .find(({ id }) => id === 'finding:F-1');
  expect(end()).toMatchObject({
    name: 'F-1 Float: binds',
    says: 'about Float (K-1): rework is decided and not closed. Do the rework, then close it.',
    open: 'Rework',
  });
  expect(end()?.acts.map(({ type }) => type)).toEqual(['pass-check', 'fail-check', 'close-finding']);
  expect(end()?.facts).toContainEqual(['On', expect.stringMatching(/^AX-010 Set the float, finished /)]);
  shop.does('tess', { type: 'pass-check', check: 'K-1' });
  expect(end()).toBeUndefined();
});
