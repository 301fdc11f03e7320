import { beforeEach, describe, expect, test } from 'vitest';
import { participantsOf } from '@/lib/domain/car/joint';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const axle = plan({
  stages: { AX: { name: 'Axle' }, WH: { name: 'On its wheels' } },
  operations: {
    'AX-030': { name: 'Hang the axle', stage: 'AX', body: ['snug J-201', 'final J-201'] },
    'AX-040': { name: 'Fit the rod', stage: 'AX', body: ['final J-202'] },
  },
  joints: {
    'J-201': {
      name: 'Axle to spring',
      fasteners: 4,
      pattern: 'cross',
      passes: 2,
      method: 'dial',
      torque: '45 ± 3 N·m',
      source: 'Invented',
      critical: true,
      verify: 'seen',
      hardware: { 'B-M10': 4 },
    },
    'J-202': { name: 'Rod', fasteners: 1, method: 'click', torque: '30 ± 3 N·m', source: 'Invented' },
  },
  items: { 'B-M10': { name: 'Bolt M10' } },
});

const CROSS = [1, 3, 2, 4];
const full = { tool: 'T-05', passes: [CROSS, CROSS], readings: ['45', '45.5', '46', '44'] } as const;

describe('W12: given a final pass of four bolts, when the technician leaves after two', () => {
  let shop: Shop;
  beforeEach(() => {
    shop = shopWith(axle);
    shop.begin('tom', 'AX-030');
    shop.does('tom', { type: 'snug-joint', joint: 'J-201' });
  });
  const half = (passes: readonly (readonly number[])[], readings: readonly string[]) =>
    ({ type: 'final-joint', joint: 'J-201', tool: 'T-05', passes, readings }) as const;

  test('then a final with two readings is refused, and nothing of it is kept', () => {
    const before = shop.car();
    expect(shop.codes('tom', half([CROSS, [1, 3]], ['45', '45']))).toEqual(['pattern-not-followed']);
    const refusals = shop.refused('tom', half([CROSS, CROSS], ['45', '45']));
    expect(refusals).toEqual([
      { code: 'readings-missing', details: { joint: 'J-201', what: 'readings', wanted: 4, given: 2 } },
    ]);
    expect(shop.sentences(refusals)).toEqual([
      'Axle to spring (J-201) needs 4 readings; 2 given. Give one for each fastener.',
    ]);
    expect(shop.codes('tom', half([CROSS], ['45', '45', '45', '45']))).toEqual(['passes-missing']);
    expect(shop.car()).toBe(before);
    expect(shop.level('J-201')).toBe('snug');
  });

  test('then it is left with a word, and the job says paused', () => {
    shop.does('tom', { type: 'pause-operation', operation: 'AX-030', leftAs: 'two of four done' });
    expect(shop.car().operations['AX-030']).toMatchObject({
      status: 'paused',
      leftAs: 'two of four done',
      crew: ['tom'],
      present: [],
    });
    expect(shop.assess().jobs.find((job) => job.id === 'operation:AX-030:1')?.state).toBe('paused');
    expect(shop.assess().looseEnds).toContainEqual(
      expect.objectContaining({
        kind: 'operation',
        refusal: { code: 'operation-unfinished', details: { operation: 'AX-030', status: 'paused' } },
      }),
    );
  });

  test('then nobody tightens while it is paused, and nobody takes up what was never begun', () => {
    shop.does('tom', { type: 'pause-operation', operation: 'AX-030' });
    expect(shop.codes('tess', { type: 'final-joint', joint: 'J-201', ...full })).toEqual([
      'no-work-names-joint',
    ]);
    expect(shop.codes('tess', { type: 'resume-operation', operation: 'AX-040' })).toEqual([
      'operation-not-running',
    ]);
    expect(shop.codes('tess', { type: 'take-over-operation', operation: 'AX-040' })).toEqual([
      'operation-not-running',
    ]);
  });

  test('then whoever takes over does not go on with the other two: the pass is made again in full', () => {
    shop.does('tom', { type: 'pause-operation', operation: 'AX-030', leftAs: 'two of four done' });
    shop.does('tess', { type: 'take-over-operation', operation: 'AX-030' });
    expect(shop.codes('tess', half([CROSS, [2, 4]], ['46', '44']))).toEqual(['pattern-not-followed']);
    expect(shop.level('J-201')).toBe('snug');
    shop.does('tess', { type: 'final-joint', joint: 'J-201', ...full });
    shop.finish('tess', 'AX-030');
    expect(shop.level('J-201')).toBe('final');
  });

  test('then who did what is kept: the one snugged it, the other torqued it, and neither verifies it', () => {
    const snugged = shop.last;
    shop.does('tom', { type: 'pause-operation', operation: 'AX-030' });
    shop.does('tess', { type: 'take-over-operation', operation: 'AX-030' });
    shop.does('tess', { type: 'final-joint', joint: 'J-201', ...full });
    const torqued = shop.last;
    expect(shop.car().joints['J-201']?.marks).toMatchObject([
      { level: 'snug', by: 'tom', signature: snugged },
      { level: 'final', by: 'tess', signature: torqued, crew: ['tom', 'tess'] },
    ]);
    expect(shop.car().signatures[snugged]).toMatchObject({ act: 'snug-joint', by: 'tom', struck: null });
    expect(shop.car().signatures[torqued]).toMatchObject({ act: 'final-joint', by: 'tess', struck: null });
    expect([...participantsOf(shop.car().joints['J-201'])].sort()).toEqual(['tess', 'tom']);
    expect(shop.car().operations['AX-030']).toMatchObject({ crew: ['tom', 'tess'], present: ['tess'] });
    for (const person of ['tom', 'tess'])
      expect(shop.codes(person, shop.verifying('J-201'))).toEqual(['not-independent']);
    shop.verify('vera', 'J-201');
    expect(shop.level('J-201')).toBe('verified');
  });

  test('then one who takes over while the other is still on it is alone there, and both stay in the record', () => {
    shop.does('tess', { type: 'take-over-operation', operation: 'AX-030' });
    expect(shop.car().operations['AX-030']).toMatchObject({
      status: 'running',
      crew: ['tom', 'tess'],
      present: ['tess'],
    });
  });

  test('then anyone may stop work, on hold and where nothing runs', () => {
    shop.does('tess', { type: 'place-hold', scope: 'work', reason: 'alarm' });
    shop.does('vera', { type: 'pause-operation', operation: 'AX-030', leftAs: 'alarm' });
    expect(shop.car().operations['AX-030']?.status).toBe('paused');
    expect(shop.does('vera', { type: 'pause-operation', operation: 'AX-040' })).toEqual([]);
    expect(shop.codes('tom', { type: 'resume-operation', operation: 'AX-030' })).toEqual(['hold-stands']);
  });
});
