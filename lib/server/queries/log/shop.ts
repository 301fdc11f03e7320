/** Reads the log of the whole shop, the newest first: every car's, and that of the shop's own books. */
import 'server-only';
import { planOf } from '@/lib/domain/facts';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { Shop } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';
import { loadCar, loadFloor } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { initialsOf } from '@/lib/server/queries/board/words';
import { PAGE, read, tellingOf, whereAsked } from '@/lib/server/queries/log';
import type { LogAsked, ToldOf, Where } from '@/lib/server/queries/log';
import { shopDay } from '@/lib/wire/shop-day';
import type { PersonTag } from '@/lib/wire/views/car';
import { conditionWords } from '@/lib/wire/views/event-words';
import type { ShopLogEntry, ShopLogView } from '@/lib/wire/views/log';
import { shopLine } from '@/lib/wire/views/shop-line';
import { withTimes } from '@/lib/wire/views/when';
import { logClock } from './clock';
import { entryOf } from './entries';
import type { Telling } from './entries';

export interface ShopLogAsked extends LogAsked {
  /** A car's id, or `shop` for the books. */
  readonly of: string | null;
}

export const shopLogView = async (db: Database, asked: ShopLogAsked, now: string): Promise<ShopLogView> => {
  const [shop, floor, setting] = await Promise.all([loadShop(db), loadFloor(db), shopSetting(db)]);
  const where: Where = {
    ...(asked.of === null ? {} : { car: asked.of === 'shop' ? null : asked.of }),
    ...whereAsked(floor, asked),
  };
  const total = await db.command.count({ where });
  const pages = Math.max(1, Math.ceil(total / PAGE));
  const page = Math.min(Math.max(1, asked.page), pages);
  const told = await read(db, where, (page - 1) * PAGE, PAGE);
  const cars = await carsOf(db, told, floor);
  const plans = await loadPlans(
    db,
    [...cars.values()].map(({ plan }) => plan),
  );
  const { zone } = setting;
  const books = bookTelling(shop, zone, now);
  const tellings = new Map(
    [...cars.values()].flatMap((car) => {
      const plan = planOf({ plans }, car);
      return plan === null ? [] : [[car.id, tellingOf(shop, car, plan, zone, now)] as const];
    }),
  );
  const entries = told.map((each): ShopLogEntry => {
    const car = each.car === null ? undefined : cars.get(each.car);
    const telling = (each.car === null ? undefined : tellings.get(each.car)) ?? books;
    return {
      entry: bookEntry(each, telling, shop),
      car: car === undefined ? null : { id: car.id, chassis: car.chassis, colour: car.colour },
    };
  });
  return {
    shop: setting.name,
    days: byDay(entries),
    shown: entries.length,
    total,
    page,
    pages,
    kind: asked.kind,
    by: asked.by,
    of: asked.of,
    people: Object.keys(shop.people).map(books.tag),
    cars: floor.map(({ id, chassis, colour }) => ({ id, chassis, colour })),
  };
};

/** Delivered cars stand on no floor and are told of all the same. */
const carsOf = async (
  db: Database,
  told: readonly ToldOf[],
  floor: readonly Car[],
): Promise<ReadonlyMap<string, Car>> => {
  const cars = new Map(floor.map((car) => [car.id, car]));
  const missing = [...new Set(told.flatMap(({ car }) => (car === null || cars.has(car) ? [] : [car])))];
  for (const car of await Promise.all(missing.map((id) => loadCar(db, id))))
    if (car !== null) cars.set(car.id, car);
  return cars;
};

/** What is about no car: as a car's entry, with the words of the shop's books. */
const bookEntry = (told: ToldOf, telling: Telling, shop: Shop): ShopLogEntry['entry'] => {
  const entry = entryOf(told, telling);
  const [first] = told.shopEvents;
  if (first === undefined || told.events.length > 0) return entry;
  const lines = told.shopEvents.map((event) =>
    shopLine(
      event,
      (id) => shop.people[id]?.name ?? id,
      (id) => shop.tools[id]?.name ?? id,
    ),
  );
  const [line = entry.line, ...others] = lines;
  return { ...entry, line, brought: others.map(({ thing, says }) => `${thing} ${says}`.trim()) };
};

const bookTelling = (shop: Shop, zone: string, now: string): Telling => {
  const today = shopDay(zone)(now);
  const nameOf = (key: string): string | null => shop.people[key]?.name ?? shop.tools[key]?.name ?? null;
  const thing = (key: string): string => nameOf(key) ?? key;
  const tag = (id: PersonId): PersonTag => {
    const name = shop.people[id]?.name ?? id;
    return { id, name, initials: initialsOf(name) };
  };
  return {
    nameOf,
    spoken: withTimes(zone, today),
    words: {
      thing,
      condition: conditionWords,
      person: thing,
      stage: String,
      job: thing,
      signature: () => 'A signature',
    },
    tag,
    signatures: {},
    clock: logClock(zone, today),
  };
};

const byDay = (entries: readonly ShopLogEntry[]): ShopLogView['days'] => {
  const days = new Map<string, ShopLogEntry[]>();
  for (const each of entries) {
    const list = days.get(each.entry.date);
    if (list === undefined) days.set(each.entry.date, [each]);
    else list.push(each);
  }
  return [...days].map(([title, list]) => ({ title, entries: list }));
};
