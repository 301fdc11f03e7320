/** W1. Rear axle: snug on the stands, weight on wheels, final at ride height, roll. */
import { describe, expect, test } from 'vitest';
import { checkPlan } from '@/lib/domain/plan/check';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const axle = plan({
  conditions: { weight: 'Weight on wheels', 'may-roll': 'May roll' },
  stages: { S1: { name: 'On its axle' }, S2: { name: 'Out of the bay' } },
  operations: {
    'AX-010': { name: 'Hang the rear axle', stage: 'S1', body: ['snug J-110@*', 'snug J-120'] },
    'AX-015': { name: 'Tighten the buffer bracket', stage: 'S1', needs: ['AX-010'], body: ['final J-120'] },
    'AX-020': {
      name: 'Lower onto its wheels',
      stage: 'S1',
      needs: ['J-110@* snug'],
      body: ['set weight'],
      repeatable: true,
    },
    'AX-030': {
      name: 'Tighten the spring eyes at ride height',
      stage: 'S1',
      needs: ['AX-010'],
      body: ['final J-110@*'],
    },
    'AX-040': {
      name: 'Roll the car out',
      stage: 'S1',
      needs: ['J-110@* final', 'J-120 final', '+weight'],
      body: ['set may-roll'],
      repeatable: true,
    },
    'AX-050': { name: 'Jack it up', stage: 'S2', body: ['clear weight'], repeatable: true },
  },
  joints: {
    'J-110': {
      name: 'Spring eye bolt',
      repeat: 'sides',
      fasteners: 1,
      method: 'click',
      torque: '75 ± 5 N·m',
      source: 'invented',
      critical: true,
      verify: 'seen',
      finalNeeds: ['+weight'],
    },
    'J-120': {
      name: 'Buffer bracket to axle',
      fasteners: 2,
      method: 'click',
      torque: '25 ± 2 N·m',
      source: 'invented',
      loadedBy: ['weight'],
    },
  },
});

const snugIn = (shop: Shop, ...joints: readonly string[]): void => {
  for (const joint of joints) shop.does('tom', { type: 'snug-joint', joint });
};

/** Hung and snug, the buffer bracket still snug, on the stands. */
const hung = (): Shop => {
  const shop = shopWith(axle);
  shop.perform('tom', 'AX-010');
  return shop;
};

/** At ride height, spring eyes final, buffer bracket final at ride height too. */
const atRideHeight = (): Shop => {
  const shop = hung();
  shop.perform('tom', 'AX-020');
  shop.perform('tom', 'AX-015');
  shop.perform('tom', 'AX-030');
  return shop;
};

describe('weight comes on only when the joints are at least snug', () => {
  test('an axle with open joints can’t be lowered onto its wheels', () => {
    const shop = shopWith(axle);
    const refusals = shop.refused('tom', { type: 'start-operation', operation: 'AX-020' });
    expect(refusals.map((each) => each.details)).toEqual([
      { joint: 'J-110@L', level: 'open', wanted: 'snug' },
      { joint: 'J-110@R', level: 'open', wanted: 'snug' },
    ]);
    expect(shop.sentences(refusals)[0]).toBe(
      'Spring eye bolt, left (J-110@L) is open and must be snug. Bring it to snug.',
    );
  });

  test('one side snug is not both: the other is named', () => {
    const shop = shopWith(axle);
    shop.begin('tom', 'AX-010');
    snugIn(shop, 'J-110@L');
    const refusals = shop.refused('tess', { type: 'start-operation', operation: 'AX-020' });
    expect(refusals).toMatchObject([{ code: 'joint-below-level', details: { joint: 'J-110@R' } }]);
    snugIn(shop, 'J-110@R');
    shop.does('tess', { type: 'start-operation', operation: 'AX-020' });
  });
});

describe('final only at ride height', () => {
  test('on the stands the spring eye can’t be brought to final; on its wheels it can', () => {
    const shop = hung();
    shop.begin('tom', 'AX-030');
    expect(shop.codes('tom', shop.tightening('J-110@L'))).toEqual(['condition-not-true']);
    expect(shop.level('J-110@L')).toBe('snug');
    shop.perform('tess', 'AX-020');
    shop.tighten('tom', 'J-110@L');
    expect(shop.level('J-110@L')).toBe('final');
  });
});

describe('rolling is guarded by the joints themselves, not by a gate', () => {
  test('lowered and still snug, the car can’t be rolled out, though no gate is asked', () => {
    const shop = hung();
    shop.perform('tom', 'AX-020');
    expect(shop.isSo('weight')).toBe(true);
    expect(shop.refused('tom', { type: 'start-operation', operation: 'AX-040' })).toMatchObject([
      { code: 'joint-below-level', details: { joint: 'J-110@L', level: 'snug', wanted: 'final' } },
      { code: 'joint-below-level', details: { joint: 'J-110@R', level: 'snug', wanted: 'final' } },
      { code: 'joint-below-level', details: { joint: 'J-120', level: 'snug', wanted: 'final' } },
    ]);
    expect(shop.isSo('may-roll')).toBe(false);
  });

  test('torqued at ride height it rolls; the gate wants a second person all the same', () => {
    const shop = atRideHeight();
    shop.perform('tom', 'AX-040');
    expect(shop.isSo('may-roll')).toBe(true);
    expect(shop.gate()).toEqual(['joint-below-level', 'joint-below-level']);
    shop.verify('vera', 'J-110@L');
    shop.verify('vera', 'J-110@R');
    expect(shop.gate()).toEqual([]);
    shop.does('leo', { type: 'advance-car', to: 'S2' });
    expect(shop.car().stage).toBe(1);
  });

  test('snug never satisfies the torque gate', () => {
    const shop = hung();
    shop.perform('tom', 'AX-020');
    const line = shop
      .refused('leo', { type: 'advance-car', to: 'S2' })
      .find((each) => each.code === 'operation-unfinished' && each.details.operation === 'AX-030');
    expect(line?.under?.map((each) => each.details)).toEqual([
      { joint: 'J-110@L', level: 'snug', wanted: 'verified' },
      { joint: 'J-110@R', level: 'snug', wanted: 'verified' },
    ]);
  });
});

describe('jacked up again', () => {
  test('the weight is off and the joints keep their level, without a doubt', () => {
    const shop = atRideHeight();
    shop.verify('vera', 'J-110@L');
    shop.perform('tom', 'AX-050');
    expect(shop.isSo('weight')).toBe(false);
    expect(shop.level('J-110@L')).toBe('verified');
    expect(shop.level('J-110@R')).toBe('final');
    expect([...shop.doubts('J-110@L'), ...shop.doubts('J-110@R')]).toEqual([]);
  });

  test('it can’t roll until it is down again and what its weight loads is torqued again; the spring eyes are not', () => {
    const shop = atRideHeight();
    shop.perform('tom', 'AX-050');
    expect(shop.codes('tom', { type: 'start-operation', operation: 'AX-040' })).toContain(
      'condition-not-true',
    );
    shop.perform('tom', 'AX-020');
    expect(shop.car().operations['AX-020']?.run).toBe(2);
    expect(shop.refused('tom', { type: 'start-operation', operation: 'AX-040' })).toMatchObject([
      { code: 'joint-in-doubt', details: { joint: 'J-120', cause: 'load-changed' } },
    ]);
    shop.tighten('tom', 'J-120');
    shop.does('tom', { type: 'start-operation', operation: 'AX-040' });
  });
});

describe('a joint that the plan says is loaded by the weight', () => {
  /** The buffer bracket torqued on the stands, then the weight put on. */
  const loadedAfterwards = (): Shop => {
    const shop = hung();
    shop.perform('tom', 'AX-015');
    shop.perform('tom', 'AX-020');
    shop.perform('tom', 'AX-030');
    return shop;
  };

  test('final before the weight came on, it is in doubt and keeps the car from rolling', () => {
    const shop = loadedAfterwards();
    expect(shop.level('J-120')).toBe('final');
    expect(shop.doubts('J-120')).toMatchObject([{ cause: 'load-changed', remedy: 'retorque' }]);
    const refusals = shop.refused('tom', { type: 'start-operation', operation: 'AX-040' });
    expect(refusals.map((each) => each.code)).toEqual(['joint-in-doubt']);
    expect(shop.sentences(refusals)).toEqual([
      'Buffer bracket to axle (J-120) is in doubt: weight came on after it was final. To clear it, torque it again in full.',
    ]);
  });

  test('trying it again is not enough; torqued again it counts, as a job of its own', () => {
    const shop = loadedAfterwards();
    expect(shop.jobs()).toContain('retorque:J-120:1');
    expect(shop.codes('tom', { type: 'recheck-joint', joint: 'J-120', tool: 'T-02' })).toContain(
      'doubt-needs-more',
    );
    shop.tighten('tom', 'J-120');
    expect(shop.doubts('J-120')).toEqual([]);
    expect(shop.car().joints['J-120']?.cycle).toBe(1);
    shop.does('tom', { type: 'start-operation', operation: 'AX-040' });
  });

  test('final at ride height, the weight put on a second time says nothing new', () => {
    const shop = atRideHeight();
    expect(shop.doubts('J-120')).toEqual([]);
    shop.perform('tom', 'AX-050');
    shop.perform('tom', 'AX-020');
    expect(shop.doubts('J-120').filter((each) => each.because.includes('came on'))).toEqual([]);
  });

  test('final at ride height, the weight taken off is a change of load too (design 4.2: put on or taken off)', () => {
    const shop = atRideHeight();
    shop.perform('tom', 'AX-050');
    expect(shop.doubts('J-120')).toMatchObject([{ cause: 'load-changed', remedy: 'retorque' }]);
  });
});

describe('the lowering in the next stage', () => {
  const said = (document: PlanDocument): readonly string[] =>
    checkPlan(document)
      .filter((problem) => problem.rank !== 'hint')
      .map((problem) => `${problem.code} at ${problem.path.slice(0, 2).join('.')}`);
  const lowering = { name: 'Lower onto its wheels', stage: 'S2', notBefore: true, body: ['set weight'] };
  const operations = { ...axle.operations, 'AX-020': lowering };

  test('nothing is said against the plan as it stands', () => {
    expect(said(axle)).toEqual([]);
  });

  test('is an error of the plan where the tightening needs the lowering itself', () => {
    const torque = { ...axle.operations?.['AX-030'], name: 'Tighten', stage: 'S1', needs: ['AX-020'] };
    expect(said({ ...axle, operations: { ...operations, 'AX-030': torque } })).toContain(
      'need-never-in-time at operations.AX-030',
    );
  });

  test('is an error just as well where the joint needs the weight that the lowering puts on', () => {
    expect(said({ ...axle, operations })).toContainEqual(expect.stringMatching(/J-110|AX-020|AX-030/));
  });
});
