/** Evidence that satisfies a joint or a check, taken from the plan: what a careful person would record. Invented values. */
import { add, compare, divide, exact, parseDecimal, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { convert } from '@/lib/domain/base/units';
import type { Unit } from '@/lib/domain/base/units';
import type { Day, Instant, ToolId } from '@/lib/domain/base/vocabulary';
import type { CompiledCheck, CompiledJoint } from '@/lib/domain/plan/compiled';
import type { Window } from '@/lib/domain/plan/window';
import { settingForDelivered } from '@/lib/domain/torque/adapter';
import type { TorqueEvidence } from '@/lib/domain/torque/evidence';
import { toolFitsMethod } from '@/lib/domain/torque/tool';
import type { Adapter, Tool } from '@/lib/domain/torque/tool';
import { trustRefusals } from '@/lib/domain/torque/trust';
import { readingIn, shareOf } from './readings';

/** What is at hand, and when: a tool out of calibration or dropped is left on its hook. */
export interface Bench {
  readonly tools: readonly Tool[];
  readonly adapters: readonly Adapter[];
  readonly day: Day;
  readonly judgedAt: Instant;
}

/** What is aimed at: the target, else the middle, else the one end there is. */
export const aimOf = ({ low, high, target }: Window): Exact => {
  if (target !== null) return target;
  if (low !== null && high !== null) return divide(add(low, high), exact(2)) ?? low;
  return low ?? high ?? exact(0);
};

interface Choice {
  readonly tool: Tool;
  readonly adapter: Adapter | null;
  /** What the tool shows when the fastener gets these, in the tool's own unit. */
  readonly shown: (value: Exact) => Exact | null;
}

interface Wanted {
  readonly window: Window;
  readonly aim: Exact;
  readonly does: (tool: Tool) => boolean;
  readonly behindAdapter: boolean;
}

/**
 * The first good tool that does it and has the value in its range, those in the plan's own unit first; one that can show
 * the whole window is better than one that can only just show what is aimed at.
 */
const chooseTool = (bench: Bench, wanted: Wanted): Choice | null => {
  const { window, aim, does, behindAdapter } = wanted;
  const own = (tool: Tool): number => (tool.unit === window.unit ? 0 : 1);
  const ends = [window.low ?? aim, window.high ?? aim];
  let second: Choice | null = null;
  for (const tool of [...bench.tools].sort((a, b) => own(a) - own(b))) {
    if (!does(tool) || trustRefusals(tool, bench).length > 0) continue;
    const adapter = behindAdapter && tool.length !== undefined ? (bench.adapters[0] ?? null) : null;
    const shown = (value: Exact): Exact | null => shownFor(value, window.unit, tool, adapter);
    const can = (value: Exact): boolean => {
      const there = shown(value);
      return there !== null && isInRange(tool, there);
    };
    if (!can(aim)) continue;
    if (tool.kind === 'click' || ends.every(can)) return { tool, adapter, shown };
    second ??= { tool, adapter, shown };
  }
  return second;
};

const shownFor = (value: Exact, unit: Unit, tool: Tool, adapter: Adapter | null): Exact | null => {
  const own = convert(value, unit, tool.unit);
  if (own === null || adapter === null || tool.length === undefined) return own;
  const length = parseDecimal(tool.length.value);
  const given = parseDecimal(adapter.extension.value);
  const extension = given === null ? null : convert(given, adapter.extension.unit, tool.length.unit);
  if (length === null || extension === null) return null;
  return settingForDelivered(own, { length, extension, angle: adapter.angle });
};

const isInRange = (tool: Tool, value: Exact): boolean => {
  const low = parseDecimal(tool.low);
  const high = parseDecimal(tool.high);
  return low !== null && high !== null && compare(value, low) >= 0 && compare(value, high) <= 0;
};

export interface EvidenceOptions {
  /** A crow's-foot is put on where the tool's length is known. */
  readonly behindAdapter?: boolean;
  /** What makes this reading another than that of a like joint: the car, for one. */
  readonly salt?: string;
  /** This tool and no other. */
  readonly only?: ToolId;
}

/** Evidence for a final, or null where no tool in the shop can make it. */
export const evidenceFor = (
  joint: CompiledJoint,
  bench: Bench,
  { behindAdapter = false, salt = '', only }: EvidenceOptions = {},
): TorqueEvidence | null => {
  const passes = Array.from({ length: joint.passes }, () => joint.order);
  const name = `${salt} ${joint.stateKey}`;
  if (joint.method === 'sequence')
    return {
      passes,
      steps: Object.fromEntries(
        joint.sequence.map(({ step, window }) => [
          step,
          window === null ? 'done' : near(window, `${name} ${step}`),
        ]),
      ),
    };
  if (joint.specification.kind !== 'window') return { passes };
  const { window } = joint.specification;
  const does = (tool: Tool): boolean =>
    (only === undefined || tool.id === only) && toolFitsMethod(tool.kind, joint.method);
  const choice = chooseTool(bench, { window, aim: aimOf(window), does, behindAdapter });
  if (choice === null) return null;
  const { tool, adapter } = choice;
  return {
    tool: tool.id,
    ...(adapter === null ? {} : { adapter: adapter.id }),
    passes,
    ...shownValues(joint, window, choice, name),
    ...(joint.angle === null ? {} : { angles: each(joint, joint.angle, `${name} angle`) }),
  };
};

const near = (window: Window, salt: string): string =>
  readingIn(window, salt, toDecimalText(aimOf(window), 3));

const each = (joint: CompiledJoint, window: Window, salt: string): readonly string[] =>
  joint.order.map((fastener) => near(window, `${salt} ${String(fastener)}`));

/** A click tool is set once; any other is read at each fastener, its drag told apart where there is one. */
const shownValues = (
  joint: CompiledJoint,
  window: Window,
  { tool, shown }: Choice,
  salt: string,
): Pick<TorqueEvidence, 'setting' | 'readings' | 'drags'> => {
  const own = (value: Exact | null): Exact | null => (value === null ? null : shown(value));
  const aim = shown(aimOf(window)) ?? exact(0);
  if (tool.kind === 'click') return { setting: toDecimalText(aim, 1) };
  const range = { ...window, low: own(window.low), high: own(window.high), target: aim, unit: tool.unit };
  const readings = each(joint, range, salt);
  if (joint.method !== 'prevailing') return { readings };
  const drags = joint.order.map((fastener) => dragOf(aim, `${salt} drag ${String(fastener)}`));
  return {
    readings: readings.map((text, index) => sum(text, drags[index] ?? '0')),
    drags,
  };
};

/** A new all-metal nut drags with about a twelfth of what clamps it. */
const dragOf = (aim: Exact, salt: string): string => {
  const twelfth = divide(aim, exact(12)) ?? exact(0);
  return toDecimalText(add(twelfth, exact(Math.round(shareOf(salt) * 10), 10)), 1);
};

const sum = (a: string, b: string): string =>
  toDecimalText(add(parseDecimal(a) ?? exact(0), parseDecimal(b) ?? exact(0)), 2);

/** A tool to re-apply with: one that reaches the low end of the window, and another than made the final if there is one. */
export const reapplyingTool = (
  joint: CompiledJoint,
  bench: Bench,
  madeWith: ToolId | null = null,
): string | null => {
  const good = bench.tools.filter((tool) => trustRefusals(tool, bench).length === 0);
  if (joint.specification.kind !== 'window') return good[0]?.id ?? null;
  const { window } = joint.specification;
  const aim = window.low ?? aimOf(window);
  const tightens = (tool: Tool): boolean => toolFitsMethod(tool.kind, 'click');
  const wanted: Wanted = { window, aim, does: tightens, behindAdapter: false };
  const other = chooseTool(bench, { ...wanted, does: (tool) => tool.id !== madeWith && tightens(tool) });
  return (other ?? chooseTool(bench, wanted))?.tool.id ?? null;
};

/** A value for everything that a check asks. */
export const valuesFor = (check: CompiledCheck, salt = ''): Readonly<Record<string, string>> =>
  Object.fromEntries(
    check.values.map(({ name, limit }) => [
      name,
      limit.kind === 'statement' ? 'yes' : near(limit.window, `${salt} ${check.stateKey} ${name}`),
    ]),
  );
