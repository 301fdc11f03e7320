/** What one of an item cost. Worked by hand; all prices are invented. */
import { describe, expect, test } from 'vitest';
import { toDecimalText } from '@/lib/domain/base/exact';
import { itemFrom } from '@/lib/domain/shop/item';
import type { PurchaseLine, PurchaseOrder } from '@/lib/domain/shop/purchase-rows';
import { pricesOf } from '@/lib/domain/shop/unit-price';
import type { PriceOf, PriceRows } from '@/lib/domain/shop/unit-price';

const line = (item: string, packs: number, packSize: string, price: number, more = {}): PurchaseLine => ({
  offer: `H/${item}/${packSize}`,
  item,
  number: null,
  packs,
  packSize,
  price,
  cars: [],
  good: '0',
  damaged: '0',
  wrong: '0',
  lots: [],
  ended: null,
  ...more,
});
const order = (id: string, day: string, freight: number, lines: readonly PurchaseLine[], credit = 0) =>
  ({
    id,
    supplier: 'H',
    ordered: day,
    due: day,
    goods: lines.reduce((sum, { packs, price }) => sum + packs * price, 0),
    freight,
    approvedBy: 'ada',
    approvedAt: `${day}T09:00:00.000Z`,
    lines,
    deliveries: [],
    credits: credit === 0 ? [] : [{ money: credit, why: 'bent', at: `${day}T12:00:00.000Z`, by: 'leo' }],
  }) satisfies PurchaseOrder;
const offer = (item: string, packSize: string, steps: readonly [number, number][], ended = false) => ({
  id: `H/${item}/${packSize}`,
  supplier: 'H',
  item,
  packSize,
  steps: steps.map(([fromPacks, price]) => ({ fromPacks, price })),
  weight: 0,
  number: null,
  ended,
});
const prices = (orders: readonly PurchaseOrder[], more: Partial<PriceRows> = {}): PriceOf =>
  pricesOf({
    lots: {},
    orders: Object.fromEntries(orders.map((each) => [each.id, each])),
    offers: {},
    catalogue: {},
    ...more,
  });
const said = (of: ReturnType<PriceOf>): string =>
  of === null ? 'none' : `${of.basis} ${toDecimalText(of.goods)} + ${toDecimalText(of.freight)}`;

describe('of an order', () => {
  const lines = [line('nut', 2, '50', 420, { lots: ['L-1'] }), line('washer', 1, '100', 160)];

  test('freight goes over its lines by value: 50 over 1000 is a twentieth', () => {
    const priceOf = prices([order('1', '2026-03-02', 50, lines)]);
    expect(said(priceOf('nut', 'L-1', null))).toBe('lot 8.4 + 0.42');
    expect(said(priceOf('washer', null, null))).toBe('paid 1.6 + 0.08');
    // The lines together carry all of it: 840 + 42, 160 + 8.
    expect(42 + 8).toBe(50);
  });

  test('so does money that came back for what was kept: 100 of 1000 is a tenth', () => {
    const priceOf = prices([order('1', '2026-03-02', 0, lines, 100)]);
    expect(said(priceOf('nut', 'L-1', null))).toBe('lot 7.56 + 0');
    expect(said(priceOf('washer', null, null))).toBe('paid 1.44 + 0');
  });

  test('what was given up carries no freight, and money for it makes the rest no cheaper', () => {
    const ended = { why: 'credited', at: '2026-03-05T09:00:00.000Z', by: 'leo' };
    const given = [lines[0] ?? line('nut', 0, '1', 0), line('washer', 1, '100', 160, { ended })];
    // 160 back for washers that never came, and 84 more off the nuts: a tenth of their 840.
    expect(said(prices([order('1', '2026-03-02', 42, given, 160)])('nut', 'L-1', null))).toBe(
      'lot 8.4 + 0.42',
    );
    expect(said(prices([order('1', '2026-03-02', 42, given, 244)])('nut', 'L-1', null))).toBe(
      'lot 7.56 + 0.42',
    );
  });

  test('a deposit that came back for an old part makes nothing cheaper', () => {
    const sent = order('1', '2026-03-02', 42, [line('nut', 2, '50', 420, { lots: ['L-1'] })], 84);
    const back = { ...sent, credits: sent.credits.map((each) => ({ ...each, isDeposit: true as const })) };
    expect(said(prices([sent])('nut', 'L-1', null))).toBe('lot 7.56 + 0.42');
    expect(said(prices([back])('nut', 'L-1', null))).toBe('lot 8.4 + 0.42');
  });

  test('a pack that does not divide is not rounded', () => {
    const priceOf = prices([order('1', '2026-03-02', 0, [line('clip', 1, '3', 100, { lots: ['L-2'] })])]);
    expect(priceOf('clip', 'L-2', null)?.goods).toEqual({ num: 100n, den: 3n });
  });
});

describe('of goods that no lot tells of', () => {
  const paid = prices(
    [
      order('1', '2026-03-02', 0, [line('washer', 1, '100', 160)]),
      order('2', '2026-04-02', 0, [line('washer', 1, '100', 200)]),
    ],
    { offers: { a: offer('washer', '10', [[1, 5]]) } },
  );

  test.each([
    ['the last price paid by then', '2026-03-20T00:00:00.000Z', 'paid 1.6 + 0'],
    ['the next one paid, where none was before', '2026-01-01T00:00:00.000Z', 'paid 1.6 + 0'],
    ['the last one now', null, 'paid 2 + 0'],
  ])('%s, before any offer', (_, at, wanted) => {
    expect(said(paid('washer', null, at))).toBe(wanted);
  });

  test('else the cheapest offer of the fewest packs; one that ended counts no more', () => {
    const offers = {
      a: offer('washer', '100', [
        [1, 300],
        [10, 90],
      ]),
      b: offer('washer', '10', [[1, 28]]),
      c: offer('washer', '10', [[1, 1]], true),
    };
    expect(said(prices([], { offers })('washer', null, null))).toBe('offer 2.8 + 0');
  });

  test('a lot with a cost of its own says it; one without is as the item', () => {
    const lot = { id: 'L-9', item: 'washer', quantity: 5, certificate: null, certificateAsked: false };
    const rest = { expires: null, quarantined: null, receivedAt: '2026-03-02T08:00:00.000Z' };
    const lots = { 'L-9': { ...lot, ...rest, cost: '7.5' }, 'L-8': { ...lot, ...rest, id: 'L-8' } };
    const priceOf = prices([], { lots, offers: { b: offer('washer', '10', [[1, 28]]) } });
    expect([said(priceOf('washer', 'L-9', null)), said(priceOf('washer', 'L-8', null))]).toEqual([
      'lot 7.5 + 0',
      'offer 2.8 + 0',
    ]);
  });

  test('a part of the plan has the price of the item that it is bought as; else nobody knows', () => {
    const catalogue = { 'HS-kit': { ...itemFrom('HS-kit', { name: 'hose kit' }), isPart: 'P-26' } };
    const priceOf = prices([], { catalogue, offers: { a: offer('HS-kit', '1', [[1, 900]]) } });
    expect([said(priceOf('P-26', null, null)), said(priceOf('P-27', null, null))]).toEqual([
      'offer 900 + 0',
      'none',
    ]);
  });
});
