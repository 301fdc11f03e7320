/** The second person, and the second try: verify and recheck. */
import { compare, parseDecimal } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import { convert } from '@/lib/domain/base/units';
import { isAtLevel } from '@/lib/domain/base/vocabulary';
import { levelOf, participantsOf } from '@/lib/domain/car/joint';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import type { Tool } from '@/lib/domain/torque/tool';
import { trustRefusals } from '@/lib/domain/torque/trust';
import { holdsNaming, qualification, signature, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';
import { staleCycle, workFor } from './joints';
import type { JointCase } from './joints';

/** Verified by somebody who had no hand in this cycle, by the joint's own method. */
export const verify = (at: JointCase, claim: CarClaimOf<'verify-joint'>): Decision => {
  const { joint, row } = at;
  const level = levelOf(row);
  const refusals = [
    ...staleCycle(at, claim.cycle),
    ...(level === 'final'
      ? []
      : level === 'verified'
        ? [refuse('level-already', { joint: joint.stateKey, level })]
        : [refuse('joint-not-final', { joint: joint.stateKey, level })]),
    ...(isAtLevel(level, 'final')
      ? at.doubts.map(({ cause, remedy, because }) =>
          refuse('joint-in-doubt', { joint: joint.stateKey, cause, remedy, because }),
        )
      : []),
    ...holdsNaming(at, joint.stateKey),
    ...independence(at),
    ...qualification(at, at.facts.actor, joint.verifier),
    ...methodRefusals(joint, claim.method),
    ...(claim.method === 're-applied' && joint.method !== 'firm'
      ? toolForReapplying(at, joint, claim.tool)
      : []),
  ];
  return unless(refusals, () => [
    {
      type: 'joint-marked',
      joint: joint.stateKey,
      cycle: row.cycle,
      mark: {
        level: 'verified',
        signature: at.command,
        by: at.facts.actor,
        crew: [],
        at: at.facts.judgedAt,
        run: null,
        tool: claim.tool ?? null,
        adapter: null,
        method: claim.method,
        delivered: null,
        extremes: null,
        window: null,
        useOnce: joint.useOnce,
        loaded: [],
        cleared: [],
        struck: false,
      },
      doubtsLeft: row.doubts,
      evidence: { method: claim.method, tool: claim.tool ?? null },
      toolUse: null,
      signed: signature('verify-joint', joint.stateKey, row.cycle),
    },
  ]);
};

/** Nobody verifies work of a cycle that they had a hand in: fitted, snugged, torqued, or were on the job for (D26). */
export const mayVerify = (at: JointCase, person: string): boolean => {
  if (participantsOf(at.row).has(person)) return false;
  return !at.row.marks.some(({ run }) => run !== null && isOnRun(at, run.operation, run.run, person));
};

const isOnRun = ({ car }: Case, operation: string, run: number, person: string): boolean => {
  const row = car.operations[operation];
  const crew = row?.run === run ? row.crew : row?.earlierCrews[String(run)];
  return crew?.includes(person) ?? false;
};

const independence = (at: JointCase): readonly Refusal[] =>
  mayVerify(at, at.facts.actor)
    ? []
    : [refuse('not-independent', { person: at.facts.actor, joint: at.joint.stateKey })];

/** The plan's own method, or more than it asks for where it only asks to look. */
const methodRefusals = (joint: CompiledJoint, given: string): readonly Refusal[] =>
  joint.verify === null || joint.verify === given || joint.verify === 'seen'
    ? []
    : [refuse('verify-method-differs', { joint: joint.stateKey, wanted: joint.verify, given })];

const toolForReapplying = (at: Case, joint: CompiledJoint, id: string | undefined): readonly Refusal[] => {
  const key = joint.stateKey;
  if (id === undefined) return [refuse('tool-missing', { joint: key, method: 're-applied' })];
  const tool = at.facts.tools[id];
  if (tool === undefined) return [refuse('unknown-thing', { what: 'tool', key: id })];
  return [...trustRefusals(tool, at.facts), ...reaches(tool, joint)];
};

/** It is applied again at the low end of the window, so the tool must reach that; behind an adapter it can't be said. */
const reaches = (tool: Tool, joint: CompiledJoint): readonly Refusal[] => {
  if (joint.specification.kind !== 'window') return [];
  const { low, unit } = joint.specification.window;
  const wanted = low === null ? null : convert(low, unit, tool.unit);
  const from = parseDecimal(tool.low);
  const to = parseDecimal(tool.high);
  if (wanted === null || from === null || to === null) return [];
  return compare(wanted, from) < 0 || compare(wanted, to) > 0
    ? [
        refuse('setting-outside-tool-range', {
          tool: tool.id,
          value: joint.specification.window.text,
          range: `${tool.low} to ${tool.high} ${tool.unit}`,
        }),
      ]
    : [];
};

/** Tried again with a good tool at its value, and nothing moved. What moved is a warning of its own. */
export const recheck = (at: JointCase, claim: CarClaimOf<'recheck-joint'>): Decision => {
  const { joint, row } = at;
  const level = levelOf(row);
  const work = workFor(at, 'recheck');
  const isAsked = joint.broughtBy.some(
    ({ operation, verb }) => verb === 'recheck' && operation === work.run?.operation,
  );
  const refusals = [
    ...staleCycle(at, claim.cycle),
    ...(isAtLevel(level, 'final') ? [] : [refuse('joint-not-final', { joint: joint.stateKey, level })]),
    ...(at.doubts.length === 0 && !isAsked ? [refuse('nothing-to-recheck', { joint: joint.stateKey })] : []),
    ...at.doubts
      .filter((doubt) => doubt.remedy !== 'recheck')
      .map(({ remedy, because }) => refuse('doubt-needs-more', { joint: joint.stateKey, remedy, because })),
    ...(at.doubts.length > 0 || isAsked ? work.refusals : []),
    ...holdsNaming(at, joint.stateKey),
    ...qualification(at, at.facts.actor, joint.who),
    ...(joint.method === 'firm' ? [] : toolForReapplying(at, joint, claim.tool)),
  ];
  return unless(refusals, () => [
    {
      type: 'joint-rechecked',
      joint: joint.stateKey,
      cycle: row.cycle,
      tool: claim.tool ?? null,
      run: work.run,
      cleared: row.doubts,
      doubtsLeft: [],
      signed: signature('recheck-joint', joint.stateKey, row.cycle),
    },
  ]);
};
