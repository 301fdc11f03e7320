/**
 * Openings that follow from openings: beside a joint that is opened, one that may be tightened only once has to be renewed, and
 * that opens it too. Without these a planned re-opening would take hardware that nobody had counted.
 */
import type { StateKey } from '@/lib/domain/base/vocabulary';
import { doubtsOf, standingFinal } from '@/lib/domain/car/joint';
import type { DoubtFacts } from '@/lib/domain/car/joint';
import type { JointRow } from '@/lib/domain/car/joint-rows';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledJoint, CompiledPlan } from '@/lib/domain/plan/compiled';

/** A line of work to come on a joint, and where in the plan it stands. */
export interface Step {
  /** null = now: the joint beside it is doubted and must be opened for that. */
  readonly operation: StateKey | null;
  readonly verb: string;
  readonly order: number;
}

/** `retorque` counts as final; `renew` is an opening beside another, with what puts it back. */
export type StepsBeside = ReadonlyMap<StateKey, readonly Step[]>;

const NONE: StepsBeside = new Map();

/** The lines of work to come, in the plan's order: of operations that are not finished, and not done in this run. */
export const stepsToCome = (plan: CompiledPlan, car: Car, joint: CompiledJoint): readonly Step[] => {
  const row = car.joints[joint.stateKey];
  return joint.broughtBy
    .filter(({ operation, verb }) => {
      const work = car.operations[operation];
      return (
        work?.status !== 'finished' &&
        !(verb === 'open' && work !== undefined && isOpenedIn(row, operation, work.run))
      );
    })
    .map(({ operation, verb }) => ({
      operation,
      verb,
      order: orderOf(plan, operation, verb, joint.stateKey),
    }));
};

const isOpenedIn = (row: JointRow | undefined, operation: StateKey, run: number): boolean =>
  row?.opened?.run?.operation === operation && row.opened.run.run === run;

interface Places {
  readonly orders: ReadonlyMap<string, number>;
  readonly hasOnce: boolean;
}
const known = new WeakMap<CompiledPlan, Places>();

const placesIn = (plan: CompiledPlan): Places => {
  const before = known.get(plan);
  if (before !== undefined) return before;
  const orders = new Map<string, number>();
  for (const { stateKey, body } of plan.all.operations)
    for (const line of body)
      if ('joint' in line) orders.set(`${stateKey} ${line.verb} ${line.joint}`, orders.size);
  const isBeside = ({ disturbs }: CompiledJoint): boolean =>
    disturbs.some((key) => plan.joints.get(key)?.useOnce === true);
  const found = { orders, hasOnce: plan.all.joints.some(isBeside) };
  known.set(plan, found);
  return found;
};

const orderOf = (plan: CompiledPlan, operation: StateKey, verb: string, joint: StateKey): number =>
  placesIn(plan).orders.get(`${operation} ${verb} ${joint}`) ?? 0;

/** For each joint that may be tightened only once, the openings beside it. Empty for most plans. */
export const stepsBeside = (plan: CompiledPlan, car: Car, facts: DoubtFacts): StepsBeside => {
  if (!placesIn(plan).hasOnce) return NONE;
  const found = new Map<StateKey, Step[]>();
  const seen = new Set<string>();
  const open = (joint: CompiledJoint, { operation, order }: Omit<Step, 'verb'>): void => {
    for (const key of joint.disturbs) {
      const neighbour = plan.joints.get(key);
      const id = `${key} ${String(order)}`;
      if (neighbour?.useOnce !== true || seen.has(id)) continue;
      seen.add(id);
      found.set(key, [...(found.get(key) ?? []), { operation, verb: 'renew', order }]);
      // Renewing it is an opening like any other.
      open(neighbour, { operation, order });
    }
  };
  for (const joint of plan.all.joints) {
    if (joint.disturbs.length === 0) continue;
    const row = car.joints[joint.stateKey];
    if (standingFinal(row) !== null && doubtsOf(row, facts).some(({ remedy }) => remedy === 'renew'))
      open(joint, { operation: null, order: -1 });
    for (const step of stepsToCome(plan, car, joint)) if (step.verb === 'open') open(joint, step);
  }
  return found;
};
