/** What happened, as rows: the shop and its cars. `evolve` is the only function that makes a new one. */
import type { CarId } from '@/lib/domain/base/vocabulary';
import type { Car } from './car/rows';
import { EMPTY_SHOP } from './shop/rows';
import type { Shop } from './shop/rows';
import type { Stock } from './shop/stock';

export interface World {
  readonly shop: Shop;
  readonly cars: Readonly<Record<CarId, Car>>;
  /** What is on the shelf. Apart from the shop's rows: a car's events change it too, and no version of the shop tells of them. */
  readonly stock: Stock;
}

export const EMPTY_WORLD: World = { shop: EMPTY_SHOP, cars: {}, stock: {} };
