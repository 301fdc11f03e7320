/**
 * What one of an item cost, and how that is known: by its lot, by what was last paid for it, by the cheapest offer. An order's
 * freight goes over its lines by value, and so does money that came back for what was kept.
 */
import { ZERO, add, atLeastNone, compare, divide, exact, multiply, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { sumOf } from '@/lib/domain/base/shares';
import type { Instant, Key, LotId } from '@/lib/domain/base/vocabulary';
import type { Catalogue } from './item';
import type { OfferRow, SupplyRows } from './offer-rows';
import { orderedOf } from './purchase-rows';
import type { PurchaseLine, PurchaseOrder } from './purchase-rows';
import type { Lot } from './rows';
import { quantityOf } from './stock';

export type PriceBasis = 'lot' | 'paid' | 'offer';

/** Of one unit, in the smallest unit of money. */
export interface UnitPrice {
  readonly basis: PriceBasis;
  readonly goods: Exact;
  /** Its share of what the order was carried for; of an offer nobody knows it. */
  readonly freight: Exact;
}

export interface PriceRows extends Pick<SupplyRows, 'orders' | 'offers'> {
  readonly lots: Readonly<Record<LotId, Lot>>;
  readonly catalogue: Catalogue;
}

/** `at`: as it was known then; null = now. Null where nobody ever said a price. */
export type PriceOf = (item: Key, lot: LotId | null, at: Instant | null) => UnitPrice | null;

interface Paid {
  readonly at: Instant;
  readonly price: UnitPrice;
}

/** The books of prices, read once for many questions. */
export const pricesOf = ({ lots, orders, offers, catalogue }: PriceRows): PriceOf => {
  const paid = new Map<Key, Paid[]>();
  const ofLot = new Map<LotId, UnitPrice>();
  for (const order of Object.values(orders).sort((a, b) => (a.approvedAt < b.approvedAt ? -1 : 1)))
    for (const line of order.lines) {
      const price = landed(order, unitOf(line));
      paid.set(line.item, [...(paid.get(line.item) ?? []), { at: order.approvedAt, price }]);
      for (const lot of line.lots) ofLot.set(lot, { ...price, basis: 'lot' });
    }
  const offered = cheapest(Object.values(offers));
  const asParts = new Map(
    Object.values(catalogue).flatMap(({ key, isPart }) => (isPart === null ? [] : [[isPart, key] as const])),
  );
  const named = (item: Key, at: Instant | null): UnitPrice | null => {
    const list = paid.get(item) ?? [];
    // What was paid only later is still nearer to it than what somebody asks.
    const then = at === null ? list.at(-1) : (list.findLast((each) => each.at <= at) ?? list[0]);
    return then?.price ?? offered.get(item) ?? null;
  };
  return (item, lot, at) => {
    const own = lot === null ? null : (ofLot.get(lot) ?? saidBy(lots[lot]));
    const part = asParts.get(item);
    return own ?? named(item, at) ?? (part === undefined ? null : named(part, at));
  };
};

/** A lot that carries a cost of its own and stands in no order. */
const saidBy = (lot: Lot | undefined): UnitPrice | null =>
  lot?.cost === undefined ? null : { basis: 'lot', goods: quantityOf(lot.cost), freight: ZERO };

const unitOf = ({ price, packSize }: PurchaseLine): Exact =>
  divide(exact(price), quantityOf(packSize)) ?? ZERO;

/** What stays of a line's value: all that was ordered, more where more came, or only what came where the rest was given up. */
const keptValue = (line: PurchaseLine): Exact => {
  const [asked, good] = [orderedOf(line), quantityOf(line.good)];
  return multiply(unitOf(line), line.ended === null && compare(asked, good) > 0 ? asked : good);
};

const landed = (order: PurchaseOrder, unit: Exact): UnitPrice => {
  const kept = sumOf(order.lines.map(keptValue));
  // What came back for goods that never came makes the others no cheaper.
  const givenUp = subtract(exact(order.goods), kept);
  // A deposit was never part of the price, and comes back for something else.
  const credits = order.credits.filter(({ isDeposit }) => isDeposit !== true);
  const back = atLeastNone(
    subtract(
      credits.reduce((sum, { money }) => add(sum, exact(money)), ZERO),
      atLeastNone(givenUp),
    ),
  );
  const share = divide(unit, kept) ?? ZERO;
  return {
    basis: 'paid',
    goods: subtract(unit, multiply(back, share)),
    freight: multiply(exact(order.freight), share),
  };
};

/** By item: what one costs at the fewest packs that are sold, with whoever asks least. */
const cheapest = (offers: readonly OfferRow[]): ReadonlyMap<Key, UnitPrice> => {
  const found = new Map<Key, UnitPrice>();
  for (const { item, packSize, steps, ended } of offers) {
    const [first] = steps;
    const goods = first === undefined || ended ? null : divide(exact(first.price), quantityOf(packSize));
    const before = found.get(item);
    if (goods === null || (before !== undefined && compare(before.goods, goods) <= 0)) continue;
    found.set(item, { basis: 'offer', goods, freight: ZERO });
  }
  return found;
};
