/** W6. A longer bolt: what may stand in for what, kept by fastener, and put right by a correction of the record. */
import { describe, expect, test } from 'vitest';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop, Told } from '@/tests/support/shop';

const bracket = plan({
  stages: { S1: { name: 'Frame' } },
  operations: {
    'FR-010': {
      name: 'Bolt the steering bracket',
      stage: 'S1',
      body: ['snug J-130', 'final J-130', 'snug J-131', 'snug J-132'],
    },
  },
  joints: {
    'J-130': {
      name: 'Steering bracket to frame',
      fasteners: 4,
      pattern: 'cross',
      method: 'click',
      torque: '45 ± 3 N·m',
      source: 'invented',
      critical: true,
      verify: 'seen',
      hardware: { 'BOLT-30': 4, 'NUT-10': 4 },
    },
    'J-131': {
      name: 'Column clamp',
      fasteners: 1,
      method: 'click',
      torque: '25 ± 2 N·m',
      source: 'invented',
      hardware: { 'BOLT-35': 1 },
      dueLevel: 'snug',
    },
    'J-132': {
      name: 'Tie to bracket',
      fasteners: 1,
      method: 'click',
      torque: '20 ± 2 N·m',
      source: 'invented',
      hardware: { 'BOLT-30': 1, 'PIN-3': 1 },
      dueLevel: 'snug',
    },
  },
  items: {
    'BOLT-30': {
      name: 'Bolt M10 x 30',
      reuse: 'always',
      trace: 'lot',
      substitutes: {
        'BOLT-35': { condition: 'while it still clears the tie', notIn: ['J-132'] },
        'BOLT-40': { condition: 'ask', asksLead: true },
      },
    },
    'BOLT-35': { name: 'Bolt M10 x 35' },
    'BOLT-40': { name: 'Bolt M10 x 40' },
    'BOLT-50': { name: 'Bolt M10 x 50' },
    'NUT-10': { name: 'Lock nut M10', reuse: 'once final', trace: 'lot' },
    'PIN-3': { name: 'Split pin 3', reuse: 'once fitted' },
  },
});

/** Fitted and run up by Tom, with the hardware told. */
const fits = (joint: string, ...hardware: readonly FittedClaim[]): Told => ({
  type: 'snug-joint',
  joint,
  hardware,
});
const longer = (...fasteners: readonly number[]): FittedClaim => ({
  item: 'BOLT-35',
  insteadOf: 'BOLT-30',
  fasteners,
});

const started = (): Shop => {
  const shop = shopWith(bracket);
  shop.begin('tom', 'FR-010');
  return shop;
};

/** What is in, fastener by fastener, on the line of the planned item. */
const inPlace = (shop: Shop, line: string, joint = 'J-130'): readonly (string | undefined)[] =>
  Object.values(shop.car().joints[joint]?.fasteners ?? {}).map((each) => each[line]?.item);
const uses = (shop: Shop, line: string, joint = 'J-130'): readonly (number | undefined)[] =>
  Object.values(shop.car().joints[joint]?.fasteners ?? {}).map((each) => each[line]?.uses);

describe('an allowed longer bolt', () => {
  test('is recorded by the technician as he fits it; nobody has to approve', () => {
    const shop = started();
    shop.does('tom', fits('J-130', longer(1, 2, 3, 4)));
    expect(inPlace(shop, 'BOLT-30')).toEqual(['BOLT-35', 'BOLT-35', 'BOLT-35', 'BOLT-35']);
    expect(shop.car().changes).toEqual({});
    expect(shop.level('J-130')).toBe('snug');
  });

  test('two long and two as planned are kept fastener by fastener, and stay so at final', () => {
    const shop = started();
    shop.does('tom', fits('J-130', longer(2, 4)));
    shop.tighten('tom', 'J-130');
    expect(inPlace(shop, 'BOLT-30')).toEqual(['BOLT-30', 'BOLT-35', 'BOLT-30', 'BOLT-35']);
    expect(inPlace(shop, 'NUT-10')).toEqual(['NUT-10', 'NUT-10', 'NUT-10', 'NUT-10']);
    expect(shop.level('J-130')).toBe('final');
  });

  test('may be told at final as well', () => {
    const shop = started();
    shop.tighten('tom', 'J-130', 'T-02', { hardware: [longer(3)] });
    expect(inPlace(shop, 'BOLT-30')).toEqual(['BOLT-30', 'BOLT-30', 'BOLT-35', 'BOLT-30']);
  });
});

describe('a bolt that may not stand in', () => {
  test('is refused with what may', () => {
    const shop = started();
    const refusals = shop.refused('tom', fits('J-130', { item: 'BOLT-50', insteadOf: 'BOLT-30' }));
    expect(refusals).toEqual([
      {
        code: 'hardware-wrong',
        details: {
          joint: 'J-130',
          item: 'BOLT-50',
          planned: ['BOLT-30', 'NUT-10'],
          substitutes: ['BOLT-35', 'BOLT-40'],
        },
      },
    ]);
    expect(shop.sentences(refusals)[0]).toMatch(/BOLT-50.*Steering bracket to frame \(J-130\).*BOLT-35/s);
    expect(shop.level('J-130')).toBe('open');
  });

  test('is refused though nobody says what it stands in for', () => {
    expect(started().codes('tom', fits('J-130', { item: 'BOLT-50' }))).toEqual(['hardware-wrong']);
  });

  test('goes one way only: the shorter may not stand in for the longer', () => {
    const shop = started();
    expect(shop.codes('tom', fits('J-131', { item: 'BOLT-30', insteadOf: 'BOLT-35' }))).toEqual([
      'hardware-wrong',
    ]);
    shop.does('tom', fits('J-131'));
  });

  test('is refused in the joint where it would not clear', () => {
    const shop = started();
    expect(shop.codes('tom', fits('J-132', longer(1)))).toEqual(['hardware-wrong']);
    shop.does('tom', fits('J-130', longer(1)));
  });

  test('takes a lead’s own hand where the plan asks for one', () => {
    const shop = started();
    const longest = fits('J-130', { item: 'BOLT-40', insteadOf: 'BOLT-30', fasteners: [1] });
    expect(shop.codes('tom', longest)).toEqual(['substitute-needs-lead']);
    shop.does('leo', longest);
    expect(inPlace(shop, 'BOLT-30')).toEqual(['BOLT-40', 'BOLT-30', 'BOLT-30', 'BOLT-30']);
  });

  test('a fastener that the joint does not have can’t hold it', () => {
    expect(started().codes('tom', fits('J-130', longer(7)))).not.toEqual([]);
  });
});

describe('found afterwards: the record said four short, and one is long', () => {
  /** Snug and final, told as planned. Answers with the id of the final. */
  const told = (by = 'tom'): { shop: Shop; final: string } => {
    const shop = shopWith(bracket);
    shop.does('leo', { type: 'receive-lot', lot: 'L-7', item: 'NUT-10', quantity: 40 });
    shop.begin('tom', 'FR-010');
    shop.does('tom', fits('J-130', { item: 'NUT-10', lot: 'L-7' }));
    shop.tighten(by, 'J-130');
    return { shop, final: shop.last };
  };
  const strike = (signature: string): Told => ({
    type: 'strike-signature',
    signature,
    reason: 'no. 3 is the long one',
  });

  test('Tom strikes his own final: the joint is snug as before, and nothing is bought', () => {
    const { shop, final } = told();
    shop.does('tom', strike(final));
    expect(shop.level('J-130')).toBe('snug');
    expect(shop.car().joints['J-130']?.cycle).toBe(1);
    expect(Object.values(shop.car().joints['J-130']?.fasteners ?? {}).map((each) => each['NUT-10'])).toEqual(
      Array.from({ length: 4 }, () => ({ item: 'NUT-10', lot: 'L-7', uses: 1, spent: false })),
    );
  });

  test('entered again with the long one at no. 3, it is final, the nuts are the same, and there is no finding', () => {
    const { shop, final } = told();
    shop.does('tom', strike(final));
    shop.tighten('tom', 'J-130', 'T-02', { hardware: [longer(3)] });
    expect(inPlace(shop, 'BOLT-30')).toEqual(['BOLT-30', 'BOLT-30', 'BOLT-35', 'BOLT-30']);
    expect(uses(shop, 'NUT-10')).toEqual([1, 1, 1, 1]);
    expect(shop.car().findings).toEqual({});
    shop.verify('vera', 'J-130');
    expect(shop.level('J-130')).toBe('verified');
  });

  test('the struck signature stays readable, with who struck it and why', () => {
    const { shop, final } = told();
    shop.does('tom', strike(final));
    expect(shop.car().signatures[final]).toMatchObject({
      act: 'final-joint',
      by: 'tom',
      struck: { by: 'tom', reason: 'no. 3 is the long one' },
    });
    expect(shop.car().joints['J-130']?.marks.at(-1)).toMatchObject({ level: 'final', struck: true });
  });

  test('nobody strikes another’s, but a lead', () => {
    const { shop, final } = told();
    const refusals = shop.refused('tess', strike(final));
    expect(refusals.map((each) => each.code)).toEqual(['strike-needs-lead']);
    expect(shop.sentences(refusals)[0]).toMatch(/^Tess can't strike .* A lead strikes it, with a reason\.$/);
    shop.does('leo', strike(final));
    expect(shop.level('J-130')).toBe('snug');
  });

  test('once it is verified, Tom can’t strike it; the lead does, and the verification goes with it', () => {
    const { shop, final } = told();
    shop.verify('vera', 'J-130');
    expect(shop.codes('tom', strike(final))).toEqual(['strike-needs-lead']);
    shop.does('leo', strike(final));
    expect(shop.level('J-130')).toBe('snug');
    expect(shop.car().joints['J-130']?.marks.map((mark) => mark.struck)).toEqual([false, true, true]);
  });

  test('whose final was struck still can’t verify: the hand turned all the same', () => {
    const { shop } = told('leo');
    shop.does('leo', strike(shop.last));
    shop.does('tess', { type: 'join-operation', operation: 'FR-010' });
    shop.tighten('tess', 'J-130', 'T-02', { hardware: [longer(3)] });
    expect(shop.codes('leo', shop.verifying('J-130'))).toEqual(['not-independent']);
    shop.verify('vera', 'J-130');
  });
});

describe('lots', () => {
  const stocked = (): Shop => {
    const shop = shopWith(bracket);
    const lot = (id: string, item: string, more = {}): Told => ({
      type: 'receive-lot',
      lot: id,
      item,
      quantity: 40,
      ...more,
    });
    shop.does('leo', lot('L-1', 'NUT-10'));
    shop.does('leo', lot('L-2', 'NUT-10', { expires: '2026-03-02' }));
    shop.does('leo', lot('L-3', 'NUT-10', { certificateAsked: true }));
    shop.does('leo', lot('L-4', 'BOLT-30', { quantity: 0 }));
    shop.begin('tom', 'FR-010');
    return shop;
  };
  const nutsFrom = (lot: string): Told => fits('J-130', { item: 'NUT-10', lot });

  test('a quarantined lot is hard, also for the lead', () => {
    const shop = stocked();
    shop.does('tess', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft thread' });
    const refusals = shop.refused('tom', nutsFrom('L-1'));
    expect(refusals.map((each) => each.code)).toEqual(['lot-quarantined']);
    expect(refusals.some((each) => each.soft === true)).toBe(false);
    expect(shop.sentences(refusals)[0]).toMatch(/L-1.*soft thread/);
    expect(
      shop.codes('leo', nutsFrom('L-1'), { override: { code: 'lot-quarantined', reason: 'just two' } }),
    ).toEqual(['lot-quarantined']);
  });

  test('goods without the certificate that was asked for come in quarantined; cleared, they may go in', () => {
    const shop = stocked();
    expect(shop.codes('tom', nutsFrom('L-3'))).toEqual(['lot-quarantined']);
    shop.does('leo', { type: 'clear-lot', lot: 'L-3', reason: 'certificate came by post' });
    shop.does('tom', nutsFrom('L-3'));
  });

  test('an expired lot is hard; its last day still counts', () => {
    const shop = stocked();
    const onItsLastDay = stocked();
    onItsLastDay.does('tom', nutsFrom('L-2'));
    shop.later('1 d');
    expect(shop.codes('tom', nutsFrom('L-2'))).toEqual(['lot-expired']);
    expect(
      shop.codes('leo', nutsFrom('L-2'), { override: { code: 'lot-expired', reason: 'a day over' } }),
    ).toEqual(['lot-expired']);
  });

  test('a lot of something else is refused; a lot counted at none is not, with the bolt in hand', () => {
    const shop = stocked();
    expect(shop.codes('tom', fits('J-130', { item: 'NUT-10', lot: 'L-4' }))).toEqual(['lot-of-other-item']);
    shop.does('tom', fits('J-130', { item: 'BOLT-30', lot: 'L-4' }));
    expect(shop.car().joints['J-130']?.fasteners['1']?.['BOLT-30']?.lot).toBe('L-4');
  });

  test('a lot that nobody has received names nothing', () => {
    expect(stocked().codes('tom', nutsFrom('L-9'))).toEqual(['unknown-thing']);
  });

  test('quarantined after it went in, the joint is in doubt at once and can’t be verified', () => {
    const shop = stocked();
    shop.does('tom', nutsFrom('L-1'));
    shop.tighten('tom', 'J-130');
    expect(shop.doubts('J-130')).toEqual([]);
    shop.does('tess', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft thread' });
    expect(shop.doubts('J-130').map((each) => [each.cause, each.remedy, each.fasteners])).toEqual([
      ['lot-quarantined', 'renew', [1]],
      ['lot-quarantined', 'renew', [2]],
      ['lot-quarantined', 'renew', [3]],
      ['lot-quarantined', 'renew', [4]],
    ]);
    expect(new Set(shop.codes('vera', shop.verifying('J-130')))).toEqual(new Set(['joint-in-doubt']));
  });
});

describe('spent one-time hardware', () => {
  /** Final, and no. 2 opened again. */
  const oneOpened = (): Shop => {
    const shop = started();
    shop.does('tom', fits('J-130'));
    shop.tighten('tom', 'J-130');
    shop.does('tom', { type: 'open-joint', joint: 'J-130', fasteners: [2] });
    return shop;
  };
  const oldNut: FittedClaim = { item: 'NUT-10', fasteners: [2], reused: true };

  test('opening one fastener uses up its nut and no other', () => {
    const shop = started();
    shop.does('tom', fits('J-130'));
    shop.tighten('tom', 'J-130');
    const [opened] = shop.does('tom', { type: 'open-joint', joint: 'J-130', fasteners: [2] });
    expect(opened).toMatchObject({ type: 'joint-opened', spent: { '2': ['NUT-10'] } });
    expect(opened).not.toHaveProperty('spent.1');
    const spent = Object.entries(shop.car().joints['J-130']?.fasteners ?? {})
      .filter(([, items]) => items['NUT-10']?.spent)
      .map(([fastener]) => fastener);
    expect(spent).toEqual(['2']);
  });

  test('the old lock nut put back on is refused, at snug and at final', () => {
    const shop = oneOpened();
    const refusals = shop.refused('tom', fits('J-130', oldNut));
    expect(refusals).toEqual([
      {
        code: 'hardware-spent',
        details: {
          joint: 'J-130',
          item: 'NUT-10',
          fastener: 2,
          rule: 'used once, spent at final torque',
        },
      },
    ]);
    expect(shop.sentences(refusals)[0]).toMatch(/NUT-10.*Steering bracket to frame \(J-130\)/);
    expect(shop.codes('tom', shop.tightening('J-130', 'T-02', { hardware: [oldNut] }))).toEqual([
      'hardware-spent',
    ]);
  });

  test('with a new nut it is restored; the old bolt counts its second use, the others are untouched', () => {
    const shop = oneOpened();
    shop.tighten('tom', 'J-130');
    expect(shop.level('J-130')).toBe('final');
    expect(uses(shop, 'BOLT-30')).toEqual([1, 2, 1, 1]);
    expect(uses(shop, 'NUT-10')).toEqual([1, 1, 1, 1]);
    expect(
      Object.values(shop.car().joints['J-130']?.fasteners ?? {}).some((each) => each['NUT-10']?.spent),
    ).toBe(false);
  });

  test('snug only, the same nut may go back on: it is spent at final, not before', () => {
    const shop = started();
    shop.does('tom', fits('J-130'));
    shop.does('tom', { type: 'open-joint', joint: 'J-130', fasteners: [2] });
    shop.does('tom', fits('J-130', oldNut));
    expect(uses(shop, 'NUT-10')).toEqual([1, 2, 1, 1]);
  });

  test('a split pin is spent when it is fitted, before any torque', () => {
    const shop = started();
    shop.does('tom', fits('J-132'));
    shop.does('tom', { type: 'open-joint', joint: 'J-132' });
    expect(shop.codes('tom', fits('J-132', { item: 'PIN-3', reused: true }))).toEqual(['hardware-spent']);
    shop.does('tom', fits('J-132'));
    expect(uses(shop, 'PIN-3', 'J-132')).toEqual([1]);
    expect(uses(shop, 'BOLT-30', 'J-132')).toEqual([2]);
  });

  test('a long one is a new piece, not a second use of the short one', () => {
    const shop = oneOpened();
    expect(shop.codes('tom', fits('J-130', { ...longer(2), reused: true }))).toEqual(['hardware-spent']);
    shop.does('tom', fits('J-130', longer(2)));
    expect(uses(shop, 'BOLT-30')).toEqual([1, 1, 1, 1]);
  });
});
