import { describe, expect, test } from 'vitest';
import type { Doubt } from '@/lib/domain/car/joint-rows';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const TORQUE = {
  'J-101': '40 ± 10 % N·m',
  'J-102': '40 ± 4 % N·m',
  'J-103': '40 ± 7 % N·m',
  'J-117': '20 ± 2 N·m',
  'J-220': '30 ± 3 N·m',
  'J-120': '35 ± 3 N·m',
  'J-121': '35 ± 3 N·m',
  'J-509': '40 ± 3 N·m',
  'J-510': '40 ± 3 N·m',
} as const;
const JOINTS = Object.keys(TORQUE) as (keyof typeof TORQUE)[];
const joint = { fasteners: 2, method: 'click', source: 'Invented' } as const;

const car = plan({
  stages: { ST: { name: 'Steering' }, PR: { name: 'Proving' }, DL: { name: 'Delivery' } },
  operations: {
    'ST-010': {
      name: 'Torque it all',
      stage: 'ST',
      body: [...JOINTS, 'J-501'].map((key) => `final ${key}`),
    },
    'PR-010': { name: 'Torque once more', stage: 'PR', body: ['final J-900'] },
  },
  joints: {
    ...Object.fromEntries(
      JOINTS.map((key) => [key, { ...joint, name: `Joint ${key}`, torque: TORQUE[key] }]),
    ),
    'J-501': {
      ...joint,
      name: 'Head bolts',
      method: 'angle',
      torque: '40 ± 4 % N·m',
      angle: '90 ± 5 °',
      useOnce: true,
    },
    'J-900': {
      ...joint,
      name: 'Seat frame',
      torque: '40 ± 4 % N·m',
      critical: true,
      verify: 're-applied',
    },
  },
});

/** Everything of the first stage torqued with click wrench T-02, calibrated in January. */
const torqued = (...cars: readonly string[]): Shop => {
  const shop = shopWith(car);
  for (const each of cars) shop.startCar(each, car);
  for (const each of ['C1', ...cars]) {
    shop.begin('tom', 'ST-010', each);
    for (const key of [...JOINTS, 'J-501']) shop.tighten('tom', key, 'T-02', { car: each });
    shop.finish('tom', 'ST-010', each);
  }
  return shop;
};

/** It comes back from the bench: set to 100 it delivered this much. */
const found = (
  shop: Shop,
  delivered: string,
  more: { readonly tolerance?: string; readonly uncertainty?: string } = {},
): void => {
  shop.does('leo', {
    type: 'record-calibration',
    tool: 'T-02',
    on: '2026-03-02',
    due: '2027-03-02',
    asFound: [{ set: '100', delivered }],
    ...more,
  });
};

const remedies = (doubts: readonly Doubt[]) => doubts.map(({ cause, remedy }) => `${cause}: ${remedy}`);
const doubted = (shop: Shop) => JOINTS.filter((key) => shop.doubts(key).length > 0);

describe('W8: given joints torqued with a wrench, when it is found +7 %', () => {
  test('then those with ± 10 % stay fine and those with ± 4 % are in doubt', () => {
    const shop = torqued();
    expect(doubted(shop)).toEqual([]);
    found(shop, '107');
    expect(shop.doubts('J-101')).toEqual([]);
    expect(shop.level('J-102')).toBe('final');
    expect(remedies(shop.doubts('J-102'))).toEqual(['tool-suspect: renew']);
    expect(shop.gate()).toContain('joint-in-doubt');
  });

  test('then one that ends exactly at the end of its window is fine', () => {
    const shop = torqued();
    found(shop, '107');
    expect(shop.doubts('J-103')).toEqual([]);
  });

  test("then the certificate's uncertainty counts: at the end of the window is then no longer inside", () => {
    const shop = torqued();
    found(shop, '107', { uncertainty: '0.1' });
    expect(remedies(shop.doubts('J-103'))).toEqual(['tool-suspect: renew']);
  });

  test('then it is true on every car at once, and is written on none', () => {
    const shop = torqued('C2', 'C3');
    const before = shop.world.cars;
    found(shop, '107');
    for (const each of ['C1', 'C2', 'C3']) {
      expect(remedies(shop.doubts('J-102', each))).toEqual(['tool-suspect: renew']);
      expect(shop.car(each).joints['J-102']?.doubts).toEqual([]);
      expect(shop.gate(each)).toContain('joint-in-doubt');
      expect(shop.jobs('open', each)).toContain('renew:J-102:1');
    }
    expect(shop.world.cars).toBe(before);
  });

  test('then a joint torqued with another wrench is not touched by it', () => {
    const shop = shopWith(car);
    shop.begin('tom', 'ST-010');
    shop.tighten('tom', 'J-102', 'T-05');
    found(shop, '107');
    expect(shop.doubts('J-102')).toEqual([]);
  });

  test('then what it may have got too much of is not cleared by trying it again: it is renewed', () => {
    const shop = torqued();
    found(shop, '107');
    expect(shop.codes('tess', { type: 'recheck-joint', joint: 'J-102', tool: 'T-05' })).toContain(
      'doubt-needs-more',
    );
    expect(shop.codes('tess', shop.tightening('J-102', 'T-05'))).toContain('doubt-needs-more');
    shop.does('tess', { type: 'open-joint', joint: 'J-102' });
    shop.does('tess', { type: 'snug-joint', joint: 'J-102' });
    shop.tighten('tess', 'J-102', 'T-05');
    expect(shop.doubts('J-102')).toEqual([]);
    expect(shop.car().joints['J-102']?.cycle).toBe(2);
  });
});

describe('W8: given joints torqued with a wrench, when it is found 7 % low', () => {
  test('then trying again with a good tool is enough, and keeps the level', () => {
    const shop = torqued();
    found(shop, '93');
    expect(remedies(shop.doubts('J-102'))).toEqual(['tool-suspect: recheck']);
    shop.does('tess', { type: 'recheck-joint', joint: 'J-102', tool: 'T-05' });
    expect(shop.doubts('J-102')).toEqual([]);
    expect(shop.level('J-102')).toBe('final');
    expect(shop.car().joints['J-102']?.cycle).toBe(1);
  });

  test('then a head bolt that is tightened only once is renewed: it has no other remedy', () => {
    const shop = torqued();
    found(shop, '93');
    expect(remedies(shop.doubts('J-501'))).toEqual(['tool-suspect: renew']);
  });

  test('then one that was verified by re-applying another good tool is not in doubt', () => {
    const shop = shopWith(car);
    shop.begin('tom', 'PR-010');
    shop.tighten('tom', 'J-900', 'T-02');
    shop.does('vera', { type: 'verify-joint', joint: 'J-900', method: 're-applied', tool: 'T-05' });
    found(shop, '93');
    expect(shop.doubts('J-900')).toEqual([]);
  });

  test('then one that was verified with the same wrench is in doubt', () => {
    const shop = shopWith(car);
    shop.begin('tom', 'PR-010');
    shop.tighten('tom', 'J-900', 'T-02');
    shop.does('vera', { type: 'verify-joint', joint: 'J-900', method: 're-applied', tool: 'T-02' });
    found(shop, '93');
    expect(remedies(shop.doubts('J-900'))).toEqual(['tool-suspect: recheck']);
  });
});

describe('W8: given a wrench that was dropped and is not tested yet', () => {
  const dropped = (): Shop => {
    const shop = shopWith(car);
    shop.begin('tom', 'ST-010');
    shop.tighten('tom', 'J-101', 'T-02');
    shop.later('1 h');
    const fell = shop.now;
    shop.later('1 h');
    shop.tighten('tom', 'J-102', 'T-02');
    shop.does('tess', { type: 'suspect-tool', tool: 'T-02', reason: 'dropped', from: fell });
    return shop;
  };

  test('then what it torqued since is in doubt both ways, and what it torqued before is not', () => {
    const shop = dropped();
    expect(shop.doubts('J-101')).toEqual([]);
    expect(remedies(shop.doubts('J-102'))).toEqual(['tool-suspect: renew']);
    expect(shop.doubts('J-102')[0]?.because).toBe('tool T-02: dropped');
  });

  test('when the bench finds it good, then the doubt is gone by itself', () => {
    const shop = dropped();
    found(shop, '100.5');
    expect(shop.doubts('J-102')).toEqual([]);
    shop.tighten('tom', 'J-103', 'T-02');
    expect(shop.doubts('J-103')).toEqual([]);
  });

  test('when the bench finds it 7 % low, then the doubt says so: trying again is enough', () => {
    const shop = dropped();
    found(shop, '93');
    expect(new Set(remedies(shop.doubts('J-102')))).toEqual(new Set(['tool-suspect: recheck']));
  });

  test('then nobody torques with it, and is told since when and what clears it', () => {
    const shop = dropped();
    const refusals = shop.refused('tom', shop.tightening('J-103', 'T-02'));
    expect(refusals.map((each) => each.code)).toEqual(['tool-suspect']);
    expect(shop.sentences(refusals)[0]).toMatch(
      /^T-02 is suspect since 2026-03-02T\S+ \(dropped\)\. Take another tool until it has been tested\.$/,
    );
  });
});

describe('W8: given a tablet out of touch, when the wrench is suspected meanwhile', () => {
  const meanwhile = () => {
    const shop = shopWith(car);
    shop.begin('tom', 'ST-010');
    const lastContact = shop.now;
    const before = shop.later('1 h').now;
    shop.later('1 h').does('tess', {
      type: 'suspect-tool',
      tool: 'T-02',
      reason: 'dropped',
      from: lastContact,
    });
    const after = shop.later('1 h').now;
    shop.later('1 h');
    return { shop, lastContact, before, after };
  };

  test('then a signature made before anybody knew is accepted and at once doubtful', () => {
    const { shop, lastContact, before } = meanwhile();
    shop.does('tom', shop.tightening('J-102', 'T-02'), { doneAt: before, lastContact });
    expect(shop.level('J-102')).toBe('final');
    expect(remedies(shop.doubts('J-102'))).toEqual(['tool-suspect: renew']);
    expect(shop.car().joints['J-102']?.doubts).toEqual([]);
  });

  test('then two made before the bench found it wrong are accepted late, and doubtful where it matters', () => {
    const shop = shopWith(car);
    shop.begin('tom', 'ST-010');
    const lastContact = shop.now;
    const doneAt = shop.later('1 h').now;
    found(shop.later('1 h'), '107');
    for (const key of ['J-101', 'J-102'])
      shop.does('tom', shop.tightening(key, 'T-02'), { doneAt, lastContact });
    expect(shop.doubts('J-101')).toEqual([]);
    expect(remedies(shop.doubts('J-102'))).toEqual(['tool-suspect: renew']);
    // Adjusted at the bench, it is good again.
    shop.tighten('tom', 'J-103', 'T-02');
    expect(shop.doubts('J-103')).toEqual([]);
  });

  test('then one made after it was known is refused, late as it comes', () => {
    const { shop, lastContact, after } = meanwhile();
    expect(shop.codes('tom', shop.tightening('J-102', 'T-02'), { doneAt: after, lastContact })).toEqual([
      'tool-suspect',
    ]);
    expect(shop.level('J-102')).toBe('open');
  });

  test("then one whose time can't be believed is judged by now, and refused", () => {
    const { shop, before, after } = meanwhile();
    expect(
      shop.codes('tom', shop.tightening('J-102', 'T-02'), { doneAt: before, lastContact: after }),
    ).toEqual(['tool-suspect']);
  });
});

describe('W8: given car C54-011, when its wrench T-03 comes back 9 % high', () => {
  test('then J-117 and J-220 clear themselves at 21.8 and 32.7 N·m, and those at 38.15 and 43.6 N·m do not', () => {
    const shop = torqued();
    found(shop, '109');
    expect(doubted(shop)).toEqual(['J-102', 'J-103', 'J-120', 'J-121', 'J-509', 'J-510']);
    expect(shop.doubts('J-117')).toEqual([]);
    expect(shop.doubts('J-220')).toEqual([]);
    for (const key of ['J-120', 'J-121', 'J-509', 'J-510'])
      expect(remedies(shop.doubts(key))).toEqual(['tool-suspect: renew']);
  });

  test('then the end of the window is where it says: 35 N·m goes to 38 at +8.57 %, 40 N·m to 43 at +7.5 %', () => {
    const shop = torqued();
    found(shop, '107.5');
    expect(doubted(shop)).toEqual(['J-102', 'J-103']);
    const worse = torqued();
    found(worse, '107.6');
    expect(doubted(worse)).toEqual(['J-102', 'J-103', 'J-509', 'J-510']);
  });
});

describe('W8: given a wrench within its own tolerance, when it is calibrated', () => {
  test('then nothing is in doubt, and beyond it everything since the last good calibration is asked', () => {
    const shop = torqued();
    found(shop, '104');
    expect(doubted(shop)).toEqual([]);
    expect(shop.world.shop.tools['T-02']?.suspect).toEqual([]);
    const strict = torqued();
    found(strict, '104', { tolerance: '3' });
    expect(strict.world.shop.tools['T-02']?.suspect).toMatchObject([
      { from: '2026-01-05T00:00:00.000Z', reason: 'as-found', high: '4' },
    ]);
    // 40 N·m ± 4 % ends at 41.6, and 40 × 1.04 is 41.6.
    expect(doubted(strict)).toEqual([]);
  });
});
