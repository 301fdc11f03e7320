/** From which lots the hardware of a joint is proposed; the person who fits it says so or says otherwise. */
import { compare, subtract } from '@/lib/domain/base/exact';
import type { Key, LotId } from '@/lib/domain/base/vocabulary';
import { WHOLE, fitHardware } from '@/lib/domain/car/hardware';
import type { FittedClaim, Fitting } from '@/lib/domain/car/hardware';
import type { JointRow } from '@/lib/domain/car/joint-rows';
import type { CompiledJoint, CompiledPlan } from '@/lib/domain/plan/compiled';
import { isForUsed, reuseOf } from '@/lib/domain/plan/reuse';
import type { LotThere } from './lots-to-take';

/** What goes in new where nobody says otherwise, place by place. */
export const freshPieces = (plan: CompiledPlan, joint: CompiledJoint, row: JointRow): Fitting['taken'] =>
  fitHardware(plan, joint, row, [], { lots: {}, day: '', car: '', actorIsLead: false }).taken;

/**
 * What may be claimed of the hardware that goes in new by itself: for each line that is traced, or lies aside for this car, from
 * which lots. A fastener's piece is of one lot. What the books have no lot for is left out, and goes in with none said.
 */
export const proposedHardware = (
  plan: CompiledPlan,
  joint: CompiledJoint,
  row: JointRow,
  atHand: (item: Key) => readonly LotThere[],
): readonly FittedClaim[] => {
  const taken = freshPieces(plan, joint, row);
  const isTraced = (item: Key): boolean => plan.document.items?.[item]?.trace === 'lot';
  const mayBeUsed = (item: Key): boolean => isForUsed(reuseOf(plan.document.items, item));
  const items = new Set(taken.map(({ item }) => item));
  return [...items].flatMap((item) => {
    const left = atHand(item)
      .filter(({ isAside, isUsed }) => (isAside || isTraced(item)) && (!isUsed || mayBeUsed(item)))
      .map((each) => ({ ...each }));
    const places = new Map<LotId, string[]>();
    const pieces = taken.filter((each) => each.item === item);
    for (const piece of pieces.toSorted((a, b) => Number(a.place) - Number(b.place))) {
      const from = left.find(({ quantity }) => compare(quantity, piece.quantity) >= 0);
      if (from === undefined) continue;
      from.quantity = subtract(from.quantity, piece.quantity);
      if (from.lot !== null) places.set(from.lot, [...(places.get(from.lot) ?? []), piece.place]);
    }
    return [...places].map(([lot, at]): FittedClaim => {
      const fasteners = at.filter((place) => place !== WHOLE).map(Number);
      return { item, lot, ...(fasteners.length === 0 ? {} : { fasteners }) };
    });
  });
};
