/** Who works in the shop: what they may do from a day to a day, and who lets owners in and out. */
import { describe, expect, test } from 'vitest';
import { isQualified, nameAt } from '@/lib/domain/shop/rows';
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

describe('given somebody with another name from today', () => {
  const rename = { type: 'rename-person', person: 'tess', name: 'Tess Marrow' } as const;
  const tess = (shop: ReturnType<typeof shopWith>) => {
    const found = shop.world.shop.people['tess'];
    if (found === undefined) throw new Error('Tess is not there');
    return found;
  };

  test('then what was before keeps the name of then, through every change', () => {
    const shop = shopWith(brakes);
    const first = tess(shop).name;
    const before = shop.now;
    shop.later('1 d');
    shop.does('leo', rename);
    const between = shop.now;
    shop.later('1 d');
    shop.does('leo', { ...rename, name: 'Tess Thorn' });
    expect(nameAt(tess(shop), before)).toBe(first);
    expect(nameAt(tess(shop), between)).toBe('Tess Marrow');
    expect(nameAt(tess(shop), shop.now)).toBe('Tess Thorn');
    expect(tess(shop).name).toBe('Tess Thorn');
  });

  test('then a signature says the name that it was given under', () => {
    const shop = shopWith(brakes);
    const signedBy = () => {
      const [finished] = shop
        .does('tess', { type: 'finish-operation', operation: 'AX-010' })
        .filter((event) => event.type === 'operation-finished');
      return finished?.type === 'operation-finished' ? finished.signed.as?.name : undefined;
    };
    const first = tess(shop).name;
    shop.does('tess', { type: 'start-operation', operation: 'AX-010' });
    expect(signedBy()).toBe(first);
    const { last } = shop;
    shop.does('leo', rename);
    shop.does('tess', { type: 'strike-signature', signature: last, reason: 'too early' });
    shop.does('tess', { type: 'resume-operation', operation: 'AX-010' });
    expect(signedBy()).toBe('Tess Marrow');
  });

  test('the same name again changes nothing; a technician renames nobody, and nobody is no one', () => {
    const shop = shopWith(brakes);
    expect(shop.does('leo', { ...rename, name: tess(shop).name })).toEqual([]);
    expect(tess(shop).formerly).toBeUndefined();
    expect(shop.codes('tess', rename)).toEqual(['not-allowed']);
    expect(shop.codes('leo', { ...rename, person: 'nobody' })).toEqual(['unknown-thing']);
  });
});

describe('given roles to be changed', () => {
  const roles = (person: string, ...wanted: readonly ('owner' | 'lead' | 'technician')[]) =>
    ({ type: 'change-roles', person, roles: wanted }) as const;

  test('then an owner gives and takes them, and they count at once', () => {
    const shop = shopWith(brakes);
    expect(shop.codes('tess', { type: 'assign', job: 'stage:AX', add: ['tess'] })).toEqual(['not-allowed']);
    shop.does('ada', roles('tess', 'technician', 'lead'));
    expect(shop.world.shop.people['tess']?.roles).toEqual(['lead', 'technician']);
    shop.does('tess', { type: 'assign', job: 'stage:AX', add: ['tess'] });
    shop.does('ada', roles('tess', 'technician'));
    expect(shop.codes('tess', { type: 'assign', job: 'stage:AX', add: ['tess'] })).toEqual(['not-allowed']);
  });

  test('then a lead changes none, not even their own', () => {
    const shop = shopWith(brakes);
    expect(shop.codes('leo', roles('tess', 'lead'))).toEqual(['not-allowed']);
    expect(shop.codes('leo', roles('leo', 'lead', 'owner'))).toEqual(['not-allowed']);
  });

  test('then the only owner keeps that role until there is another, and may take others on', () => {
    const shop = shopWith(brakes);
    expect(shop.codes('ada', roles('ada', 'lead'))).toEqual(['last-owner']);
    shop.does('ada', roles('ada', 'owner', 'lead'));
    shop.does('ada', roles('leo', 'lead', 'owner'));
    shop.does('ada', roles('ada', 'lead'));
    expect(shop.codes('leo', roles('leo', 'lead'))).toEqual(['last-owner']);
    expect(shop.codes('ada', roles('leo', 'lead'))).toEqual(['not-allowed']);
  });

  test('an owner who left is no owner: the one who stays keeps the role', () => {
    const shop = shopWith(brakes);
    shop.does('ada', roles('leo', 'lead', 'owner'));
    shop.does('leo', { type: 'remove-person', person: 'ada' });
    expect(shop.codes('leo', roles('leo', 'lead'))).toEqual(['last-owner']);
  });

  test('the same roles again change nothing', () => {
    const shop = shopWith(brakes);
    expect(shop.does('ada', roles('tess', ...(shop.world.shop.people['tess']?.roles ?? [])))).toEqual([]);
  });
});
