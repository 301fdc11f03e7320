/** A tool that fell: what rests on it, in words, on the list and on its own page; and what its certificate settles. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { toolPageView } from '@/lib/server/queries/set-up/tool-page';
import { toolsView } from '@/lib/server/queries/set-up/tools';
import { StoredShop } from '@/tests/support/stored-shop';

let shop: StoredShop;
beforeAll(async () => {
  shop = await StoredShop.open();
});
afterAll(() => shop.close());

const listed = async () => (await toolsView(shop.db)).tools.find(({ id }) => id === 'T-02');

test('since before the final: the joint is in doubt and named; tested good: it stands', async () => {
  await shop.carAtOpenGate('C-1');
  expect(await listed()).toMatchObject({ isSuspect: false, inDoubt: null });

  await shop.must('tess', {
    type: 'suspect-tool',
    tool: 'T-02',
    reason: 'dropped',
    from: '2026-03-01T00:00:00.000Z',
  });
  expect(await listed()).toMatchObject({
    isUsable: false,
    isSuspect: true,
    calibration: 'suspect: it fell',
    inDoubt: '1 joint on 1 car',
  });
  const page = await toolPageView(shop.db, 'T-02');
  expect(page?.touches).toMatchObject([
    {
      car: 'C-1',
      joint: 'J-1',
      name: 'Spring eye',
      who: 'Tom',
      doubt: 'slacken and renew: it may be too tight',
    },
  ]);
  expect(page?.suspect).toMatchObject([{ isOpen: true }]);
  expect(page?.suspect[0]?.says).toMatch(/^it fell, from .* until somebody tests it$/);

  await shop.must('leo', {
    type: 'record-calibration',
    tool: 'T-02',
    on: '2026-03-02',
    due: '2027-03-02',
    certificate: 'CAL-77',
    asFound: [
      { set: '20', delivered: '20.1' },
      { set: '80', delivered: '80.3' },
    ],
  });
  expect(await listed()).toMatchObject({ isSuspect: false, inDoubt: null });
  const after = await toolPageView(shop.db, 'T-02');
  expect(after?.calibrations[0]).toMatchObject({ certificate: 'CAL-77' });
  expect(after?.suspect[0]).toMatchObject({ isOpen: false });
  expect(after?.touches.map(({ doubt }) => doubt)).toEqual(after?.touches.map(() => null));
});
