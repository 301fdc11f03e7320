import { describe, expect, test } from 'vitest';
import { gateUnmet } from '@/lib/domain/gate';
import { touches } from '@/lib/domain/touches';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop, Told } from '@/tests/support/shop';

const joint = { fasteners: 2, method: 'click', torque: '45 ± 3 N·m', source: 'Invented' } as const;
const car = plan({
  stages: { AX: { name: 'Axle' }, WH: { name: 'On its wheels' }, PR: { name: 'Proving' } },
  operations: {
    'AX-010': { name: 'Hang the axle', stage: 'AX', body: ['final J-110', 'final J-111'] },
    'WH-010': { name: 'Fit the wheels', stage: 'WH' },
  },
  joints: {
    'J-110': { ...joint, name: 'Axle to spring', disturbs: ['J-111'] },
    'J-111': { ...joint, name: 'Spring eye' },
  },
});

const ready = (): Shop => {
  const shop = shopWith(car);
  shop.perform('tom', 'AX-010');
  expect(shop.gate()).toEqual([]);
  return shop;
};
const drag: Told = { type: 'advance-car', to: 'WH' };
const opening: Told = { type: 'open-joint', joint: 'J-110', reason: 'wrong washer' };

/** Invariant 1: at the moment the gate was passed, nothing due by it was unmet. */
const passed = (shop: Shop): readonly unknown[] => {
  const [plan_, before, facts] = [shop.plan(), shop.car(), shop.facts()];
  const events = shop.does('leo', drag);
  expect(events.map((event) => event.type)).toEqual(['gate-passed']);
  return gateUnmet(plan_, before, facts, before.stage);
};

describe('W14: given a car that is ready, when the lead drags it on while a colleague opens a joint', () => {
  test('and the opening comes first, then the drag is refused with why, and the car stays', () => {
    const shop = ready();
    shop.does('tess', opening);
    const refusals = shop.refused('leo', drag);
    expect(refusals).toEqual([
      { code: 'joint-below-level', details: { joint: 'J-110', level: 'open', wanted: 'final' } },
      {
        code: 'joint-in-doubt',
        details: {
          joint: 'J-111',
          cause: 'neighbour-opened',
          remedy: 'recheck',
          because: 'J-110 was opened',
        },
      },
    ]);
    expect(shop.sentences(refusals)[0]).toBe(
      'Axle to spring (J-110) is open and must be final. Bring it to final.',
    );
    expect(shop.car().stage).toBe(0);
    expect(shop.car().gates).toEqual({});
  });

  test('and the drag comes first, then the opening is accepted all the same, and the next gate is shut', () => {
    const shop = ready();
    expect(passed(shop)).toEqual([]);
    shop.does('tess', opening);
    expect(shop.car().stage).toBe(1);
    expect(shop.level('J-110')).toBe('open');
    shop.perform('tom', 'WH-010');
    expect(shop.codes('leo', { type: 'advance-car', to: 'PR' })).toEqual([
      'joint-below-level',
      'joint-in-doubt',
    ]);
    expect(shop.car().gates).toMatchObject({ AX: { by: 'leo' } });
  });

  test('then either way the car gets on once both joints are put right', () => {
    for (const first of ['opening', 'drag'] as const) {
      const shop = ready();
      if (first === 'drag') shop.does('leo', drag);
      shop.does('tess', opening);
      shop.does('tess', { type: 'snug-joint', joint: 'J-110' });
      shop.tighten('tess', 'J-110');
      shop.does('tess', { type: 'recheck-joint', joint: 'J-111', tool: 'T-05' });
      if (first === 'opening') expect(passed(shop)).toEqual([]);
      shop.perform('tom', 'WH-010');
      shop.does('leo', { type: 'advance-car', to: 'PR' });
      expect(shop.car().stage).toBe(2);
    }
  });

  test('then the two hold the same row, so that one waits for the other', () => {
    const locks = (told: Told) =>
      touches(
        { id: 'c', doneAt: '', claim: { car: 'C1', ...told } as never },
        { hash: 'Corbel 54 r1', stages: car.stages },
        'leo',
      );
    expect(locks(opening)).toEqual(['car:C1']);
    expect(locks(drag)).toEqual(['car:C1', 'stage:Corbel 54 r1/WH']);
  });

  test('and stages that share a room share its lock', () => {
    const stages = { AX: { name: 'Axles', capacity: 2 }, LN: { name: 'Lines', sharesRoomWith: 'AX' } };
    const into = (to: string) =>
      touches(
        { id: 'c', doneAt: '', claim: { type: 'advance-car', car: 'C1', to } },
        { hash: 'p', stages },
        'leo',
      );
    expect(into('LN')).toEqual(['car:C1', 'stage:p/AX']);
    expect(into('AX')).toEqual(into('LN'));
  });

  test('and a wrench is suspected in the same second, then the order makes no difference', () => {
    const suspected: Told = {
      type: 'suspect-tool',
      tool: 'T-02',
      reason: 'dropped',
      from: '2026-03-02T08:00:00.000Z',
    };
    const after = ready();
    after.does('leo', drag);
    after.does('tess', suspected);
    const before = ready();
    before.does('tess', suspected);
    expect(before.codes('leo', drag)).toEqual(['joint-in-doubt', 'joint-in-doubt']);
    expect(after.gate().filter((code) => code === 'joint-in-doubt')).toHaveLength(2);
  });
});
