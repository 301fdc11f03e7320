/** Reads what a car cost so far and by its plan. For leads and owners: there are prices in it. */
import 'server-only';
import type { CarId } from '@/lib/domain/base/vocabulary';
import { COST_EVENTS, costOfCar } from '@/lib/domain/cost-of-car';
import type { Event } from '@/lib/domain/events';
import { planOf } from '@/lib/domain/facts';
import { outsideOf } from '@/lib/domain/shop/outside-cost';
import { pricesOf } from '@/lib/domain/shop/unit-price';
import { upcast } from '@/lib/domain/upcast';
import type { StoredEvent } from '@/lib/domain/upcast';
import type { Database } from '@/lib/server/database';
import { loadCar } from '@/lib/server/load/car';
import { catalogueFor } from '@/lib/server/load/catalogue';
import { loadPlans, loadReleased } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { shopDay } from '@/lib/wire/shop-day';
import type { CostView } from '@/lib/wire/views/cost';
import { costViewOf } from './cost/view';

/** The car's own events that cost something, and what the shop took out for it: one statement, both by an index. */
const costEvents = async (db: Database, car: CarId): Promise<readonly Event[]> => {
  const rows = await db.$queryRaw<{ body: string }[]>`
    SELECT body FROM (
      SELECT position, body FROM event WHERE stream = ${`car:${car}`} AND type = ANY(${[...COST_EVENTS]})
      UNION ALL
      SELECT position, body FROM event WHERE type = 'stock-drawn' AND (body::jsonb) #>> '{event,forCar}' = ${car}
    ) e ORDER BY position`;
  return rows.map(({ body }) => upcast((JSON.parse(body) as { readonly event: StoredEvent }).event));
};

/** Null where there is no such car, or its plan is not kept here. */
export const costView = async (db: Database, id: CarId, now: string): Promise<CostView | null> => {
  const [shop, car, { zone }, released, events] = await Promise.all([
    loadShop(db),
    loadCar(db, id),
    shopSetting(db),
    loadReleased(db),
    costEvents(db, id),
  ]);
  if (car === null) return null;
  const plan = planOf({ plans: await loadPlans(db, [car.plan]) }, car);
  if (plan === null) return null;
  const { lots, orders, offers, rates, tools } = shop;
  const catalogue = catalogueFor(Object.values(released), shop.items);
  const dayOf = shopDay(zone);
  const cost = costOfCar(plan, car, events, {
    catalogue,
    facts: { tools, lots },
    priceOf: pricesOf({ lots, orders, offers, catalogue }),
    rates,
    outside: outsideOf(plan, car, shop.trips),
    quotes: shop.quotes,
    now,
    dayOf,
  });
  return costViewOf({ cost, plan, car, catalogue, rates, today: dayOf(now) });
};
