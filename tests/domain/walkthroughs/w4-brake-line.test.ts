/** W4. A brake line hung on wraps, then clamped, then bled and held under pressure, and then it leaks. */
import { describe, expect, test } from 'vitest';
import { notClear } from '@/lib/domain/unmet';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop, Told } from '@/tests/support/shop';

const line = plan({
  conditions: { bled: 'System bled', holds: 'Holds pressure' },
  stages: { S1: { name: 'Lines' }, S2: { name: 'Body' } },
  operations: {
    'BR-010': { name: 'Hang the line on wraps', stage: 'S1', body: ['place G-05'] },
    'BR-020': {
      name: 'Clamp the line',
      stage: 'S1',
      needs: ['BR-010'],
      body: ['final J-210', 'out G-05'],
    },
    'BR-030': { name: 'Make the flare nuts', stage: 'S1', body: ['final J-211', 'final J-212'] },
    'BR-040': {
      name: 'Bleed the brakes',
      stage: 'S1',
      needs: ['J-211 final'],
      body: ['set bled'],
      redo: true,
    },
    'BR-050': {
      name: 'Hold the pedal down',
      stage: 'S1',
      needs: ['+bled'],
      body: ['check K-20', 'set holds'],
      redo: true,
    },
  },
  joints: {
    'J-210': { name: 'Line clamps', fasteners: 7, method: 'click', torque: '8 ± 1 N·m', source: 'invented' },
    'J-211': {
      name: 'Flare nut at the tee',
      fasteners: 1,
      method: 'click',
      torque: '16 ± 2 N·m',
      source: 'invented',
      critical: true,
      verify: 'seen',
      clears: ['bled', 'holds'],
    },
    'J-212': {
      name: 'Tee to frame',
      fasteners: 1,
      method: 'click',
      torque: '20 ± 2 N·m',
      source: 'invented',
    },
  },
  checks: {
    'K-20': {
      name: 'Pressure holds and nothing weeps',
      kind: 'functional',
      holds: '10 min',
      values: { dry: 'yes' },
      about: 'J-211',
      critical: true,
      neverConcede: true,
    },
  },
  stopgaps: { 'G-05': { name: 'cable wraps', quantity: 14, where: 'along the left rail', outBy: 'S1' } },
});

const take = (stopgap: string, quantity: number): Told => ({ type: 'remove-stopgap', stopgap, quantity });
const weeps: Told = { type: 'fail-check', check: 'K-20', reason: 'weeps at the tee' };
const rework: Told = {
  type: 'decide-finding',
  finding: 'F-1',
  disposition: 'rework',
  reason: 'open the nut, look at the flare, make it again',
};

const status = (shop: Shop, operation: string): string =>
  shop.car().operations[operation]?.status ?? 'not started';
const runs = (shop: Shop, ...operations: readonly string[]): readonly (number | undefined)[] =>
  operations.map((key) => shop.car().operations[key]?.run);

/** Hung on its wraps, and the clamps torqued. */
const clamped = (): Shop => {
  const shop = shopWith(line);
  shop.perform('tom', 'BR-010');
  shop.begin('tom', 'BR-020');
  shop.tighten('tom', 'J-210');
  return shop;
};

/** Clamped, tight, seen, bled, and held: nothing stands in the way of the gate. */
const held = (): Shop => {
  const shop = clamped();
  shop.does('tom', take('G-05', 14));
  shop.finish('tom', 'BR-020');
  shop.perform('tom', 'BR-030');
  shop.verify('vera', 'J-211');
  shop.perform('tom', 'BR-040');
  shop.perform('tess', 'BR-050');
  return shop;
};

describe('wraps out are counted', () => {
  test('hung on fourteen wraps, fourteen are in', () => {
    const shop = shopWith(line);
    shop.begin('tom', 'BR-010');
    expect(shop.stopgapsIn('G-05')).toBe(0);
    shop.finish('tom', 'BR-010');
    expect(shop.stopgapsIn('G-05')).toBe(14);
    expect(shop.assess().looseEnds.map((each) => each.key)).toContain('G-05');
  });

  test('thirteen out, the clamping can’t be finished: one is left', () => {
    const shop = clamped();
    shop.does('tom', take('G-05', 13));
    const refusals = shop.refused('tom', { type: 'finish-operation', operation: 'BR-020' });
    expect(refusals).toEqual([
      { code: 'stopgap-in-place', details: { stopgap: 'G-05', left: 1, placed: 14, what: 'cable wraps' } },
    ]);
    expect(shop.sentences(refusals)).toEqual(['G-05: 1 of 14 cable wraps still in. Take it out and count.']);
    expect(shop.gate()).toContain('stopgap-in-place');
  });

  test('the fourteenth out, it is finished, and no loose end is left of them', () => {
    const shop = clamped();
    shop.does('tom', take('G-05', 13));
    shop.does('tess', take('G-05', 1));
    shop.finish('tom', 'BR-020');
    expect(status(shop, 'BR-020')).toBe('finished');
    expect(shop.assess().looseEnds.map((each) => each.key)).not.toContain('G-05');
  });

  test('more can’t come out than went in', () => {
    const shop = clamped();
    shop.does('tom', take('G-05', 13));
    expect(shop.codes('tom', take('G-05', 2))).toEqual(['removed-more-than-placed']);
    expect(shop.stopgapsIn('G-05')).toBe(1);
  });
});

describe('bleeding and holding have their order and their time', () => {
  test('nothing is bled over an open nut, nothing is held before it is bled', () => {
    const shop = shopWith(line);
    expect(shop.codes('tom', { type: 'start-operation', operation: 'BR-040' })).toEqual([
      'joint-below-level',
    ]);
    expect(shop.codes('tom', { type: 'start-operation', operation: 'BR-050' })).toEqual([
      'condition-not-true',
    ]);
  });

  test('bled is brought about by bleeding, not by saying so', () => {
    const shop = shopWith(line);
    expect(shop.codes('leo', { type: 'set-condition', condition: 'bled', reason: 'looks fine' })).toEqual([
      'condition-set-by-work',
    ]);
    expect(shop.isSo('bled')).toBe(false);
  });

  test('nine minutes are not ten', () => {
    const shop = clamped();
    shop.perform('vera', 'BR-030');
    shop.perform('vera', 'BR-040');
    shop.begin('tess', 'BR-050');
    const pass: Told = { type: 'pass-check', check: 'K-20', values: { dry: 'yes' } };
    expect(shop.codes('tess', pass)).toEqual(['check-not-begun']);
    shop.does('tess', { type: 'begin-check', check: 'K-20' });
    shop.later('8 min');
    expect(shop.codes('tess', pass)).toEqual(['check-too-short']);
    shop.does('tess', pass);
    expect(shop.car().checks['K-20']?.status).toBe('clear');
  });

  test('all done and seen, the gate is open', () => {
    const shop = held();
    expect([shop.isSo('bled'), shop.isSo('holds')]).toEqual([true, true]);
    expect(shop.gate()).toEqual([]);
  });
});

describe('the pressure does not hold', () => {
  /** Bled, the hold under way, and it weeps in the fourth minute. */
  const weeping = (): Shop => {
    const shop = clamped();
    shop.does('tom', take('G-05', 14));
    shop.finish('tom', 'BR-020');
    shop.perform('tom', 'BR-030');
    shop.verify('vera', 'J-211');
    shop.perform('tom', 'BR-040');
    shop.begin('tess', 'BR-050');
    shop.does('tess', { type: 'begin-check', check: 'K-20' });
    shop.later('3 min');
    shop.does('tess', weeps);
    return shop;
  };

  test('it fails the moment it weeps, and a finding opens about the nut', () => {
    const shop = weeping();
    expect(shop.car().checks['K-20']).toMatchObject({ status: 'failed', round: 1, finding: 'F-1' });
    expect(shop.car().findings['F-1']).toMatchObject({
      about: { kind: 'joint', key: 'J-211' },
      critical: true,
      state: 'undecided',
    });
    expect(shop.gate()).toContain('finding-undecided');
    expect(notClear(shop.car(), 'K-20')).toMatchObject({ details: { status: 'failed' } });
  });

  test('nobody holds it once more before the lead has decided', () => {
    const shop = weeping();
    expect(shop.codes('tess', { type: 'begin-check', check: 'K-20' })).toEqual(['finding-undecided']);
  });

  test('a leak is never taken as it is', () => {
    const shop = weeping();
    const refusals = shop.refused('leo', {
      type: 'decide-finding',
      finding: 'F-1',
      disposition: 'use-as-is',
      reason: 'only a drop',
    });
    expect(refusals.map((each) => each.code)).toEqual(['never-concede']);
    expect(shop.sentences(refusals)[0]).toMatch(/Pressure holds and nothing weeps \(K-20\) may never/);
  });

  test('the nut opened, the system is no longer bled, and bleeding is due again', () => {
    const shop = weeping();
    shop.does('leo', rework);
    shop.does('tom', { type: 'open-joint', joint: 'J-211' });
    expect(shop.isSo('bled')).toBe(false);
    expect(status(shop, 'BR-040')).toBe('due-again');
    expect(shop.level('J-211')).toBe('open');
  });

  test('the running hold shows that it no longer may, and can’t be taken up again over air', () => {
    const shop = weeping();
    shop.does('leo', rework);
    shop.does('tom', { type: 'open-joint', joint: 'J-211' });
    const job = shop.assess().jobs.find((each) => each.key === 'BR-050');
    expect(job).toMatchObject({ state: 'running', waitsFor: [{ code: 'condition-not-true' }] });
    shop.does('tess', { type: 'pause-operation', operation: 'BR-050', leftAs: 'pedal released' });
    expect(shop.codes('tess', { type: 'resume-operation', operation: 'BR-050' })).toEqual([
      'condition-not-true',
    ]);
  });

  test('made again, seen, bled and held for a second round, it passes, and that closes the finding', () => {
    const shop = weeping();
    shop.does('leo', rework);
    shop.does('tom', { type: 'open-joint', joint: 'J-211' });
    shop.tighten('tom', 'J-211');
    shop.verify('vera', 'J-211');
    shop.perform('tom', 'BR-040');
    const refusals = shop.refused('tess', { type: 'close-finding', finding: 'F-1' });
    expect(shop.sentences(refusals)).toEqual([
      'Pressure holds and nothing weeps (K-20) failed, and what is done is decided. Do the work and pass the check in a new round.',
    ]);
    shop.passCheck('tess', 'K-20');
    shop.finish('tess', 'BR-050');
    expect(shop.car().checks['K-20']).toMatchObject({ status: 'clear', round: 2 });
    expect(shop.car().findings['F-1']?.state).toBe('closed');
    expect(shop.gate()).toEqual([]);
  });
});

describe('it leaks days after it was bled and held', () => {
  const leaking = (): Shop => {
    const shop = held();
    shop.later('3 d');
    shop.does('tess', weeps);
    shop.does('leo', rework);
    return shop;
  };

  test('as long as nobody opens the nut, it is still bled', () => {
    const shop = leaking();
    expect(shop.isSo('bled')).toBe(true);
    expect(status(shop, 'BR-040')).toBe('finished');
  });

  test('the nut opened, both conditions are gone and both operations run again', () => {
    const shop = leaking();
    shop.does('tom', { type: 'open-joint', joint: 'J-211' });
    expect([shop.isSo('bled'), shop.isSo('holds')]).toEqual([false, false]);
    expect([status(shop, 'BR-040'), status(shop, 'BR-050')]).toEqual(['due-again', 'due-again']);
    expect(runs(shop, 'BR-040', 'BR-050')).toEqual([2, 2]);
  });

  test('the gate does not pass with air in the line: tight again and seen is not enough', () => {
    const shop = leaking();
    shop.does('tom', { type: 'open-joint', joint: 'J-211' });
    shop.tighten('tom', 'J-211');
    shop.verify('vera', 'J-211');
    const left = shop.refused('leo', { type: 'advance-car', to: 'S2' });
    expect(left.map((each) => each.code)).toEqual([
      'operation-unfinished',
      'operation-unfinished',
      'finding-not-closed',
    ]);
    expect(shop.sentences(left)[0]).toBe('Bleed the brakes (BR-040) is due again. Run it once more.');
  });

  test('it can’t be held before it is bled again; bled and held, the gate is open', () => {
    const shop = leaking();
    shop.does('tom', { type: 'open-joint', joint: 'J-211' });
    shop.tighten('tom', 'J-211');
    shop.verify('vera', 'J-211');
    expect(shop.codes('tess', { type: 'start-operation', operation: 'BR-050' })).toEqual([
      'condition-not-true',
    ]);
    shop.perform('tom', 'BR-040');
    shop.perform('tess', 'BR-050');
    expect([shop.isSo('bled'), shop.isSo('holds')]).toEqual([true, true]);
    expect(shop.car().findings['F-1']?.state).toBe('closed');
    shop.does('leo', { type: 'advance-car', to: 'S2' });
  });

  test('a nut opened with no finding at all has the same effect, and its check is due again', () => {
    const shop = held();
    shop.does('tom', { type: 'open-joint', joint: 'J-211' });
    expect(runs(shop, 'BR-040', 'BR-050')).toEqual([2, 2]);
    expect(shop.car().checks['K-20']?.status).toBe('due-again');
  });

  test('a joint that is not of the circuit may be opened and the brakes stay bled', () => {
    const shop = held();
    shop.does('tom', { type: 'open-joint', joint: 'J-212' });
    expect([shop.isSo('bled'), shop.isSo('holds')]).toEqual([true, true]);
    expect(runs(shop, 'BR-040', 'BR-050')).toEqual([1, 1]);
  });
});

describe('a clamp off for access, a wrap back in', () => {
  const offAgain = (): Shop => {
    const shop = held();
    shop.does('tom', { type: 'open-joint', joint: 'J-210', fasteners: [3, 4], reason: 'access to the tee' });
    shop.does('tom', { type: 'place-stopgap', stopgap: 'G-05', quantity: 2 });
    return shop;
  };

  test('it is a stopgap of its own; the first fourteen stay out', () => {
    const shop = offAgain();
    expect(shop.car().stopgaps).toMatchObject({
      'G-05': { placed: 14, removed: 14 },
      'G-05.2': { stopgap: 'G-05', placed: 2, removed: 0, outBy: 0 },
    });
  });

  test('the gate closes on it and on the clamps, though the clamping is finished', () => {
    const shop = offAgain();
    expect(status(shop, 'BR-020')).toBe('finished');
    expect(shop.refused('leo', { type: 'advance-car', to: 'S2' })).toMatchObject([
      { code: 'joint-below-level', details: { joint: 'J-210', level: 'open' } },
      { code: 'stopgap-in-place', details: { stopgap: 'G-05.2', left: 2 } },
    ]);
    expect(shop.jobs()).toEqual(expect.arrayContaining(['restore:J-210:2', 'stopgap:G-05.2:1']));
  });

  test('as many out as went in this time, and the clamps restored, the gate is open', () => {
    const shop = offAgain();
    expect(shop.codes('tom', take('G-05.2', 3))).toEqual(['removed-more-than-placed']);
    shop.does('tom', take('G-05.2', 1));
    shop.tighten('tom', 'J-210');
    expect(shop.gate()).toEqual(['stopgap-in-place']);
    shop.does('tom', take('G-05', 1));
    expect(shop.gate()).toEqual([]);
  });
});
