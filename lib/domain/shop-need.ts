/**
 * The need of a whole shop: every car's, memoised by its version, and what of it must be bought. Until stock is kept by moves,
 * what is left of a lot is what was received less what stands in joints now; screws that were lost or spent are not known yet.
 */
import { ZERO, add, compare, exact, subtract } from './base/exact';
import type { Exact } from './base/exact';
import type { Day, Key, LotId } from './base/vocabulary';
import { placesOf } from './car/hardware';
import type { Car } from './car/rows';
import { planOf } from './facts';
import type { CompiledPlan } from './plan/compiled';
import type { PlanDocument } from './plan/document';
import { demandOf } from './shop/demand';
import type { CarsNeed, DemandLine } from './shop/demand';
import type { Catalogue } from './shop/item';
import { lastGoodDay, lotState } from './shop/lot-state';
import { carNeed } from './shop/need';
import type { Reckoning } from './shop/need-days';
import { comingFrom } from './shop/purchase-rows';
import type { Supply } from './shop/supply';
import type { World } from './world';

export interface ShopNeed {
  readonly cars: readonly CarsNeed[];
  readonly demand: readonly DemandLine[];
  /** What is left of lots that are quarantined or expired, by item: it lies there, and counts for nothing. */
  readonly held: ReadonlyMap<Key, Exact>;
}

/** `coming` is what donors give; lots and what is on order are the world's own. */
export const shopNeed = (
  world: World,
  plans: Readonly<Record<string, PlanDocument>>,
  catalogue: Catalogue,
  at: Reckoning,
  coming: readonly Supply[] = [],
): ShopNeed => {
  const cars = Object.values(world.cars).flatMap((car): readonly CarsNeed[] => {
    const plan = planOf({ plans }, car);
    return plan === null ? [] : [{ plan, car, need: carNeed(plan, car, world.shop, catalogue) }];
  });
  const lots = lotsLeft(world, cars, catalogue, at.today);
  const good = lots.filter(({ isGood }) => isGood).map(({ supply }) => supply);
  const held = new Map<Key, Exact>();
  for (const { supply, isGood } of lots)
    if (!isGood) held.set(supply.item, add(held.get(supply.item) ?? ZERO, supply.quantity));
  return {
    cars,
    demand: demandOf(cars, [...good, ...coming, ...comingFrom(world.shop.orders)], catalogue, at),
    held,
  };
};

/** Lots with something left of them, and whether it may be fitted today. */
const lotsLeft = (
  { shop }: World,
  cars: readonly CarsNeed[],
  catalogue: Catalogue,
  today: Day,
): readonly { readonly supply: Supply; readonly isGood: boolean }[] => {
  const used = new Map<LotId, Exact>();
  for (const { plan, car } of cars) countFitted(plan, car, used);
  return Object.values(shop.lots).flatMap((lot) => {
    const shelf = catalogue[lot.item]?.shelf ?? null;
    const quantity = subtract(exact(lot.quantity), used.get(lot.id) ?? ZERO);
    if (compare(quantity, ZERO) <= 0) return [];
    const source = { kind: 'lot', lot: lot.id } as const;
    const supply = { item: lot.item, quantity, source, goodUntil: lastGoodDay(lot, shelf), onlyFor: null };
    return [{ supply, isGood: lotState(lot, shelf, today).state === 'good' }];
  });
};

const countFitted = (plan: CompiledPlan, car: Car, used: Map<LotId, Exact>): void => {
  for (const joint of plan.all.joints) {
    const row = car.joints[joint.stateKey];
    if (row === undefined) continue;
    for (const line of joint.hardware)
      for (const place of placesOf(joint, line)) {
        const lot = row.fasteners[place]?.[line.item]?.lot ?? null;
        if (lot === null) continue;
        const each = line.per === 'joint' ? exact(line.quantity) : exact(line.quantity, joint.fasteners);
        used.set(lot, add(used.get(lot) ?? ZERO, each));
      }
  }
};
