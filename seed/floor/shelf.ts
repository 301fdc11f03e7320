/** What lies in the bins over these weeks. Quantities and bins are invented: enough for some cars, never for all. */
import { add, compare, exact, multiply, subtract, toNumber, ZERO } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Key } from '@/lib/domain/base/vocabulary';
import type { ShopClaim } from '@/lib/domain/commands';
import { compilePlan } from '@/lib/domain/plan/compile';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { workNeedsOf } from '@/lib/domain/shop/need-work';
import { foundBeyond, onHand, stockText } from '@/lib/domain/shop/stock';
import { isCounted } from '@/lib/domain/shop/item';
import type { World } from '@/lib/domain/world';

/** What one car takes of everything, whatever it chooses. */
const perCar = (document: PlanDocument): ReadonlyMap<Key, Exact> => {
  const plan = compilePlan(document, {});
  const found = new Map<Key, Exact>();
  const take = (item: Key, quantity: Exact): void => {
    found.set(item, add(found.get(item) ?? ZERO, quantity));
  };
  for (const { hardware } of plan.all.joints)
    for (const { item, quantity } of hardware) take(item, exact(quantity));
  for (const { key } of plan.all.operations)
    for (const { item, quantity } of workNeedsOf(plan).uses.get(key) ?? []) take(item, quantity);
  return found;
};

/** For how many cars was bought: four to six, by place in the catalogue, so that what runs short now is a mixed lot. */
const CARS = [5, 4, 6, 5, 4, 6, 4];

/** What was bought of an item when the books were opened. */
export const bought = (document: PlanDocument): ((item: Key) => string) => {
  const each = perCar(document);
  const items = Object.keys(document.items ?? {});
  return (item) => {
    const cars = exact(CARS[items.indexOf(item) % CARS.length] ?? 5);
    const quantity = toNumber(multiply(each.get(item) ?? exact(2), cars));
    const unit = document.items?.[item]?.unit ?? 'pc';
    const step = isCounted(unit) && quantity > 20 ? 10 : 1;
    return String(Math.ceil(quantity / step) * step);
  };
};

const LETTERS = 'ABCDFHKM';

/** Bins in the order of the catalogue, eight to a rack. */
export const bins = (document: PlanDocument): ShopClaim => ({
  type: 'put-away',
  places: Object.keys(document.items ?? {}).map((item, index) => ({
    item,
    bin: `${String(1 + Math.floor(index / LETTERS.length)).padStart(2, '0')}${LETTERS[index % LETTERS.length] ?? 'A'}`,
  })),
});

/** Bulk on the first morning. */
export const firstBulk = (document: PlanDocument): ShopClaim => {
  const of = bought(document);
  const bulk = Object.entries(document.items ?? {}).filter(([, { trace }]) => trace !== 'lot');
  return { type: 'receive-stock', goods: bulk.map(([item]) => ({ item, quantity: of(item) })) };
};

/** Bins that the last count finds emptier than the books. */
const FEWER: Readonly<Record<Key, number>> = { 'WH-M10': 6, 'W-M8': 10, 'SP-3.2x32': 4, 'TW-200': 20 };

/**
 * The stocktake: what went without a word from which lot is taken off the lots now, and what was found is no longer asked
 * about. `world`: as the books stand.
 */
export const stocktake = ({ shop, stock }: World): ShopClaim => {
  const unsaid = new Map<Key, Exact>();
  for (const row of Object.values(stock))
    if (row.lot === null && compare(foundBeyond(row), ZERO) > 0) unsaid.set(row.item, foundBeyond(row));
  const counts = Object.values(stock).flatMap((row) => {
    const { item, lot } = row;
    if (lot === null) {
      const fewer = exact(FEWER[item] ?? 0);
      if (!unsaid.has(item) && fewer.num === 0n) return [];
      return [{ item, counted: stockText(most(ZERO, subtract(onHand(row), fewer))) }];
    }
    const owed = unsaid.get(item);
    if (owed === undefined || shop.lots[lot]?.quarantined !== null) return [];
    const left = most(ZERO, subtract(onHand(row), owed));
    unsaid.set(item, subtract(owed, subtract(onHand(row), left)));
    return [{ item, lot, counted: stockText(left) }];
  });
  return { type: 'count-stock', counts };
};

const most = (a: Exact, b: Exact): Exact => (compare(a, b) >= 0 ? a : b);
