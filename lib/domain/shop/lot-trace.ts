/** In which joints a lot stands now and which work used it up, on which cars: how a bad lot is found again. */
import { ZERO, add, compare } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { LotId, StateKey } from '@/lib/domain/base/vocabulary';
import { WHOLE, placesOf, shareOfPlace } from '@/lib/domain/car/hardware';
import { doubtsOf } from '@/lib/domain/car/joint';
import type { DoubtFacts } from '@/lib/domain/car/joint';
import type { JointRow } from '@/lib/domain/car/joint-rows';
import type { Car, UsedUp } from '@/lib/domain/car/rows';
import type { CompiledJoint, CompiledPlan } from '@/lib/domain/plan/compiled';
import type { Lot } from './rows';
import { quantityOf } from './stock';

export interface LotInJoint {
  readonly joint: CompiledJoint;
  readonly row: JointRow;
  readonly quantity: Exact;
  /** None where it serves the joint as a whole. */
  readonly fasteners: readonly number[];
  readonly inDoubt: boolean;
}

/** Is some of a lot that is put aside for this car left, by what stands in its joints? Nobody else takes from it. */
export const isLeftFor = (
  plan: CompiledPlan,
  car: Car,
  { id, quantity }: Pick<Lot, 'id' | 'quantity'>,
  facts: DoubtFacts,
): boolean => {
  const fitted = lotIn(plan, car, id, facts).reduce((sum, each) => add(sum, each.quantity), ZERO);
  return compare(fitted, quantityOf(String(quantity))) < 0;
};

/** In the plan's order. A spent piece that came off promises nothing, and is not there any more. */
export const lotIn = (plan: CompiledPlan, car: Car, lot: LotId, facts: DoubtFacts): readonly LotInJoint[] =>
  plan.all.joints.flatMap((joint): readonly LotInJoint[] => {
    const row = car.joints[joint.stateKey];
    if (row?.lots.includes(lot) !== true) return [];
    let quantity = ZERO;
    const fasteners: number[] = [];
    for (const line of joint.hardware)
      for (const place of placesOf(joint, line)) {
        const piece = row.fasteners[place]?.[line.item];
        if (piece?.lot !== lot || piece.spent) continue;
        quantity = add(quantity, shareOfPlace(joint, line));
        if (place !== WHOLE) fasteners.push(Number(place));
      }
    // Another lot in the same joint may be the one that doubts it.
    const isBad = (facts.lots[lot]?.quarantined ?? null) !== null;
    const inDoubt = isBad && doubtsOf(row, facts).some(({ cause }) => cause === 'lot-quarantined');
    return [{ joint, row, quantity, fasteners: fasteners.sort((a, b) => a - b), inDoubt }];
  });

/** The work that used it up, in the order of the car's rows: it is in the car, and in no joint. */
export const workUsing = (
  { operations }: Pick<Car, 'operations'>,
  lot: LotId,
): readonly (UsedUp & { readonly operation: StateKey })[] =>
  Object.entries(operations).flatMap(([operation, { used = [] }]) =>
    used.filter((each) => each.lot === lot).map((each) => ({ operation, ...each })),
  );
