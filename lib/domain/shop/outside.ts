/** Outside work: what waits for a trip, and what is out on one. */
import type { Key } from '@/lib/domain/base/vocabulary';
import { lastOuting } from '@/lib/domain/car/component-rows';
import type { Outing } from '@/lib/domain/car/component-rows';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';

/** Parts that are to be refurbished, that the plan has worked on elsewhere, that lie here and were not done there yet. */
export const toSend = (plan: CompiledPlan, car: Car): readonly Key[] =>
  Object.entries(plan.document.parts ?? {}).flatMap(([part, { outside }]) => {
    const component = car.components[part];
    const row = car.parts[part];
    const isThisPiece = component?.piece === (row?.piece ?? 1);
    const isHere = (row?.state ?? 'absent') === 'absent';
    const isDone = lastOuting(component)?.back?.how === 'done';
    return outside !== undefined && component?.grade === 'refurbish' && isThisPiece && isHere && !isDone
      ? [part]
      : [];
  });

export interface OnTrip extends Outing {
  readonly part: Key;
  readonly piece: number;
}

/** Everything of this car that was on this trip, in the order in which it went. */
export const onTrip = (car: Car, trip: string): readonly OnTrip[] =>
  Object.entries(car.components)
    .flatMap(([part, { piece, outings }]) =>
      outings.filter((each) => each.trip === trip).map((each) => ({ ...each, part, piece })),
    )
    .toSorted((a, b) => (a.sentAt < b.sentAt ? -1 : a.sentAt > b.sentAt ? 1 : a.part < b.part ? -1 : 1));
