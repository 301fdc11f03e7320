/** Components of a car: what may be graded, what waits for a trip, what is out on one. */
import type { Key } from '@/lib/domain/base/vocabulary';
import { lastOuting } from '@/lib/domain/car/component-rows';
import type { Outing } from '@/lib/domain/car/component-rows';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';

/**
 * May a grade be given, or another one? Of the donor's own piece, as long as it lies here: not put on the car, taken, out,
 * worked on or received since. What is found later is a finding.
 */
export const mayGrade = ({ parts, components }: Pick<Car, 'parts' | 'components'>, part: Key): boolean => {
  const { state = 'absent', piece = 1 } = parts[part] ?? {};
  const component = components[part];
  if (piece !== (component?.piece ?? 1)) return false;
  if (state !== 'present') return state === 'absent';
  return component?.grade === 'reuse' && component.from === null && component.outings.length === 0;
};

/** Graded reuse, and nobody has looked it over as the plan asks: it does not count as here. */
export const waitsForLook = (
  { document }: Pick<CompiledPlan, 'document'>,
  { parts, components }: Pick<Car, 'parts' | 'components'>,
  part: Key,
): boolean => {
  const { state = 'absent', piece = 1 } = parts[part] ?? {};
  const component = components[part];
  return (
    document.parts?.[part]?.lookOver === true &&
    state === 'absent' &&
    component?.grade === 'reuse' &&
    component.piece === piece
  );
};

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
