/** Reads what a car's page shows. */
import 'server-only';
import { nearestWord } from '@/lib/domain/base/nearest';
import type { CarId, PersonId } from '@/lib/domain/base/vocabulary';
import { withPlace } from '@/lib/domain/base/words';
import { planOf } from '@/lib/domain/facts';
import type { Database } from '@/lib/server/database';
import { loadCar, loadFloor, viewFacts } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import type { CarView } from '@/lib/wire/views/car';
import type { Given } from './car/seen';
import { carViewOf } from './car/view';
import { loadSupplies } from './kits/supplies';
import { chosenOn, lately } from './log';

/** What every page of one car is made from; null where there is no such car, or its plan is not kept here. */
export const readCar = async (
  db: Database,
  id: CarId,
  actor: PersonId,
  now: string,
): Promise<Given | null> => {
  const [shop, car, floor, setting] = await Promise.all([
    loadShop(db),
    loadCar(db, id),
    loadFloor(db),
    shopSetting(db),
  ]);
  if (car === null) return null;
  // A delivered car stands on no floor, and is read all the same.
  const cars = floor.some((each) => each.id === id) ? floor : [...floor, car];
  const plans = await loadPlans(
    db,
    cars.map((each) => each.plan),
  );
  const facts = viewFacts(shop, cars, plans, actor, now, setting.zone);
  const plan = planOf(facts, car);
  return plan === null ? null : { shop, car, plan, facts, setting, floor };
};

/** Null where there is no such car, or its plan is not kept here. */
export const carView = async (
  db: Database,
  id: CarId,
  actor: PersonId,
  signature: string | null,
  now: string,
): Promise<CarView | null> => {
  const given = await readCar(db, id, actor, now);
  if (given === null) return null;
  const { shop, car, plan, setting } = given;
  const [recent, chosen, { shelf }] = await Promise.all([
    lately(db, { shop, car, plan, zone: setting.zone, now }),
    chosenOn(db, id),
    loadSupplies(db, shop, given.floor, given.facts.day),
  ]);
  const stores = { bins: shop.bins, shelf };
  return carViewOf(given, { signature, lately: recent, chosen, stores });
};

/** Asked before anything of the page is sent. */
export const isCar = async (db: Database, id: CarId): Promise<boolean> =>
  (await db.car.findUnique({ where: { id }, select: { id: true } })) !== null;

export interface NearCar {
  readonly id: CarId;
  readonly chassis: string;
  readonly colour: string | null;
  readonly stage: string;
}

/** Cars with a number like the one that was asked for; else those on the floor. */
export const carsNear = async (db: Database, asked: string): Promise<readonly NearCar[]> => {
  const floor = await loadFloor(db);
  const plans = await loadPlans(
    db,
    floor.map((car) => car.plan),
  );
  const near = floor
    .map((car) => ({ car, apart: distance(car.chassis, asked) }))
    .sort((a, b) => a.apart - b.apart)
    .slice(0, 4);
  return near.map(({ car }) => ({
    id: car.id,
    chassis: car.chassis,
    colour: car.colour,
    stage: planOf({ plans }, car)?.stages[car.stage]?.name ?? '',
  }));
};

export interface NearJoint {
  readonly chassis: string;
  /** The one that was probably meant. */
  readonly joint: { readonly key: string; readonly name: string } | null;
}

/** For a joint that no plan of the car has; null where there is no such car, or its plan is not kept here. */
export const jointNear = async (db: Database, id: CarId, asked: string): Promise<NearJoint | null> => {
  const car = await loadCar(db, id);
  const plan = car === null ? null : planOf({ plans: await loadPlans(db, [car.plan]) }, car);
  if (car === null || plan === null) return null;
  const joint = plan.joints.get(nearestWord(asked, plan.joints.keys()) ?? '');
  return {
    chassis: car.chassis,
    joint: joint === undefined ? null : { key: joint.stateKey, name: withPlace(joint.stateKey, joint.name) },
  };
};

/** How many places differ, read from the end: the figures that tell cars apart stand there. */
const distance = (a: string, b: string): number => {
  const most = Math.max(a.length, b.length);
  let apart = 0;
  for (let back = 1; back <= most; back += 1) if (a.at(-back) !== b.at(-back)) apart += 1;
  return apart;
};
