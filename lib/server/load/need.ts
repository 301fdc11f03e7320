/** What must be bought for all cars together, as every page that shows it reads it. */
import 'server-only';
import type { Key } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { shopNeed } from '@/lib/domain/shop-need';
import type { ShopNeed } from '@/lib/domain/shop-need';
import type { Catalogue } from '@/lib/domain/shop/item';
import { USUAL_WEEK } from '@/lib/domain/shop/need-days';
import type { NeedNames } from '@/lib/domain/shop/need-words';
import type { World } from '@/lib/domain/world';
import type { Database } from '@/lib/server/database';
import { shopDay } from '@/lib/wire/shop-day';
import { namesOf } from '@/lib/wire/views/names';
import { dayWords } from '@/lib/wire/views/when';
import { loadFloor } from './car';
import { catalogueFor } from './catalogue';
import { loadPlans, loadReleased } from './plan';
import { loadShop, shopSetting } from './shop';
import { loadStock } from './stock';

export interface NeedNow extends ShopNeed {
  readonly world: World;
  /** Cars that have not left. */
  readonly floor: readonly Car[];
  readonly plans: Readonly<Record<string, PlanDocument>>;
  readonly catalogue: Catalogue;
  readonly names: NeedNames;
  readonly today: string;
  readonly zone: string;
}

export const needNow = async (db: Database, now: string): Promise<Omit<NeedNow, 'cars'>> => {
  const [shop, floor, setting, released, stock] = await Promise.all([
    loadShop(db),
    loadFloor(db),
    shopSetting(db),
    loadReleased(db),
    loadStock(db),
  ]);
  const onFloor = await loadPlans(
    db,
    floor.map((car) => car.plan),
  );
  const plans = { ...onFloor, ...released };
  const dayOf = shopDay(setting.zone);
  const today = dayOf(now);
  const catalogue = catalogueFor(Object.values(released), shop.items);
  const world = { shop, cars: Object.fromEntries(floor.map((car) => [car.id, car])), stock };
  const { demand, held } = shopNeed(world, plans, catalogue, { ...USUAL_WEEK, today });
  const names: NeedNames = {
    thing: (car, key) => {
      const plan = plans[world.cars[car]?.plan ?? ''];
      return plan === undefined ? null : namesOf(plan)(key);
    },
    item: (key) => catalogue[key]?.name ?? nameIn(Object.values(plans), key),
    car: (id) => world.cars[id]?.chassis ?? id,
    person: (id) => shop.people[id]?.name ?? null,
    day: (day) => (day === today ? 'today' : dayWords(day, today)),
    dayOf: (at) => dayWords(dayOf(at), today),
  };
  return { demand, held, world, floor, plans, catalogue, names, today, zone: setting.zone };
};

const nameIn = (documents: readonly PlanDocument[], key: Key): string | null =>
  documents.map((document) => namesOf(document)(key)).find((name) => name !== null) ?? null;
