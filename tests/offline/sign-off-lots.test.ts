/** From which lots the sign-off sheet proposes what goes in, what it says of them and what it claims. Values are invented. */
import { beforeEach, describe, expect, it } from 'vitest';
import { fittedClaims, fittedWords } from '@/components/sign-off/model/fitted';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import { catalogueOf } from '@/lib/domain/shop/item';
import { shelfOf } from '@/lib/domain/shop/shelf';
import { viewOfJoint } from '@/lib/server/queries/sign-off/view';
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const BENCH = plan({
  stages: { ST: { name: 'Steering' } },
  operations: { 'ST-010': { name: 'Box on', stage: 'ST', body: ['snug J-1', 'final J-1'] } },
  joints: {
    'J-1': {
      name: 'Box',
      fasteners: 4,
      pattern: 'cross',
      method: 'dial',
      torque: '45 ± 3 N·m',
      source: 'invented',
      hardware: { NUT: 4 },
    },
  },
  items: { NUT: { name: 'lock nut', reuse: 'once final', trace: 'lot' } },
});

let shop: Shop;
beforeEach(() => {
  shop = shopWith(BENCH);
});
const begun = (): void => {
  shop.begin('tom', 'ST-010');
};

describe('the lots of what goes in', () => {
  const shelved = (...lots: readonly (readonly [string, number, string])[]): SignOffView => {
    for (const [lot, quantity, expires] of lots)
      shop.does('leo', { type: 'receive-lot', lot, item: 'NUT', quantity, expires });
    shop.does('leo', { type: 'put-away', places: [{ item: 'NUT', bin: '9c' }] });
    const { world } = shop;
    const shelf = shelfOf(world.shop, world.stock, catalogueOf([BENCH]), shop.facts().day);
    const stores = { bins: world.shop.bins, shelf };
    const found = viewOfJoint(shop.plan(), shop.car(), shop.facts(), 'J-1', 'UTC', stores);
    if (found === null) throw new Error('no J-1');
    return found;
  };
  const said = ({ hardware }: SignOffView, chosen: readonly FittedClaim[] = []): string =>
    fittedWords(hardware, chosen).trim();

  it('proposes what goes off first with its bin, names it before the PIN, and says why a bad one is not', () => {
    begun();
    shelved(['L-1', 9, '2026-09-01'], ['L-2', 9, '2026-08-01'], ['L-3', 9, '2026-07-01']);
    shop.does('leo', { type: 'quarantine-lot', lot: 'L-3', reason: 'soft' });
    const sheet = shelved();
    expect(said(sheet)).toBe('In it: lock nut, lot L-2.');
    expect(sheet.hardware[0]?.lots.map(({ id, says, whyNot }) => [id, says, whyNot !== null])).toEqual([
      ['L-2', 'in 09C, 9 there', false],
      ['L-1', 'in 09C, 9 there', false],
      ['L-3', 'in 09C, 9 there', true],
    ]);
    expect(fittedClaims(sheet.hardware, [])).toEqual({
      hardware: [{ item: 'NUT', lot: 'L-2', fasteners: [1, 2, 3, 4] }],
    });
    const other = [{ item: 'NUT', lot: 'L-1', fasteners: [1, 2, 3, 4] }];
    expect([said(sheet, other), fittedClaims(sheet.hardware, other).hardware]).toEqual([
      'In it: lock nut, lot L-1.',
      other,
    ]);
  });

  it('says nut by nut where one lot has too few, and that nobody said where the books have none', () => {
    begun();
    expect(said(shelved())).toBe('In it: lock nut, lot not said.');
    expect(fittedClaims(shelved().hardware, [])).toEqual({});
    expect(said(shelved(['L-1', 3, '2026-09-01']))).toBe(
      'In it: lock nut, lot L-1 at 1, 2, 3; lot not said at 4.',
    );
    expect(said(shelved(['L-2', 9, '2026-10-01']))).toBe(
      'In it: lock nut, lot L-1 at 1, 2, 3; lot L-2 at 4.',
    );
  });

  it('says nothing of lots once they are in', () => {
    begun();
    const { hardware } = shelved(['L-1', 9, '2026-09-01']);
    shop.does('tom', { type: 'snug-joint', joint: 'J-1', ...fittedClaims(hardware, []) });
    expect(shop.car().joints['J-1']?.lots).toEqual(['L-1']);
    expect([said(shelved()), fittedClaims(shelved().hardware, [])]).toEqual(['', {}]);
  });
});
