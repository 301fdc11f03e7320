/** What of a car's work is not settled, found in one look at each thing: gate, loose ends and jobs are views of it. */
import { isAtLevel } from './base/vocabulary';
import { doubtsOf } from './car/joint';
import type { DoubtFacts } from './car/joint';
import type { Doubt, JointRow } from './car/joint-rows';
import type { Car, CheckRow, OperationRow } from './car/rows';
import type { CompiledCheck, CompiledJoint, CompiledOperation, CompiledPlan } from './plan/compiled';

/** A joint that is short of its level or of final, or in doubt. Row undefined = untouched. */
export interface UnsettledJoint {
  readonly joint: CompiledJoint;
  readonly row: JointRow | undefined;
  readonly doubts: readonly Doubt[];
}

export interface UnsettledOperation {
  readonly operation: CompiledOperation;
  readonly row: OperationRow | undefined;
}

export interface UnsettledCheck {
  readonly check: CompiledCheck;
  readonly row: CheckRow | undefined;
}

/** Each list in the plan's order. */
export interface Unsettled {
  readonly operations: readonly UnsettledOperation[];
  readonly joints: readonly UnsettledJoint[];
  readonly checks: readonly UnsettledCheck[];
}

const NO_DOUBT: readonly Doubt[] = [];

interface Known extends DoubtFacts {
  readonly plan: CompiledPlan;
  readonly found: Unsettled;
}

/** For each version of a car: neither cars nor the shop's rows are ever changed in place, so identity tells versions. */
const known = new WeakMap<Car, Known>();

/** Asks no clock, so that the answer holds until the car, its plan, a tool or a lot changes. */
export const unsettledOf = (plan: CompiledPlan, car: Car, facts: DoubtFacts): Unsettled => {
  const before = known.get(car);
  if (before?.plan === plan && before.tools === facts.tools && before.lots === facts.lots)
    return before.found;
  const found = look(plan, car, facts);
  known.set(car, { plan, tools: facts.tools, lots: facts.lots, found });
  return found;
};

const look = (plan: CompiledPlan, car: Car, facts: DoubtFacts): Unsettled => {
  const operations: UnsettledOperation[] = [];
  for (const operation of plan.all.operations) {
    const row = car.operations[operation.stateKey];
    if (row?.status !== 'finished') operations.push({ operation, row });
  }
  const joints: UnsettledJoint[] = [];
  for (const joint of plan.all.joints) {
    const row = car.joints[joint.stateKey];
    const doubts = row === undefined ? NO_DOUBT : doubtsOf(row, facts);
    if (row === undefined || doubts.length > 0 || !isThere(joint, row)) joints.push({ joint, row, doubts });
  }
  const checks: UnsettledCheck[] = [];
  for (const check of plan.all.checks) {
    const row = car.checks[check.stateKey];
    if (row?.status !== 'clear' && row?.status !== 'conceded') checks.push({ check, row });
  }
  return { operations, joints, checks };
};

const isThere = (joint: CompiledJoint, row: JointRow): boolean =>
  isAtLevel(row.level, joint.dueLevel) && isAtLevel(row.level, 'final');
