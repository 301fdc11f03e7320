/** The car passes a gate, goes back, or is delivered. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { CarId } from '@/lib/domain/base/vocabulary';
import { gateUnmet } from '@/lib/domain/gate';
import { looseEnds } from '@/lib/domain/loose-ends';
import type { CompiledStage } from '@/lib/domain/plan/compiled';
import { unsettledOf } from '@/lib/domain/unsettled';
import { accept, deny, unknown, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';

/** One stage at a time; a drop further on is answered with this gate's list (D29). */
export const advance = (at: Case, claim: CarClaimOf<'advance-car'>): Decision => {
  const { plan, car, facts } = at;
  const target = plan.stageIndex.get(claim.to);
  if (target === undefined) return unknown('stage', claim.to);
  const from = plan.stages[car.stage];
  const next = plan.stages[car.stage + 1];
  if (from === undefined) return unknown('stage', String(car.stage));
  if (next === undefined) return deny(refuse('last-gate', { stage: from.key }));
  const refusals = [
    ...(target === next.index
      ? []
      : [refuse('one-stage-at-a-time', { from: from.key, to: claim.to, next: next.key })]),
    ...gateUnmet(plan, car, facts, car.stage),
    ...roomRefusals(at, next),
  ];
  return unless(refusals, () => [gatePassed(car.stage, next, from.key, [], null)]);
};

export const gatePassed = (
  from: number,
  next: CompiledStage,
  stage: string,
  overridden: readonly string[],
  reason: string | null,
): {
  type: 'gate-passed';
  from: number;
  to: number;
  stage: string;
  overridden: readonly string[];
  reason: string | null;
} => ({
  type: 'gate-passed',
  from,
  to: next.index,
  stage,
  overridden,
  reason,
});

/** A full bay or jig: the one soft refusal. */
const roomRefusals = ({ facts, car }: Case, stage: CompiledStage): readonly Refusal[] => {
  if (stage.capacity === null) return [];
  const inPlan = facts.occupancy[car.plan] ?? {};
  const cars: readonly CarId[] = stage.room.flatMap((key) => inPlan[key] ?? []).filter((id) => id !== car.id);
  return cars.length < stage.capacity
    ? []
    : [refuse('room-full', { stage: stage.key, capacity: stage.capacity, cars }, { soft: true })];
};

/** Bad news, so never refused for the state of things; naming no earlier stage is naming nothing. */
export const sendBack = (at: Case, claim: CarClaimOf<'send-back'>): Decision => {
  const { plan, car } = at;
  const to = plan.stageIndex.get(claim.to);
  if (to === undefined || to >= car.stage) return unknown('earlier stage', claim.to);
  return accept({
    type: 'car-sent-back',
    from: car.stage,
    to,
    stages: plan.stages.slice(to, car.stage + 1).map((stage) => stage.key),
    reason: claim.reason,
  });
};

/** The last stage is left by delivery, and that needs no loose end. */
export const deliver = (at: Case): Decision => {
  const { plan, car, facts } = at;
  const last = plan.stages.at(-1);
  const here = plan.stages[car.stage];
  if (last === undefined || here === undefined) return unknown('stage', String(car.stage));
  const gate = gateUnmet(plan, car, facts, last.index);
  const named = new Set(gate.map((refusal) => JSON.stringify(refusal.details)));
  return unless(
    [
      ...(car.delivered ? [refuse('car-delivered', { car: car.id })] : []),
      ...(here.index === last.index ? [] : [refuse('not-last-gate', { stage: here.key, last: last.key })]),
      ...gate,
      ...looseEnds(car, unsettledOf(plan, car, facts))
        .filter((end) => !named.has(JSON.stringify(end.refusal.details)))
        .map((end) => end.refusal),
    ],
    () => [{ type: 'car-delivered' }],
  );
};
