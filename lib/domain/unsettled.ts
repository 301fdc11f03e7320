/** What of a car's work is not settled, found in one look at each thing: loose ends and jobs are two views of it. */
import { isAtLevel } from './base/vocabulary';
import { doubtsOf } from './car/joint';
import type { DoubtFacts } from './car/joint';
import type { Doubt, JointRow } from './car/joint-rows';
import type { Car, CheckRow } from './car/rows';
import type { CompiledCheck, CompiledJoint, CompiledOperation, CompiledPlan } from './plan/compiled';

/** A joint that somebody has touched: short of its level or of final, or in doubt. */
export interface UnsettledJoint {
  readonly joint: CompiledJoint;
  readonly row: JointRow;
  readonly doubts: readonly Doubt[];
}

/** Each list in the plan's order. */
export interface Unsettled {
  /** Not finished, begun or not. */
  readonly operations: readonly CompiledOperation[];
  readonly joints: readonly UnsettledJoint[];
  /** Begun, failed or due again. */
  readonly checks: readonly { readonly check: CompiledCheck; readonly row: CheckRow }[];
}

export const unsettledOf = (plan: CompiledPlan, car: Car, facts: DoubtFacts): Unsettled => {
  const operations: CompiledOperation[] = [];
  for (const operation of plan.all.operations)
    if (car.operations[operation.stateKey]?.status !== 'finished') operations.push(operation);
  const checks: { check: CompiledCheck; row: CheckRow }[] = [];
  for (const check of plan.all.checks) {
    const row = car.checks[check.stateKey];
    if (row !== undefined && row.status !== 'clear' && row.status !== 'conceded') checks.push({ check, row });
  }
  return { operations, joints: unsettledJoints(plan, car, facts), checks };
};

const unsettledJoints = (plan: CompiledPlan, car: Car, facts: DoubtFacts): readonly UnsettledJoint[] => {
  const found: UnsettledJoint[] = [];
  for (const joint of plan.all.joints) {
    const row = car.joints[joint.stateKey];
    if (row === undefined) continue;
    const doubts = doubtsOf(row, facts);
    const isSettled = isAtLevel(row.level, joint.dueLevel) && isAtLevel(row.level, 'final');
    if (doubts.length > 0 || !isSettled) found.push({ joint, row, doubts });
  }
  return found;
};
