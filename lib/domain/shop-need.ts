/** The need of a whole shop: every car's, memoised by its version, and what of it must be bought. */
import { ZERO, add } from './base/exact';
import type { Exact } from './base/exact';
import type { Key } from './base/vocabulary';
import { planOf } from './facts';
import type { PlanDocument } from './plan/document';
import { demandOf } from './shop/demand';
import type { CarsNeed, DemandLine } from './shop/demand';
import type { Catalogue } from './shop/item';
import { boxedOn } from './shop/kit';
import { carNeed } from './shop/need';
import type { Reckoning } from './shop/need-days';
import { onOrder } from './shop/purchase-rows';
import { shelfOf } from './shop/shelf';
import type { World } from './world';

export interface ShopNeed {
  readonly cars: readonly CarsNeed[];
  readonly demand: readonly DemandLine[];
  /** What is left of lots that are quarantined or expired, by item: it lies there, and counts for nothing. */
  readonly held: ReadonlyMap<Key, Exact>;
}

/** What lies on the shelf, off donors too, and what is on order are the world's own. */
export const shopNeed = (
  world: World,
  plans: Readonly<Record<string, PlanDocument>>,
  catalogue: Catalogue,
  at: Reckoning,
): ShopNeed => {
  const cars = Object.values(world.cars).flatMap((car): readonly CarsNeed[] => {
    const plan = planOf({ plans }, car);
    return plan === null ? [] : [{ plan, car, need: carNeed(plan, car, world.shop, catalogue) }];
  });
  const boxed = boxedOn(Object.values(world.cars));
  const shelf = shelfOf(world.shop, world.stock, catalogue, at.today, boxed);
  const good = shelf.filter(({ isGood }) => isGood).map(({ supply }) => supply);
  const held = new Map<Key, Exact>();
  for (const { supply, isGood } of shelf)
    if (!isGood) held.set(supply.item, add(held.get(supply.item) ?? ZERO, supply.quantity));
  return {
    cars,
    demand: demandOf(cars, [...good, ...onOrder(world.shop.orders)], catalogue, at),
    held,
  };
};
