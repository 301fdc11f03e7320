/** What the sign-off sheet is told of a joint, in every state that it can be in. Cars and values are invented. */
import { beforeEach, describe, expect, it } from 'vitest';
import { fromExactText } from '@/lib/domain/car/joint';
import { toDecimalText } from '@/lib/domain/base/exact';
import { viewOfJoint } from '@/lib/server/queries/sign-off/view';
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const BENCH = plan({
  conditions: { down: 'on its wheels' },
  stages: { ST: { name: 'Steering' }, WH: { name: 'Wheels' } },
  operations: {
    'ST-010': { name: 'Box on', stage: 'ST', who: 'steering', body: ['snug J-1', 'final J-1', 'final J-3'] },
    'ST-020': { name: 'Again, loaded', stage: 'WH', body: ['retorque J-1', 'recheck J-3'] },
    'ST-030': { name: 'Run it up', stage: 'ST', body: ['snug J-2'] },
    'WH-010': { name: 'Down', stage: 'WH', body: ['set down'] },
  },
  joints: {
    'J-1': {
      name: 'Box',
      fasteners: 4,
      pattern: 'cross',
      method: 'dial',
      torque: '45 ± 3 N·m',
      source: 'invented',
      critical: true,
      verify: 're-applied',
      finalNeeds: ['+down'],
      hardware: { NUT: 4 },
      adapter: true,
    },
    'J-2': { name: 'Cap', fasteners: 1, method: 'dial', torque: 'no value yet', source: 'invented' },
    'J-3': {
      name: 'Arm',
      fasteners: 1,
      method: 'dial',
      slot: true,
      torque: '60 to 80 N·m',
      source: 'invented',
    },
  },
  items: { NUT: { name: 'lock nut', reuse: 'once final', trace: 'lot' } },
});

let shop: Shop;
beforeEach(() => {
  shop = shopWith(BENCH);
});
const view = (joint = 'J-1', actor = 'tom'): SignOffView => {
  const found = viewOfJoint(shop.plan(), shop.car(), { ...shop.facts(), actor }, joint, 'UTC');
  if (found === null) throw new Error(`no ${joint}`);
  return found;
};
const begun = (): void => {
  shop.begin('tom', 'ST-010');
};
const down = (): void => {
  shop.perform('tess', 'WH-010');
};

describe('what comes next', () => {
  it('is snug while nothing runs that takes it to final, and says what must be started', () => {
    const { next, acts } = view();
    expect(next).toBe('snug');
    expect(acts.snug.inTheWay).toMatchObject([
      { code: 'no-work-names-joint', href: '/cars/C1#operation:ST-010', act: 'Start it' },
    ]);
  });

  it('is the final once its work runs, with what must hold before', () => {
    begun();
    expect(view().next).toBe('final');
    expect(view().needs.map(({ says }) => says)).toEqual(['“down” is not so, and must be.']);
    expect(view().acts.final.inTheWay.map(({ code }) => code)).toEqual(['condition-not-true']);
    down();
    expect(view().acts.final).toMatchObject({ isOffered: true, inTheWay: [], run: { operation: 'ST-010' } });
  });

  it('is verifying, then nothing', () => {
    begun();
    down();
    shop.tighten('tom', 'J-1');
    expect(view().next).toBe('verify');
    shop.verify('vera', 'J-1');
    expect(view().next).toBe('rest');
  });

  it('is the remedy of a doubt, the stronger first', () => {
    begun();
    down();
    shop.tighten('tom', 'J-1');
    shop.does('vera', { type: 'reject-joint', joint: 'J-1', reason: 'no stripe' });
    expect(view().next).toBe('final');
    shop.does('tom', { type: 'report-over-torque', joint: 'J-1', fastener: 3, reading: '49', unit: 'N·m' });
    expect(view().next).toBe('renew');
    expect(view().doubts.map(({ remedy }) => remedy)).toEqual(['retorque', 'renew']);
    shop.does('tom', { type: 'open-joint', joint: 'J-1', fasteners: [3] });
    expect(view()).toMatchObject({ next: 'final', joint: { cycle: 2, opened: { was: 'final', by: 'Tom' } } });
    expect(view().hardware[0]?.places.map(({ state }) => state)).toEqual(['in', 'in', 'spent', 'in']);
  });

  it('is what a running operation asks again, until it is done in this run', () => {
    begun();
    down();
    shop.tighten('tom', 'J-1');
    shop.tighten('tom', 'J-3');
    shop.finish('tom', 'ST-010');
    shop.begin('tom', 'ST-020');
    expect(view('J-1').next).toBe('final');
    expect(view('J-3').next).toBe('recheck');
    shop.tighten('tom', 'J-1');
    shop.does('tom', { type: 'recheck-joint', joint: 'J-3', tool: 'T-05' });
    expect(view('J-1').next).toBe('verify');
    expect(view('J-3').next).toBe('rest');
  });

  it('without a value is snug, and no more', () => {
    shop.begin('tom', 'ST-030');
    expect(view('J-2').next).toBe('snug');
    shop.does('tom', { type: 'snug-joint', joint: 'J-2' });
    expect(view('J-2').next).toBe('rest');
    expect(view('J-2').acts.final.isOffered).toBe(false);
  });
});

describe('tools', () => {
  const way = (tool: string, adapter: string | null = null) =>
    view()
      .tools.find((each) => each.tool.id === tool)
      ?.ways.find((each) => each.adapter === adapter);

  it('that can come first, those that can’t say why', () => {
    expect(view().tools.map(({ tool }) => tool.id)).toEqual(['T-05', 'T-07', 'T-02']);
    expect(way('T-02')?.whyNot).toEqual([
      'T-02 is a Click tool; Box (J-1) is tightened by dial.'.replace('Click', 'click'),
    ]);
  });

  it('out of calibration, suspect or out of range are barred, with the shop’s own dates', () => {
    shop.does('tom', {
      type: 'suspect-tool',
      tool: 'T-05',
      reason: 'dropped',
      from: '2026-03-01T09:30:00.000Z',
    });
    expect(way('T-05')?.whyNot).toEqual(['T-05 is suspect since Sun 1 Mar 09:30 (dropped).']);
    shop.later('400 d');
    expect(way('T-07')?.whyNot).toEqual([
      'T-07 is not in calibration on 6 Apr: its last counts to 31 Dec 2026.',
    ]);
  });

  it('show the value in their own unit, and behind an adapter the corrected one, exactly', () => {
    shop.does('leo', {
      type: 'add-tool',
      tool: 'T-09',
      name: 'Dial with a length',
      kind: 'dial',
      low: '20',
      high: '100',
      unit: 'N·m',
      length: { value: '362', unit: 'mm' },
      calibrated: { on: '2026-01-05', due: '2026-12-31' },
    });
    shop.does('leo', {
      type: 'add-adapter',
      adapter: 'A-1',
      name: 'crow’s-foot',
      extension: '38',
      unit: 'mm',
    });
    expect(way('T-09', 'A-1')).toMatchObject({
      whyNot: [],
      setting: '1629/40',
      formula: '45 × 362 / (362 + 38) = 40.725',
    });
    expect(way('T-05', 'A-1')?.whyNot).toEqual([
      'T-05 has no length on record, so nobody can say what A-1 makes of its reading.',
    ]);
    expect(way('T-07')).toMatchObject({ formula: '45 N·m ≈ 33.19 lbf·ft' });
    expect(toDecimalText(fromExactText(way('T-07')?.setting ?? '0/1'), 2)).toBe('33.19');
  });

  it('aim at the low end of a castle nut’s window', () => {
    expect(view('J-3').joint.specification).toMatchObject({ kind: 'window', aim: '60/1' });
  });
});

describe('people', () => {
  const person = (id: string) => view().people.find((each) => each.id === id);

  it('may sign who hold the qualification; the reason stands beside the others', () => {
    shop.does('leo', { type: 'add-person', person: 'wes', name: 'Wes Pardoe', roles: ['technician'] });
    expect(person('wes')).toMatchObject({
      initials: 'WP',
      whyNotSign: 'doesn’t hold “steering”',
      whyNotVerify: 'doesn’t hold “steering”',
    });
    expect(person('tom')).toMatchObject({ whyNotSign: null });
  });

  it('who are on the work, fitted or signed it don’t verify it', () => {
    begun();
    expect(person('tom')).toMatchObject({
      isOnIt: true,
      whyNotVerify: null,
      whyNotVerifyAfter: 'is on this work',
    });
    down();
    shop.does('tess', { type: 'join-operation', operation: 'ST-010' });
    shop.tighten('tom', 'J-1');
    expect(person('tom')?.whyNotVerify).toBe('signed it, so can’t verify it');
    expect(person('tess')?.whyNotVerify).toBe('had a hand in it, so can’t verify it');
    expect(person('vera')?.whyNotVerify).toBeNull();
  });

  it('who left are not there', () => {
    shop.does('leo', { type: 'remove-person', person: 'vera' });
    expect(person('vera')).toBeUndefined();
  });
});

describe('the drawing', () => {
  it('keeps the numbers of the record, crosswise from corner to corner', () => {
    const { drawing, joint } = view();
    expect(joint.order).toEqual([1, 3, 2, 4]);
    expect(drawing.points.map(({ x, y }) => [x, y])).toEqual([
      [82, 84],
      [218, 84],
      [218, 272],
      [82, 272],
    ]);
    expect(drawing.says).toBe('4 nuts, crosswise: 1, 3, 2, 4');
  });
});

describe('what it stands by', () => {
  it('shows what the tool showed, from what each fastener got', () => {
    begun();
    down();
    shop.tighten('tom', 'J-1', 'T-07', { readings: ['33', '33.5', '34', '33'], passes: [[1, 3, 2, 4]] });
    const { standing, marks } = view();
    expect(standing?.readings.map(({ fastener, shown }) => [fastener, shown])).toEqual([
      [1, '33'],
      [3, '33.5'],
      [2, '34'],
      [4, '33'],
    ]);
    expect(marks).toMatchObject([{ level: 'final', by: 'Tom', struck: false }]);
  });
});
