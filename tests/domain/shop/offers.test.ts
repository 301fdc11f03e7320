/** The books of buying: terms of items, suppliers, offers, files of them. Every name and price here is invented. */
import { describe, expect, test } from 'vitest';
import { sentence } from '@/lib/domain/base/sentences';
import { fromShopRows, toShopRows } from '@/lib/domain/shop/codec';
import { shopCatalogue } from '@/lib/domain/shop/catalogue';
import { toDecimalText } from '@/lib/domain/base/exact';
import type { ItemTermsClaim, OfferClaim } from '@/lib/domain/supply-claims';
import { plan, shopWith } from '@/tests/support/shop';

const document = plan({
  stages: { AX: { name: 'Axle' } },
  operations: { 'AX-010': { name: 'Brake pipes', stage: 'AX' } },
  parts: { 'P-9': { name: 'Dampers', origin: 'bought' } },
  items: {
    NUT: { name: 'insert lock nut M10 class 8', reuse: 'once final', trace: 'lot' },
    TUBE: { name: 'brake line 4.75', unit: 'm' },
  },
});
const opened = () => {
  const shop = shopWith(document);
  shop.does('leo', { type: 'set-supplier', supplier: 'H', name: 'Thornby Fixings', orderDays: [3], lead: 2 });
  return shop;
};
const item = (terms: Partial<ItemTermsClaim> = {}) => ({ type: 'set-item', item: 'NUT', ...terms }) as const;
const offer = (terms: Partial<OfferClaim> = {}) =>
  ({
    type: 'set-offer',
    supplier: 'H',
    item: 'NUT',
    pack: '50',
    prices: [{ fromPacks: 1, price: 420 }],
    ...terms,
  }) as const;

describe('the shop’s terms of an item', () => {
  test.each<[string, Partial<ItemTermsClaim>, readonly string[]]>([
    ['a minimum that is no number', { minimum: 'a few' }, ['value-unreadable']],
    ['less than nothing', { minimum: '-1' }, ['value-unreadable']],
    ['more lost than there is', { item: 'TUBE', attrition: '101' }, ['value-unreadable']],
    ['lots are counted: nothing of them gets lost', { attrition: '5' }, ['value-unreadable']],
    ['other words than the plan’s', { name: 'nut', unit: 'box' }, ['plan-says', 'plan-says']],
    ['another reuse than the plan’s', { reuse: 'always' }, ['plan-says']],
    ['a box in itself', { comesWith: { NUT: 1 } }, ['comes-with-itself']],
    ['a box of what is not there', { comesWith: { GHOST: 1 } }, ['unknown-thing']],
    ['under the key of a part', { item: 'P-9', name: 'dampers' }, ['already-there']],
    ['a part that no plan has', { isPart: 'P-1' }, ['unknown-thing']],
    ['one of its own without a name', { item: 'CLIP' }, ['value-unreadable']],
    [
      'one of its own, whose reuse can’t be read',
      { item: 'CLIP', name: 'clip', reuse: 'twice' },
      ['value-unreadable'],
    ],
    ['a size that can’t be read', { item: 'CLIP', size: '3/8-16 x 2 gr 9.9' }, ['size-unreadable']],
  ])('%s', (_, terms, codes) => {
    expect(opened().codes('leo', item(terms))).toEqual(codes);
  });

  test('a size is read as it is everywhere, and says part by part what can’t be read', () => {
    const shop = opened();
    shop.does('leo', item({ item: 'C38x2.50', size: '3/8-16 x 2 1/2 gr 5', trace: 'lot' }));
    expect(shop.world.shop.items['C38x2.50']?.own?.name).toBe('bolt 3/8-16×2-1/2 g5');
    const [refusal] = shop.refused('leo', item({ item: 'X', size: 'M10x1.25 10.9' }));
    expect(refusal === undefined ? '' : sentence(refusal, () => null)).toMatch(/M10x1\.25 10\.9.*Write /u);
  });

  test('the catalogue has the plans’ items with these terms, and the shop’s own', () => {
    const shop = opened();
    shop.does('leo', item({ minimum: '20', shelfMonths: 24, openedDays: 7 }));
    shop.does('leo', item({ item: 'CLIP', name: 'clip', attrition: '5', comesWith: { NUT: 2 } }));
    shop.does('leo', item({ item: 'SET', name: 'damper set', isPart: 'P-9' }));
    const { NUT, CLIP, SET, TUBE } = shopCatalogue([document], shop.world.shop.items);
    expect(NUT).toMatchObject({
      name: 'insert lock nut M10 class 8',
      trace: 'lot',
      shelf: { months: 24, openedDays: 7 },
    });
    expect([NUT?.minimum, CLIP?.attrition].map((each) => each && toDecimalText(each))).toEqual([
      '20',
      '0.05',
    ]);
    expect(CLIP).toMatchObject({ name: 'clip', unit: 'pc', comesWith: { NUT: 2 } });
    expect(SET?.isPart).toBe('P-9');
    expect(TUBE).toMatchObject({ unit: 'm', shelf: null });
  });

  test('new terms leave the words of one of its own alone; the same once more says nothing', () => {
    const shop = opened();
    shop.does('leo', item({ item: 'CLIP', name: 'clip', reuse: '3 times' }));
    shop.does('leo', item({ item: 'CLIP', minimum: '40' }));
    expect(shop.world.shop.items['CLIP']).toMatchObject({
      own: { name: 'clip', reuse: '3 times' },
      minimum: '40',
    });
    expect(shop.does('leo', item({ item: 'CLIP', minimum: '40' }))).toEqual([]);
  });
});

describe('a supplier', () => {
  const supplier = { type: 'set-supplier', supplier: 'B', name: 'Brindle', orderDays: [3], lead: 4 } as const;
  const freight = (by: 'value' | 'weight', ...froms: number[]) => ({
    freight: { by, steps: froms.map((from) => ({ from, fee: 980 })) },
  });

  test.each([
    ['never takes an order', { orderDays: [] }, ['no-order-day']],
    ['freight begins above nothing', freight('value', 100), ['steps-out-of-order']],
    ['freight falls back', freight('value', 0, 900, 500), ['steps-out-of-order']],
  ])('%s', (_, terms, codes) => {
    expect(opened().codes('leo', { ...supplier, ...terms })).toEqual(codes);
  });

  test('with freight by weight every pack has one, whichever of the two is said first', () => {
    const shop = opened();
    shop.does('leo', { ...supplier, ...freight('weight', 0, 5000) });
    expect(shop.codes('leo', offer({ supplier: 'B' }))).toEqual(['weight-missing']);
    shop.does('leo', offer());
    const heavier = { ...supplier, supplier: 'H', ...freight('weight', 0) };
    expect(shop.codes('leo', heavier)).toEqual(['weight-missing']);
  });

  test('without order days it takes orders any day', () => {
    const shop = opened();
    shop.does('leo', { ...supplier, orderDays: [], takesToday: true });
    expect(shop.world.shop.suppliers['B']).toMatchObject({
      minimumValue: 0,
      freight: { by: 'value', steps: [{ from: 0, fee: 0 }] },
    });
  });
});

describe('an offer', () => {
  test.each<[string, Partial<OfferClaim>, readonly string[]]>([
    ['of nobody', { supplier: 'X' }, ['unknown-thing']],
    ['of nothing', { item: 'GHOST' }, ['unknown-thing']],
    ['half a nut', { pack: '0.5' }, ['value-unreadable']],
    ['a pack of none', { pack: '0' }, ['value-unreadable']],
    [
      'steps that fall',
      { prices: [5, 2].map((fromPacks) => ({ fromPacks, price: 1 })) },
      ['steps-out-of-order'],
    ],
  ])('%s', (_, terms, codes) => {
    expect(opened().codes('leo', offer(terms))).toEqual(codes);
  });

  test('of what is measured comes in packs of any size; one pack is one offer, however it is written', () => {
    const shop = opened();
    shop.does('leo', offer({ item: 'P-9', pack: '1' }));
    shop.does('leo', { type: 'end-offer', offer: 'H/P-9/1' });
    shop.does('leo', offer({ item: 'TUBE', pack: '7.50' }));
    shop.does('leo', offer({ item: 'TUBE', pack: '7,5', prices: [{ fromPacks: 1, price: 1290 }] }));
    expect(Object.values(shop.world.shop.offers)).toMatchObject([
      { id: 'H/P-9/1', ended: true },
      { id: 'H/TUBE/7.5', packSize: '7.5', steps: [{ price: 1290 }] },
    ]);
  });

  test('ended, it stands in the books, ends once, and begins anew when it is offered again', () => {
    const shop = opened();
    shop.does('leo', offer());
    const end = { type: 'end-offer', offer: 'H/NUT/50' } as const;
    shop.does('leo', end);
    expect(shop.world.shop.offers['H/NUT/50']?.ended).toBe(true);
    expect(shop.codes('leo', end)).toEqual(['offer-ended']);
    shop.does('leo', offer());
    expect(shop.world.shop.offers['H/NUT/50']?.ended).toBe(false);
  });
});

describe('a file', () => {
  const row = ({ type: _, ...terms }: ReturnType<typeof offer>): OfferClaim => terms;
  const read = (...offers: readonly OfferClaim[]) =>
    ({ type: 'import-offers', offers, firstRow: 2 }) as const;

  test('is taken in whole, and only what it changes is told', () => {
    const shop = opened();
    shop.does('leo', offer());
    const file = read(row(offer()), row(offer({ pack: '25' })));
    const [event] = shop.does('leo', file);
    expect(event).toMatchObject({ type: 'offers-imported', offers: [{ id: 'H/NUT/25' }] });
    expect(Object.keys(shop.world.shop.offers)).toEqual(['H/NUT/50', 'H/NUT/25']);
    expect(shop.does('leo', file)).toEqual([]);
  });

  test('with faults is taken in not at all, and each is told by its row and column there', () => {
    const shop = opened();
    const refusals = shop.refused(
      'leo',
      read(row(offer()), row(offer({ item: 'GHOST' })), row(offer({ pack: 'x' })), row(offer())),
    );
    expect(refusals.map(({ code, place }) => [code, place?.row, place?.column])).toEqual([
      ['unknown-thing', 3, 'item'],
      ['value-unreadable', 4, 'pack'],
      ['given-before', 5, 'offer'],
    ]);
    const [first] = refusals;
    expect(first === undefined ? '' : sentence(first, () => null)).toMatch(/^Row 3, item: There is no item/u);
    expect(shop.world.shop.offers).toEqual({});
  });

  test('of items may name in a box what stands further down', () => {
    const shop = opened();
    const items = [
      { item: 'SET', name: 'damper set', comesWith: { RUBBER: 4 } },
      { item: 'RUBBER', name: 'damper rubber' },
    ];
    shop.does('leo', { type: 'import-items', items });
    expect(Object.keys(shop.world.shop.items)).toEqual(['SET', 'RUBBER']);
  });
});

describe('what is insisted on', () => {
  const pin = (terms: object) => ({ type: 'pin-line', item: 'NUT', ...terms }) as const;

  test.each([
    ['nothing', {}, ['pin-empty']],
    ['half a nut', { quantity: '1.5' }, ['value-unreadable']],
    ['a supplier who has none', { supplier: 'H' }, ['not-offered']],
    ['a supplier who is not there', { supplier: 'X' }, ['unknown-thing']],
    ['an item that is not there', { item: 'GHOST', buyToday: true }, ['unknown-thing']],
  ])('%s', (_, terms, codes) => {
    expect(opened().codes('ada', pin(terms))).toEqual(codes);
  });

  test('stands until it is taken back, and can be taken back once', () => {
    const shop = opened();
    shop.does('leo', offer());
    shop.does('ada', pin({ supplier: 'H', quantity: '60' }));
    expect(shop.world.shop.pins['NUT']).toMatchObject({
      pin: { supplier: 'H', quantity: '60' },
      since: '2026-03-02',
    });
    shop.does('leo', { type: 'unpin-line', item: 'NUT' });
    expect(shop.world.shop.pins['NUT']?.pin).toBeNull();
    expect(shop.codes('leo', { type: 'unpin-line', item: 'NUT' })).toEqual(['unknown-thing']);
  });
});

test('all of it goes into rows and comes back the same', () => {
  const shop = opened();
  shop.does('leo', item({ minimum: '20' }));
  shop.does('leo', offer());
  shop.does('leo', { type: 'pin-line', item: 'NUT', exclude: true });
  const rows = toShopRows(shop.world.shop);
  expect(rows.map(({ table }) => table)).toEqual(
    expect.arrayContaining(['item', 'supplier', 'offer', 'line_pin']),
  );
  expect(fromShopRows(shop.world.shop.version, rows)).toEqual(shop.world.shop);
});
