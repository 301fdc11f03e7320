/**
 * A stage gate: everything due at or before it, whatever stage it belongs to; the entry list of the next stage;
 * holds of scope gate; findings and changes that touch anything due by then.
 */
import { refuse } from './base/refusals';
import type { Refusal } from './base/refusals';
import { levelOf } from './car/joint';
import type { Car } from './car/rows';
import type { CompiledJoint, CompiledOperation, CompiledPlan } from './plan/compiled';
import { belowLevel, levelUnmet, notClear, stillPlaced, unfinished, unmet } from './unmet';
import type { UnmetFacts } from './unmet';
import { unsettledOf } from './unsettled';
import type { Unsettled } from './unsettled';

/** Everything that keeps gate `stage` closed; an operation's joints and checks stand under it as one line. */
export const gateUnmet = (
  plan: CompiledPlan,
  car: Car,
  facts: UnmetFacts,
  stage: number,
  open: Unsettled = unsettledOf(plan, car, facts),
): readonly Refusal[] => {
  const found: Refusal[] = [];
  const due = asked(open, stage);
  for (let at = 0; at <= stage; at += 1) dueAt(plan, car, facts, at, due, found);
  const next = plan.stages[stage + 1];
  if (next !== undefined) found.push(...unmet(plan, car, facts, next.entry));
  openStopgaps(car, stage, found);
  openMatters(car, stage, found);
  return found;
};

/** What counts of the open work at gate `stage`, picked once; what hangs on an undecided option doesn't count yet. */
const asked = (open: Unsettled, stage: number): Unsettled => ({
  operations: open.operations.filter(({ operation }) => counts(operation, stage)),
  joints: open.joints.filter(({ joint }) => counts(joint, stage)),
  checks: open.checks.filter(({ check }) => counts(check, stage)),
});

interface Due {
  readonly due: number;
  readonly undecided: readonly string[];
}
const counts = (each: Due, stage: number): boolean => each.due <= stage && each.undecided.length === 0;

/** What is due at this one gate and not settled. */
const dueAt = (
  plan: CompiledPlan,
  car: Car,
  facts: UnmetFacts,
  stage: number,
  open: Unsettled,
  found: Refusal[],
): void => {
  for (const option of plan.optionsDue[stage] ?? [])
    if (car.options[option] === undefined)
      found.push(
        refuse('option-undecided', { option, choices: plan.document.options?.[option]?.choices ?? [] }),
      );
  const nested = new Set<string>();
  for (const { operation } of open.operations) {
    const refusal = operation.due === stage ? unfinished(car, operation.stateKey) : null;
    if (refusal !== null) found.push(withUnder(plan, car, facts, operation, refusal, nested));
  }
  for (const { joint, row, doubts } of open.joints) {
    if (joint.due !== stage || nested.has(joint.stateKey)) continue;
    const refusal = levelUnmet(joint.stateKey, levelOf(row), doubts, joint.dueLevel);
    if (refusal !== null) found.push(refusal);
  }
  for (const { check } of open.checks) {
    if (check.due !== stage || nested.has(check.stateKey)) continue;
    const refusal = notClear(car, check.stateKey);
    if (refusal !== null) found.push(refusal);
  }
};

const jointUnmet = (car: Car, facts: UnmetFacts, joint: CompiledJoint): Refusal | null =>
  belowLevel(car, facts, joint.stateKey, joint.dueLevel);

const isAskedWith = (each: Due, operation: CompiledOperation): boolean =>
  each.due === operation.due && each.undecided.length === 0;

/** Only what is due at this gate as well nests: a joint due later is not asked here. */
const withUnder = (
  plan: CompiledPlan,
  car: Car,
  facts: UnmetFacts,
  operation: CompiledOperation,
  refusal: Refusal,
  nested: Set<string>,
): Refusal => {
  const things = plan.under.get(operation.stateKey);
  if (things === undefined) return refusal;
  const under: Refusal[] = [];
  for (const joint of things.joints) {
    const one = isAskedWith(joint, operation) ? jointUnmet(car, facts, joint) : null;
    if (one === null) continue;
    nested.add(joint.stateKey);
    under.push(one);
  }
  for (const check of things.checks) {
    const one = isAskedWith(check, operation) ? notClear(car, check.stateKey) : null;
    if (one === null) continue;
    nested.add(check.stateKey);
    under.push(one);
  }
  return under.length === 0 ? refusal : { ...refusal, under };
};

/** Planned ones and those placed by tap alike: what is in and should be out. */
const openStopgaps = (car: Car, stage: number, found: Refusal[]): void => {
  for (const [id, row] of Object.entries(car.stopgaps))
    if (row.outBy <= stage && row.removed < row.placed) found.push(stillPlaced(id, row));
};

const openMatters = (car: Car, stage: number, found: Refusal[]): void => {
  for (const [id, hold] of Object.entries(car.holds))
    if (hold.releasedBy === null && hold.scope === 'gate')
      found.push(refuse('hold-stands', { hold: id, scope: 'gate', reason: hold.reason }));
  for (const [id, row] of Object.entries(car.findings)) {
    if (row.state === 'undecided' && row.due <= stage)
      found.push(refuse('finding-undecided', { finding: id, about: row.about.key }));
    if (row.state === 'decided' && row.workDue <= stage)
      found.push(
        refuse('finding-not-closed', {
          finding: id,
          about: row.about.key,
          disposition: row.disposition ?? 'rework',
        }),
      );
  }
  for (const [id, row] of Object.entries(car.changes))
    if (row.state === 'asked' && row.due <= stage) found.push(refuse('change-undecided', { change: id }));
};
