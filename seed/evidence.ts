/** Evidence that satisfies a joint or a check, taken from the plan: what a careful person would record. Invented values. */
import { add, compare, divide, exact, parseDecimal, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { convert } from '@/lib/domain/base/units';
import type { CompiledCheck, CompiledJoint } from '@/lib/domain/plan/compiled';
import type { Window } from '@/lib/domain/plan/window';
import type { TorqueEvidence } from '@/lib/domain/torque/evidence';
import { toolFitsMethod } from '@/lib/domain/torque/tool';
import type { Tool } from '@/lib/domain/torque/tool';

/** What is aimed at: the target, else the middle, else the one end there is. */
export const aimOf = ({ low, high, target }: Window): Exact => {
  if (target !== null) return target;
  if (low !== null && high !== null) return divide(add(low, high), exact(2)) ?? low;
  return low ?? high ?? exact(0);
};

/** The first tool that does the method and has the value in its range, with the value in its own unit. */
const toolFor = (
  tools: readonly Tool[],
  joint: CompiledJoint,
  window: Window,
): { tool: Tool; value: string } | null => {
  for (const tool of tools) {
    const value = convert(aimOf(window), window.unit, tool.unit);
    const low = parseDecimal(tool.low);
    const high = parseDecimal(tool.high);
    if (value === null || low === null || high === null || !toolFitsMethod(tool.kind, joint.method)) continue;
    if (compare(value, low) >= 0 && compare(value, high) <= 0)
      return { tool, value: toDecimalText(value, 3) };
  }
  return null;
};

/** Evidence for a final, or null where no tool in the shop can make it. */
export const evidenceFor = (joint: CompiledJoint, tools: readonly Tool[]): TorqueEvidence | null => {
  const passes = Array.from({ length: joint.passes }, () => joint.order);
  if (joint.method === 'sequence')
    return {
      passes,
      steps: Object.fromEntries(
        joint.sequence.map(({ step, window }) => [
          step,
          window === null ? 'done' : toDecimalText(aimOf(window)),
        ]),
      ),
    };
  if (joint.specification.kind !== 'window') return { passes };
  const found = toolFor(tools, joint, joint.specification.window);
  if (found === null) return null;
  const { tool, value } = found;
  const each = (text: string): readonly string[] => joint.order.map(() => text);
  return {
    tool: tool.id,
    passes,
    ...(tool.kind === 'click' ? { setting: value } : { readings: each(value) }),
    ...(joint.method === 'prevailing' ? { drags: each('0') } : {}),
    ...(joint.angle === null ? {} : { angles: each(toDecimalText(aimOf(joint.angle))) }),
  };
};

/** A tool to re-apply with: one that reaches the low end of the window. */
export const reapplyingTool = (joint: CompiledJoint, tools: readonly Tool[]): string | null => {
  if (joint.specification.kind !== 'window') return tools[0]?.id ?? null;
  const { window } = joint.specification;
  const low = window.low ?? window.high;
  const aimed = low === null ? window : { ...window, target: low };
  const any = { ...joint, method: 'click' as const };
  return toolFor(tools, any, aimed)?.tool.id ?? null;
};

/** A value for everything that a check asks. */
export const valuesFor = (check: CompiledCheck): Readonly<Record<string, string>> =>
  Object.fromEntries(
    check.values.map(({ name, limit }) => [
      name,
      limit.kind === 'statement' ? 'yes' : toDecimalText(aimOf(limit.window)),
    ]),
  );
