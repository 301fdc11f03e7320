/** Cars for whoever reads. What is kept is used only where its version is the one in the database now. */
import 'server-only';
import type { CarId, PersonId } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import { factsOf } from '@/lib/domain/facts';
import type { Facts } from '@/lib/domain/facts';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { Shop } from '@/lib/domain/shop/rows';
import { shopDay } from '@/lib/wire/shop-day';
import type { Database } from '@/lib/server/database';
import { keepCar, keptFor } from './kept';
import { readCars } from './rows';

interface Version {
  readonly id: CarId;
  readonly version: number;
}

const current = async (db: Database, versions: readonly Version[]): Promise<readonly Car[]> => {
  const kept = keptFor(db);
  const stale = versions.filter(({ id, version }) => kept.cars.get(id)?.version !== version);
  const fresh = await readCars(
    db,
    stale.map(({ id }) => id),
  );
  for (const car of fresh) keepCar(kept, car);
  const read = new Map(fresh.map((car) => [car.id, car]));
  return versions.flatMap(({ id }) => read.get(id) ?? kept.cars.get(id) ?? []);
};

/** Cars that are at least as new as is said here, as somebody who heard of a change knows them. */
export const carsAtLeast = async (db: Database, versions: readonly Version[]): Promise<readonly Car[]> => {
  const { cars } = keptFor(db);
  return current(
    db,
    versions.map(({ id, version }) => ({ id, version: Math.max(version, cars.get(id)?.version ?? 0) })),
  );
};

/** One car, or null where there is none of that id. */
export const loadCar = async (db: Database, id: CarId): Promise<Car | null> => {
  const versions = await db.car.findMany({ where: { id }, select: { id: true, version: true } });
  return (await current(db, versions))[0] ?? null;
};

/** Every car that is not delivered, by chassis number. */
export const loadFloor = async (db: Database): Promise<readonly Car[]> =>
  current(
    db,
    await db.car.findMany({
      where: { delivered: false },
      select: { id: true, version: true },
      orderBy: { chassis: 'asc' },
    }),
  );

/** Every car that ever was, the delivered ones too: what a tool touched may stand on any of them. */
export const loadEveryCar = async (db: Database): Promise<readonly Car[]> =>
  current(db, await db.car.findMany({ select: { id: true, version: true }, orderBy: { chassis: 'asc' } }));

/** The facts for reading, as of now: what `assess` and the sentences need. Nobody claims anything. */
export const viewFacts = (
  shop: Shop,
  cars: readonly Car[],
  plans: Readonly<Record<string, PlanDocument>>,
  actor: PersonId,
  now: string,
  zone: string,
): Facts =>
  factsOf(
    shop,
    Object.fromEntries(cars.map((car) => [car.id, car])),
    plans,
    { now, doneAt: now, lastContact: null, isInOrder: true, actor, device: null },
    shopDay(zone),
  );
