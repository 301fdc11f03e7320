/** W5. A worn bushing at inspection, stages before the axle is hung over it. */
import { describe, expect, test } from 'vitest';
import type { Disposition } from '@/lib/domain/base/vocabulary';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { notClear } from '@/lib/domain/unmet';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop, Told } from '@/tests/support/shop';

const parts = (critical: boolean): PlanDocument['parts'] => ({
  'P-26': { name: 'Spring eye bushings', origin: 'donor', critical },
  'P-27': { name: 'Shackle plates', origin: 'donor' },
});

const spring = plan({
  stages: { S1: { name: 'Strip and look' }, S2: { name: 'Paint' }, S3: { name: 'Axle in' } },
  operations: {
    'IN-010': {
      name: 'Look at the springs',
      stage: 'S1',
      body: ['check K-16@*', 'check K-17'],
      who: 'looks',
    },
    'SP-010': { name: 'Hang the shackles', stage: 'S3', body: ['fit P-27'] },
    'AX-010': { name: 'Hang the axle', stage: 'S3', body: ['fit P-26', 'snug J-110'] },
  },
  joints: {
    'J-110': {
      name: 'Spring eye bolts',
      fasteners: 2,
      method: 'click',
      torque: '75 ± 5 N·m',
      source: 'invented',
      dueLevel: 'snug',
    },
  },
  checks: {
    'K-16': {
      name: 'Play of the bushing',
      repeat: 'sides',
      kind: 'measured',
      values: { play: '<= 0.10 mm' },
      source: 'invented',
      about: 'P-26',
      pair: true,
    },
    'K-17': {
      name: 'Bushing shell without a crack',
      kind: 'visual',
      values: { whole: 'yes' },
      about: 'P-26',
      neverConcede: true,
    },
  },
  parts: parts(false),
});
const critical: PlanDocument = { ...spring, revision: 'critical', parts: parts(true) };

const measured = (side: 'L' | 'R', play: string): Told => ({
  type: 'pass-check',
  check: `K-16@${side}`,
  values: { play },
});
const decided = (disposition: Disposition, finding = 'F-1'): Told => ({
  type: 'decide-finding',
  finding,
  disposition,
  reason: 'looked at it together',
});
const approve: Told = { type: 'decide-change', change: 'D-1', approve: true };
const hangTheAxle: Told = { type: 'start-operation', operation: 'AX-010' };

const finding = (shop: Shop, id = 'F-1'): string => shop.car().findings[id]?.state ?? 'none';
const check = (shop: Shop, key: string): readonly unknown[] => [
  shop.car().checks[key]?.status,
  shop.car().checks[key]?.round,
];

/** The springs are off the donor, and being looked at. */
const stripped = (document = spring, by = 'tess'): Shop => {
  const shop = shopWith(document);
  shop.does('leo', { type: 'receive-part', part: 'P-26' });
  shop.does('leo', { type: 'receive-part', part: 'P-27' });
  shop.does(by, { type: 'start-operation', operation: 'IN-010' });
  return shop;
};

/** The right side measured good; the left worn. Everything of the stage looked at. */
const worn = (document = spring, by = 'tess'): Shop => {
  const shop = stripped(document, by);
  shop.does(by, measured('R', '0.06'));
  shop.does(by, measured('L', '0.14'));
  shop.does(by, { type: 'pass-check', check: 'K-17', values: { whole: 'yes' } });
  return shop;
};

describe('a value outside its limit', () => {
  test('fails by itself, whoever calls it a pass, and opens a finding about the part', () => {
    const shop = stripped();
    expect(shop.does('tess', measured('L', '0.14')).map((each) => each.type)).toEqual([
      'check-failed',
      'finding-opened',
    ]);
    expect(check(shop, 'K-16@L')).toEqual(['failed', 1]);
    expect(shop.car().findings['F-1']).toMatchObject({
      about: { kind: 'part', key: 'P-26' },
      check: { key: 'K-16@L', round: 1 },
      text: expect.stringMatching(/^Play of the bushing: play 0.14 is outside .*0.1 mm$/) as string,
      state: 'undecided',
    });
  });

  test('the limit itself is inside', () => {
    const shop = stripped();
    shop.does('tess', measured('L', '0.10'));
    expect(check(shop, 'K-16@L')).toEqual(['clear', 1]);
  });
});

describe('an open finding on a part blocks fitting it, however far away the gate is', () => {
  test('two stages ahead, the axle can’t be hung over the worn bushing; other work may go ahead', () => {
    const shop = worn();
    expect(shop.car().stage).toBe(0);
    const refusals = shop.refused('tom', hangTheAxle);
    expect(refusals).toEqual([{ code: 'finding-on-part', details: { finding: 'F-1', part: 'P-26' } }]);
    expect(shop.sentences(refusals)).toEqual([
      "F-1 about Spring eye bushings (P-26) is open, so they can't be fitted. Settle the finding first.",
    ]);
    shop.perform('tom', 'SP-010');
  });

  test('decided is not settled: it blocks until its work is done', () => {
    const shop = worn();
    shop.does('leo', decided('rework'));
    expect(shop.codes('tom', hangTheAxle)).toEqual(['finding-on-part']);
  });

  test('found while the axle is being hung, the bushing can’t go in either', () => {
    const shop = worn();
    shop.does('leo', decided('misread'));
    shop.does('tom', hangTheAxle);
    shop.does('tess', { type: 'report-finding', about: { kind: 'part', key: 'P-26' }, text: 'play by hand' });
    expect(shop.codes('tom', { type: 'fit-part', part: 'P-26' })).toEqual(['finding-on-part']);
  });

  test('this stage’s gate waits for the lead’s decision; the check too must come clear by it', () => {
    const shop = worn();
    expect(shop.gate()).toEqual(['operation-unfinished', 'check-not-clear', 'finding-undecided']);
  });
});

describe('misread: a slip of the calliper', () => {
  test('closes honestly and asks for a new measuring', () => {
    const shop = worn();
    shop.does('leo', decided('misread'));
    expect(finding(shop)).toBe('closed');
    expect(shop.car().findings['F-1']?.disposition).toBe('misread');
    expect(check(shop, 'K-16@L')).toEqual(['due-again', 2]);
    expect(shop.codes('tess', { type: 'finish-operation', operation: 'IN-010' })).toEqual([
      'check-not-clear',
    ]);
  });

  test('measured again and good, the axle may be hung', () => {
    const shop = worn();
    shop.does('leo', decided('misread'));
    shop.does('tess', measured('L', '0.08'));
    expect(check(shop, 'K-16@L')).toEqual(['clear', 2]);
    shop.finish('tess', 'IN-010');
    expect(shop.gate()).toEqual([]);
    shop.does('tom', hangTheAxle);
  });

  test('it is no way round: measured again and still worn, a new finding opens', () => {
    const shop = worn();
    shop.does('leo', decided('misread'));
    shop.does('tess', measured('L', '0.14'));
    expect(check(shop, 'K-16@L')).toEqual(['failed', 2]);
    expect([finding(shop, 'F-1'), finding(shop, 'F-2')]).toEqual(['closed', 'undecided']);
    expect(shop.codes('tom', hangTheAxle)).toEqual(['finding-on-part']);
  });

  test('the technician who measured can’t decide that alone', () => {
    const shop = worn();
    expect(shop.codes('tess', decided('misread'))).toEqual(['not-allowed']);
  });
});

describe('replaced: both sides of the pair', () => {
  const replacedPair = (): Shop => {
    const shop = worn();
    shop.does('leo', decided('replace'));
    return shop;
  };

  test('the good side is to be measured again too', () => {
    const shop = worn();
    expect(check(shop, 'K-16@R')).toEqual(['clear', 1]);
    shop.does('leo', decided('replace'));
    expect(check(shop, 'K-16@R')).toEqual(['due-again', 2]);
  });

  test('reworked, the good side stands', () => {
    const shop = worn();
    shop.does('leo', decided('rework'));
    expect(check(shop, 'K-16@R')).toEqual(['clear', 1]);
  });

  test('the old ones are gone, and the car is owed a pair', () => {
    const shop = replacedPair();
    expect(shop.car().parts['P-26']).toMatchObject({ state: 'absent', piece: 2 });
    expect(shop.assess().looseEnds.map((each) => each.refusal.code)).toContain('part-owed');
  });

  test('their coming in does not close it: the same check does, in its second round', () => {
    const shop = replacedPair();
    expect(shop.codes('leo', { type: 'close-finding', finding: 'F-1' })).toEqual([
      'check-not-clear',
      'part-absent',
    ]);
    shop.does('leo', { type: 'receive-part', part: 'P-26' });
    const refusals = shop.refused('leo', { type: 'close-finding', finding: 'F-1' });
    expect(refusals.map((each) => each.code)).toEqual(['check-not-clear']);
    expect(shop.sentences(refusals)[0]).toContain(
      'Play of the bushing, left (K-16@L) failed, and what is done is decided.',
    );
    shop.does('tess', measured('L', '0.02'));
    expect(finding(shop)).toBe('closed');
    expect(check(shop, 'K-16@L')).toEqual(['clear', 2]);
  });

  test('one side measured is not the pair: the gate waits for the other', () => {
    const shop = replacedPair();
    shop.does('leo', { type: 'receive-part', part: 'P-26' });
    shop.does('tess', measured('L', '0.02'));
    expect(shop.codes('tess', { type: 'finish-operation', operation: 'IN-010' })).toEqual([
      'check-not-clear',
    ]);
    shop.does('tess', measured('R', '0.02'));
    shop.finish('tess', 'IN-010');
    expect(shop.gate()).toEqual([]);
    shop.perform('tom', 'AX-010');
    expect(shop.car().parts['P-26']).toMatchObject({ state: 'fitted', piece: 2 });
  });

  test('a new one that is worn too joins the finding, which is decided again', () => {
    const shop = replacedPair();
    shop.does('leo', { type: 'receive-part', part: 'P-26' });
    shop.does('tess', measured('L', '0.12'));
    expect([finding(shop, 'F-1'), finding(shop, 'F-2')]).toEqual(['undecided', 'none']);
    expect(check(shop, 'K-16@L')).toEqual(['failed', 2]);
  });

  test('nobody measures the new bushing before it is here: a pass would be of the old one', () => {
    const shop = replacedPair();
    expect(shop.car().parts['P-26']?.state).toBe('absent');
    expect(shop.codes('tess', measured('L', '0.02'))).toContain('part-absent');
  });
});

describe('used as it is: by someone who had no hand in it', () => {
  const asked = (document = spring, by = 'tess'): Shop => {
    const shop = worn(document, by);
    shop.does('leo', { type: 'add-person', person: 'lena', name: 'Lena', roles: ['lead'] });
    shop.does('leo', decided('use-as-is'));
    return shop;
  };

  test('deciding it only asks for it: the part stays blocked and the gate shut', () => {
    const shop = asked();
    expect(shop.car().changes['D-1']).toMatchObject({ state: 'asked', requestedBy: 'leo' });
    expect(shop.codes('tom', hangTheAxle)).toEqual(['finding-on-part']);
    expect(shop.gate()).toContain('change-undecided');
    expect(notClear(shop.car(), 'K-16@L')).toMatchObject({ details: { status: 'failed, change asked' } });
    expect(shop.codes('tess', measured('L', '0.08'))).toEqual(['change-undecided']);
  });

  test('who asked does not approve', () => {
    const shop = asked();
    const refusals = shop.refused('leo', approve);
    expect(refusals.map((each) => each.code)).toEqual(['approver-not-independent']);
    expect(shop.sentences(refusals)).toEqual([
      'Leo asked for D-1 or did the work it is about. Someone else approves.',
    ]);
  });

  test('nor who measured it, the owner included', () => {
    const shop = asked(spring, 'ada');
    expect(shop.codes('ada', approve)).toEqual(['approver-not-independent']);
  });

  test('nor a technician', () => {
    expect(asked().codes('tom', approve)).toEqual(['not-allowed']);
  });

  test('another lead does: the check counts as conceded, and the axle may be hung', () => {
    const shop = asked();
    shop.does('lena', approve);
    expect(finding(shop)).toBe('closed');
    expect(check(shop, 'K-16@L')).toEqual(['conceded', 1]);
    shop.finish('tess', 'IN-010');
    expect(shop.gate()).toEqual([]);
    shop.does('tom', hangTheAxle);
  });

  test('a critical part takes the owner as well', () => {
    const shop = asked(critical);
    shop.does('lena', approve);
    expect(shop.car().changes['D-1']?.state).toBe('asked');
    expect(shop.codes('tom', hangTheAxle)).toEqual(['finding-on-part']);
    shop.does('ada', approve);
    expect(shop.car().changes['D-1']?.state).toBe('approved');
    shop.does('tom', hangTheAxle);
  });

  test('declined, it must be decided again', () => {
    const shop = asked();
    shop.does('lena', { type: 'decide-change', change: 'D-1', approve: false, reason: 'too much play' });
    expect(finding(shop)).toBe('undecided');
    expect(shop.codes('tom', hangTheAxle)).toEqual(['finding-on-part']);
    shop.does('leo', decided('replace'));
  });
});

describe('a check that the plan says is never conceded', () => {
  /** The left measured good, and the shell cracked. */
  const crackedShell = (): Shop => {
    const shop = stripped();
    shop.does('tess', {
      type: 'fail-check',
      check: 'K-17',
      values: { whole: 'no' },
      reason: 'hairline crack',
    });
    return shop;
  };

  test('can’t be used as it is, by nobody', () => {
    const shop = crackedShell();
    const refusals = shop.refused('leo', decided('use-as-is'));
    expect(refusals).toEqual([{ code: 'never-concede', details: { check: 'K-17' } }]);
    expect(shop.codes('ada', decided('use-as-is'))).toEqual(['never-concede']);
    expect(shop.sentences(refusals)).toEqual([
      'Bushing shell without a crack (K-17) may never be taken as it is. Rework, replace, repair or scrap, then pass the check.',
    ]);
    expect(finding(shop)).toBe('undecided');
  });

  test.each(['replace', 'scrap', 'repair-outside', 'rework', 'misread'] as const)('it can be: %s', (each) => {
    const shop = crackedShell();
    shop.does('leo', decided(each));
    expect(shop.car().findings['F-1']?.disposition).toBe(each);
  });
});
