/** What a car needs, as a story: planned, fitted, opened, doubted, condemned. All invented. */
import { describe, expect, test } from 'vitest';
import { exact, toDecimalText } from '@/lib/domain/base/exact';
import { compilePlan } from '@/lib/domain/plan/compile';
import { catalogueOf } from '@/lib/domain/shop/item';
import type { ItemTerms } from '@/lib/domain/shop/item';
import { carNeed, totalsOf } from '@/lib/domain/shop/need';
import type { NeedLine } from '@/lib/domain/shop/need-line';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const CLICK = { method: 'click', torque: '45 ± 3 N·m', source: 'invented' } as const;

const axle = plan({
  stages: { S1: { name: 'Axle' }, S2: { name: 'Wheels' } },
  options: { dampers: { name: 'Dampers', choices: ['new', 'refurb'] } },
  conditions: { bled: 'System bled' },
  operations: {
    'O-1': { name: 'Hang it', stage: 'S1', body: ['snug J-1', 'fit P-1'], hardware: { bush: 2, shim: 4 } },
    'O-2': { name: 'Tighten it', stage: 'S1', needs: ['O-1'], body: ['final J-1'], minutes: 60 },
    'O-3': { name: 'Set caster', stage: 'S2', needs: ['O-2'], body: ['open J-1', 'final J-1'], minutes: 30 },
    'L-1': {
      name: 'Make the lines',
      stage: 'S1',
      body: ['final J-2@1', 'final J-2@2'],
      hardware: { clip: 2 },
      consumables: { line: '3 m', wrap: 8 },
    },
    'D-1': {
      name: 'New dampers on',
      stage: 'S2',
      when: 'dampers=new',
      body: ['final J-3'],
      hardware: { set: 1 },
    },
  },
  joints: {
    'J-1': {
      name: 'Front eye',
      fasteners: 4,
      ...CLICK,
      hardware: { bolt: 4, nut: 4, pin: 4, gasket: { quantity: 1, per: 'joint' } },
    },
    'J-2': {
      name: 'Unions',
      repeat: 2,
      fasteners: 1,
      ...CLICK,
      hardware: { tube: { quantity: 1, dueAgain: ['L-1'] }, olive: { quantity: 1, dueAgain: ['L-1'] } },
    },
    'J-3': {
      name: 'Damper stem',
      when: 'dampers=new',
      fasteners: 2,
      ...CLICK,
      hardware: { stem: 2, rubber: 6 },
    },
  },
  parts: {
    'P-1': { name: 'hub', origin: 'donor', grade: 'reuse' },
  },
  items: {
    bolt: { name: 'bolt', reuse: '2 times', trace: 'lot' },
    nut: { name: 'lock nut', reuse: 'once final', trace: 'lot' },
    pin: { name: 'split pin', reuse: 'once fitted' },
    gasket: { name: 'gasket', reuse: 'once final' },
    tube: { name: 'tube nut', reuse: '5 times', trace: 'lot' },
    olive: { name: 'olive', reuse: 'once fitted', trace: 'lot' },
    clip: { name: 'clip', trace: 'lot' },
    line: { name: 'brake line', unit: 'm' },
    wrap: { name: 'tie wrap', reuse: 'once fitted' },
    bush: { name: 'bush', reuse: 'once fitted' },
    shim: { name: 'shim' },
    set: { name: 'damper set', reuse: 'once fitted' },
    stem: { name: 'stem nut', reuse: '2 times' },
    rubber: { name: 'damper rubber', reuse: 'once fitted' },
  },
});

const TERMS: Readonly<Record<string, ItemTerms>> = {
  wrap: { attrition: exact(1, 10) },
  set: { comesWith: { stem: 2, rubber: 4 } },
};
const catalogue = catalogueOf([axle], TERMS);

const needOf = (shop: Shop): ReturnType<typeof carNeed> => {
  const car = shop.car();
  return carNeed(compilePlan(axle, car.options), car, shop.world.shop, catalogue);
};
const totals = (shop: Shop): Readonly<Record<string, string>> =>
  Object.fromEntries([...totalsOf(needOf(shop).lines)].map(([item, sum]) => [item, toDecimalText(sum)]));
const linesFor = (shop: Shop, item: string): readonly NeedLine[] =>
  needOf(shop).lines.filter((line) => line.item === item);
const causes = (shop: Shop, item: string): readonly string[] =>
  linesFor(shop, item).map(({ cause }) => cause.kind);

const begun = (): Shop => shopWith(axle, { options: { dampers: 'refurb' } });
const tight = (): Shop => {
  const shop = begun();
  shop.perform('tom', 'O-1');
  shop.perform('tom', 'O-2');
  return shop;
};

describe('a car that is begun', () => {
  test('needs all that the plan has, and what planned re-openings will spend', () => {
    expect(totals(begun())).toEqual({
      bolt: '4',
      // Spent at final, and the plan opens them once more; split pins go whenever it is opened.
      nut: '8',
      pin: '8',
      gasket: '2',
      tube: '2',
      olive: '2',
      clip: '2',
      bush: '2',
      shim: '4',
      line: '3',
      // Ten percent of bulk goods get lost.
      wrap: '8.8',
    });
    expect(causes(begun(), 'nut')).toEqual(Array(4).fill(['planned', 'reopening']).flat());
  });

  test('of an option that is not chosen nothing counts, and all of it is listed', () => {
    const shop = shopWith(axle);
    expect(Object.keys(totals(shop))).not.toContain('stem');
    expect(needOf(shop).undecided.map(({ item, undecided }) => [item, undecided.join()])).toEqual(
      expect.arrayContaining([
        ['stem', 'dampers'],
        ['set', 'dampers'],
      ]),
    );
  });

  test('what lies in the box is not bought: four of six rubbers, both stem nuts', () => {
    const shop = shopWith(axle, { options: { dampers: 'new' } });
    expect(totals(shop)).toMatchObject({ set: '1', stem: '0', rubber: '2' });
    expect(causes(shop, 'stem')).toEqual(['planned', 'planned', 'in-box']);
  });

  test('what is in hand of the box covers what is still to be fitted, and no renewal', () => {
    const shop = shopWith(axle, { options: { dampers: 'new' } });
    for (const operation of ['O-1', 'O-2', 'L-1', 'O-3', 'D-1']) {
      if (operation === 'O-3') shop.does('leo', { type: 'advance-car', to: 'S2' });
      shop.perform('tom', operation);
    }
    expect(totals(shop)).toEqual({});
    shop.does('tom', { type: 'open-joint', joint: 'J-3', fasteners: [1] });
    expect(totals(shop)).toEqual({ rubber: '3' });
  });
});

describe('what is in is needed no more', () => {
  test('snug: all but the planned re-opening', () => {
    const shop = begun();
    shop.perform('tom', 'O-1');
    expect(totals(shop)).toMatchObject({ nut: '4', pin: '4', gasket: '1' });
    expect(Object.keys(totals(shop))).not.toContain('bolt');
    expect(Object.keys(totals(shop))).not.toContain('bush');
  });

  test('opened before it was final, the lock nuts go in again and the pins do not', () => {
    const shop = begun();
    shop.perform('tom', 'O-1');
    shop.does('tom', { type: 'open-joint', joint: 'J-1', fasteners: [1, 2] });
    expect(totals(shop)).toMatchObject({ nut: '4', pin: '6', gasket: '1' });
    expect(causes(shop, 'pin').filter((kind) => kind === 'opened')).toHaveLength(2);
  });

  test('opened after it was final, only those fasteners lose their nuts; the whole gasket goes', () => {
    const shop = tight();
    expect(totals(shop)).toMatchObject({ nut: '4', gasket: '1' });
    shop.does('tom', { type: 'open-joint', joint: 'J-1', fasteners: [1] });
    expect(totals(shop)).toMatchObject({ nut: '5', pin: '5', gasket: '2' });
    const [opened] = linesFor(shop, 'nut').filter(({ cause }) => cause.kind === 'opened');
    expect(opened).toMatchObject({ at: 'J-1', before: null, cause: { by: 'tom' } });
  });

  test('a bolt that may be fitted twice is used up by the third fitting', () => {
    const shop = tight();
    // In once; the planned re-opening is its second.
    expect(Object.keys(totals(shop))).not.toContain('bolt');
    shop.does('tom', { type: 'open-joint', joint: 'J-1' });
    expect(totals(shop)).toMatchObject({ bolt: '4' });
    expect(causes(shop, 'bolt')).toEqual(Array(4).fill('reopening'));
  });

  test('the work that opened it may close it: nothing is counted twice', () => {
    const shop = tight();
    shop.perform('tom', 'L-1');
    shop.does('leo', { type: 'advance-car', to: 'S2' });
    shop.begin('tom', 'O-3');
    const before = totals(shop);
    shop.does('tom', { type: 'open-joint', joint: 'J-1' });
    expect(totals(shop)).toEqual(before);
    shop.tighten('tom', 'J-1');
    shop.finish('tom', 'O-3');
    expect(totals(shop)).toEqual({});
  });

  test('a car that is delivered needs nothing', () => {
    const shop = tight();
    const car = { ...shop.car(), delivered: true };
    expect(carNeed(compilePlan(axle, car.options), car, shop.world.shop, catalogue).lines).toEqual([]);
  });
});

describe('hardware that is not believed', () => {
  const withLots = (): Shop => {
    const shop = begun();
    shop.does('leo', { type: 'receive-lot', lot: 'L-1', item: 'tube', quantity: 10 });
    shop.does('leo', { type: 'receive-lot', lot: 'L-2', item: 'tube', quantity: 10 });
    shop.begin('tom', 'L-1');
    shop.tighten('tom', 'J-2@1', undefined, { hardware: [{ item: 'tube', lot: 'L-1' }] });
    shop.tighten('tom', 'J-2@2', undefined, { hardware: [{ item: 'tube', lot: 'L-2' }] });
    shop.finish('tom', 'L-1');
    return shop;
  };

  test('a bad lot is renewed, and the line behind the nut is made again: half of what two took (D57)', () => {
    const shop = withLots();
    expect(Object.keys(totals(shop))).not.toContain('line');
    shop.does('tom', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft threads' });
    expect(totals(shop)).toMatchObject({ tube: '1', olive: '1', line: '1.5', wrap: '4.4' });
    // Clips may be used again.
    expect(Object.keys(totals(shop))).not.toContain('clip');
    expect(linesFor(shop, 'line')[0]).toMatchObject({
      at: 'L-1',
      before: null,
      cause: { kind: 'chained', joint: 'J-2@1', behind: 'tube', share: exact(1, 2) },
    });
    expect(linesFor(shop, 'tube')[0]?.cause).toEqual({ kind: 'renew', because: 'lot L-1: soft threads' });
  });

  test('opened, the bad nut is still bad, however often it may be fitted', () => {
    const shop = withLots();
    shop.does('tom', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft threads' });
    shop.does('tom', { type: 'open-joint', joint: 'J-2@1' });
    expect(totals(shop)).toMatchObject({ tube: '1', olive: '1', line: '1.5' });
    shop.does('leo', { type: 'clear-lot', lot: 'L-1', reason: 'another lot was meant' });
    expect(Object.keys(totals(shop))).not.toContain('tube');
  });

  test('opened, what is spent has its work due again: a share for each joint that was opened', () => {
    const shop = withLots();
    shop.does('tom', { type: 'open-joint', joint: 'J-2@2' });
    expect(shop.car().operations['L-1']?.status).toBe('due-again');
    expect(totals(shop)).toMatchObject({ olive: '1', line: '1.5', wrap: '4.4' });
    expect(causes(shop, 'line')).toEqual(['again']);
    // The other one has a bad nut besides: it comes on top.
    shop.does('tom', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft threads' });
    expect(totals(shop)).toMatchObject({ olive: '2', tube: '1', line: '3', wrap: '8.8' });
    expect([...causes(shop, 'line')].sort()).toEqual(['again', 'chained']);
    shop.does('tom', { type: 'open-joint', joint: 'J-2@1' });
    expect(totals(shop)).toMatchObject({ line: '3' });
  });

  test('over-torqued: that fastener is renewed whole, its neighbours only lose what may not be used again', () => {
    const shop = tight();
    shop.does('tom', { type: 'report-over-torque', joint: 'J-1', fastener: 2, reading: '60', unit: 'N·m' });
    expect(causes(shop, 'bolt')).toEqual(['renew']);
    expect(linesFor(shop, 'nut').filter(({ cause }) => cause.kind === 'renew')).toHaveLength(1);
  });
});

describe('parts', () => {
  test('a condemned part is bought, by its finding; what fits it is due again, its bushes too', () => {
    const shop = tight();
    shop.does('tom', { type: 'report-finding', about: { kind: 'part', key: 'P-1' }, text: 'cracked' });
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'replace', reason: 'cracked' });
    expect(linesFor(shop, 'P-1')).toMatchObject([
      { what: 'part', cause: { kind: 'condemned', finding: 'F-1' } },
    ]);
    expect(totals(shop)).toMatchObject({ bush: '2' });
    // Shims may be used again.
    expect(Object.keys(totals(shop))).not.toContain('shim');
  });

  test('a part that was taken for another car is owed', () => {
    const shop = tight();
    shop.startCar('C2', axle);
    shop.does('tom', { type: 'take-part', part: 'P-1', takenFor: 'C2', reason: 'C2 goes first' });
    expect(linesFor(shop, 'P-1')).toMatchObject([{ cause: { kind: 'taken', takenFor: 'C2' } }]);
  });
});

test('the answer is kept for as long as nothing changes', () => {
  const shop = tight();
  const first = needOf(shop);
  expect(needOf(shop)).toBe(first);
  shop.does('tom', { type: 'open-joint', joint: 'J-1', fasteners: [1] });
  expect(needOf(shop)).not.toBe(first);
});
