/** The shop's torque tools as this joint sees them: which can make it, with which adapter, set to what, and why not. */
import { toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { TRUST } from '@/lib/domain/base/refusal-groups';
import type { Refusal, RefusalCode } from '@/lib/domain/base/refusals';
import { convert } from '@/lib/domain/base/units';
import { toExactText } from '@/lib/domain/car/joint';
import { recheck } from '@/lib/domain/decide/joint-eyes';
import type { JointCase } from '@/lib/domain/decide/joints';
import { judgeEvidence } from '@/lib/domain/torque/evidence';
import type { TorqueEvidence } from '@/lib/domain/torque/evidence';
import { calibrationOn, lastCalibration } from '@/lib/domain/torque/tool';
import type { Adapter, Tool } from '@/lib/domain/torque/tool';
import { aimOf, formulaFor, settingFor } from '@/lib/wire/views/aim';
import { refusalLine } from '@/lib/wire/views/refusal';
import type { ToolView, ToolWay } from '@/lib/wire/views/sign-off';
import { dayWords } from '@/lib/wire/views/when';

/** Makes a sentence's times readable. */
export type Spoken = (sentence: string) => string;

/** Gauges measure; they turn nothing. */
const turns = (tool: Tool): boolean => tool.kind !== 'gauge';

/** What can be used comes first. Where a hand tool does it, there is nothing to choose. */
export const toolViews = (at: JointCase, slot: boolean, spoken: Spoken): readonly ToolView[] => {
  const { specification, method } = at.joint;
  if (method === 'firm' || (specification.kind === 'no-value-published' && method !== 'sequence')) return [];
  const found = Object.values(at.facts.tools)
    .filter(turns)
    .map((tool): ToolView => ({
      tool,
      range: `${tool.low} to ${tool.high} ${tool.unit}`,
      good: goodWords(tool, at.facts.day),
      ways: [null, ...Object.values(at.facts.adapters)].map((adapter) =>
        way(at, tool, adapter, slot, spoken),
      ),
      whyNotReapply: reapplying(at, tool, spoken),
    }));
  return [...found.filter(isUsable), ...found.filter((view) => !isUsable(view))];
};

const isUsable = ({ ways }: ToolView): boolean => ways.some(({ whyNot }) => whyNot.length === 0);

const goodWords = (tool: Tool, day: string): string => {
  const now = calibrationOn(tool, day);
  if (now !== null) return `good to ${dayWords(now.due, day)}`;
  const last = lastCalibration(tool);
  return last === null ? 'never calibrated here' : `calibration ran out on ${dayWords(last.due, day)}`;
};

const way = (at: JointCase, tool: Tool, adapter: Adapter | null, slot: boolean, spoken: Spoken): ToolWay => {
  const { specification } = at.joint;
  const evidence = bestEvidence(at, tool, adapter, slot);
  const { refusals } = judgeEvidence(at.joint, evidence, {
    tool,
    adapter,
    day: at.facts.day,
    judgedAt: at.facts.judgedAt,
  });
  const whyNot = saysOf(at, refusals.filter(isAboutTool), spoken);
  const aim = specification.kind === 'window' ? aimOf(specification.window, slot) : null;
  if (specification.kind !== 'window' || aim === null)
    return { adapter: adapter?.id ?? null, whyNot, setting: null, formula: '' };
  const { unit } = specification.window;
  const setting = settingFor(aim, unit, tool, adapter);
  return {
    adapter: adapter?.id ?? null,
    whyNot,
    setting: setting === null ? null : toExactText(setting),
    formula: formulaFor(aim, unit, tool, adapter),
  };
};

const ABOUT_TOOL: readonly RefusalCode[] = [
  ...TRUST,
  'tool-does-not-fit',
  'tool-cycles-used-up',
  'setting-outside-tool-range',
  'adapter-length-unknown',
  'unit-does-not-fit',
];
const isAboutTool = ({ code }: Refusal): boolean => ABOUT_TOOL.includes(code);

const saysOf = (at: JointCase, refusals: readonly Refusal[], spoken: Spoken): readonly string[] =>
  refusals.map((refusal) => spoken(refusalLine(at.car.id, refusal, at.plan).says));

/** What a careful person would record with this tool: whatever is refused of it lies with tool or joint. */
export const bestEvidence = (
  { joint }: Pick<JointCase, 'joint'>,
  tool: Tool | null,
  adapter: Adapter | null,
  slot: boolean,
): TorqueEvidence => {
  const passes = Array.from({ length: joint.passes }, () => joint.order);
  if (joint.method === 'sequence')
    return {
      passes,
      steps: Object.fromEntries(
        joint.sequence.map(({ step, window }) => [step, window === null ? 'done' : decimal(aimOf(window))]),
      ),
    };
  if (joint.specification.kind !== 'window' || joint.method === 'firm' || tool === null) return { passes };
  const { window } = joint.specification;
  const aim = aimOf(window, slot);
  const shown =
    aim === null
      ? null
      : (settingFor(aim, window.unit, tool, adapter) ?? convert(aim, window.unit, tool.unit));
  const each = (text: string): readonly string[] => joint.order.map(() => text);
  return {
    tool: tool.id,
    ...(adapter === null ? {} : { adapter: adapter.id }),
    passes,
    ...(tool.kind === 'click' ? { setting: decimal(shown) } : { readings: each(decimal(shown)) }),
    ...(joint.method === 'prevailing' ? { drags: each('0') } : {}),
    ...(joint.angle === null ? {} : { angles: each(decimal(aimOf(joint.angle))) }),
    unitConfirmed: true,
  };
};

const decimal = (value: Exact | null): string => (value === null ? '' : toDecimalText(value, 6));

/** Trying again takes any good tool that reaches the value; the method asks nothing of its kind. */
const reapplying = (at: JointCase, tool: Tool, spoken: Spoken): readonly string[] => {
  const { refusals } = recheck(at, {
    type: 'recheck-joint',
    car: at.car.id,
    joint: at.joint.stateKey,
    tool: tool.id,
  });
  return saysOf(at, refusals.filter(isAboutTool), spoken);
};
