/** What the sign-off sheet makes of keys and taps, judged by the rulebook's own rules. Cars and values are invented. */
import { describe, expect, it } from 'vitest';
import { asksOf } from '@/components/sign-off/model/asks';
import { benchOf, boundsOnTool, evidenceOf, judgeAll, judgeValue } from '@/components/sign-off/model/judge';
import type { Bench } from '@/components/sign-off/model/judge';
import { cleaned, currentAsk, done, enter, sayUnit, takeBack, type } from '@/components/sign-off/model/moves';
import type { Entered } from '@/components/sign-off/model/moves';
import { EMPTY_SITTING, countOf, isOwed } from '@/components/sign-off/model/sitting';
import type { Sitting } from '@/components/sign-off/model/sitting';
import { toDecimalText } from '@/lib/domain/base/exact';
import type { Adapter, Tool } from '@/lib/domain/torque/tool';
import type { JointView } from '@/lib/wire/views/sign-off';

const JOINT: JointView = {
  key: 'J-212',
  name: 'Steering box to bracket',
  position: null,
  operation: null,
  dueStage: 'Steering',
  critical: true,
  who: null,
  verifier: null,
  level: 'snug',
  cycle: 1,
  dueLevel: 'verified',
  verify: 'seen',
  method: 'dial',
  fasteners: 4,
  order: [1, 3, 2, 4],
  passes: 2,
  specification: {
    kind: 'window',
    window: { low: '42/1', high: '48/1', target: '45/1', unit: 'N·m', text: '45 ± 3 N·m' },
    aim: '45/1',
  },
  angle: null,
  sequence: [],
  useOnce: false,
  slot: false,
  asksAdapter: true,
  firmMeans: null,
  source: null,
  thread: null,
  word: { one: 'nut', many: 'nuts' },
  opened: null,
};

const DIAL: Tool = {
  id: 'T-05',
  name: 'dial wrench',
  kind: 'dial',
  low: '20',
  high: '100',
  unit: 'N·m',
  length: { value: '362', unit: 'mm' },
  calibrations: [{ on: '2026-01-01', due: '2026-12-31' }],
  suspect: [],
};
const CLICK: Tool = { ...DIAL, id: 'T-03', kind: 'click' };
const CROW: Adapter = { id: 'A-11', name: "crow's-foot", extension: { value: '38', unit: 'mm' }, angle: 0 };
const AT = { day: '2026-11-27', judgedAt: '2026-11-27T10:52:00.000Z' };
const MADE = { id: 'w-1', doneAt: AT.judgedAt, car: 'C54-012' };

const bench = (
  joint: Partial<JointView> = {},
  tool: Tool | null = DIAL,
  adapter: Adapter | null = CROW,
): Bench => benchOf({ ...JOINT, ...joint }, tool, adapter, AT);

const entered = (at: Bench, sitting: Sitting, text: string): Entered => {
  const ask = currentAsk(at, sitting);
  if (ask === null || ask.kind === 'tap') throw new Error('nothing to enter');
  return enter(at, type(sitting, text), ask, MADE);
};
const give = (at: Bench, sitting: Sitting, ...texts: readonly string[]): Sitting =>
  texts.reduce((before, text) => {
    const after = entered(at, before, text);
    if (after.is === 'not-taken') throw new Error(`${text} was not taken`);
    return after.sitting;
  }, sitting);
const tap = (at: Bench, sitting: Sitting, times: number): Sitting => {
  let now = sitting;
  for (let count = 0; count < times; count += 1) {
    const ask = currentAsk(at, now);
    if (ask?.kind !== 'tap') throw new Error('nothing to tap');
    now = done(now, ask);
  }
  return now;
};

describe('a dial wrench with a crow’s-foot', () => {
  it('asks four taps for the first pass and four readings for the last, each in the plan’s order', () => {
    expect(asksOf(JOINT, 'dial').map(({ id }) => id)).toEqual([
      ...['tap:1:1', 'tap:1:3', 'tap:1:2', 'tap:1:4'],
      ...['reading:1', 'reading:3', 'reading:2', 'reading:4'],
    ]);
  });

  it('shows the window as the tool shows it, exactly', () => {
    const { low, high, aim } = boundsOnTool(bench(), EMPTY_SITTING, 1);
    expect([low, aim, high].map((each) => each && toDecimalText(each))).toEqual(['38.01', '40.725', '43.44']);
  });

  it('makes a final that the rules accept', () => {
    const at = bench();
    const read = give(at, tap(at, EMPTY_SITTING, 4), '40.5', '41', '40,9', '43.44');
    expect(currentAsk(at, read)).toBeNull();
    expect(evidenceOf(at, read)).toEqual({
      tool: 'T-05',
      adapter: 'A-11',
      passes: [
        [1, 3, 2, 4],
        [1, 3, 2, 4],
      ],
      readings: ['40.5', '41', '40.9', '43.44'],
    });
    expect(judgeAll(at, read)).toEqual([]);
  });

  it('stays at a nut that is below until it has the value', () => {
    const at = bench({ passes: 1 });
    const low = entered(at, EMPTY_SITTING, '37.9');
    expect(low).toMatchObject({ is: 'taken', verdict: { is: 'below' } });
    if (low.is !== 'taken') return;
    expect(currentAsk(at, low.sitting)?.id).toBe('reading:1');
    expect(judgeAll(at, low.sitting).length).toBeGreaterThan(0);
    expect(currentAsk(at, give(at, low.sitting, '40.7'))?.id).toBe('reading:3');
  });

  it('keeps a reading that is over as it was read: no lower one takes its place', () => {
    const at = bench({ passes: 1 });
    const over = entered(at, give(at, EMPTY_SITTING, '40.5'), '44.1');
    expect(over).toMatchObject({
      is: 'over',
      over: { fastener: 3, reading: '44.1', unit: 'N·m', id: 'w-1', sent: false },
    });
    if (over.is !== 'over') return;
    expect(isOwed(over.sitting)).toBe(true);
    expect(currentAsk(at, over.sitting)?.id).toBe('reading:3');
    expect(takeBack(at, over.sitting)).toBeNull();
    expect(judgeAll(at, over.sitting).map(({ code }) => code)).toContain('pattern-not-followed');
  });

  it('takes the very ends of the window, and nothing beyond', () => {
    const at = bench({ passes: 1 });
    const says = (text: string): string =>
      judgeValue(at, EMPTY_SITTING, { kind: 'reading', id: 'reading:1', fastener: 1 }, text).is;
    expect(['38.01', '43.44'].map(says)).toEqual(['inside', 'inside']);
    expect(['38.009999', '43.440001'].map(says)).toEqual(['below', 'above']);
    expect(['', '4.4.1', '19.9', '100.1'].map(says)).toEqual([
      'unreadable',
      'unreadable',
      'beyond-tool',
      'beyond-tool',
    ]);
  });

  it('asks which unit the tool shows where another would fit, and only once', () => {
    const at = bench({ passes: 1 });
    const doubtful = entered(at, EMPTY_SITTING, '30');
    expect(doubtful).toMatchObject({
      is: 'not-taken',
      verdict: { is: 'unit-doubtful', units: ['N·m', 'lbf·ft'] },
    });
    const typed = type(EMPTY_SITTING, '30');
    const own = sayUnit(at, typed, 'N·m');
    expect(entered(at, own, '30')).toMatchObject({ is: 'taken', verdict: { is: 'below' } });
    const feet = sayUnit(at, typed, 'lbf·ft');
    const read = give(at, feet, '30', '30', '30', '30');
    expect(evidenceOf(at, read)).toMatchObject({ unit: 'lbf·ft', unitConfirmed: true });
    expect(judgeAll(at, read)).toEqual([]);
  });

  it('takes back the last, and says how far it has come', () => {
    const at = bench({ passes: 1 });
    const two = give(at, EMPTY_SITTING, '40.5', '41');
    expect(countOf(two, JOINT.word)).toBe('2 nuts');
    const one = takeBack(at, two);
    expect(one?.given).toEqual({ 'reading:1': '40.5' });
    expect(takeBack(at, EMPTY_SITTING)).toBeNull();
  });
});

describe('a click wrench', () => {
  it('asks its setting once and a tap for each nut and pass, and no number besides', () => {
    const at = bench({ method: 'click' }, CLICK);
    const set = give(at, EMPTY_SITTING, '40.7');
    const all = tap(at, set, 8);
    expect(currentAsk(at, all)).toBeNull();
    expect(evidenceOf(at, all)).toEqual({
      tool: 'T-03',
      adapter: 'A-11',
      setting: '40.7',
      passes: [
        [1, 3, 2, 4],
        [1, 3, 2, 4],
      ],
    });
    expect(judgeAll(at, all)).toEqual([]);
  });

  it('set beyond the window is over for nobody yet: it is set again, and what was tapped is tapped again', () => {
    const at = bench({ method: 'click', passes: 1 }, CLICK);
    const high = entered(at, EMPTY_SITTING, '44');
    expect(high).toMatchObject({ is: 'taken', verdict: { is: 'above' } });
    if (high.is !== 'taken') return;
    expect(currentAsk(at, high.sitting)?.id).toBe('setting');
    const tapped = tap(at, give(at, high.sitting, '41'), 3);
    const anew = give(at, { ...tapped, correcting: 'setting' }, '40');
    expect(anew.given).toEqual({ setting: '40' });
  });
});

describe('other methods', () => {
  it('prevailing torque: the drag is read first, moves the window, and is taken off', () => {
    const at = bench({ method: 'prevailing', passes: 1, fasteners: 1, order: [1] }, DIAL, null);
    const dragged = give(at, EMPTY_SITTING, '6');
    const { low, high } = boundsOnTool(at, dragged, 1);
    expect([low, high].map((each) => each && toDecimalText(each))).toEqual(['48', '54']);
    const read = give(at, dragged, '51');
    expect(evidenceOf(at, read)).toMatchObject({ readings: ['51'], drags: ['6'] });
    expect(judgeAll(at, read)).toEqual([]);
    const anew = give(at, { ...read, correcting: 'drag:1' }, '2');
    expect(anew.given).toEqual({ 'drag:1': '2' });
  });

  it('angle: seat torque for all, then the turn of each; a turn too far is over', () => {
    const angle = { low: '85/1', high: '95/1', target: '90/1', unit: '°', text: '90 ± 5 °' } as const;
    const at = bench({ method: 'angle', angle, passes: 1, fasteners: 2, order: [1, 2] });
    const seated = give(at, EMPTY_SITTING, '40', '41', '90');
    expect(entered(at, seated, '96')).toMatchObject({ is: 'over', over: { fastener: 2, unit: '°' } });
    const all = give(at, seated, '95');
    expect(evidenceOf(at, all)).toMatchObject({ readings: ['40', '41'], angles: ['90', '95'] });
    expect(judgeAll(at, all)).toEqual([]);
  });

  it('sequence: each step, with its value or done', () => {
    const sequence = [
      {
        step: 'seat',
        window: { low: '30/1', high: '30/1', target: null, unit: 'N·m', text: '30 to 30 N·m' },
      },
      { step: 'pin in', window: null },
    ] as const;
    const at = bench({ method: 'sequence', sequence, fasteners: 1, order: [1] }, null, null);
    const seat = give(at, EMPTY_SITTING, '30');
    const ask = currentAsk(at, seat);
    if (ask === null) throw new Error('a step is left');
    const all = done(seat, ask);
    expect(evidenceOf(at, all)).toEqual({ steps: { seat: '30', 'pin in': 'done' } });
    expect(judgeAll(at, all)).toEqual([]);
  });

  it('by hand: nothing to read, and no tool is named', () => {
    const at = bench({ method: 'firm', specification: { kind: 'no-value-published' } }, null, null);
    expect(currentAsk(at, EMPTY_SITTING)).toBeNull();
    expect(judgeAll(at, EMPTY_SITTING)).toEqual([]);
  });
});

describe('what is typed', () => {
  it.each([
    ['40,5', '40.5'],
    ['4..5', '4.5'],
    ['1e3', '13'],
    ['−40', '40'],
    ['123456789', '12345678'],
  ])('%s becomes %s', (typed, kept) => {
    expect(cleaned(typed)).toBe(kept);
  });

  it('reads .5 and 5. as people mean them', () => {
    const at = bench({ passes: 1 });
    expect(give(at, EMPTY_SITTING, '41.').given).toEqual({ 'reading:1': '41' });
  });
});
