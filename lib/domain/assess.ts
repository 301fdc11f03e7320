/**
 * What is true of a car now: its gates, its loose ends, and its jobs, ready or waiting and for what. Derived, never
 * stored. It asks of the shop only what doubts and clocks need; what a kit lacks is stock's word beside it (D59).
 */
import type { Refusal } from './base/refusals';
import type { Key } from './base/vocabulary';
import type { Car } from './car/rows';
import type { Facts } from './facts';
import { gateUnmet } from './gate';
import { jobsOf } from './jobs';
import type { Job } from './jobs';
import { looseEnds } from './loose-ends';
import type { LooseEnd } from './loose-ends';
import type { CompiledPlan } from './plan/compiled';
import { unsettledOf } from './unsettled';

export interface Assessment {
  readonly car: Car['id'];
  readonly version: number;
  readonly stage: Key;
  /** The gate before the car: closed while anything is unmet. */
  readonly gate: { readonly stage: Key; readonly unmet: readonly Refusal[] };
  readonly looseEnds: readonly LooseEnd[];
  readonly jobs: readonly Job[];
}

export type { Job, LooseEnd };

/** One car's assessment. Cheap enough to be made anew after every event. */
export const assess = (plan: CompiledPlan, car: Car, facts: Facts): Assessment => {
  const stage = plan.stages[car.stage]?.key ?? '';
  const open = unsettledOf(plan, car, facts);
  return {
    car: car.id,
    version: car.version,
    stage,
    gate: { stage, unmet: gateUnmet(plan, car, facts, car.stage, open) },
    looseEnds: looseEnds(car, open),
    jobs: jobsOf(plan, car, facts, open),
  };
};
