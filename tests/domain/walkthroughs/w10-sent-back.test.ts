import { beforeEach, describe, expect, test } from 'vitest';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const joint = { fasteners: 4, method: 'click', torque: '45 ± 3 N·m', source: 'Invented' } as const;
const car = plan({
  conditions: { 'engine-in': 'Engine in' },
  stages: {
    S1: { name: 'Frame' },
    S2: { name: 'Axle' },
    S3: { name: 'Lines' },
    S4: { name: 'Steering', capacity: 1 },
    S5: { name: 'Engine', capacity: 1 },
    S6: { name: 'Body' },
    S7: { name: 'Proving' },
  },
  operations: {
    'ST-010': { name: 'Fit the steering box', stage: 'S4', needs: ['-engine-in'], body: ['final J-401'] },
    'ST-020': {
      name: 'Shim the steering box',
      stage: 'S4',
      repeatable: true,
      needs: ['-engine-in'],
    },
    'EN-020': {
      name: 'Hang the engine',
      stage: 'S5',
      redo: true,
      needs: ['ST-010', 'ST-020'],
      body: ['final J-501', 'set engine-in'],
    },
    'BD-010': { name: 'Set the body down', stage: 'S6', needs: ['+engine-in'], body: ['final J-601'] },
  },
  joints: {
    'J-401': { ...joint, name: 'Steering box', critical: true, verify: 'seen' },
    'J-501': { ...joint, name: 'Engine mounts', clears: ['engine-in'] },
    'J-601': { ...joint, name: 'Body mounts' },
  },
});

const advance = (shop: Shop, to: string, name = 'C1', reason?: string): void => {
  shop.does(
    'leo',
    { type: 'advance-car', car: name, to },
    reason === undefined ? {} : { override: { code: 'room-full', reason } },
  );
};

/** C1 was let into a full engine bay by the lead's word and stands in stage 6; another car fills stage 4. */
const inStageSix = (): Shop => {
  const shop = shopWith(car);
  shop.startCar('C2', car);
  shop.startCar('C3', car);
  for (const to of ['S2', 'S3', 'S4']) advance(shop, to, 'C2');
  shop.perform('tess', 'ST-010', 'C2');
  shop.perform('tess', 'ST-020', 'C2');
  shop.verify('vera', 'J-401', 'C2');
  advance(shop, 'S5', 'C2');
  for (const to of ['S2', 'S3', 'S4']) advance(shop, to);
  shop.perform('tom', 'ST-010');
  shop.perform('tom', 'ST-020');
  shop.verify('vera', 'J-401');
  advance(shop, 'S5', 'C1', 'C2 leaves today');
  shop.perform('tom', 'EN-020');
  advance(shop, 'S6');
  shop.perform('tom', 'BD-010');
  for (const to of ['S2', 'S3', 'S4']) advance(shop, to, 'C3');
  return shop;
};

describe('W10: given a car in stage 6, when it is sent back to stage 4', () => {
  let shop: Shop;
  beforeEach(() => {
    shop = inStageSix();
  });
  const sendBack = () => shop.does('leo', { type: 'send-back', to: 'S4', reason: 'steering box leaks' });

  test('then it goes there though the bay is full', () => {
    expect(shop.car('C3').stage).toBe(3);
    const events = sendBack();
    expect(events).toMatchObject([
      { type: 'car-sent-back', from: 5, to: 3, stages: ['S4', 'S5', 'S6'], reason: 'steering box leaks' },
    ]);
    expect(shop.car().stage).toBe(3);
  });

  test('then even on hold', () => {
    shop.does('tess', { type: 'place-hold', scope: 'gate', reason: 'paper missing' });
    sendBack();
    expect(shop.car().stage).toBe(3);
  });

  test('then its joints and its work are what they were: later work that is done remains done', () => {
    const before = shop.car();
    sendBack();
    expect(shop.car().joints).toBe(before.joints);
    expect(shop.car().operations).toBe(before.operations);
    expect(shop.level('J-401')).toBe('verified');
    expect(shop.level('J-601')).toBe('final');
    expect(shop.car().operations['BD-010']?.status).toBe('finished');
  });

  test('then its gates are asked again, from the one it stands at', () => {
    expect(Object.keys(shop.car().gates)).toEqual(['S1', 'S2', 'S3', 'S4', 'S5']);
    sendBack();
    expect(Object.keys(shop.car().gates)).toEqual(['S1', 'S2', 'S3']);
    shop.does('tom', { type: 'open-joint', joint: 'J-401' });
    expect(shop.codes('leo', { type: 'advance-car', to: 'S5' })).toContain('joint-below-level');
  });

  test("then the lead's word for the full engine bay is void: it takes a new one", () => {
    expect(shop.car().gates['S4']?.overridden).toEqual(['room-full']);
    sendBack();
    expect(shop.car().gates['S4']).toBeUndefined();
    expect(shop.refused('leo', { type: 'advance-car', to: 'S5' })).toEqual([
      { code: 'room-full', soft: true, details: { stage: 'S5', capacity: 1, cars: ['C2'] } },
    ]);
    advance(shop, 'S5', 'C1', 'C2 is out for paint');
    expect(shop.car().gates['S4']?.overridden).toEqual(['room-full']);
    expect(shop.car().stage).toBe(4);
  });

  test('then the engine is still in, and the work of stage 4 that wants it out says so', () => {
    sendBack();
    expect(shop.isSo('engine-in')).toBe(true);
    const refusals = shop.refused('tom', { type: 'start-operation', operation: 'ST-020' });
    expect(refusals).toEqual([{ code: 'condition-true', details: { condition: 'engine-in' } }]);
    expect(shop.sentences(refusals)).toEqual([
      '“engine in” is so, and must not be. End it first, and record that.',
    ]);
  });

  test('then taking the engine out ends the condition, opens its joint, and hanging it is due again', () => {
    sendBack();
    shop.does('tom', { type: 'open-joint', joint: 'J-501', reason: 'engine out for the steering box' });
    expect(shop.isSo('engine-in')).toBe(false);
    expect(shop.level('J-501')).toBe('open');
    expect(shop.car().operations['EN-020']).toMatchObject({ status: 'due-again', run: 2 });
    shop.perform('tom', 'ST-020');
    advance(shop, 'S5', 'C1', 'C2 is out for paint');
    expect(shop.gate()).toEqual(['operation-unfinished', 'joint-below-level']);
    shop.perform('tom', 'EN-020');
    expect(shop.isSo('engine-in')).toBe(true);
    advance(shop, 'S6');
    advance(shop, 'S7');
    expect(shop.car().stage).toBe(6);
  });

  test('then only the lead may send it back, and only to an earlier stage', () => {
    for (const person of ['ada', 'tom'])
      expect(shop.codes(person, { type: 'send-back', to: 'S4', reason: 'no' })).toEqual(['not-allowed']);
    for (const to of ['S6', 'S7', 'S9'])
      expect(shop.codes('leo', { type: 'send-back', to, reason: 'no' })).toEqual(['unknown-thing']);
    expect(shop.car().stage).toBe(5);
  });
});

describe('W10: given a full bay, when a car is to enter it', () => {
  const before = (): Shop => {
    const shop = shopWith(car);
    shop.startCar('C2', car);
    for (const each of ['C1', 'C2']) for (const to of ['S2', 'S3']) advance(shop, to, each);
    advance(shop, 'S4', 'C2');
    return shop;
  };
  const into: Parameters<Shop['does']>[1] = { type: 'advance-car', to: 'S4' };
  const override = { code: 'room-full', reason: 'they share for a day' };

  test('then it is refused with who stands there, and the lead may override it with a reason', () => {
    const shop = before();
    const refusals = shop.refused('leo', into);
    expect(refusals.map(({ code, soft }) => [code, soft])).toEqual([['room-full', true]]);
    expect(shop.sentences(refusals)).toEqual([
      'Steering (S4) has room for 1, and C2 stands there. Move a car on, or the lead overrides this with a reason.',
    ]);
    const [event] = shop.does('leo', into, { override });
    expect(event).toMatchObject({ type: 'gate-passed', overridden: ['room-full'], reason: override.reason });
  });

  test('then nobody but the lead overrides it, the owner included', () => {
    const shop = before();
    for (const person of ['ada', 'tom'])
      expect(shop.codes(person, into, { override })).toEqual(['not-allowed']);
    expect(shop.car().stage).toBe(2);
  });

  test('then an override of something else, or past something hard, does not count', () => {
    const shop = before();
    expect(shop.codes('leo', into, { override: { ...override, code: 'hold-stands' } })).toEqual([
      'room-full',
    ]);
    shop.does('tess', { type: 'place-hold', scope: 'gate', reason: 'paper missing' });
    expect(shop.codes('leo', into, { override })).toEqual(['hold-stands', 'room-full']);
    expect(shop.codes('leo', into, { override: { ...override, code: 'hold-stands' } })).toEqual([
      'hold-stands',
      'room-full',
    ]);
    expect(shop.car().stage).toBe(2);
  });
});

describe('W10: given an engine hung by work that is done again when it is lost', () => {
  const trial = plan({
    conditions: { 'engine-in': 'Engine in' },
    stages: { EN: { name: 'Engine' }, BD: { name: 'Body' } },
    operations: {
      'EN-010': { name: 'Hang the engine', stage: 'EN', redo: true, body: ['set engine-in'] },
      'EN-020': {
        name: 'Lift it out',
        stage: 'EN',
        repeatable: true,
        needs: ['EN-010'],
        body: ['clear engine-in'],
      },
    },
  });

  test('when an operation takes it out again, then hanging it is due again (D16)', () => {
    const shop = shopWith(trial);
    shop.perform('tom', 'EN-010');
    shop.perform('tom', 'EN-020');
    expect(shop.isSo('engine-in')).toBe(false);
    expect(shop.car().operations['EN-010']).toMatchObject({ status: 'due-again', run: 2 });
  });
});
