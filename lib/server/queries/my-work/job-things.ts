/** What a job takes: the number that goes on the tool line by line, hardware, and the tools that fit or stay on the hook. */
import { toDecimalText } from '@/lib/domain/base/exact';
import type { StateKey } from '@/lib/domain/base/vocabulary';
import { toExactText } from '@/lib/domain/car/joint';
import { jointCase } from '@/lib/domain/decide/joints';
import type { JointCase } from '@/lib/domain/decide/joints';
import type { CompiledOperation } from '@/lib/domain/plan/compiled';
import { windowText } from '@/lib/domain/plan/window';
import { toolFitsMethod } from '@/lib/domain/torque/tool';
import { trustRefusals } from '@/lib/domain/torque/trust';
import { lineOf } from '@/lib/server/queries/car/lines';
import type { Seen } from '@/lib/server/queries/car/seen';
import { toolViews } from '@/lib/server/queries/sign-off/tool-view';
import type { ToolView } from '@/lib/wire/views/sign-off';
import type { ToolLine, TorqueLine } from '@/lib/wire/views/my-work';

/** A joint of the job with the tools that there are for it. */
export interface JobJoint {
  readonly at: JointCase;
  readonly tools: readonly ToolView[];
}

const TORQUED: ReadonlySet<string> = new Set(['final', 'retorque', 'recheck']);

/** Joints that the operation's body takes further, each once. */
export const jointsOf = (seen: Seen, operation: CompiledOperation): ReadonlyMap<StateKey, JobJoint> =>
  new Map(
    operation.body.flatMap((line) => {
      const joint = 'joint' in line ? seen.plan.joints.get(line.joint) : undefined;
      if (joint === undefined) return [];
      const isTorqued = operation.body.some(
        (each) => 'joint' in each && each.joint === joint.stateKey && TORQUED.has(each.verb),
      );
      return [[joint.stateKey, jobJoint(seen, joint.stateKey, isTorqued)] as const];
    }),
  );

export const jobJoint = (seen: Seen, key: StateKey, isTorqued = true): JobJoint => {
  const joint = seen.plan.joints.get(key);
  if (joint === undefined) throw new Error(`no joint ${key}`);
  const at = jointCase(seen.at, joint);
  const slot = seen.plan.document.joints?.[joint.key]?.slot ?? false;
  return { at, tools: isTorqued ? toolViews(at, slot, seen.spoken) : [] };
};

/** By the first tool that can do it; null where none turns it, or nobody can say what goes on it. */
export const torqueLine = ({ at, tools }: JobJoint): TorqueLine | null => {
  const { specification } = at.joint;
  if (specification.kind !== 'window') return null;
  for (const { tool, ways } of tools) {
    const way = ways.find(({ whyNot, setting }) => whyNot.length === 0 && setting !== null);
    if (way === undefined || way.setting === null) continue;
    const { window } = specification;
    return {
      tool: tool.id,
      kind: tool.kind,
      adapter: way.adapter,
      setting: way.setting,
      unit: tool.unit,
      target: windowText(window),
      low: window.low === null ? null : toExactText(window.low),
      high: window.high === null ? null : toExactText(window.high),
    };
  }
  return null;
};

export const torqueOf = (
  joints: ReadonlyMap<StateKey, JobJoint>,
  line: CompiledOperation['body'][number],
): TorqueLine | null => {
  if (!('joint' in line) || !TORQUED.has(line.verb)) return null;
  const found = joints.get(line.joint);
  return found === undefined ? null : torqueLine(found);
};

/** Those that can do it first; then those that would, were they to be trusted. */
export const toolLines = (seen: Seen, joints: readonly JobJoint[]): readonly ToolLine[] => {
  const good = new Map<string, ToolLine>();
  const bad = new Map<string, ToolLine>();
  for (const { at, tools } of joints)
    for (const { tool, range, good: until, ways } of tools) {
      const { id, name } = tool;
      if (ways.some(({ whyNot }) => whyNot.length === 0))
        good.set(id, { id, name, says: `${range}, ${until}`, whyNot: null });
      const [refusal] = trustRefusals(tool, seen.facts);
      if (refusal !== undefined && toolFitsMethod(tool.kind, at.joint.method))
        bad.set(id, { id, name, says: range, whyNot: lineOf(seen, refusal).says });
    }
  // Those whose number stands at a step come first.
  const named = new Set([...joints].map((joint) => torqueLine(joint)?.tool));
  const first = [...good.values()].sort((a, b) => Number(named.has(b.id)) - Number(named.has(a.id)));
  return [...first, ...[...bad.values()].filter(({ id }) => !good.has(id))];
};

/** What a joint of this key is re-applied at, in words: the low end of its window. */
export const reappliedAt = ({ joint }: JointCase): string => {
  if (joint.specification.kind !== 'window') return '';
  const { low, unit } = joint.specification.window;
  return low === null ? '' : `${toDecimalText(low, 2)} ${unit}`;
};
