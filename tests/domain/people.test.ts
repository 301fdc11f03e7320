/** Who works in the shop: what they may do from a day to a day, and who lets owners in and out. */
import { describe, expect, test } from 'vitest';
import { isQualified } from '@/lib/domain/shop/rows';
import { plan, shopWith } from '@/tests/support/shop';

const brakes = plan({
  stages: { AX: { name: 'Axle' } },
  operations: { 'AX-010': { name: 'Brake pipes', stage: 'AX', who: 'brakes' } },
});

/** The shop's day is 2 March 2026. */
const qualified = (...held: readonly { key: string; from?: string; until?: string }[]) => {
  const shop = shopWith(brakes);
  // Those of the shop hold all that the plan asks for; Nell holds what is said here.
  shop.does('leo', { type: 'add-person', person: 'nell', name: 'Nell', roles: ['technician'] });
  for (const qualification of held)
    shop.does('leo', { type: 'qualify-person', person: 'nell', qualification });
  return shop;
};
const end = (last: string, key = 'brakes') =>
  ({ type: 'end-qualification', person: 'nell', key, last }) as const;
const start = { type: 'start-operation', operation: 'AX-010' } as const;

describe('given a technician who holds “brakes” without an end', () => {
  test('when it ends yesterday, then work that asks for it is refused today', () => {
    const shop = qualified({ key: 'brakes' });
    shop.does('leo', end('2026-03-01'));
    expect(shop.codes('nell', start)).toEqual(['not-qualified']);
  });

  test('when it ends today, then today still counts, and tomorrow no longer', () => {
    const shop = qualified({ key: 'brakes' });
    shop.does('leo', end('2026-03-02'));
    shop.does('nell', start);
    const nell = shop.world.shop.people['nell'];
    expect(nell).toMatchObject({ qualifications: [{ key: 'brakes', until: '2026-03-02' }] });
    expect(nell !== undefined && isQualified(nell, 'brakes', '2026-03-03')).toBe(false);
  });

  test('every record of it ends, one to come is gone, and others stay as they were', () => {
    const shop = qualified(
      { key: 'brakes', until: '2026-02-01' },
      { key: 'brakes', until: '2028-12-31' },
      { key: 'brakes', from: '2027-01-01' },
      { key: 'fuel' },
    );
    shop.does('leo', end('2026-03-01'));
    expect(shop.world.shop.people['nell']?.qualifications).toEqual([
      { key: 'brakes', until: '2026-02-01' },
      { key: 'brakes', until: '2026-03-01' },
      { key: 'fuel' },
    ]);
  });

  test('ended and given again, it holds again', () => {
    const shop = qualified({ key: 'brakes' });
    shop.does('leo', end('2026-03-01'));
    shop.does('leo', { type: 'qualify-person', person: 'nell', qualification: { key: 'brakes' } });
    shop.does('nell', start);
  });

  test('what nobody holds can’t end, and a technician ends nothing', () => {
    const shop = qualified({ key: 'brakes' });
    expect(shop.codes('leo', end('2026-03-01', 'fuel'))).toEqual(['unknown-thing']);
    expect(shop.codes('tess', end('2026-03-01'))).toEqual(['not-allowed']);
  });
});

describe('given a shop with one owner', () => {
  const another = { type: 'add-person', person: 'eve', name: 'Eve', roles: ['lead', 'owner'] } as const;

  test('then a lead neither makes an owner nor removes one', () => {
    const shop = shopWith(brakes);
    expect(shop.codes('leo', another)).toEqual(['not-allowed']);
    expect(shop.codes('leo', { type: 'remove-person', person: 'ada' })).toEqual(['not-allowed']);
    shop.does('leo', { type: 'remove-person', person: 'tess' });
  });

  test('then the only owner stays until there is another', () => {
    const shop = shopWith(brakes);
    expect(shop.codes('ada', { type: 'remove-person', person: 'ada' })).toEqual(['last-owner']);
    shop.does('ada', another);
    shop.does('ada', { type: 'remove-person', person: 'ada' });
    expect(shop.codes('eve', { type: 'remove-person', person: 'eve' })).toEqual(['last-owner']);
  });
});
