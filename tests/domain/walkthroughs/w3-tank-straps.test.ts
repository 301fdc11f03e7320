/** W3. Tank straps drilled in place: made on the part, firm by hand, and hidden once the tank is in. */
import { describe, expect, test } from 'vitest';
import { checkPlan } from '@/lib/domain/plan/check';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop, Told } from '@/tests/support/shop';

const tank = plan({
  stages: { S1: { name: 'Fuel' }, S2: { name: 'Body' } },
  operations: {
    'TK-010': { name: 'Lay the strap in place', stage: 'S1', body: ['fit P-30'] },
    'TK-020': {
      name: 'Match-drill the strap',
      stage: 'S1',
      needs: ['TK-010'],
      body: ['check K-30'],
      irreversible: true,
      madeOn: 'P-30',
    },
    'TK-030': {
      name: 'Bolt the strap',
      stage: 'S1',
      needs: ['TK-020'],
      body: ['snug J-310', 'final J-310'],
      who: 'fuel',
    },
    'TK-040': {
      name: 'Trim the strap',
      stage: 'S1',
      needs: ['TK-030'],
      body: ['photo ends'],
      madeOn: 'P-30',
    },
    'TK-050': {
      name: 'Hang the tank',
      stage: 'S2',
      covers: ['J-310'],
      body: ['fit P-31', 'snug J-320'],
    },
  },
  joints: {
    'J-310': {
      name: 'Strap to frame, front nuts',
      fasteners: 2,
      method: 'firm',
      torque: 'no value published',
      firmMeans: 'the lock washer is flat',
      critical: true,
      verify: 'seen',
    },
    'J-320': {
      name: 'Tank to strap',
      fasteners: 2,
      method: 'click',
      torque: 'no value yet',
      due: 'S2',
    },
  },
  checks: {
    'K-30': {
      name: 'Hole to edge of the strap',
      kind: 'measured',
      values: { edge: '>= 12 mm' },
      source: 'invented',
      about: 'P-30',
    },
  },
  parts: { 'P-30': { name: 'Tank strap', critical: true }, 'P-31': { name: 'Fuel tank' } },
});

const hangTheTank: Told = { type: 'start-operation', operation: 'TK-050' };

const drilled = (): Shop => {
  const shop = shopWith(tank);
  shop.perform('tom', 'TK-010');
  shop.perform('tom', 'TK-020');
  return shop;
};

/** Drilled, bolted and trimmed, and not yet seen by a second person. */
const bolted = (): Shop => {
  const shop = drilled();
  shop.perform('tom', 'TK-030');
  shop.perform('tom', 'TK-040');
  return shop;
};

const status = (shop: Shop, operation: string): string =>
  shop.car().operations[operation]?.status ?? 'not started';

describe('no published torque: firm by hand', () => {
  test('the joint is final with nothing but the hand, and its record holds no number', () => {
    const shop = drilled();
    shop.begin('tom', 'TK-030');
    shop.does('tom', { type: 'final-joint', joint: 'J-310' });
    const mark = shop.car().joints['J-310']?.marks.at(-1);
    expect(mark).toMatchObject({ level: 'final', by: 'tom', tool: null, delivered: null, window: null });
  });

  test('a torque wrench can’t lend it a number that nobody has published', () => {
    const shop = drilled();
    shop.begin('tom', 'TK-030');
    const refusals = shop.refused('tom', {
      type: 'final-joint',
      joint: 'J-310',
      tool: 'T-02',
      setting: '25',
    });
    expect(refusals.map((each) => each.code)).toEqual(['method-does-not-fit']);
    expect(shop.sentences(refusals)[0]).toContain('Strap to frame, front nuts (J-310)');
    expect(shop.level('J-310')).toBe('open');
  });

  test('firm is never there where the plan holds a number', () => {
    const numbered = {
      ...tank,
      joints: {
        ...tank.joints,
        'J-310': { name: 'Strap', fasteners: 2, method: 'firm', torque: '25 ± 2 N·m', source: 'invented' },
      },
    } as const;
    const errors = checkPlan(numbered).filter((problem) => problem.rank === 'error');
    expect(errors.map((problem) => problem.path.slice(0, 2).join('.'))).toContain('joints.J-310');
  });

  test('no value yet is not the same: such a joint may be snug, not final', () => {
    const shop = bolted();
    shop.verify('vera', 'J-310');
    shop.does('tom', hangTheTank);
    shop.does('tom', { type: 'snug-joint', joint: 'J-320' });
    expect(shop.level('J-320')).toBe('snug');
    expect(shop.codes('tom', { type: 'final-joint', joint: 'J-320', tool: 'T-02', setting: '25' })).toContain(
      'no-value-yet',
    );
  });
});

describe('the witness point: nobody sees the front nuts once the tank is in', () => {
  test('final is not enough to hang the tank', () => {
    const shop = bolted();
    const refusals = shop.refused('tom', hangTheTank);
    expect(refusals).toEqual([
      { code: 'joint-below-level', details: { joint: 'J-310', level: 'final', wanted: 'verified' } },
    ]);
    expect(shop.sentences(refusals)).toEqual([
      'Strap to frame, front nuts (J-310) is final and must be verified. A second person verifies it.',
    ]);
  });

  test('the hand that tightened it can’t be the eye', () => {
    const shop = bolted();
    expect(shop.codes('tom', shop.verifying('J-310'))).toEqual(['not-independent']);
  });

  test('nor can the one who only fitted it, or was on the job with him', () => {
    const shop = drilled();
    shop.begin('tom', 'TK-030');
    shop.does('tess', { type: 'join-operation', operation: 'TK-030' });
    shop.does('leo', { type: 'snug-joint', joint: 'J-310' });
    shop.does('tom', { type: 'final-joint', joint: 'J-310' });
    expect(shop.codes('tess', shop.verifying('J-310'))).toEqual(['not-independent']);
    expect(shop.codes('leo', shop.verifying('J-310'))).toEqual(['not-independent']);
  });

  test('nor one who can’t judge it: the verifier holds the joint’s qualification', () => {
    const shop = bolted();
    shop.does('leo', { type: 'add-person', person: 'nora', name: 'Nora', roles: ['technician'] });
    expect(shop.codes('nora', shop.verifying('J-310'))).toEqual(['not-qualified']);
  });

  test('seen by a second person, the tank may go in', () => {
    const shop = bolted();
    shop.verify('vera', 'J-310');
    shop.perform('tom', 'TK-050');
    expect(status(shop, 'TK-050')).toBe('finished');
  });

  test('opened again after it was seen, it must be seen again first', () => {
    const shop = bolted();
    shop.verify('vera', 'J-310');
    shop.does('tom', { type: 'open-joint', joint: 'J-310', fasteners: [2] });
    shop.tighten('tom', 'J-310');
    expect(shop.codes('tom', hangTheTank)).toEqual(['joint-below-level']);
    shop.verify('vera', 'J-310');
    shop.does('tom', hangTheTank);
  });
});

describe('clamps that hold the strap', () => {
  test('in and out within one sitting they leave no trace and ask for nothing', () => {
    const shop = bolted();
    expect(shop.car().stopgaps).toEqual({});
    expect(shop.gate()).toEqual(['joint-below-level']);
  });

  test('left in, they are told with one tap and out by this stage’s gate only when all are counted out', () => {
    const shop = bolted();
    shop.verify('vera', 'J-310');
    expect(shop.gate()).toEqual([]);
    shop.does('tom', { type: 'place-stopgap', what: 'welding clamp', quantity: 2, where: 'strap' });
    expect(shop.gate()).toEqual(['stopgap-in-place']);
    shop.does('tom', { type: 'remove-stopgap', stopgap: 'G-tap-1', quantity: 1 });
    const refusals = shop.refused('leo', { type: 'advance-car', to: 'S2' });
    expect(refusals).toMatchObject([{ code: 'stopgap-in-place', details: { left: 1, placed: 2 } }]);
    expect(shop.sentences(refusals)).toEqual([
      'G-tap-1: 1 of 2 welding clamp still in. Take it out and count.',
    ]);
    expect(shop.codes('tom', { type: 'remove-stopgap', stopgap: 'G-tap-1', quantity: 2 })).toEqual([
      'removed-more-than-placed',
    ]);
    shop.does('tom', { type: 'remove-stopgap', stopgap: 'G-tap-1', quantity: 1 });
    expect(shop.gate()).toEqual([]);
  });
});

describe('a strap found cracked later is replaced', () => {
  const cracked: Told = {
    type: 'report-finding',
    about: { kind: 'part', key: 'P-30' },
    text: 'cracked at the bend',
  };
  const replace: Told = {
    type: 'decide-finding',
    finding: 'F-1',
    disposition: 'replace',
    reason: 'cracked through',
  };

  /** Everything of the stage done and seen, then the crack. */
  const condemned = (): Shop => {
    const shop = bolted();
    shop.verify('vera', 'J-310');
    expect(shop.gate()).toEqual([]);
    shop.does('tess', cracked);
    shop.does('leo', replace);
    return shop;
  };

  test('laying in, drilling and trimming are due again; bolting is not made on the strap', () => {
    const shop = condemned();
    expect(['TK-010', 'TK-020', 'TK-040'].map((key) => status(shop, key))).toEqual([
      'due-again',
      'due-again',
      'due-again',
    ]);
    expect(status(shop, 'TK-030')).toBe('finished');
    expect(shop.car().checks['K-30']?.status).toBe('due-again');
    expect(shop.car().parts['P-30']).toMatchObject({ state: 'absent', piece: 2 });
  });

  test('the gate stays shut with an undrilled strap in', () => {
    const shop = condemned();
    shop.does('tom', { type: 'open-joint', joint: 'J-310' });
    shop.does('tom', { type: 'receive-part', part: 'P-30' });
    shop.does('tom', { type: 'close-finding', finding: 'F-1' });
    shop.perform('tom', 'TK-010');
    shop.tighten('tom', 'J-310');
    shop.verify('vera', 'J-310');
    expect([...shop.gate()].sort()).toEqual([
      'check-not-clear',
      'operation-unfinished',
      'operation-unfinished',
    ]);
    expect(shop.codes('leo', { type: 'advance-car', to: 'S2' })).toContain('operation-unfinished');
    shop.perform('tom', 'TK-020');
    shop.perform('tom', 'TK-040');
    expect(shop.gate()).toEqual([]);
    expect(shop.car().operations['TK-020']?.run).toBe(2);
    expect(shop.car().checks['K-30']?.round).toBe(2);
  });

  test('the new strap can’t be drilled before it lies in place', () => {
    const shop = condemned();
    expect(shop.codes('tom', { type: 'start-operation', operation: 'TK-020' })).toEqual([
      'operation-unfinished',
      'part-absent',
    ]);
  });

  test('no strap, no closing: the finding waits for the new piece', () => {
    const shop = condemned();
    expect(shop.codes('tom', { type: 'close-finding', finding: 'F-1' })).toEqual(['part-absent']);
  });

  test('one that was drilled too near its edge is replaced, and the new one laid in, drilled and measured', () => {
    const shop = shopWith(tank);
    shop.perform('tom', 'TK-010');
    shop.begin('tom', 'TK-020');
    shop.does('tom', { type: 'pass-check', check: 'K-30', values: { edge: '9' } });
    shop.does('leo', replace);
    shop.does('tom', { type: 'receive-part', part: 'P-30' });
    // The measuring that closes the finding can only follow the drilling, and that the laying in.
    shop.perform('tess', 'TK-010');
    shop.does('tom', { type: 'pass-check', check: 'K-30', values: { edge: '14' } });
    expect(shop.car().findings['F-1']?.state).toBe('closed');
    expect(shop.car().checks['K-30']).toMatchObject({ status: 'clear', round: 2 });
  });
});
