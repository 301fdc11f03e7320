/** A bin that gave no more: what that says of every place of the item. */
import { ZERO, add, compare } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Day, Key, LotId } from '@/lib/domain/base/vocabulary';
import type { Catalogue } from './item';
import type { Shop } from './rows';
import { lotOf, openOf, shelfOf } from './shelf';
import type { Boxed, OnShelf } from './shelf';
import { EMPTY_PLACE, foundBeyond, quantityOf, recount, stockKey, withChange } from './stock';
import type { Drawn, Recount, Stock } from './stock';

/** What the books have, and what of it lies in boxes. */
export interface Books {
  readonly shop: Pick<Shop, 'lots'>;
  readonly stock: Stock;
  readonly catalogue: Catalogue;
  readonly boxes: readonly Boxed[];
  readonly today: Day;
}

/**
 * Of each place that the books still have something in for this car, there is as much as lies in boxes, what was just picked from
 * it among that. What went without a word from which lot is accounted for by it too. What is kept apart or has gone off lies
 * elsewhere, and nobody looked at it.
 */
export const binDown = (
  { shop, stock, catalogue, boxes, today }: Books,
  car: CarId,
  item: Key,
  picked: readonly Drawn[],
): readonly Recount[] => {
  const unsaid = { item, lot: null };
  const found = foundBeyond(stock[stockKey(unsaid)] ?? EMPTY_PLACE);
  // Each lot as its own row has it: what went unsaid is not taken off them as well.
  const settled = withChange(stock, { ...unsaid, came: found, went: ZERO, counted: null });
  const shelf = shelfOf(shop, settled, catalogue, today, boxes);
  const lots = new Set<LotId | null>(openOf(shelf, item, car).map(lotOf));
  if (compare(found, ZERO) > 0) lots.add(null);
  return [...lots].map((lot) => {
    const place = { item, lot };
    const there = add(asideOf(shelf, item, lot), pickedFrom(picked, item, lot));
    return recount(place, stock[stockKey(place)] ?? EMPTY_PLACE, there);
  });
};

const asideOf = (shelf: readonly OnShelf[], item: Key, lot: LotId | null): Exact =>
  shelf.reduce(
    (sum, { supply, isBoxed }) =>
      supply.item === item && isBoxed === true && lotOf(supply) === lot ? add(sum, supply.quantity) : sum,
    ZERO,
  );

const pickedFrom = (picked: readonly Drawn[], item: Key, lot: LotId | null): Exact =>
  picked.reduce(
    (sum, line) => (line.item === item && line.lot === lot ? add(sum, quantityOf(line.quantity)) : sum),
    ZERO,
  );
