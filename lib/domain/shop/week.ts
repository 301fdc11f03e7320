/**
 * The week's order as the shop means it: of all that must be bought, what can't wait for the order after this one, as a
 * problem in whole numbers (`order.ts`), and which needs stand behind each of its lines. `week-answer.ts` goes back.
 */
import { ONE, ZERO, add, compare, exact, multiply, parseDecimal, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Day, Key } from '@/lib/domain/base/vocabulary';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { DemandLine } from './demand';
import { isCounted } from './item';
import type { Catalogue } from './item';
import type { OfferRow, SupplyRows } from './offer-rows';
import { arrivalOf, lastOrderDay, orderDayFrom, shipmentsOf } from './order';
import type { Offer, OrderLine, OrderProblem, Supplier } from './order';
import { pinsOf } from './week-pins';
import { substitutesFor } from './week-substitutes';

export interface WeekAsk {
  readonly demand: readonly DemandLine[];
  readonly catalogue: Catalogue;
  readonly supply: Pick<SupplyRows, 'suppliers' | 'offers' | 'pins'>;
  readonly planOf: (car: CarId) => PlanDocument | null;
  readonly today: Day;
  /** Weekdays on which nothing comes in. */
  readonly shut: readonly number[];
  /** Days in hand between arrival and need: goods are unpacked, looked at, put away. */
  readonly buffer: number;
}

/** What is needed of an item by one day; of no car where it only fills the shelf up to its minimum. */
export interface WeekGroup {
  readonly line: string;
  readonly item: Key;
  readonly by: Day | null;
  readonly cars: readonly { readonly car: CarId; readonly quantity: Exact }[];
  readonly quantity: Exact;
  /** What this adds to the whole of the item, in the problem's steps. */
  readonly steps: number;
  /** The last day on which it can be ordered from somebody and still be here in time; null = none is left, or no day asks. */
  readonly orderBy: Day | null;
  /** The shelf lacks it only once what can wait has been taken from it. */
  readonly isForLater: boolean;
}

export interface Week {
  readonly problem: OrderProblem;
  /** Every need that is in it. */
  readonly groups: readonly WeekGroup[];
  /** What can wait, and comes with a later order. */
  readonly later: readonly WeekGroup[];
  /** Nobody offers it, nor anything that may come in its place. */
  readonly unoffered: readonly DemandLine[];
  /** How many steps of the problem one of its unit is; 1 but for what is measured. */
  readonly stepsOf: ReadonlyMap<Key, number>;
}

const MS = 86_400_000;
export const dayNumber = (day: Day): number => Date.parse(`${day}T00:00:00Z`) / MS;
export const dayFrom = (number: number): Day => new Date(number * MS).toISOString().slice(0, 10);

export const weekOf = (ask: WeekAsk): Week => {
  const { demand, supply, today, shut } = ask;
  const offers = Object.values(supply.offers).filter(
    ({ ended, supplier }) => !ended && supply.suppliers[supplier] !== undefined,
  );
  const sellersOf = new Map<Key, Set<string>>();
  for (const { item, supplier } of offers)
    sellersOf.set(item, (sellersOf.get(item) ?? new Set()).add(supplier));

  const short = demand.filter(({ demand: open }) => compare(open, ZERO) > 0);
  const stepsOf = new Map(short.map(({ item }) => [item, stepsFor(item, short, offers)]));
  const chosen: { readonly group: WeekGroup; readonly substitutes: readonly Key[] }[] = [];
  const later: WeekGroup[] = [];
  const unoffered: DemandLine[] = [];
  for (const line of short) {
    const pin = supply.pins[line.item]?.pin ?? null;
    const isWanted = pin !== null && (pin.buyToday || pin.quantity !== null);
    const shelf = shelfNow(line, [...(sellersOf.get(line.item) ?? [])], ask);
    const groups = groupsOf(line, stepsOf.get(line.item) ?? 1, shelf).map((each) => {
      const substitutes = substitutesFor(each, line, ask).filter((item) => sellersOf.has(item));
      const all = [line.item, ...substitutes].flatMap((item) => [...(sellersOf.get(item) ?? [])]);
      const sellers = [...new Set(all)];
      return { group: { ...each, orderBy: orderByOf(each, sellers, ask) }, substitutes, sellers };
    });
    if (groups.every(({ sellers }) => sellers.length === 0)) unoffered.push(line);
    else
      for (const { group, substitutes, sellers } of groups)
        if (isWanted || (!group.isForLater && !canWait(group, sellers, ask)))
          chosen.push({ group, substitutes });
        else later.push(group);
  }

  const lines = chosen.flatMap(({ group, substitutes }) =>
    group.steps === 0 ? [] : [orderLine(group, substitutes, ask)],
  );
  const items = new Set(lines.flatMap(({ item, substitutes }) => [item, ...substitutes]));
  const problem: OrderProblem = {
    today: dayNumber(today),
    shut,
    lines,
    offers: offers.filter(({ item }) => items.has(item)).map((offer) => orderOffer(offer, stepsOf)),
    suppliers: sellersIn(supply),
    pins: pinsOf(lines, supply.pins, stepsOf),
  };
  return { problem, groups: chosen.map(({ group }) => group), later, unoffered, stepsOf };
};

const sellersIn = ({ suppliers }: WeekAsk['supply']): readonly Supplier[] =>
  Object.values(suppliers).map(({ id, orderDays, takesToday, lead, minimumValue, freight }) => ({
    key: id,
    orderDays,
    takesToday,
    lead,
    minimumValue,
    freight,
  }));

// ---- when ----

const WEEK = 7;

type Dated = Pick<WeekGroup, 'by'>;

/**
 * Whether each of those who sell it could still bring it in time with the order after this one: what would leave only
 * some of them is ordered now, while all can be chosen from.
 */
const canWait = ({ by }: Dated, sellers: readonly string[], ask: WeekAsk): boolean => {
  if (by === null) return false;
  const need = dayNumber(by) - ask.buffer;
  return sellersIn(ask.supply)
    .filter(({ key }) => sellers.includes(key))
    .every((supplier) => {
      const [shipment] = shipmentsOf({ suppliers: [supplier], today: dayNumber(ask.today) }).toReversed();
      const now = shipment?.ordered ?? dayNumber(ask.today);
      const next = orderDayFrom(supplier, now + 1) ?? now + WEEK;
      return arrivalOf(next, supplier.lead, ask.shut) <= need;
    });
};

const orderByOf = ({ by }: Dated, sellers: readonly string[], ask: WeekAsk): Day | null => {
  if (by === null) return null;
  const need = dayNumber(by) - ask.buffer;
  const days = sellersIn(ask.supply)
    .filter(({ key }) => sellers.includes(key))
    .flatMap((supplier) => lastOrderDay(supplier, dayNumber(ask.today), need, ask.shut) ?? []);
  return days.length === 0 ? null : dayFrom(Math.max(...days));
};

/** What the shelf lacks of its minimum now: what lies there, or comes, for needs that can wait is still on it. */
const shelfNow = (
  { minimum, left, allocations, short, demand }: DemandLine,
  sellers: readonly string[],
  ask: WeekAsk,
): Exact => {
  const kept = allocations
    .filter((each) => canWait(each, sellers, ask))
    .reduce((sum, { quantity }) => add(sum, quantity), left);
  const lacking = subtract(minimum, kept);
  const asked = short.reduce((sum, { quantity }) => subtract(sum, quantity), demand);
  if (compare(lacking, ZERO) <= 0) return ZERO;
  return compare(lacking, asked) < 0 ? lacking : asked;
};

// ---- how many ----

const whole = (value: Exact): number => Number((value.num + value.den - 1n) / value.den);

/** Before its sellers have been looked at. */
type Undated = Omit<WeekGroup, 'orderBy'>;

/** By day, and the shelf last. The sum is rounded up once: each group has what it adds to the sum so far. */
const groupsOf = ({ item, short, demand }: DemandLine, steps: number, shelf: Exact): readonly Undated[] => {
  const scale = exact(steps);
  const days = new Map<Day, { car: CarId; quantity: Exact }[]>();
  for (const { car, by, quantity } of short) days.set(by, [...(days.get(by) ?? []), { car, quantity }]);
  let [sum, counted] = [ZERO, 0];
  const group = (of: Omit<Undated, 'line' | 'item' | 'steps'>, name: string): Undated => {
    sum = add(sum, of.quantity);
    const upTo = whole(multiply(sum, scale));
    const added = upTo - counted;
    counted = upTo;
    return { ...of, line: `${item}@${name}`, item, steps: added };
  };
  const needed = [...days].map(([by, cars]) => {
    const quantity = cars.reduce((total, each) => add(total, each.quantity), ZERO);
    return group({ by, cars, quantity, isForLater: false }, by);
  });
  const onShelf = [
    { quantity: shelf, isForLater: false, name: 'shelf' },
    { quantity: subtract(subtract(demand, sum), shelf), isForLater: true, name: 'shelf later' },
  ].flatMap(({ name, ...each }) =>
    compare(each.quantity, ZERO) > 0 ? [group({ by: null, cars: [], ...each }, name)] : [],
  );
  return [...needed, ...onShelf];
};

/** Finer than this nothing is measured or sold. */
const FINEST = 1000n;

/** So that every pack, and every need that ends, is a whole number of steps. */
const stepsFor = (item: Key, demand: readonly DemandLine[], offers: readonly OfferRow[]): number => {
  const packs = offers.filter((offer) => offer.item === item).map(({ packSize }) => sizeOf(packSize));
  // What is sold in whole pieces is counted in them, whatever share of one is needed.
  if (packs.every(({ den }) => den === 1n) && isInPieces(item, demand)) return 1;
  const needs = demand
    .filter((line) => line.item === item)
    .flatMap(({ short, demand: all }) => [all, ...short.map(({ quantity }) => quantity)]);
  const common = (values: readonly Exact[], from: bigint): bigint =>
    values.reduce((sum, { den }) => (lcm(sum, den) <= FINEST ? lcm(sum, den) : sum), from);
  const ofPacks = packs.reduce((sum, { den }) => lcm(sum, den), 1n);
  return Number(common(needs, ofPacks));
};

const isInPieces = (item: Key, demand: readonly DemandLine[]): boolean =>
  demand.every((line) => line.item !== item || isCounted(line.unit));

const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? a : gcd(b, a % b));
const lcm = (a: bigint, b: bigint): bigint => (a / gcd(a, b)) * b;
const sizeOf = (text: string): Exact => parseDecimal(text) ?? ONE;

// ---- the problem's own words ----

/** Of no car: nobody waits for it, so that it is never late. */
const ANY_DAY = 3650;

const orderLine = (
  { line, item, by, cars, steps }: WeekGroup,
  substitutes: readonly Key[],
  ask: WeekAsk,
): OrderLine => ({
  key: line,
  item,
  quantity: steps,
  needBy: by === null ? dayNumber(ask.today) + ANY_DAY : dayNumber(by),
  cars: [...new Set(cars.map(({ car }) => car))],
  substitutes,
});

const orderOffer = (
  { id, supplier, item, packSize, steps, weight }: OfferRow,
  stepsOf: ReadonlyMap<Key, number>,
): Offer => ({
  key: id,
  supplier,
  item,
  packSize: whole(multiply(sizeOf(packSize), exact(stepsOf.get(item) ?? 1))),
  steps,
  weight,
});
