/** Reads trips to who does outside work: what is out, what is back, what waits for the next one. */
import 'server-only';
import { addDays } from '@/lib/domain/base/days';
import type { Day } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import { planOf } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { USUAL_WEEK } from '@/lib/domain/shop/need-days';
import { sentWork } from '@/lib/domain/shop/outside-cost';
import { onTrip, toSend } from '@/lib/domain/shop/components';
import type { OnTrip } from '@/lib/domain/shop/components';
import { nextTrip, takesMore } from '@/lib/domain/shop/trip-rows';
import type { TripBill, TripRow } from '@/lib/domain/shop/trip-rows';
import { arrivalOf, orderDayFrom } from '@/lib/domain/shop/order';
import { dayFrom, dayNumber } from '@/lib/domain/shop/week';
import type { Person, Shop } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';
import { loadEveryCar } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { moneyText } from '@/lib/wire/money';
import { shopDay } from '@/lib/wire/shop-day';
import { OUTCOME_WORDS } from '@/lib/wire/views/component-line';
import { namesOf } from '@/lib/wire/views/names';
import { anchorOf } from '@/lib/wire/views/said-line';
import type {
  TripBillView,
  TripCar,
  TripHead,
  TripPart,
  TripSupplier,
  TripView,
  TripsView,
  WaitingCar,
} from '@/lib/wire/views/trips';
import { weekdayWords, whenWords } from '@/lib/wire/views/when';

interface Books {
  readonly shop: Shop;
  readonly cars: readonly { readonly car: Car; readonly plan: CompiledPlan }[];
  readonly today: Day;
  readonly day: (day: Day) => string;
  readonly when: (at: string) => string;
}

const readBooks = async (db: Database, now: string): Promise<Books> => {
  const [shop, { zone }, cars] = await Promise.all([loadShop(db), shopSetting(db), loadEveryCar(db)]);
  const plans = await loadPlans(
    db,
    cars.map(({ plan }) => plan),
  );
  const today = shopDay(zone)(now);
  return {
    shop,
    cars: cars.flatMap((car) => {
      const plan = planOf({ plans }, car);
      return plan === null ? [] : [{ car, plan }];
    }),
    today,
    day: (day) => weekdayWords(day, today),
    when: whenWords(zone, today),
  };
};

const SHUT = USUAL_WEEK.days.shut;

const mayPlan = ({ roles }: Person): boolean => roles.includes('lead') || roles.includes('owner');

export const tripsView = async (db: Database, who: Person, now: string): Promise<TripsView> => {
  const books = await readBooks(db, now);
  const { shop } = books;
  const trips = Object.values(shop.trips).toSorted((a, b) => Number(b.id) - Number(a.id));
  const heads = trips.map((trip) => headOf(books, trip));
  const out = heads.filter(({ isOver }) => !isOver).length;
  return {
    says:
      trips.length === 0
        ? 'Nothing was ever sent out.'
        : out === 0
          ? 'Nothing is out.'
          : `${out === 1 ? 'One trip is' : `${String(out)} trips are`} not over.`,
    trips: heads,
    waiting: waitingOf(books),
    plan: mayPlan(who) ? { next: nextTrip(shop.trips), suppliers: suppliersOf(books) } : null,
  };
};

/** Null where there is no such trip. */
export const tripView = async (
  db: Database,
  id: string,
  who: Person,
  now: string,
): Promise<TripView | null> => {
  const books = await readBooks(db, now);
  const { shop, today, day } = books;
  const trip = shop.trips[id];
  if (trip === undefined) return null;
  const head = headOf(books, trip);
  return {
    id,
    supplier: nameOf(shop, trip.supplier),
    goes: day(trip.goes),
    due: day(trip.due),
    goesDay: trip.goes,
    dueDay: trip.due,
    isLate: head.isStop,
    says: head.says,
    cars: carsOn(books, trip),
    waiting: takesMore(trip, today) ? waitingOf(books) : [],
    works: mayPlan(who) ? worksToBill(books, trip) : [],
    bills: mayPlan(who) ? trip.bills.map((bill) => billOf(books, bill)) : null,
  };
};

/** Work of the plan that was begun elsewhere and is on the bill of no other trip: whose it was is known by who enters theirs. */
const worksToBill = ({ shop, cars }: Books, { id }: TripRow): TripView['works'] => {
  const billed = new Set(
    Object.values(shop.trips)
      .filter((trip) => trip.id !== id)
      .flatMap(({ bills }) => bills.flatMap(({ lines }) => lines.map(({ car, part }) => `${car} ${part}`))),
  );
  return cars.flatMap(({ car, plan }) => {
    const { id: own, chassis, colour } = car;
    return sentWork(plan)
      .filter(({ stateKey }) => car.operations[stateKey] !== undefined && !billed.has(`${own} ${stateKey}`))
      .map(({ stateKey, name }) => ({ car: { id: own, chassis, colour }, key: stateKey, name }));
  });
};

const nameOf = ({ suppliers }: Shop, id: string): string => suppliers[id]?.name ?? id;

const headOf = ({ shop, cars, today, day }: Books, trip: TripRow): TripHead => {
  const parts = cars.flatMap(({ car }) => onTrip(car, trip.id));
  const out = parts.filter(({ back }) => back === null).length;
  const unseen = parts.filter(isUnseen).length;
  const isStop = out > 0 && trip.due < today;
  return {
    id: trip.id,
    href: `/trips/${trip.id}`,
    name: nameOf(shop, trip.supplier),
    when: `${trip.goes <= today ? 'went' : 'goes'} ${day(trip.goes)}, ${out > 0 || parts.length === 0 ? 'due' : 'was due'} back ${day(trip.due)}`,
    says: [
      parts.length === 0
        ? 'nothing is on it yet'
        : out === 0
          ? `all ${String(parts.length)} back`
          : `${String(out)} of ${String(parts.length)} out`,
      ...(unseen === 0 ? [] : [`${String(unseen)} to look over`]),
      ...(isStop ? ['late'] : []),
    ].join('; '),
    isOver: out === 0 && unseen === 0 && parts.length > 0,
    isStop,
  };
};

const isUnseen = ({ back, looked }: OnTrip): boolean => back?.how === 'done' && looked === null;

const carsOn = (books: Books, trip: TripRow): readonly TripCar[] =>
  books.cars.flatMap(({ car, plan }) => {
    const parts = onTrip(car, trip.id);
    const { id, chassis, colour } = car;
    return parts.length === 0
      ? []
      : [{ car: { id, chassis, colour }, parts: parts.map((each) => partOf(books, car, plan, each)) }];
  });

const partOf = ({ shop, when }: Books, car: Car, plan: CompiledPlan, on: OnTrip): TripPart => {
  const { part, work, sentAt, sentBy, back, looked } = on;
  const entry = plan.document.parts?.[part];
  const person = (id: string): string => shop.people[id]?.name ?? id;
  const isBack = isUnseen(on) && car.parts[part]?.state === 'back';
  const said = back?.note === null || back?.note === undefined ? '' : `: ${back.note}`;
  return {
    key: part,
    name: entry?.name ?? part,
    work,
    sent: `put in by ${person(sentBy)}, ${when(sentAt)}`,
    lookedAt: entry?.lookedAt ?? '',
    stands: back === null ? 'out' : isBack ? 'back' : 'over',
    how: back?.how ?? null,
    says:
      back === null
        ? 'out'
        : `back ${when(back.at)}, ${OUTCOME_WORDS[back.how]}${said}${
            looked === null ? '' : `; looked over by ${person(looked.by)}: ${looked.text}`
          }`,
    href: `/cars/${encodeURIComponent(car.id)}#${anchorOf('part', part)}`,
  };
};

const waitingOf = ({ cars }: Books): readonly WaitingCar[] =>
  cars
    .filter(({ car }) => !car.delivered)
    .flatMap(({ car, plan }) => {
      const parts = toSend(plan, car).map((key) => {
        const entry = plan.document.parts?.[key];
        return {
          key,
          name: entry?.name ?? key,
          work: WORK_THERE.exec(entry?.lookedAt ?? '')?.[1] ?? '',
          days: entry?.outside ?? '',
        };
      });
      const { id, chassis, colour } = car;
      return parts.length === 0 ? [] : [{ car: { id, chassis, colour }, parts }];
    });

/** What the plan has done there, where it says so behind what is looked at. */
const WORK_THERE = /outside work: (.+)$/u;

const suppliersOf = ({ shop, today }: Books): readonly TripSupplier[] => {
  const been = new Set(Object.values(shop.trips).map(({ supplier }) => supplier));
  return Object.values(shop.suppliers)
    .toSorted((a, b) => Number(been.has(b.id)) - Number(been.has(a.id)) || a.name.localeCompare(b.name, 'en'))
    .map(({ id, name, orderDays, lead }) => {
      const next = orderDayFrom({ orderDays }, dayNumber(today) + 1);
      const goes = next === undefined ? addDays(today, 1) : dayFrom(next);
      return { id, name, goes, due: dayFrom(arrivalOf(dayNumber(goes), lead, SHUT)) };
    });
};

const billOf = ({ cars, shop, when }: Books, bill: TripBill): TripBillView => {
  const { lines, freight, note, by, at } = bill;
  const called = (id: string, part: string): string => {
    const found = cars.find(({ car }) => car.id === id);
    const name = found === undefined ? null : namesOf(found.plan.document)(part);
    return `${found?.car.chassis ?? id}, ${name ?? part} (${part})`;
  };
  return {
    says: `${note === null ? 'bill' : `bill ${note}`}, entered by ${shop.people[by]?.name ?? by}, ${when(at)}`,
    lines: lines.map(({ car, part, money }) => ({ text: called(car, part), money: moneyText(money) })),
    freight: moneyText(freight),
    sum: moneyText(lines.reduce((sum, { money }) => sum + money, freight)),
  };
};
