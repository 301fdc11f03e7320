/** What happens in a shop on any day, one event each: the lines of the shop's own list that rules exist for. */
import { beforeEach, describe, expect, test } from 'vitest';
import type { Event } from '@/lib/domain/events';
import { play } from '@/lib/domain/play';
import { Shop, plan, shopWith } from '@/tests/support/shop';
import type { Told } from '@/tests/support/shop';

const four = { fasteners: 4, method: 'click', torque: '45 ± 3 N·m', source: 'Invented' } as const;
const stages = { S1: { name: 'Axle' }, S2: { name: 'Wheels' }, S3: { name: 'Proving' } };

/** One axle joint that somebody must verify, and a lock nut that serves once. */
const axle = plan({
  conditions: { 'on-axle': 'Stands on its axle', sealed: 'Floor sealed' },
  stages,
  operations: {
    'AX-010': {
      name: 'Hang the axle',
      stage: 'S1',
      body: ['snug J-110', 'final J-110', 'fit P-22', 'place G-01', 'set on-axle'],
    },
    'AX-020': { name: 'Take the blocks out', stage: 'S2', needs: ['AX-010'], body: ['out G-01'] },
  },
  joints: {
    'J-110': {
      ...four,
      name: 'Axle to spring',
      critical: true,
      verify: 'seen',
      hardware: { 'B-M10': 4, 'N-M10': 4 },
    },
  },
  stopgaps: { 'G-01': { name: 'wooden blocks', quantity: 3, outBy: 'S2' } },
  parts: { 'P-22': { name: 'Axle case' } },
  items: { 'B-M10': { name: 'Bolt M10' }, 'N-M10': { name: 'Lock nut M10', reuse: 'once final' } },
});

const strike = (signature: string): Told => ({ type: 'strike-signature', signature, reason: 'mis-tap' });
const types = (events: readonly Event[]) => events.map((event) => event.type);

describe('given a signature that was a mis-tap', () => {
  let shop: Shop;
  let snug: string;
  let final: string;
  beforeEach(() => {
    shop = shopWith(axle);
    shop.begin('tom', 'AX-010');
    shop.does('tom', { type: 'snug-joint', joint: 'J-110' });
    snug = shop.last;
    shop.tighten('tom', 'J-110');
    final = shop.last;
  });

  test('when its signer strikes it, then the level before comes back, in the same cycle, and nothing is bought', () => {
    const hardware = shop.car().joints['J-110']?.fasteners;
    shop.does('tom', strike(final));
    expect(shop.level('J-110')).toBe('snug');
    expect(shop.car().joints['J-110']?.cycle).toBe(1);
    expect(shop.car().joints['J-110']?.fasteners).toEqual(hardware);
    shop.tighten('tom', 'J-110');
    expect(shop.level('J-110')).toBe('final');
    expect(shop.car().joints['J-110']?.fasteners).toEqual(hardware);
  });

  test('then it stays readable, struck through: by whom, when and why', () => {
    shop.does('tom', strike(final));
    expect(shop.car().signatures[final]).toMatchObject({
      act: 'final-joint',
      by: 'tom',
      struck: { by: 'tom', reason: 'mis-tap', at: shop.now },
    });
    expect(shop.car().joints['J-110']?.marks.map(({ level, struck }) => [level, struck])).toEqual([
      ['snug', false],
      ['final', true],
    ]);
  });

  test('when the lower one is struck, then what stands on it falls with it', () => {
    shop.does('tom', strike(snug));
    expect(shop.level('J-110')).toBe('open');
  });

  test('when it is verified meanwhile, then the lead strikes it and nobody else, and the verification goes too', () => {
    shop.verify('vera', 'J-110');
    for (const person of ['tom', 'tess', 'vera', 'ada'])
      expect([person, shop.codes(person, strike(final))]).toEqual([person, ['strike-needs-lead']]);
    shop.does('leo', strike(final));
    expect(shop.level('J-110')).toBe('snug');
  });

  test('when the verifier strikes the verification, then the joint is final again and its signer may strike that', () => {
    shop.verify('vera', 'J-110');
    const verified = shop.last;
    expect(shop.codes('tom', strike(verified))).toEqual(['strike-needs-lead']);
    shop.does('vera', strike(verified));
    expect(shop.level('J-110')).toBe('final');
    shop.does('tom', strike(final));
    expect(shop.level('J-110')).toBe('snug');
  });

  test("when it is another's, or carries another's signature, then the lead strikes it", () => {
    expect(shop.codes('tess', strike(final))).toEqual(['strike-needs-lead']);
    shop.does('tom', strike(final));
    shop.tighten('tess', 'J-110');
    const refusals = shop.refused('tom', strike(snug));
    expect(shop.sentences(refusals)).toEqual([
      `Tom can't strike ${snug}: it is another's, is verified, or carries another's signature. A lead strikes it, with a reason.`,
    ]);
    shop.does('leo', strike(snug));
    expect(shop.level('J-110')).toBe('open');
  });

  test('when it is struck on a held car, twice, or is none at all, then only the last is refused', () => {
    shop.does('leo', { type: 'place-hold', scope: 'work', reason: 'alarm' });
    shop.does('tom', strike(final));
    expect(shop.does('tom', strike(final))).toEqual([]);
    expect(shop.codes('tom', strike('nobody signed this'))).toEqual(['unknown-thing']);
  });

  test('when it was verified in a cycle that is over, then it is still the lead who strikes it', () => {
    shop.verify('vera', 'J-110');
    shop.does('tom', { type: 'open-joint', joint: 'J-110' });
    expect(shop.codes('tom', strike(final))).toEqual(['strike-needs-lead']);
    shop.does('leo', strike(final));
    expect(shop.car().joints['J-110']).toMatchObject({ cycle: 2, marks: [] });
  });
});

describe('given other signatures that were wrong', () => {
  test('when a finish is struck, then its run is open again, its condition is gone, and what was put in stays', () => {
    const shop = shopWith(axle);
    shop.perform('tom', 'AX-010');
    expect(shop.isSo('on-axle')).toBe(true);
    shop.does('tom', strike(shop.last));
    expect(shop.car().operations['AX-010']).toMatchObject({ status: 'paused', run: 1 });
    expect(shop.isSo('on-axle')).toBe(false);
    expect(shop.stopgapsIn('G-01')).toBe(3);
    expect(shop.car().parts['P-22']?.state).toBe('fitted');
    shop.does('tom', { type: 'resume-operation', operation: 'AX-010' });
    shop.finish('tom', 'AX-010');
    expect(shop.isSo('on-axle')).toBe(true);
    expect(shop.stopgapsIn('G-01')).toBe(3);
  });

  test('when the removal of a stopgap is struck, then it counts as in again', () => {
    const shop = shopWith(axle);
    shop.perform('tom', 'AX-010');
    shop.does('tom', { type: 'remove-stopgap', stopgap: 'G-01', quantity: 3 });
    shop.does('tom', strike(shop.last));
    expect(shop.stopgapsIn('G-01')).toBe(3);
  });

  test('when the fitting of a part is struck, then it is here and not fitted', () => {
    const shop = shopWith(axle);
    shop.begin('tom', 'AX-010');
    shop.does('tom', { type: 'receive-part', part: 'P-22' });
    shop.does('tom', { type: 'fit-part', part: 'P-22' });
    shop.does('tom', strike(shop.last));
    expect(shop.car().parts['P-22']?.state).toBe('present');
  });
});

describe('given work that is done again', () => {
  const loop = plan({
    stages,
    operations: {
      'AX-020': { name: 'Set the float', stage: 'S1', repeatable: true, body: ['final J-110', 'check K-04'] },
    },
    joints: { 'J-110': { ...four, name: 'Axle to spring' } },
    checks: { 'K-04': { name: 'Axle float', kind: 'measured', values: { float: '0.05 to 0.2 mm' } } },
  });
  const float = (value: string, round?: number): Told => ({
    type: 'pass-check',
    check: 'K-04',
    values: { float: value },
    ...(round === undefined ? {} : { round }),
  });

  test('then run, round and cycle each rise, and the record keeps every one of them', () => {
    const shop = shopWith(loop);
    const log: Event[] = [];
    const act = (events: readonly Event[]): void => void log.push(...events);
    act(shop.begin('tom', 'AX-020'));
    act(shop.tighten('tom', 'J-110'));
    act(shop.does('tom', float('0.27')));
    act(
      shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'rework', reason: 'shim it' }),
    );
    act(shop.does('tom', { type: 'open-joint', joint: 'J-110' }));
    act(shop.tighten('tom', 'J-110', undefined, { cycle: 2 }));
    act(shop.does('tom', float('0.12', 2)));
    act(shop.finish('tom', 'AX-020'));
    act(shop.perform('tess', 'AX-020'));

    const numbers = Object.values(shop.car().signatures).map(
      ({ act: what, number }) => `${what} ${String(number)}`,
    );
    expect(numbers).toEqual([
      'final-joint 1',
      'final-joint 2',
      'pass-check 2',
      'finish-operation 1',
      'pass-check 3',
      'finish-operation 2',
    ]);
    const rounds = log.flatMap((event) =>
      event.type === 'check-failed' || event.type === 'check-passed'
        ? [[event.type, event.round, event.values]]
        : [],
    );
    expect(rounds).toEqual([
      ['check-failed', 1, { float: '0.27' }],
      ['check-passed', 2, { float: '0.12' }],
      ['check-passed', 3, { float: '0.125' }],
    ]);
    expect(shop.car().findings['F-1']).toMatchObject({ state: 'closed', check: { key: 'K-04', round: 1 } });
  });

  test('then a value outside its limits fails it, whoever calls it a pass, and its finding is decided first', () => {
    const shop = shopWith(loop);
    shop.begin('tom', 'AX-020');
    expect(types(shop.does('tom', float('0.21')))).toEqual(['check-failed', 'finding-opened']);
    expect(shop.car().checks['K-04']).toMatchObject({
      status: 'failed',
      why: 'float 0.21 is outside 0.05 to 0.2 mm',
    });
    expect(shop.codes('tom', float('0.1'))).toEqual(['finding-undecided']);
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'rework', reason: 'shim it' });
    expect(shop.codes('tom', float('0.1', 1))).toEqual(['stale-round']);
    shop.does('tom', float('0.1', 2));
    expect(shop.car().checks['K-04']).toMatchObject({ status: 'clear', round: 2 });
  });
});

describe('given a starter that another car needs more', () => {
  const engine = plan({
    stages,
    operations: { 'EN-130': { name: 'Fit the starter', stage: 'S1', body: ['fit P-11'] } },
    parts: { 'P-11': { name: 'Starter motor' } },
  });
  const take: Told = { type: 'take-part', part: 'P-11', reason: 'C2 leaves first', takenFor: 'C2' };
  let shop: Shop;
  beforeEach(() => {
    shop = shopWith(engine);
    shop.startCar('C2', engine);
    shop.perform('tom', 'EN-130');
  });

  test('then taking it is never refused: on hold, by a tablet out of touch, by anyone', () => {
    shop.does('leo', { type: 'place-hold', scope: 'work', reason: 'alarm' });
    const lastContact = shop.now;
    const doneAt = shop.later('10 min').now;
    shop.later('5 h');
    expect(types(shop.does('tess', take, { doneAt, lastContact }))).toEqual([
      'part-taken',
      'operation-due-again',
    ]);
    expect(shop.car().parts['P-11']).toMatchObject({ state: 'taken', takenFor: 'C2', at: doneAt });
  });

  test('then the part is owed to the giver: a loose end, its work due again, the gate shut', () => {
    shop.does('tess', take);
    expect(shop.assess().looseEnds.map((end) => end.refusal)).toContainEqual({
      code: 'part-owed',
      details: { part: 'P-11', takenFor: 'C2' },
    });
    expect(shop.gate()).toEqual(['operation-unfinished']);
    expect(shop.jobs()).toEqual(['operation:EN-130:2']);
    shop.perform('tom', 'EN-130');
    expect(shop.assess().looseEnds).toEqual([]);
    expect(shop.gate()).toEqual([]);
  });

  test('then fitting it to the taker is an assurance: with a hold there it is on the bench, off both cars', () => {
    shop.does('leo', { type: 'place-hold', car: 'C2', scope: 'work', reason: 'jig out of true' });
    shop.does('tess', take);
    shop.does('tess', { type: 'receive-part', car: 'C2', part: 'P-11' });
    expect(shop.codes('tess', { type: 'start-operation', car: 'C2', operation: 'EN-130' })).toEqual([
      'hold-stands',
    ]);
    expect(shop.codes('tess', { type: 'fit-part', car: 'C2', part: 'P-11' })).toEqual([
      'hold-stands',
      'part-not-taken-into-work',
    ]);
    expect([shop.car().parts['P-11']?.state, shop.car('C2').parts['P-11']?.state]).toEqual([
      'taken',
      'present',
    ]);
    shop.does('leo', { type: 'release-hold', car: 'C2', hold: 'H-1' });
    shop.perform('tess', 'EN-130', 'C2');
    expect(shop.car('C2').parts['P-11']?.state).toBe('fitted');
  });

  test('then one that is not here is not fitted', () => {
    shop.begin('tess', 'EN-130', 'C2');
    expect(shop.codes('tess', { type: 'fit-part', car: 'C2', part: 'P-11' })).toEqual(['part-absent']);
  });
});

describe('given a joint on either side', () => {
  const sides = plan({
    stages,
    operations: {
      'AX-060': { name: 'Hang the arm', stage: 'S1', repeat: 'sides', body: ['final J-210'] },
      'AX-070': { name: 'Fit the strut', stage: 'S2', repeat: 'sides', needs: ['J-210 final'] },
      'AX-080': { name: 'Set the bar', stage: 'S2', needs: ['J-210 final'] },
    },
    joints: { 'J-210': { ...four, name: 'Lower arm', repeat: 'sides' } },
  });

  test('when the left one is torqued, then the right one is not', () => {
    const shop = shopWith(sides);
    shop.perform('tom', 'AX-060@L');
    expect([shop.level('J-210@L'), shop.level('J-210@R')]).toEqual(['final', 'open']);
    expect(shop.codes('tom', shop.tightening('J-210@R'))).toEqual(['no-work-names-joint']);
    shop.perform('tom', 'AX-070@L');
    expect(shop.codes('tom', { type: 'start-operation', operation: 'AX-070@R' })).toEqual([
      'joint-below-level',
    ]);
    expect(shop.refused('tom', { type: 'start-operation', operation: 'AX-080' })).toEqual([
      { code: 'joint-below-level', details: { joint: 'J-210@R', level: 'open', wanted: 'final' } },
    ]);
    expect(shop.codes('tom', { type: 'start-operation', operation: 'AX-060' })).toEqual(['unknown-thing']);
  });
});

describe('given a wrench in lbf·ft and a plan in N·m', () => {
  const mixed = plan({
    stages,
    operations: { 'AX-010': { name: 'Hang the axle', stage: 'S1', body: ['final J-110'] } },
    joints: { 'J-110': { ...four, name: 'Axle', fasteners: 1, method: 'dial', torque: '27 ± 3 N·m' } },
  });
  const read = (reading: string, more: object = {}): Told => ({
    type: 'final-joint',
    joint: 'J-110',
    tool: 'T-07',
    readings: [reading],
    ...more,
  });
  let shop: Shop;
  beforeEach(() => {
    shop = shopWith(mixed);
    shop.begin('tom', 'AX-010');
  });

  test('then its reading is converted exactly and then compared: 22.1 lbf·ft is inside 30 N·m, 22.2 is not', () => {
    expect(shop.codes('tom', read('22.2', { unitConfirmed: true }))).toEqual(['reading-above']);
    shop.does('tom', read('22.1'));
    const [num, den] = (shop.car().joints['J-110']?.marks[0]?.delivered?.['1'] ?? '').split('/').map(Number);
    expect((num ?? 0) / (den ?? 1)).toBeCloseTo(22.1 * 1.3558179483314004, 10);
  });

  test.each([
    ['27', {}, 'N·m and lbf·ft', 'lbf·ft'],
    ['20', { unit: 'N·m' }, 'N·m and lbf·ft', 'N·m'],
    ['240', {}, 'lbf·ft and lbf·in', 'lbf·ft'],
  ])(
    'when it is read as %s %o, then the program asks which unit the tool shows',
    (reading, more, plausible, unit) => {
      const refusals = shop.refused('tom', read(reading, more));
      expect(refusals.map((each) => each.code)).toEqual(['unit-doubtful']);
      expect(refusals[0]?.details).toMatchObject({ joint: 'J-110', plausible, unit });
      expect(shop.level('J-110')).toBe('open');
    },
  );

  test('when the unit is confirmed, then it is asked once: the value is what it says', () => {
    expect(shop.codes('tom', read('27', { unitConfirmed: true }))).toEqual(['reading-above']);
    expect(shop.codes('tom', read('20', { unit: 'N·m', unitConfirmed: true }))).toEqual(['reading-below']);
    expect(shop.codes('tom', read('240', { unitConfirmed: true }))).toEqual(['reading-above']);
  });

  test('when the unit is corrected, then it is accepted without a question', () => {
    shop.does('tom', read('27', { unit: 'N·m' }));
    expect(shop.level('J-110')).toBe('final');
  });

  test('when a value is wrong in any unit, or the unit is none of torque, then nothing is asked', () => {
    expect(shop.codes('tom', read('50'))).toEqual(['reading-above']);
    expect(shop.codes('tom', read('27', { unit: 'bar' }))).toEqual(['unit-does-not-fit']);
    expect(shop.codes('tom', read('twenty'))).toEqual(['value-unreadable']);
  });
});

describe('given a bolt that got too much', () => {
  const over = (more: object = {}): Told => ({
    type: 'report-over-torque',
    joint: 'J-110',
    fastener: 3,
    reading: '51',
    unit: 'N·m',
    tool: 'T-05',
    ...more,
  });
  const dial = plan({
    stages,
    operations: {
      'AX-010': { name: 'Hang the axle', stage: 'S1', body: ['snug J-110', 'final J-110'] },
      'AX-011': { name: 'Hang the bump stop', stage: 'S1', body: ['final J-111'] },
    },
    joints: {
      'J-110': { ...four, name: 'Axle', method: 'dial', hardware: { 'B-M10': 4 } },
      'J-111': { ...four, name: 'Bump stop', method: 'dial' },
    },
    items: { 'B-M10': { name: 'Bolt M10' } },
  });
  let shop: Shop;
  beforeEach(() => {
    shop = shopWith(dial);
    shop.begin('tom', 'AX-010');
    shop.does('tom', { type: 'snug-joint', joint: 'J-110' });
  });
  const pass = (readings: readonly string[]): Told => ({
    type: 'final-joint',
    joint: 'J-110',
    tool: 'T-05',
    passes: [[1, 2, 3, 4]],
    readings,
  });

  test('then it is no final, and is stored the moment it is told, with a finding', () => {
    const refusals = shop.refused('tom', pass(['45', '45', '51', '45']));
    expect(refusals.map((each) => each.code)).toEqual(['reading-above']);
    expect(shop.sentences(refusals)[0]).toContain('Report it as over-torqued');
    expect(types(shop.does('tom', over()))).toEqual([
      'joint-over-torqued',
      'joint-doubted',
      'finding-opened',
    ]);
    expect(shop.doubts('J-110')).toMatchObject([{ cause: 'over-torque', remedy: 'renew', fasteners: [3] }]);
    expect(shop.car().findings['F-1']).toMatchObject({
      about: { kind: 'joint', key: 'J-110' },
      state: 'undecided',
    });
  });

  test('then it is not typed again lower: the final is refused until that bolt is renewed', () => {
    shop.does('tom', over());
    expect(shop.codes('tom', pass(['45', '45', '45', '45']))).toEqual(['doubt-needs-more']);
    shop.does('tom', { type: 'open-joint', joint: 'J-110', fasteners: [1, 2] });
    expect(shop.codes('tom', pass(['45', '45', '45', '45']))).toEqual(['doubt-needs-more']);
    expect(shop.doubts('J-110')).toHaveLength(1);
  });

  test('then the bolt itself does not go back in, though its kind may be used again, and the others may', () => {
    shop.does('tom', over());
    shop.does('tom', { type: 'open-joint', joint: 'J-110' });
    const again = (fastener: number): Told => ({
      type: 'snug-joint',
      joint: 'J-110',
      hardware: [{ item: 'B-M10', fasteners: [fastener], reused: true }],
    });
    expect(shop.codes('tom', again(3))).toEqual(['hardware-spent']);
    shop.does('tom', again(1));
    const uses = [1, 2, 3, 4].map((at) => shop.car().joints['J-110']?.fasteners[String(at)]?.['B-M10']?.uses);
    expect(uses).toEqual([2, 2, 1, 2]);
  });

  test('then renewed and with the full pass on all it counts again, and the finding is closed', () => {
    shop.does('tom', over());
    shop.does('tom', { type: 'open-joint', joint: 'J-110', fasteners: [3] });
    shop.does('tom', { type: 'snug-joint', joint: 'J-110' });
    expect(shop.codes('tom', { ...pass(['45']), passes: [[3]] } as Told)).toEqual(['pattern-not-followed']);
    shop.does('tom', pass(['45', '45', '45', '45']));
    expect(shop.doubts('J-110')).toEqual([]);
    expect(shop.codes('tom', { type: 'close-finding', finding: 'F-1' })).toEqual(['finding-undecided']);
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'replace', reason: 'new bolt' });
    shop.does('tom', { type: 'close-finding', finding: 'F-1' });
    expect(shop.car().findings['F-1']?.state).toBe('closed');
  });

  test('then opening it begins a new cycle, even where it had never been snug: something was done in the old one', () => {
    shop.begin('tess', 'AX-011');
    shop.does('tess', over({ joint: 'J-111' }));
    shop.does('tess', { type: 'open-joint', joint: 'J-111' });
    expect(shop.car().joints['J-111']?.cycle).toBe(2);
  });
});

describe('given a verified joint whose stripe is found broken', () => {
  const broken = (): Shop => {
    const shop = shopWith(axle);
    shop.perform('tom', 'AX-010');
    shop.verify('vera', 'J-110');
    shop.does('tess', { type: 'report-disturbed', joint: 'J-110', cause: 'stripe-broken', fasteners: [2] });
    return shop;
  };

  test('then it keeps its level, is in doubt, and a finding opens', () => {
    const shop = broken();
    expect(shop.level('J-110')).toBe('verified');
    expect(shop.doubts('J-110')).toMatchObject([
      { cause: 'stripe-broken', remedy: 'retorque', fasteners: [2] },
    ]);
    expect(shop.car().findings['F-1']).toMatchObject({ text: 'stripe broken at no. 2', state: 'undecided' });
    expect(shop.gate()).toEqual(['joint-in-doubt', 'finding-undecided']);
    expect(shop.jobs()).toEqual(expect.arrayContaining(['retorque:J-110:1', 'decide:F-1:1']));
  });

  test('then trying it again is not enough: it is torqued in full, in the same cycle, and verified anew', () => {
    const shop = broken();
    expect(shop.codes('tess', { type: 'recheck-joint', joint: 'J-110', tool: 'T-05' })).toEqual([
      'doubt-needs-more',
    ]);
    shop.tighten('tess', 'J-110');
    expect(shop.level('J-110')).toBe('final');
    expect(shop.doubts('J-110')).toEqual([]);
    expect(shop.car().joints['J-110']?.cycle).toBe(1);
    expect(shop.codes('tess', shop.verifying('J-110'))).toEqual(['not-independent']);
    shop.verify('vera', 'J-110');
    expect(shop.level('J-110')).toBe('verified');
  });

  test('when that retorque is struck, then the doubt is back, and so is the level before it', () => {
    const shop = broken();
    const doubts = shop.doubts('J-110');
    shop.tighten('tess', 'J-110');
    shop.does('tess', strike(shop.last));
    expect(shop.doubts('J-110')).toEqual(doubts);
    expect(shop.level('J-110')).toBe('verified');
  });
});

describe('given two people on one job', () => {
  const brakes = plan({
    conditions: { bled: 'System bled' },
    stages,
    operations: {
      'ST-060': { name: 'Fit the line', stage: 'S1', body: ['final J-310'] },
      'ST-130': { name: 'Bleed', stage: 'S1', redo: true, body: ['final J-316', 'set bled'] },
      'BD-010': { name: 'Lift the body', stage: 'S2', crew: 2 },
    },
    joints: {
      'J-310': { ...four, name: 'Flare nut', fasteners: 1, clears: ['bled'] },
      'J-316': { ...four, name: 'Bleed nipple', fasteners: 1, critical: true, verify: 'seen' },
    },
  });

  test('then both are performers, whoever held the wrench, and neither verifies', () => {
    const shop = shopWith(axle);
    shop.begin('tom', 'AX-010');
    shop.does('tess', { type: 'join-operation', operation: 'AX-010' });
    expect(shop.codes('tess', { type: 'join-operation', operation: 'AX-010' })).toEqual(['already-on-it']);
    shop.does('tom', { type: 'snug-joint', joint: 'J-110' });
    shop.tighten('tom', 'J-110');
    for (const person of ['tom', 'tess'])
      expect(shop.codes(person, shop.verifying('J-110'))).toEqual(['not-independent']);
    shop.verify('vera', 'J-110');
  });

  test('when the second joined after it was torqued, then they had a hand in it all the same', () => {
    const shop = shopWith(brakes);
    shop.begin('tom', 'ST-130');
    shop.tighten('tom', 'J-316');
    shop.does('tess', { type: 'join-operation', operation: 'ST-130' });
    expect(shop.codes('tess', shop.verifying('J-316'))).toEqual(['not-independent']);
  });

  test('when that work is due once more, then who was on it the first time still does not verify its joint', () => {
    const shop = shopWith(brakes);
    shop.perform('leo', 'ST-060');
    shop.begin('tom', 'ST-130');
    shop.tighten('tom', 'J-316');
    shop.does('tess', { type: 'join-operation', operation: 'ST-130' });
    shop.finish('tom', 'ST-130');
    shop.does('leo', { type: 'open-joint', joint: 'J-310' });
    expect(shop.car().operations['ST-130']).toMatchObject({ status: 'due-again', run: 2 });
    expect(shop.car().joints['J-316']?.cycle).toBe(1);
    expect(shop.codes('tess', shop.verifying('J-316'))).toEqual(['not-independent']);
  });

  test('when it takes two and one is there, then it is not finished; nor by somebody who was not on it', () => {
    const shop = shopWith(brakes);
    shop.does('tom', { type: 'start-operation', operation: 'BD-010' });
    expect(shop.codes('tom', { type: 'finish-operation', operation: 'BD-010' })).toEqual(['crew-too-small']);
    shop.does('tess', { type: 'join-operation', operation: 'BD-010' });
    expect(shop.codes('vera', { type: 'finish-operation', operation: 'BD-010' })).toEqual(['not-on-it']);
    shop.finish('tess', 'BD-010');
  });
});

describe('given joints that are torqued again after the first miles', () => {
  const miles = plan({
    stages,
    operations: {
      'AX-010': { name: 'Hang the axle', stage: 'S1', body: ['final J-110'] },
      'PR-080': { name: 'Torque again', stage: 'S3', needs: ['AX-010'], body: ['retorque J-110'] },
    },
    joints: { 'J-110': { ...four, name: 'Axle', verify: 'seen' } },
  });

  test('then having been final before is not enough: it is done in this very run, and verified again', () => {
    const shop = shopWith(miles);
    shop.perform('tom', 'AX-010');
    shop.verify('vera', 'J-110');
    shop.begin('tess', 'PR-080');
    const refusals = shop.refused('tess', { type: 'finish-operation', operation: 'PR-080' });
    expect(refusals).toEqual([{ code: 'joint-work-missing', details: { joint: 'J-110', work: 'retorque' } }]);
    expect(shop.sentences(refusals)).toEqual([
      'Axle (J-110) has not been torqued again in this run. Torque it again in full.',
    ]);
    shop.tighten('tess', 'J-110');
    shop.finish('tess', 'PR-080');
    expect(shop.level('J-110')).toBe('final');
    expect(shop.jobs()).toEqual(['verify:J-110:1']);
  });
});

describe('given work that asks for a photo', () => {
  const stamped = plan({
    stages,
    operations: { 'FR-060': { name: 'Stamp the number', stage: 'S1', body: ['photo stamp'] } },
  });

  test('then it is not finished without that very one, and anyone may take it', () => {
    const shop = shopWith(stamped);
    shop.begin('tom', 'FR-060');
    const finish: Told = { type: 'finish-operation', operation: 'FR-060' };
    const photo = (slot: string): Told => ({ type: 'add-photo', of: 'FR-060', slot, hash: 'ab12' });
    expect(shop.codes('tom', finish)).toEqual(['photo-missing']);
    shop.does('tess', photo('side'));
    const refusals = shop.refused('tom', finish);
    expect(shop.sentences(refusals)).toEqual([
      'Stamp the number (FR-060) asks for a photo “stamp”. Take it.',
    ]);
    shop.does('tess', photo('stamp'));
    shop.does('tom', finish);
    expect(Object.values(shop.car().photos)).toHaveLength(2);
  });
});

describe('given a check with several values', () => {
  const alignment = plan({
    stages,
    operations: { 'WH-100': { name: 'Set the wheels', stage: 'S1', body: ['check K-60'] } },
    checks: {
      'K-60': {
        name: 'Alignment',
        kind: 'measured',
        values: { 'camber L': '-1.5 to -0.5 °', toe: '1 to 3 mm', 'L to R': '<= 0.5 °', boots: 'whole' },
      },
    },
  });
  const good = { 'camber L': '-1', toe: '2', 'L to R': '0.5', boots: 'yes' };
  const measured = (values: Record<string, string>, more: object = {}): Told => ({
    type: 'pass-check',
    check: 'K-60',
    values,
    ...more,
  });
  let shop: Shop;
  beforeEach(() => {
    shop = shopWith(alignment);
    shop.begin('tom', 'WH-100');
  });

  test('then each has its own limits, both ends inside, in its own unit or another of its kind', () => {
    shop.does('tom', measured({ ...good, 'camber L': '-1.5', toe: '0,11811 in' }));
    expect(shop.car().checks['K-60']).toMatchObject({
      status: 'clear',
      values: { toe: '0,11811 in', 'camber L': '-1.5' },
    });
  });

  test.each([
    ['the camber', { 'camber L': '-1.51' }, 'camber L -1.51 is outside -1.5 to -0.5 °'],
    ['the toe, in inches', { toe: '0.12 in' }, 'toe 0.12 in is outside 1 to 3 mm'],
    ['the difference of left and right', { 'L to R': '0.6' }, 'L to R 0.6 is outside at most 0.5 °'],
    ['a plain no', { boots: 'no' }, 'boots is not: whole'],
  ])('when %s is wrong, then it fails by itself and says which', (_, wrong, why) => {
    shop.does('tom', measured({ ...good, ...wrong }));
    expect(shop.car().checks['K-60']).toMatchObject({ status: 'failed', why });
    expect(shop.car().findings['F-1']?.text).toBe(`Alignment: ${why}`);
  });

  test('when one is missing, unreadable or not asked for, then nothing is recorded', () => {
    const { toe: _, ...without } = good;
    expect(shop.codes('tom', measured(without))).toEqual(['value-missing']);
    expect(shop.codes('tom', measured({ ...good, toe: 'about 2' }))).toEqual(['value-unreadable']);
    expect(shop.codes('tom', measured({ ...good, toe: '2 kg' }))).toEqual(['value-unreadable']);
    expect(shop.codes('tom', measured({ ...good, boots: 'maybe' }))).toEqual(['value-unreadable']);
    expect(shop.codes('tom', measured({ ...good, caster: '3' }))).toEqual(['unknown-thing']);
    expect(shop.car().checks['K-60']).toBeUndefined();
  });

  test('when the gauge was dropped or is out of calibration, then a pass with it is refused', () => {
    shop.does('tess', { type: 'suspect-tool', tool: 'T-05', reason: 'dropped' });
    expect(shop.codes('tom', measured(good, { tool: 'T-05' }))).toEqual(['tool-suspect']);
    shop.later('400 d');
    expect(shop.codes('tom', measured(good, { tool: 'T-07' }))).toEqual(['tool-out-of-calibration']);
    expect(shop.codes('tom', measured(good, { tool: 'T-99' }))).toEqual(['unknown-thing']);
  });
});

describe('given a hold', () => {
  const two = plan({
    stages,
    operations: {
      'AX-010': { name: 'Hang the axle', stage: 'S1', body: ['final J-110', 'fit P-22'] },
      'AX-020': { name: 'Fit the rod', stage: 'S1', body: ['final J-120', 'check K-01'] },
      'AX-030': { name: 'Sweep', stage: 'S2' },
    },
    joints: { 'J-110': { ...four, name: 'Axle' }, 'J-120': { ...four, name: 'Rod' } },
    checks: { 'K-01': { name: 'Look at it', kind: 'visual', values: { rod: 'straight' } } },
    parts: { 'P-22': { name: 'Axle case' } },
  });
  const hold = (scope: 'gate' | 'work' | 'things', things: readonly string[] = []): Told => ({
    type: 'place-hold',
    scope,
    things,
    reason: 'letter from the maker',
  });
  const start = (operation: string): Told => ({ type: 'start-operation', operation });

  test('of scope gate, then work goes on and the car does not', () => {
    const shop = shopWith(two);
    shop.does('tess', hold('gate'));
    shop.perform('tom', 'AX-010');
    shop.perform('tom', 'AX-020');
    const refusals = shop.refused('leo', { type: 'advance-car', to: 'S2' });
    expect(shop.sentences(refusals)).toEqual([
      'H-1 holds the car at its gate: letter from the maker. A lead releases it.',
    ]);
    shop.does('leo', { type: 'release-hold', hold: 'H-1', reason: 'answered' });
    shop.does('leo', { type: 'advance-car', to: 'S2' });
    expect(shop.codes('leo', { type: 'release-hold', hold: 'H-1' })).toEqual(['hold-already-released']);
  });

  test('of scope work, then nothing begins, is torqued or finished, and a car that is ready moves', () => {
    const shop = shopWith(two);
    shop.begin('tom', 'AX-010');
    shop.does('tess', hold('work'));
    expect(shop.codes('tess', start('AX-020'))).toEqual(['hold-stands']);
    expect(shop.codes('tess', { type: 'join-operation', operation: 'AX-010' })).toEqual(['hold-stands']);
    expect(shop.codes('tom', shop.tightening('J-110'))).toEqual(['hold-stands']);
    shop.does('tom', { type: 'receive-part', part: 'P-22' });
    expect(shop.codes('tom', { type: 'fit-part', part: 'P-22' })).toEqual(['hold-stands']);
    expect(shop.codes('tom', { type: 'finish-operation', operation: 'AX-010' })).toContain('hold-stands');
    shop.does('leo', { type: 'release-hold', hold: 'H-1' });
    shop.tighten('tom', 'J-110');
    shop.does('tom', { type: 'fit-part', part: 'P-22' });
    shop.finish('tom', 'AX-010');
    shop.perform('tom', 'AX-020');
    shop.does('tess', hold('work'));
    shop.does('leo', { type: 'advance-car', to: 'S2' });
  });

  test('of named things, then those stand still and the rest goes on', () => {
    const shop = shopWith(two);
    shop.does('tess', hold('things', ['P-22', 'J-120']));
    expect(shop.codes('tom', start('AX-010'))).toEqual(['hold-stands']);
    shop.begin('tom', 'AX-020');
    expect(shop.codes('tom', shop.tightening('J-120'))).toEqual(['hold-stands']);
    shop.passCheck('tom', 'K-01');
    shop.does('leo', { type: 'release-hold', hold: 'H-1' });
    shop.does('tess', hold('things', ['AX-020']));
    shop.tighten('tom', 'J-120');
    expect(shop.codes('tom', { type: 'finish-operation', operation: 'AX-020' })).toEqual(['hold-stands']);
    shop.perform('tess', 'AX-010');
  });

  test('of a named check, then that check is not passed', () => {
    const shop = shopWith(two);
    shop.begin('tom', 'AX-020');
    shop.does('tess', hold('things', ['K-01']));
    expect(shop.codes('tom', { type: 'pass-check', check: 'K-01', values: { rod: 'yes' } })).toEqual([
      'hold-stands',
    ]);
  });

  test('then a technician places it and does not release it, and it is a loose end till then', () => {
    const shop = shopWith(two);
    shop.does('tess', hold('gate'));
    expect(shop.codes('tess', { type: 'release-hold', hold: 'H-1' })).toEqual(['not-allowed']);
    expect(shop.codes('leo', { type: 'release-hold', hold: 'H-9' })).toEqual(['unknown-thing']);
    expect(shop.assess().looseEnds.map(({ kind, key }) => [kind, key])).toEqual([['hold', 'H-1']]);
  });
});

describe('given bad news, however late and whatever the state of the car', () => {
  const NEWS: readonly Told[] = [
    { type: 'open-joint', joint: 'J-110', cycle: 1, fasteners: [2] },
    { type: 'report-disturbed', joint: 'J-110', cycle: 1, cause: 'stripe-broken' },
    { type: 'report-over-torque', joint: 'J-110', cycle: 1, fastener: 2, reading: '70', unit: 'N·m' },
    { type: 'reject-joint', joint: 'J-110', cycle: 1, reason: 'no stripe' },
  ];
  const OTHER: readonly Told[] = [
    { type: 'report-finding', about: { kind: 'part', key: 'P-22' }, text: 'crack' },
    { type: 'place-stopgap', what: 'cable tie' },
    { type: 'place-stopgap', stopgap: 'G-01' },
    { type: 'clear-condition', condition: 'on-axle', reason: 'jacked up' },
    { type: 'take-part', part: 'P-22', reason: 'scrap' },
    { type: 'pause-operation', operation: 'AX-020', leftAs: 'alarm' },
    { type: 'place-hold', scope: 'work', reason: 'once more' },
  ];
  /** Cycle 2 is on the car, and two holds stop it. */
  const held = (): Shop => {
    const shop = shopWith(axle);
    shop.perform('tom', 'AX-010');
    shop.does('tom', { type: 'open-joint', joint: 'J-110' });
    shop.does('tom', { type: 'snug-joint', joint: 'J-110' });
    shop.tighten('tom', 'J-110', undefined, { cycle: 2 });
    shop.does('leo', { type: 'place-hold', scope: 'work', reason: 'alarm' });
    shop.does('leo', { type: 'place-hold', scope: 'gate', reason: 'alarm' });
    return shop;
  };
  const delivered = (): Shop => {
    const shop = shopWith(axle);
    shop.perform('tom', 'AX-010');
    shop.verify('vera', 'J-110');
    shop.does('leo', { type: 'advance-car', to: 'S2' });
    shop.perform('tom', 'AX-020');
    shop.does('leo', { type: 'advance-car', to: 'S3' });
    shop.does('ada', { type: 'deliver-car' });
    return shop;
  };

  test.each([...NEWS, ...OTHER].map((told) => [told.type, told] as const))(
    '%s is accepted on a held car, days late, and on a delivered one',
    (_, told) => {
      for (const [shop, name] of [
        [held(), 'held'],
        [delivered(), 'delivered'],
      ] as const) {
        const doneAt = shop.now;
        shop.later('3 d');
        const before = shop.world;
        const events = shop.does('tess', told, { doneAt, lastContact: doneAt });
        // Nothing runs there, so there is nothing to stop.
        if (told.type !== 'pause-operation') {
          expect([name, events.length]).not.toEqual([name, 0]);
          expect(shop.world).not.toBe(before);
        }
      }
    },
  );

  test.each(NEWS.map((told) => [told.type, told] as const))(
    '%s for a cycle that is over is accepted, and the record says which cycle it was for',
    (_, told) => {
      const shop = held();
      const events = shop.does('tess', told);
      expect(shop.car().joints['J-110']?.cycle).toBeGreaterThanOrEqual(2);
      const noted = events.flatMap((event) =>
        Object.entries(event).filter(([key]) => key === 'namedCycle' || key === 'cycle'),
      );
      expect(noted.map(([, value]) => value as unknown)).toContain(1);
    },
  );

  test('over-torque of a cycle that is over doubts nothing that is there now', () => {
    const shop = held();
    shop.does('tess', NEWS[2] as Told);
    expect(shop.doubts('J-110')).toEqual([]);
    expect(Object.keys(shop.car().findings)).toEqual(['F-1']);
  });

  test('it is refused only for naming nothing', () => {
    const shop = held();
    for (const told of [
      { type: 'open-joint', joint: 'J-999' },
      { type: 'open-joint', joint: 'J-110', fasteners: [9] },
      { type: 'report-over-torque', joint: 'J-110', fastener: 5, reading: '70', unit: 'N·m' },
      { type: 'fail-check', check: 'K-99', reason: 'x' },
      { type: 'take-part', part: 'P-99', reason: 'x' },
      { type: 'report-finding', about: { kind: 'joint', key: 'J-999' }, text: 'x' },
      { type: 'clear-condition', condition: 'flying', reason: 'x' },
      { type: 'suspect-tool', tool: 'T-99', reason: 'lost' },
      { type: 'quarantine-lot', lot: 'L-99', reason: 'x' },
    ] as const)
      expect([told.type, shop.codes('tess', told)]).toEqual([told.type, ['unknown-thing']]);
  });
});

describe('given a claim that is refused', () => {
  test('then the world is the very same one', () => {
    const shop = shopWith(axle);
    shop.perform('tom', 'AX-010');
    const claims = [
      { ...shop.tightening('J-110'), car: 'C1' },
      { type: 'verify-joint', car: 'C1', joint: 'J-110', method: 'seen' },
      { type: 'advance-car', car: 'C1', to: 'S2' },
      { type: 'start-operation', car: 'C1', operation: 'AX-010' },
      { type: 'deliver-car', car: 'C1' },
    ] as const;
    for (const claim of claims) {
      const played = play(
        shop.world,
        { plans: { 'Corbel 54 r1': axle }, dayOf: (at) => at.slice(0, 10) },
        { now: shop.now, by: 'tom', command: { id: 'x', doneAt: shop.now, claim: claim } },
      );
      expect([claim.type, played.verdict.ok]).toEqual([claim.type, false]);
      expect(played.world).toBe(shop.world);
    }
  });
});

describe('given a book with nobody in it', () => {
  const bare = () => new Shop([axle], '2026-03-02T08:00:00.000Z');
  const add = (person: string, ...roles: ('owner' | 'lead' | 'technician')[]): Told => ({
    type: 'add-person',
    person,
    name: person,
    roles,
  });

  test('then the first one is an owner, who adds the others', () => {
    const shop = bare();
    expect(shop.codes('ada', add('ada', 'technician'))).toEqual(['not-allowed']);
    expect(
      shop.codes('ada', {
        type: 'add-tool',
        tool: 'T',
        name: 'T',
        kind: 'click',
        low: '5',
        high: '9',
        unit: 'N·m',
      }),
    ).toEqual(['unknown-person']);
    shop.does('ada', add('ada', 'owner'));
    shop.does('ada', add('leo', 'lead'));
    shop.does('leo', add('tom', 'technician'));
    expect(shop.codes('tom', add('eve', 'owner'))).toEqual(['not-allowed']);
    expect(shop.codes('eve', add('eve', 'owner'))).toEqual(['unknown-person']);
    expect(shop.codes('leo', add('tom', 'lead'))).toEqual(['already-there']);
    expect(Object.keys(shop.world.shop.people)).toEqual(['ada', 'leo', 'tom']);
  });
});

describe('given an option that nobody has chosen', () => {
  const heated = plan({
    options: { heater: { name: 'Heater', choices: ['none', 'fitted'] } },
    stages,
    operations: {
      'AX-010': { name: 'Hang the axle', stage: 'S1' },
      'BD-040': {
        name: 'Fit the heater',
        stage: 'S2',
        when: 'heater=fitted',
        body: ['final J-610', 'check K-61'],
      },
      'BD-050': { name: 'Fit the plate', stage: 'S2', when: 'heater=none' },
      'PR-010': { name: 'Try the heater', stage: 'S3', when: 'heater=fitted' },
    },
    joints: { 'J-610': { ...four, name: 'Heater', when: 'heater=fitted' } },
    checks: {
      'K-61': { name: 'Hoses', kind: 'visual', when: 'heater=fitted', values: { hoses: 'tight' } },
    },
  });
  const choose = (choice: string): Told => ({ type: 'choose-option', option: 'heater', choice });
  const inStageTwo = (): Shop => {
    const shop = shopWith(heated);
    shop.perform('tom', 'AX-010');
    shop.does('leo', { type: 'advance-car', to: 'S2' });
    return shop;
  };

  test('then what hangs on it does not begin, and the first gate that asks any of it is shut by the option alone', () => {
    const shop = inStageTwo();
    const refusals = shop.refused('tom', { type: 'start-operation', operation: 'BD-040' });
    expect(refusals.map((each) => each.code)).toEqual(['option-undecided']);
    expect(shop.codes('tom', { type: 'start-operation', operation: 'BD-050' })).toEqual(['option-undecided']);
    expect(shop.codes('tom', { type: 'pass-check', check: 'K-61', values: { hoses: 'yes' } })).toContain(
      'option-undecided',
    );
    const gate = shop.refused('leo', { type: 'advance-car', to: 'S3' });
    expect(shop.sentences(gate)).toEqual(['heater is not chosen. A lead chooses none or fitted.']);
    expect(shop.jobs('waiting')).toEqual(['operation:BD-040:1', 'operation:BD-050:1', 'operation:PR-010:1']);
  });

  test('when it is chosen, then one way is asked and the other is not on this car', () => {
    const shop = inStageTwo();
    shop.does('leo', choose('none'));
    expect(shop.codes('tom', { type: 'start-operation', operation: 'BD-040' })).toEqual(['unknown-thing']);
    expect(shop.gate()).toEqual(['operation-unfinished']);
    shop.perform('tom', 'BD-050');
    shop.does('leo', { type: 'advance-car', to: 'S3' });

    const other = inStageTwo();
    other.does('leo', choose('fitted'));
    expect(other.gate()).toEqual(['operation-unfinished', 'joint-below-level', 'check-not-clear']);
    other.perform('tom', 'BD-040');
    expect(other.gate()).toEqual([]);
  });

  test('then it is chosen once, among what the plan offers, by a lead', () => {
    const shop = inStageTwo();
    expect(shop.codes('leo', choose('steam'))).toEqual(['choice-unknown']);
    expect(shop.codes('leo', { type: 'choose-option', option: 'roof', choice: 'none' })).toEqual([
      'unknown-thing',
    ]);
    expect(shop.codes('tom', choose('none'))).toEqual(['not-allowed']);
    shop.does('leo', choose('none'));
    expect(shop.codes('leo', choose('fitted'))).toEqual(['option-already-chosen']);
  });
});

describe('given the second person', () => {
  const fuel = plan({
    stages,
    operations: {
      'LN-060': { name: 'Fit the tank', stage: 'S1', who: 'fuel', body: ['final J-402'] },
      'LN-070': { name: 'Hide it', stage: 'S1', covers: ['J-402'] },
      'LN-080': { name: 'Fill', stage: 'S1', needs: ['LN-070'] },
    },
    joints: {
      'J-402': { ...four, name: 'Tank strap', critical: true, verify: 're-applied' },
    },
  });
  const torqued = (): Shop => {
    const shop = shopWith(fuel);
    shop.perform('tom', 'LN-060');
    return shop;
  };
  const verify = (method: 'seen' | 'witnessed' | 're-applied', more: object = {}): Told => ({
    type: 'verify-joint',
    joint: 'J-402',
    method,
    ...more,
  });

  test('then it is verified the way the joint says, with a tool that was tested', () => {
    const shop = torqued();
    expect(shop.codes('vera', verify('seen'))).toEqual(['verify-method-differs']);
    expect(shop.codes('vera', verify('re-applied'))).toEqual(['tool-missing']);
    shop.does('tess', { type: 'suspect-tool', tool: 'T-07', reason: 'dropped' });
    expect(shop.codes('vera', verify('re-applied', { tool: 'T-07' }))).toEqual(['tool-suspect']);
    shop.does('vera', verify('re-applied', { tool: 'T-05' }));
    expect(shop.level('J-402')).toBe('verified');
  });

  test('then it is verified before the work that hides it', () => {
    const shop = torqued();
    expect(shop.refused('tess', { type: 'start-operation', operation: 'LN-070' })).toEqual([
      { code: 'joint-below-level', details: { joint: 'J-402', level: 'final', wanted: 'verified' } },
    ]);
    shop.verify('vera', 'J-402');
    shop.perform('tess', 'LN-070');
  });

  test('when theirs comes in before the torque does, then it is told to wait and accepted when tried again', () => {
    const shop = shopWith(fuel);
    shop.begin('tom', 'LN-060');
    const early = shop.verifying('J-402');
    expect(shop.codes('vera', early)).toEqual(['joint-not-final']);
    shop.tighten('tom', 'J-402');
    shop.does('vera', early);
    expect(shop.level('J-402')).toBe('verified');
  });

  test('when they do not agree, then that is never refused: the joint is in doubt and a finding says why', () => {
    const shop = torqued();
    shop.does('vera', { type: 'reject-joint', joint: 'J-402', reason: 'strap is twisted' });
    expect(shop.doubts('J-402')).toMatchObject([{ cause: 'rejected', remedy: 'retorque' }]);
    expect(shop.car().findings['F-1']?.text).toBe('strap is twisted');
    expect(shop.codes('tess', shop.verifying('J-402'))).toEqual(['joint-in-doubt']);
    expect(shop.jobs()).toContain('retorque:J-402:1');
  });

  test("then they hold the joint's qualification, on its last day too, and not the day after", () => {
    const shop = torqued();
    const guest = (person: string, qualifications: readonly { key: string; until?: string }[]): Told => ({
      type: 'add-person',
      person,
      name: person,
      roles: ['technician'],
      qualifications,
    });
    shop.does('leo', guest('gus', [{ key: 'fuel', until: '2026-03-02' }]));
    shop.does('leo', guest('una', [{ key: 'brakes' }]));
    expect(shop.codes('una', shop.verifying('J-402'))).toEqual(['not-qualified']);
    const other = torqued();
    other.does('leo', guest('gus', [{ key: 'fuel', until: '2026-03-02' }]));
    other.later('1 d');
    expect(other.codes('gus', other.verifying('J-402'))).toEqual(['not-qualified']);
    shop.verify('gus', 'J-402');
    expect(shop.level('J-402')).toBe('verified');
  });
});

describe('given a new shop with a paper manual', () => {
  test('when its plan has stages and operations alone, then a car is built and delivered on it', () => {
    const shop = shopWith(
      plan({
        stages: { A: { name: 'Frame' }, B: { name: 'Body' } },
        operations: { 'A-1': { name: 'Weld', stage: 'A' }, 'B-1': { name: 'Paint', stage: 'B' } },
      }),
    );
    expect(shop.codes('leo', { type: 'advance-car', to: 'B' })).toEqual(['operation-unfinished']);
    shop.perform('tom', 'A-1');
    shop.does('leo', { type: 'advance-car', to: 'B' });
    expect(shop.codes('leo', { type: 'advance-car', to: 'B' })).toContain('last-gate');
    expect(shop.codes('ada', { type: 'deliver-car' })).toEqual(['operation-unfinished']);
    shop.perform('tom', 'B-1');
    shop.does('ada', { type: 'deliver-car' });
    expect(shop.car().delivered).toBe(true);
    expect(shop.codes('ada', { type: 'deliver-car' })).toEqual(['car-delivered']);
  });

  test('when a joint has no value yet, then it may be snug and not final; one with none published is done firm', () => {
    const shop = shopWith(
      plan({
        stages,
        operations: {
          'GL-010': { name: 'Glass', stage: 'S1', body: ['snug J-651'] },
          'GL-020': { name: 'Glass at last', stage: 'S2', body: ['final J-651', 'final J-652'] },
        },
        joints: {
          'J-651': { ...four, name: 'Glass clamp', torque: 'no value yet', due: 'S2' },
          'J-652': { name: 'Strap', fasteners: 2, method: 'firm', torque: 'no value published', due: 'S2' },
        },
      }),
    );
    shop.perform('tom', 'GL-010');
    shop.begin('tom', 'GL-020');
    expect(shop.codes('tom', shop.tightening('J-651'))).toEqual(['no-value-yet']);
    expect(shop.codes('tom', { type: 'final-joint', joint: 'J-652', tool: 'T-02' })).toEqual([
      'method-does-not-fit',
    ]);
    shop.does('tom', { type: 'final-joint', joint: 'J-652' });
    expect(shop.level('J-652')).toBe('final');
    expect(shop.car().joints['J-652']?.marks[0]).toMatchObject({ tool: null, delivered: null });
  });
});

describe('given small things of the day', () => {
  test('when a wrench is on its last valid day, then it counts, by the day the hand turned', () => {
    const shop = shopWith(axle);
    const calibrated = { on: '2025-03-02', due: '2026-03-02' };
    shop.does('leo', {
      type: 'add-tool',
      tool: 'T-90',
      name: 'Old click',
      kind: 'click',
      low: '5',
      high: '90',
      unit: 'N·m',
      calibrated,
    });
    shop.begin('tom', 'AX-010');
    const doneAt = shop.now;
    shop.later('1 d');
    expect(shop.refused('tom', shop.tightening('J-110', 'T-90'))).toEqual([
      { code: 'tool-out-of-calibration', details: { tool: 'T-90', due: '2026-03-02', day: '2026-03-03' } },
    ]);
    shop.does('tom', shop.tightening('J-110', 'T-90'), { doneAt, lastContact: doneAt });
    expect(shop.level('J-110')).toBe('final');
  });

  test('when a tie goes in by one tap, then it is asked at this gate, out only when as many came out as went in', () => {
    const shop = shopWith(axle);
    shop.perform('tom', 'AX-010');
    shop.verify('vera', 'J-110');
    expect(shop.gate()).toEqual([]);
    shop.does('tess', { type: 'place-stopgap', what: 'cable tie', quantity: 3, where: 'fuel line' });
    expect(shop.gate()).toEqual(['stopgap-in-place']);
    expect(shop.codes('tess', { type: 'remove-stopgap', stopgap: 'G-tap-1', quantity: 4 })).toEqual([
      'removed-more-than-placed',
    ]);
    shop.does('tess', { type: 'remove-stopgap', stopgap: 'G-tap-1', quantity: 2 });
    const refusals = shop.refused('leo', { type: 'advance-car', to: 'S2' });
    expect(shop.sentences(refusals)).toEqual(['G-tap-1: 1 of 3 cable tie still in. Take it out and count.']);
    shop.does('tess', { type: 'remove-stopgap', stopgap: 'G-tap-1', quantity: 1 });
    expect(shop.gate()).toEqual([]);
    shop.does('tess', { type: 'place-stopgap', what: 'cable tie' });
    expect(Object.keys(shop.car().stopgaps)).toEqual(['G-01', 'G-tap-1', 'G-tap-2']);
  });

  test('when a hole is 2 mm off and shimmed, then the note is followed by another and never changed', () => {
    const shop = shopWith(axle);
    shop.does('tom', { type: 'add-note', of: 'J-110', text: 'hole 2 mm off, shimmed' });
    shop.does('tess', { type: 'add-note', of: 'J-110', text: 'shim is 1.5 mm' });
    expect(Object.values(shop.car().notes).map(({ by, text }) => [by, text])).toEqual([
      ['tom', 'hole 2 mm off, shimmed'],
      ['tess', 'shim is 1.5 mm'],
    ]);
    expect(shop.gate()).toEqual(shopWith(axle).gate());
  });
});
