/** What happened, as rows: the shop and its cars. `evolve` is the only function that makes a new one. */
import type { CarId } from '@/lib/domain/base/vocabulary';
import type { Car } from './car/rows';
import { EMPTY_SHOP } from './shop/rows';
import type { Shop } from './shop/rows';

export interface World {
  readonly shop: Shop;
  readonly cars: Readonly<Record<CarId, Car>>;
}

export const EMPTY_WORLD: World = { shop: EMPTY_SHOP, cars: {} };
