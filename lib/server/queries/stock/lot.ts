/** One lot: what came, where every piece of it is now, on all cars, the delivered ones too. */
import 'server-only';
import { COMMANDS } from '@/lib/domain/authority';
import { ZERO, add, compare, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { LotId } from '@/lib/domain/base/vocabulary';
import { either } from '@/lib/domain/base/words';
import type { Event } from '@/lib/domain/events';
import { levelOf } from '@/lib/domain/car/joint';
import type { Car } from '@/lib/domain/car/rows';
import { planOf } from '@/lib/domain/facts';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { lotIn, workUsing } from '@/lib/domain/shop/lot-trace';
import type { LotInJoint } from '@/lib/domain/shop/lot-trace';
import { quantityText } from '@/lib/domain/shop/need-words';
import type { Lot, Shop } from '@/lib/domain/shop/rows';
import { EMPTY_PLACE, quantityOf, stockKey } from '@/lib/domain/shop/stock';
import type { Recount } from '@/lib/domain/shop/stock';
import { OUT_WORDS } from '@/lib/domain/shop/stock-words';
import type { Database } from '@/lib/server/database';
import { loadEveryCar } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { nameOfPerson, namesOf } from '@/lib/wire/views/names';
import type { LotCar, LotJoint, LotView } from '@/lib/wire/views/stock';
import { onCarPage } from '../my-work/opened';
import { lineOf, offDonorWords, readShelves } from './lines';
import type { Shelves } from './lines';

/** Null where there is no such lot. */
export const lotView = async (db: Database, id: LotId, now: string): Promise<LotView | null> => {
  const shelves = await readShelves(db, now);
  const lot = shelves.shop.lots[id];
  if (lot === undefined) return null;
  const [cars, told] = await Promise.all([carsWith(db, id, shelves.shop), toldOf(db, id)]);
  const unit = shelves.catalogue[lot.item]?.unit ?? 'pc';
  const row = shelves.stock[stockKey({ item: lot.item, lot: id })] ?? {
    item: lot.item,
    lot: id,
    ...EMPTY_PLACE,
  };
  const joints = cars.flatMap(({ standing }) => standing);
  const inCars = sum(cars.map(inCar));
  return {
    ...lineOf(shelves, row),
    received: `${quantityText(quantityOf(String(lot.quantity)), unit)} came in ${shelves.when(lot.receivedAt)}`,
    facts: factsOf(lot, shelves),
    quarantined: lot.quarantined === null ? null : keptApart(lot, told, shelves),
    cars: cars.map((each) => carOf(each, unit)),
    gone: goneOf(told, quantityOf(row.went), inCars, unit, shelves),
    joints: { count: joints.length, inDoubt: joints.filter(({ inDoubt }) => inDoubt).length },
    signers: signersFor(shelves),
  };
};

interface CarWith {
  readonly car: Car;
  readonly plan: PlanDocument;
  readonly standing: readonly LotInJoint[];
  readonly used: ReturnType<typeof workUsing>;
}

const inCar = ({ standing, used }: CarWith): Exact =>
  sum([...standing.map(({ quantity }) => quantity), ...used.map(({ quantity }) => quantityOf(quantity))]);

const carsWith = async (db: Database, id: LotId, shop: Shop): Promise<readonly CarWith[]> => {
  const cars = await loadEveryCar(db);
  const plans = await loadPlans(
    db,
    cars.map(({ plan }) => plan),
  );
  return cars.flatMap((car): readonly CarWith[] => {
    const plan = planOf({ plans }, car);
    if (plan === null) return [];
    const [standing, used] = [lotIn(plan, car, id, shop), workUsing(car, id)];
    return standing.length + used.length === 0 ? [] : [{ car, plan: plan.document, standing, used }];
  });
};

type ShopsOwn = Extract<
  Event,
  { type: 'stock-drawn' | 'stock-counted' | 'stock-put-back' | 'lot-quarantined' | 'lot-cleared' }
>;
/** A count, whether all of the shelf was counted or a kit found the bin down. */
type Told = Exclude<ShopsOwn, { type: 'stock-counted' }> | CountOfLot;
type CountOfLot = Recount & Pick<ShopsOwn, 'meta'> & { readonly type: 'stock-counted' };

/** What the log tells of it but fitting and using up, the earliest first. */
const toldOf = async (db: Database, id: LotId): Promise<readonly Told[]> => {
  const stored = await db.$queryRaw<{ body: string }[]>`
    SELECT body FROM event
    WHERE ((stream = 'shop'
        AND type IN ('stock-drawn', 'stock-counted', 'stock-put-back', 'lot-quarantined', 'lot-cleared'))
      OR (type = 'kit-picked' AND strpos(body, '"emptied":') > 0))
      AND strpos(body, ${`"lot":${JSON.stringify(id)}`}) > 0
    ORDER BY position`;
  return stored
    .map(({ body }) => (JSON.parse(body) as { event: ShopsOwn | KitPicked }).event)
    .flatMap((event): readonly Told[] => (event.type === 'kit-picked' ? countsIn(event) : [event]))
    .filter(({ lot }) => lot === id);
};

type KitPicked = Extract<Event, { type: 'kit-picked' }>;

const countsIn = ({ emptied = [], meta }: KitPicked): readonly CountOfLot[] =>
  emptied.map((place) => ({ ...place, type: 'stock-counted', meta }));

const sum = (quantities: readonly Exact[]): Exact => quantities.reduce(add, ZERO);

const factsOf = (lot: Lot, { day }: Shelves): readonly string[] => [
  lot.donor === undefined ? paperWords(lot) : offDonorWords(lot.donor),
  ...(lot.expires === null ? [] : [`good to ${day(lot.expires)}`]),
];

const paperWords = ({ certificate, certificateAsked }: Lot): string =>
  certificate !== null
    ? `certificate ${certificate}`
    : certificateAsked
      ? 'its certificate is asked for and missing'
      : 'no certificate asked for';

const keptApart = (
  { quarantined, receivedAt }: Lot,
  told: readonly Told[],
  { shop, when }: Shelves,
): LotView['quarantined'] => {
  const last = told.findLast(({ type }) => type === 'lot-quarantined');
  return {
    reason: quarantined ?? '',
    by: last === undefined ? 'at goods in' : nameOfPerson(shop.people, last.meta.by, last.meta.at),
    when: when(last?.meta.at ?? receivedAt),
  };
};

const carOf = (each: CarWith, unit: string): LotCar => {
  const { car, plan, standing, used } = each;
  const nameOf = namesOf(plan);
  const page = `/cars/${encodeURIComponent(car.id)}`;
  return {
    id: car.id,
    chassis: car.chassis,
    colour: car.colour,
    isDelivered: car.delivered,
    quantity: quantityText(inCar(each), unit),
    joints: standing.map(({ joint, row, quantity, fasteners, inDoubt }): LotJoint => ({
      joint: joint.stateKey,
      name: nameOf(joint.stateKey) ?? 'joint',
      href: `${page}/joints/${encodeURIComponent(joint.stateKey)}`,
      quantity: quantityText(quantity, unit),
      at:
        fasteners.length === 0 || fasteners.length === joint.fasteners
          ? ''
          : `at no. ${fasteners.join(', ')} of ${String(joint.fasteners)}`,
      level: levelOf(row),
      inDoubt,
    })),
    work: used.map(({ operation, run, quantity }) => ({
      operation,
      name: `${nameOf(operation) ?? 'work'}${run === 1 ? '' : `, run ${String(run)}`}`,
      href: onCarPage(car, operation),
      quantity: quantityText(quantityOf(quantity), unit),
    })),
  };
};

/** What went and is in no car: each by its reason; what is left over came off a car again or was miscounted. */
const goneOf = (
  told: readonly Told[],
  went: Exact,
  inCars: Exact,
  unit: string,
  { shop, when }: Shelves,
): LotView['gone'] => {
  const lines = told.flatMap((event) => {
    const by = `${nameOfPerson(shop.people, event.meta.by, event.meta.at)}, ${when(event.meta.at)}`;
    if (event.type === 'stock-drawn')
      return [
        {
          quantity: quantityOf(event.quantity),
          what: OUT_WORDS[event.reason],
          detail: event.forCar === null ? by : `for ${event.forCar}; ${by}`,
        },
      ];
    if (event.type === 'stock-counted' && event.fewer !== '0')
      return [{ quantity: quantityOf(event.fewer), what: 'missing when it was counted', detail: by }];
    return [];
  });
  const rest = subtract(subtract(went, inCars), sum(lines.map(({ quantity }) => quantity)));
  return [
    ...lines,
    ...(compare(rest, ZERO) > 0
      ? [{ quantity: rest, what: 'came off a car again', detail: 'renewed, or opened and spent' }]
      : []),
  ].map(({ quantity, ...words }) => ({ quantity: quantityText(quantity, unit), ...words }));
};

/** Whoever clears a lot signs for it: the table of commands says who may. */
const signersFor = ({ shop }: Shelves): LotView['signers'] => {
  const { roles } = COMMANDS['clear-lot'];
  return Object.values(shop.people)
    .filter(({ left }) => !left)
    .map(({ id, name, roles: held }) =>
      roles === 'anyone' || held.some((role) => roles.includes(role))
        ? { id, name }
        : { id, name, whyNot: `not ${either(roles)}` },
    )
    .sort((a, b) => a.name.localeCompare(b.name, 'en'));
};
