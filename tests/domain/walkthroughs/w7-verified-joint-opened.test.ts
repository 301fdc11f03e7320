import { beforeEach, describe, expect, test } from 'vitest';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const joint = { fasteners: 4, method: 'click', torque: '45 ± 3 N·m', source: 'Invented' } as const;
const axle = plan({
  stages: { AX: { name: 'Axle' }, WH: { name: 'On its wheels' }, PR: { name: 'Proving' } },
  operations: {
    'AX-030': {
      name: 'Fit the axle',
      stage: 'AX',
      body: ['snug J-110', 'snug J-111', 'snug J-112', 'snug J-113'],
    },
    'AX-040': {
      name: 'Torque the axle',
      stage: 'AX',
      needs: ['AX-030'],
      body: ['final J-110', 'final J-111', 'final J-112'],
    },
    'WH-110': { name: 'Roll the car', stage: 'WH', repeatable: true, needs: ['J-110 verified'] },
    'WH-120': { name: 'Torque the damper', stage: 'WH', needs: ['J-110 verified'], body: ['final J-113'] },
    'PR-050': { name: 'Look round', stage: 'PR' },
  },
  joints: {
    'J-110': {
      ...joint,
      name: 'Axle to spring',
      pattern: 'cross',
      critical: true,
      verify: 'witnessed',
      hardware: { 'B-M10': 4, 'N-M10': 4 },
      disturbs: ['J-111', 'J-113'],
    },
    'J-111': { ...joint, name: 'Spring eye', disturbs: ['J-112'] },
    'J-112': { ...joint, name: 'Shackle' },
    'J-113': { ...joint, name: 'Damper foot' },
  },
  items: { 'B-M10': { name: 'Bolt M10' }, 'N-M10': { name: 'Lock nut M10', reuse: 'once final' } },
});

/** The axle is torqued and verified, the car stands on its wheels, and has been rolled once. */
const verified = (): Shop => {
  const shop = shopWith(axle);
  shop.perform('tom', 'AX-030');
  shop.perform('tom', 'AX-040');
  shop.verify('vera', 'J-110');
  shop.does('leo', { type: 'advance-car', to: 'WH' });
  shop.perform('tess', 'WH-110');
  return shop;
};

const refusalsOfGate = (shop: Shop) => shop.assess().gate.unmet;
const restore = (shop: Shop): void => {
  shop.does('tess', { type: 'snug-joint', joint: 'J-110', cycle: 2 });
  shop.tighten('tess', 'J-110', 'T-02', { cycle: 2 });
};

describe('W7: given a verified joint, when it is opened to replace a part', () => {
  let shop: Shop;
  beforeEach(() => {
    shop = verified();
    shop.does('tom', { type: 'open-joint', joint: 'J-110', cycle: 1, reason: 'spring leaf broken' });
  });

  test('then it is open, in a new cycle, and was verified', () => {
    expect(shop.level('J-110')).toBe('open');
    expect(shop.car().joints['J-110']).toMatchObject({
      cycle: 2,
      marks: [],
      opened: { by: 'tom', was: 'verified' },
    });
    expect(shop.car().stage).toBe(1);
  });

  test('then the neighbour is doubted until it is rechecked, and its own neighbour is not: one step', () => {
    expect(shop.doubts('J-111')).toMatchObject([{ cause: 'neighbour-opened', remedy: 'recheck' }]);
    expect(shop.level('J-111')).toBe('final');
    expect(shop.doubts('J-112')).toEqual([]);
  });

  test('then a neighbour that is only snug is not doubted: it promises nothing yet', () => {
    expect(shop.level('J-113')).toBe('snug');
    expect(shop.doubts('J-113')).toEqual([]);
  });

  test('then the car stays where it is and passes no later gate, and the lead is told both reasons', () => {
    shop.does('tom', { type: 'open-joint', joint: 'J-113' });
    const refusals = shop.refused('leo', { type: 'advance-car', to: 'PR' });
    expect(refusals).toContainEqual(
      expect.objectContaining({
        code: 'joint-below-level',
        details: { joint: 'J-110', level: 'open', wanted: 'verified' },
      }),
    );
    expect(refusals).toContainEqual(
      expect.objectContaining({
        code: 'joint-in-doubt',
        details: {
          joint: 'J-111',
          cause: 'neighbour-opened',
          remedy: 'recheck',
          because: 'J-110 was opened',
        },
      }),
    );
    expect(shop.sentences(refusals)).toContain(
      'Axle to spring (J-110) is open and must be verified. Bring it to final, then have it verified.',
    );
    expect(shop.sentences(refusals)).toContain(
      'Spring eye (J-111) is in doubt: J-110 was opened. To clear it, try it again with a good tool and record the recheck.',
    );
  });

  test('then the car may not be rolled again, though it was rolled before: needs are asked at every start', () => {
    expect(shop.refused('tess', { type: 'start-operation', operation: 'WH-110' })).toEqual([
      { code: 'joint-below-level', details: { joint: 'J-110', level: 'open', wanted: 'verified' } },
    ]);
  });

  test('then the work is given to somebody: a restore job, whose id stays the same until it is done', () => {
    expect(shop.jobs()).toContain('restore:J-110:2');
    shop.does('tess', { type: 'snug-joint', joint: 'J-110', cycle: 2 });
    shop.does('tess', { type: 'add-note', of: 'J-110', text: 'new leaf in' });
    expect(shop.jobs()).toContain('restore:J-110:2');
    shop.tighten('tess', 'J-110', 'T-02', { cycle: 2 });
    expect(shop.jobs().filter((id) => id.includes('J-110'))).toEqual(['verify:J-110:2']);
  });

  test('then it may be tightened again though the operations that fit and torque it are finished', () => {
    expect(shop.car().operations['AX-030']?.status).toBe('finished');
    expect(shop.car().operations['AX-040']?.status).toBe('finished');
    restore(shop);
    shop.verify('vera', 'J-110');
    expect(shop.level('J-110')).toBe('verified');
    expect(shop.perform('tess', 'WH-110')).not.toEqual([]);
  });

  test('then a joint that nobody opened is not tightened again on the strength of that', () => {
    expect(shop.codes('tess', shop.tightening('J-112', 'T-02'))).toEqual([
      'level-already',
      'no-work-names-joint',
    ]);
  });

  test('then the old verification that comes late from a second tablet is refused: it is for cycle 1', () => {
    restore(shop);
    const late = { ...shop.verifying('J-110'), cycle: 1 } as const;
    const refusals = shop.refused('vera', late, { doneAt: '2026-03-02T08:10:00.000Z' });
    expect(refusals).toEqual([{ code: 'stale-cycle', details: { joint: 'J-110', named: 1, current: 2 } }]);
    expect(shop.sentences(refusals)).toEqual([
      'This is for cycle 1 of Axle to spring (J-110), which is in cycle 2: it was opened since. Do it again for what is there now.',
    ]);
    expect(shop.level('J-110')).toBe('final');
  });

  test('then the one who restored it does not verify it, and who torqued the cycle before may', () => {
    restore(shop);
    expect(shop.codes('tess', shop.verifying('J-110'))).toEqual(['not-independent']);
    shop.verify('tom', 'J-110');
    expect(shop.level('J-110')).toBe('verified');
  });

  test('then the neighbour counts again after a recheck, and the gate opens when all is put right', () => {
    restore(shop);
    shop.verify('vera', 'J-110');
    shop.perform('tess', 'WH-110');
    shop.perform('tess', 'WH-120');
    expect(refusalsOfGate(shop).map((each) => each.code)).toEqual(['joint-in-doubt']);
    shop.does('tess', { type: 'recheck-joint', joint: 'J-111', tool: 'T-05' });
    expect(shop.level('J-111')).toBe('final');
    expect(refusalsOfGate(shop)).toEqual([]);
    shop.does('leo', { type: 'advance-car', to: 'PR' });
    expect(shop.car().stage).toBe(2);
  });
});

describe('W7: given a joint that nobody has touched, when it is opened', () => {
  test('then nothing was done in its cycle, and it stays the first one', () => {
    const shop = shopWith(axle);
    shop.does('tom', { type: 'open-joint', joint: 'J-110' });
    expect(shop.car().joints['J-110']).toMatchObject({ cycle: 1, marks: [], opened: { was: 'open' } });
    shop.does('tom', { type: 'open-joint', joint: 'J-110' });
    expect(shop.car().joints['J-110']?.cycle).toBe(1);
    expect(shop.jobs()).not.toContain('restore:J-110:1');
  });
});

describe('W7: given work that is running, when a joint it needs is opened', () => {
  test('then it runs on and shows what is no longer met; left and taken up again, it is refused', () => {
    const shop = verified();
    shop.begin('tess', 'WH-120');
    const jobOf = () => shop.assess().jobs.find((job) => job.id === 'operation:WH-120:1');
    expect(jobOf()).toMatchObject({ state: 'running', waitsFor: [] });
    shop.does('tom', { type: 'open-joint', joint: 'J-110' });
    expect(jobOf()).toMatchObject({
      state: 'running',
      waitsFor: [
        { code: 'joint-below-level', details: { joint: 'J-110', level: 'open', wanted: 'verified' } },
      ],
    });
    shop.does('tess', { type: 'pause-operation', operation: 'WH-120' });
    expect(shop.codes('tess', { type: 'resume-operation', operation: 'WH-120' })).toEqual([
      'joint-below-level',
    ]);
    expect(shop.codes('tom', { type: 'take-over-operation', operation: 'WH-120' })).toEqual([
      'joint-below-level',
    ]);
  });
});

describe('W7: given a verified joint of four, when one bolt of it is opened', () => {
  const nutAt = (shop: Shop, place: number) =>
    shop.car().joints['J-110']?.fasteners[String(place)]?.['N-M10'];
  let shop: Shop;
  let opened: ReturnType<Shop['does']>;
  beforeEach(() => {
    shop = verified();
    shop.does('leo', { type: 'receive-lot', lot: 'L-7', item: 'N-M10', quantity: 10 });
    opened = shop.does('tom', { type: 'open-joint', joint: 'J-110', fasteners: [3] });
  });

  test("then only that bolt's nut is used up, and the level falls for the joint", () => {
    expect(opened[0]).toMatchObject({ type: 'joint-opened', fasteners: [3], was: 'verified' });
    expect(opened[0]).toHaveProperty('spent', { 3: ['N-M10'] });
    expect([1, 2, 3, 4].map((place) => nutAt(shop, place)?.spent)).toEqual([false, false, true, false]);
    expect(shop.level('J-110')).toBe('open');
  });

  test('then its old nut does not go back in', () => {
    expect(
      shop.refused('tess', {
        type: 'snug-joint',
        joint: 'J-110',
        hardware: [{ item: 'N-M10', fasteners: [3], reused: true }],
      }),
    ).toEqual([
      {
        code: 'hardware-spent',
        details: { joint: 'J-110', item: 'N-M10', fastener: 3, rule: 'used once, spent at final torque' },
      },
    ]);
  });

  test('then restoring it takes one new nut and not four, and the full pass on all four', () => {
    const before = [1, 2, 4].map((place) => nutAt(shop, place));
    expect(shop.codes('tess', shop.tightening('J-110', 'T-02', { passes: [[3]] }))).toEqual([
      'pattern-not-followed',
    ]);
    restore(shop);
    expect([1, 2, 4].map((place) => nutAt(shop, place))).toEqual(before);
    expect(nutAt(shop, 3)).toMatchObject({ uses: 1, spent: false });
    expect(shop.level('J-110')).toBe('final');
  });

  test('then a new nut told without naming its bolt is the one that was opened: four were not bought', () => {
    shop.does('tess', { type: 'snug-joint', joint: 'J-110', hardware: [{ item: 'N-M10', lot: 'L-7' }] });
    expect([1, 2, 3, 4].map((place) => nutAt(shop, place)?.lot ?? null)).toEqual([null, null, 'L-7', null]);
  });
});
