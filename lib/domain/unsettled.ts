/** Joints that somebody has touched and that are not settled: short of their level or of final, or in doubt. Found once, asked twice. */
import { isAtLevel } from './base/vocabulary';
import { doubtsOf } from './car/joint';
import type { DoubtFacts } from './car/joint';
import type { Car, Doubt, JointRow } from './car/rows';
import type { CompiledJoint, CompiledPlan } from './plan/compiled';

export interface UnsettledJoint {
  readonly joint: CompiledJoint;
  readonly row: JointRow;
  readonly doubts: readonly Doubt[];
}

/** In the plan's order. Most joints of a car are either untouched or settled, and cost one look. */
export const unsettledJoints = (
  plan: CompiledPlan,
  car: Car,
  facts: DoubtFacts,
): readonly UnsettledJoint[] => {
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
