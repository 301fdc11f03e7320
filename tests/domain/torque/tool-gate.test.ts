/**
 * The tool gate against published rules. The arithmetic of the fixtures is ours on those rules (derived); the rules:
 * - usable range from 20 % of full scale: US Army TM 1-1500-204-23-9, p. 139 (±4 % from 20 % to full scale)
 * - usable range from the lowest marked value: ISO 6789-1:2017, as told by a calibration laboratory
 *   (norbar.com, "Understanding ISO 6789"); the two differ, so the lower end is the tool's own
 * - the last valid day of a calibration is defined by no standard; ours counts it (decision D18)
 * - adapters: US Army TM 5-3810-305-23 (300 lbf·ft wanted, L 18 in, E 6 in: set 225)
 * - prevailing torque: FAA AC 43.13-1B, 7-40c and d (final torque = desired torque + drag)
 */
import { describe, expect, test } from 'vitest';
import { compilePlan } from '@/lib/domain/plan/compile';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import type { JointEntry } from '@/lib/domain/plan/document';
import { judgeEvidence } from '@/lib/domain/torque/evidence';
import type { TorqueEvidence } from '@/lib/domain/torque/evidence';
import type { Adapter, Tool } from '@/lib/domain/torque/tool';
import { calibrationOn } from '@/lib/domain/torque/tool';

const joint = (torque: string, more: Partial<JointEntry> = {}): CompiledJoint => {
  const entry: JointEntry = {
    name: 'joint',
    fasteners: 1,
    method: 'dial',
    torque,
    source: 'see above',
    ...more,
  };
  const document = { plan: 'P', revision: '1', stages: { S: { name: 'S' } }, joints: { J: entry } };
  const compiled = compilePlan(document, {}).joints.get('J');
  if (compiled === undefined) throw new Error('no joint');
  return compiled;
};

const dial = (low: string, high: string, more: Partial<Tool> = {}): Tool => ({
  id: 'T',
  name: 'dial wrench',
  kind: 'dial',
  low,
  high,
  unit: 'lbf·ft',
  calibrations: [{ on: '2024-03-15', due: '2025-03-15' }],
  suspect: [],
  ...more,
});

const codes = (
  on: CompiledJoint,
  evidence: TorqueEvidence,
  tool: Tool,
  { day = '2024-06-01', adapter = null }: { day?: string; adapter?: Adapter | null } = {},
): readonly string[] =>
  judgeEvidence(
    on,
    { tool: 'T', ...evidence },
    { tool, adapter, day, judgedAt: `${day}T10:00:00.000Z` },
  ).refusals.map((refusal) => refusal.code);

describe('a 10–100 lbf·ft wrench, used by the 20 % rule', () => {
  test.each([
    ['19.9', ['setting-outside-tool-range']],
    ['20.0', []],
    ['100.0', []],
    ['100.1', ['setting-outside-tool-range']],
  ])('%s lbf·ft', (reading, expected) => {
    expect(codes(joint(`${reading} ± 0 lbf·ft`), { readings: [reading] }, dial('20', '100'))).toEqual(
      expected,
    );
  });

  test('15 lbf·ft is good by the other rule, from the lowest mark', () => {
    expect(codes(joint('15 ± 1 lbf·ft'), { readings: ['15'] }, dial('10', '100'))).toEqual([]);
  });
});

describe('a calibration of twelve months', () => {
  test.each([
    ['2024-03-14', false],
    ['2024-03-15', true],
    ['2025-03-15', true],
    ['2025-03-16', false],
  ])('on %s', (day, isGood) => {
    expect(calibrationOn(dial('20', '100'), day) !== null).toBe(isGood);
    const refused = codes(joint('30 ± 1 lbf·ft'), { readings: ['30'] }, dial('20', '100'), { day });
    expect(refused).toEqual(isGood ? [] : ['tool-out-of-calibration']);
  });

  test.each([
    [4999, []],
    [5000, ['tool-cycles-used-up']],
    [5001, ['tool-cycles-used-up']],
  ])('or 5,000 cycles, whichever comes first: after %d', (used, expected) => {
    const tool = dial('20', '100', { cycles: { used, limit: 5000 } });
    expect(codes(joint('30 ± 1 lbf·ft'), { readings: ['30'] }, tool)).toEqual(expected);
  });
});

describe('an adapter', () => {
  const adapter: Adapter = { id: 'A', name: "crow's-foot", extension: { value: '6', unit: 'in' }, angle: 0 };
  const wrench = dial('50', '250', { length: { value: '18', unit: 'in' } });
  const wanted = joint('300 ± 5 lbf·ft');

  test('brings a joint of 300 lbf·ft into the range of a 250 lbf·ft wrench, read at 225', () => {
    expect(codes(wanted, { readings: ['225'], adapter: 'A' }, wrench, { adapter })).toEqual([]);
    expect(codes(wanted, { readings: ['300'] }, wrench)).toContain('setting-outside-tool-range');
  });

  test('read as if it were not there, the fastener gets 400 lbf·ft', () => {
    expect(
      codes(wanted, { readings: ['300'], adapter: 'A' }, dial('50', '400', wrench), { adapter }),
    ).toEqual(['setting-outside-tool-range', 'reading-above']);
  });

  test('says nothing on a wrench whose length nobody knows', () => {
    const unknown = dial('50', '250');
    expect(codes(wanted, { readings: ['225'], adapter: 'A' }, unknown, { adapter })).toEqual([
      'adapter-length-unknown',
    ]);
  });
});

describe('prevailing torque: a window of 480 to 690 lbf·in with a drag of 10', () => {
  const wrench = dial('100', '1000', { unit: 'lbf·in' });
  const nut = joint('480 to 690 lbf·in', { method: 'prevailing' });

  test.each([
    ['489', ['reading-below']],
    ['490', []],
    ['700', []],
    ['701', ['reading-above']],
  ])('the wrench shows %s', (reading, expected) => {
    expect(codes(nut, { readings: [reading], drags: ['10'] }, wrench)).toEqual(expected);
  });
});
