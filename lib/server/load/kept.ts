/**
 * What this process has read before. A version in the database says whether it still holds; it is only ever asked
 * together with that version, under the lock that guards it or in the same statement.
 */
import 'server-only';
import type { Car } from '@/lib/domain/car/rows';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { Shop } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';

export interface Kept {
  readonly cars: Map<string, Car>;
  /** Where the stream of a car stood when this process last wrote to it. */
  readonly heads: Map<string, Head>;
  shop: Shop | null;
  /** Frozen documents: kept for ever. */
  readonly plans: Map<string, PlanDocument>;
  /** Which plan a car is on; it stays on it. */
  readonly planOf: Map<string, string>;
}

/** A place in a stream: the hash of its last event. */
export interface Head {
  readonly version: number;
  readonly hash: string;
}

const kept = new WeakMap<Database, Kept>();

export const keptFor = (db: Database): Kept => {
  const found = kept.get(db);
  if (found !== undefined) return found;
  const made: Kept = { cars: new Map(), heads: new Map(), shop: null, plans: new Map(), planOf: new Map() };
  kept.set(db, made);
  return made;
};

/** More than a shop has on its floor; the one that was used longest ago goes. */
const MOST_CARS = 300;

export const keepCar = ({ cars, heads, planOf }: Kept, car: Car, head?: Head): void => {
  const before = cars.get(car.id);
  if (before !== undefined && before.version > car.version) return;
  cars.delete(car.id);
  cars.set(car.id, car);
  if (head !== undefined) heads.set(car.id, head);
  planOf.set(car.id, car.plan);
  const oldest = cars.keys().next();
  if (cars.size <= MOST_CARS || oldest.done === true) return;
  cars.delete(oldest.value);
  heads.delete(oldest.value);
};
