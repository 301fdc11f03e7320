/** Approving the week's order. The shop's day is Monday, 2 March 2026; names and prices are invented. */
import { expect, test } from 'vitest';
import { toDecimalText } from '@/lib/domain/base/exact';
import { shopNeed } from '@/lib/domain/shop-need';
import { shopCatalogue } from '@/lib/domain/shop/catalogue';
import type { ApprovedClaim } from '@/lib/domain/supply-claims';
import { plan, shopWith } from '@/tests/support/shop';

const document = plan({
  stages: { AX: { name: 'Axle' } },
  operations: { 'AX-010': { name: 'Axle on', stage: 'AX', body: ['final J-1'], minutes: 60 } },
  joints: {
    'J-1': {
      name: 'Spring eye',
      fasteners: 4,
      method: 'firm',
      torque: 'no value published',
      firmMeans: 'no gap',
      hardware: { NUT: 4 },
    },
  },
  items: { NUT: { name: 'lock nut', reuse: 'once final' } },
});

const opened = () => {
  const shop = shopWith(document);
  shop.does('leo', {
    type: 'set-supplier',
    supplier: 'H',
    name: 'Thornby',
    orderDays: [3],
    lead: 3,
    freight: { by: 'value', steps: [{ from: 0, fee: 650 }] },
  });
  const prices = [
    { fromPacks: 1, price: 20 },
    { fromPacks: 10, price: 15 },
  ];
  shop.does('leo', { type: 'set-offer', supplier: 'H', item: 'NUT', pack: '1', prices });
  return shop;
};
const approve = (order: Partial<ApprovedClaim> = {}, first = 'PO-1') =>
  ({
    type: 'approve-order',
    first,
    orders: [
      { supplier: 'H', ordered: '2026-03-04', packs: [{ offer: 'H/NUT/1', packs: 4 }], total: 730, ...order },
    ],
  }) as const;

test.each<[string, ReturnType<typeof approve>, readonly string[]]>([
  ['another total than was seen', approve({ total: 729 }), ['prices-changed']],
  ['what is not sold', approve({ packs: [{ offer: 'H/NUT/50', packs: 1 }] }), ['prices-changed']],
  ['a day on which they take no order', approve({ ordered: '2026-03-03' }), ['order-day-past']],
  ['their day next week', approve({ ordered: '2026-03-11' }), ['order-day-past']],
  ['nobody', approve({ supplier: 'X' }), ['unknown-thing']],
  ['what somebody else has approved', approve({}, 'PO-0'), ['ordered-since']],
])('%s is refused', (_, claim, codes) => {
  expect(opened().codes('ada', claim)).toEqual(codes);
});

test('approved, it is frozen: what was paid, when it comes, who said so; pins are gone; a second time is refused', () => {
  const shop = opened();
  shop.does('leo', { type: 'pin-line', item: 'NUT', supplier: 'H' });
  shop.does('ada', approve({ packs: [{ offer: 'H/NUT/1', packs: 10 }], total: 800 }));
  expect(shop.codes('ada', approve())).toEqual(['ordered-since']);
  const prices = [{ fromPacks: 1, price: 99 }];
  shop.does('leo', { type: 'set-offer', supplier: 'H', item: 'NUT', pack: '1', prices });
  expect(shop.world.shop.orders['PO-1']).toMatchObject({
    // Wednesday and three working days: Monday.
    due: '2026-03-09',
    goods: 150,
    freight: 650,
    by: 'ada',
    lines: [{ item: 'NUT', packs: 10, packSize: '1', price: 15 }],
    cancelled: null,
  });
  expect(shop.world.shop.pins['NUT']?.pin).toBeNull();
});

test('what is on its way covers the need, until the order is cancelled; that can be said once', () => {
  const shop = opened();
  const plans = { 'Corbel 54 r1': document };
  const buy = (): string => {
    const terms = shopCatalogue([document], shop.world.shop.items);
    const at = { today: '2026-03-02', minutesADay: 420, days: { shut: [6, 7], closed: [] } };
    const { demand } = shopNeed(shop.world, plans, terms, at);
    return demand.map((line) => toDecimalText(line.buy)).join();
  };
  expect(buy()).toBe('4');
  shop.does('ada', approve());
  expect(buy()).toBe('0');
  const cancel = { type: 'cancel-order', order: 'PO-1', reason: 'not sent' } as const;
  shop.does('ada', cancel);
  expect(buy()).toBe('4');
  expect(shop.codes('ada', cancel)).toEqual(['order-cancelled']);
});
