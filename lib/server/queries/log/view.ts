/** Reads a page of the log: of one car, of the shop's own books, or of all together. */
import 'server-only';
import { conditionWords } from '@/lib/domain/base/words';
import { planOf } from '@/lib/domain/facts';
import type { Car } from '@/lib/domain/car/rows';
import type { Shop } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';
import { loadCar, loadFloor } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { tagIn } from '@/lib/server/queries/board/words';
import { PAGE, read, tellingOf, whereAsked } from '@/lib/server/queries/log';
import type { LogAsked, ToldOf, Where } from '@/lib/server/queries/log';
import { shopDay } from '@/lib/wire/shop-day';
import { nameOfPerson } from '@/lib/wire/views/names';
import type { LogDay, LogEntry, LogLine, LogView } from '@/lib/wire/views/log';
import { shopLine } from '@/lib/wire/views/shop-line';
import { withTimes } from '@/lib/wire/views/when';
import { logClock } from './clock';
import { entryOf } from './entries';
import type { Telling } from './entries';

interface LogViewAsked extends LogAsked {
  /** A car's id, or `shop` for the books. */
  readonly of: string | null;
}

export const logView = async (db: Database, asked: LogViewAsked, now: string): Promise<LogView> => {
  const [shop, floor, setting] = await Promise.all([loadShop(db), loadShown(db, asked.of), shopSetting(db)]);
  // What names no car is not narrowed by.
  const of = asked.of === 'shop' || floor.some(({ id }) => id === asked.of) ? asked.of : null;
  const where: Where = {
    ...(of === null ? {} : { car: of === 'shop' ? null : of }),
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
  const lines = told.map((each): LogLine => {
    const car = each.car === null ? undefined : cars.get(each.car);
    const telling = (each.car === null ? undefined : tellings.get(each.car)) ?? books;
    return {
      entry: bookEntry(each, telling, shop),
      car: car === undefined ? null : { id: car.id, chassis: car.chassis, colour: car.colour },
    };
  });
  return {
    days: byDay(lines),
    shown: lines.length,
    total,
    page,
    pages,
    kind: asked.kind,
    by: asked.by,
    of,
    people: Object.keys(shop.people).map((id) => books.tag(id)),
    cars: floor.map(({ id, chassis, colour }) => ({ id, chassis, colour })),
  };
};

/** The floor, and the car that is asked for, which may be delivered. */
const loadShown = async (db: Database, of: string | null): Promise<readonly Car[]> => {
  const floor = await loadFloor(db);
  if (of === null || of === 'shop' || floor.some(({ id }) => id === of)) return floor;
  const car = await loadCar(db, of);
  return car === null ? floor : [...floor, car];
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
const bookEntry = (told: ToldOf, telling: Telling, shop: Shop): LogEntry => {
  const entry = entryOf(told, telling);
  const [first] = told.shopEvents;
  if (first === undefined || told.events.length > 0) return entry;
  const lines = told.shopEvents.map((event) =>
    shopLine(
      event,
      (id) => nameOfPerson(shop.people, id, event.meta.at),
      (id) => shop.tools[id]?.name ?? id,
      (id) => shop.suppliers[id]?.name ?? id,
    ),
  );
  const [line = entry.line, ...others] = lines;
  return { ...entry, line, brought: others.map(({ thing, says }) => `${thing} ${says}`.trim()) };
};

const bookTelling = (shop: Shop, zone: string, now: string): Telling => {
  const today = shopDay(zone)(now);
  const nameOf = (key: string): string | null => shop.people[key]?.name ?? shop.tools[key]?.name ?? null;
  const thing = (key: string): string => nameOf(key) ?? key;
  return {
    nameOf,
    spoken: withTimes(zone, today),
    words: {
      thing,
      condition: conditionWords,
      person: (id, at) => nameOfPerson(shop.people, id, at),
      stage: String,
      job: thing,
      signature: () => 'A signature',
    },
    car: '',
    tag: tagIn(shop.people),
    signatures: {},
    clock: logClock(zone, today),
  };
};

const byDay = (lines: readonly LogLine[]): readonly LogDay[] => {
  const days = new Map<string, LogLine[]>();
  for (const line of lines) {
    const list = days.get(line.entry.date);
    if (list === undefined) days.set(line.entry.date, [line]);
    else list.push(line);
  }
  return [...days].map(([title, list]) => ({ title, lines: list }));
};
