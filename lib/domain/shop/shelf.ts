/** What lies on the shelf as supply: lots, and bulk by its item; what is kept apart or has gone off lies there too, and is not good. */
import { ZERO, add, compare, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Day, Key, LotId } from '@/lib/domain/base/vocabulary';
import { asideFor } from '@/lib/domain/car/hardware';
import type { Catalogue } from './item';
import { lastGoodDay, lotState } from './lot-state';
import { binOf } from './rows';
import type { Shop } from './rows';
import { foundBeyond, onHand, quantityOf } from './stock';
import type { Drawn, Stock, StockRow } from './stock';
import type { Supply } from './supply';

export interface OnShelf {
  readonly supply: Supply;
  readonly isGood: boolean;
  /** In the box of a kit. */
  readonly isBoxed?: true;
}

/** Of what lies there, so much is in the box of a car's kit. */
export interface Boxed extends Drawn {
  readonly car: CarId;
}

/** Earliest received first. What went without a word from which lot is taken off the item's lots, the oldest first. */
export const shelfOf = (
  shop: Pick<Shop, 'lots'>,
  stock: Stock,
  catalogue: Catalogue,
  today: Day,
  boxed: readonly Boxed[] = [],
): readonly OnShelf[] => {
  const unsaid = new Map<Key, Exact>();
  const found: OnShelf[] = [];
  for (const row of Object.values(stock)) {
    if (row.lot !== null) continue;
    if (compare(foundBeyond(row), ZERO) > 0) unsaid.set(row.item, foundBeyond(row));
    if (compare(onHand(row), ZERO) > 0)
      found.push({ supply: { ...common(row), source: { kind: 'bulk' }, goodUntil: null }, isGood: true });
  }
  const lots = Object.values(stock).flatMap((row) => {
    const lot = row.lot === null ? undefined : shop.lots[row.lot];
    return lot === undefined ? [] : [{ row, lot }];
  });
  // What is put aside for a car is the last that somebody took without a word.
  const order = ({ lot }: (typeof lots)[number]): string =>
    `${asideFor(lot) === null ? '0' : '1'}${lot.receivedAt}`;
  for (const { row, lot } of lots.toSorted((a, b) => (order(a) < order(b) ? -1 : 1))) {
    const shelf = catalogue[row.item]?.shelf ?? null;
    const isGood = lotState(lot, shelf, today).state === 'good';
    const { quantity } = common(row);
    const owed = isGood ? (unsaid.get(row.item) ?? ZERO) : ZERO;
    const taken = compare(owed, quantity) < 0 ? owed : quantity;
    if (isGood) unsaid.set(row.item, subtract(owed, taken));
    const left = subtract(quantity, taken);
    if (compare(left, ZERO) > 0)
      found.push({
        supply: {
          ...common(row),
          quantity: left,
          source:
            lot.donor === undefined
              ? { kind: 'lot', lot: lot.id }
              : { kind: 'donor', lot: lot.id, car: lot.donor.car },
          onlyFor: asideFor(lot),
          goodUntil: lastGoodDay(lot, shelf),
        },
        isGood,
      });
  }
  return boxed.reduce(putAside, found);
};

/**
 * The same goods in all, some of them for one car only. Of the place that they came from first; where nobody said which lot,
 * of any of that item. A box can hold no more than the books have: what is beyond that was found.
 */
const putAside = (shelf: readonly OnShelf[], { car, item, lot, quantity }: Boxed): readonly OnShelf[] => {
  const isSame = ({ supply }: OnShelf): boolean => lotOf(supply) === lot;
  const mayBe = shelf.filter(
    (each) =>
      each.supply.item === item &&
      each.isBoxed !== true &&
      (each.supply.onlyFor ?? car) === car &&
      (lot === null || isSame(each)),
  );
  const rank = (each: OnShelf): number => 2 * Number(isSame(each)) + Number(each.isGood);
  const parts = new Map<OnShelf, Exact>();
  let open = quantityOf(quantity);
  for (const each of mayBe.toSorted((a, b) => rank(b) - rank(a))) {
    const part = compare(each.supply.quantity, open) < 0 ? each.supply.quantity : open;
    open = subtract(open, part);
    if (compare(part, ZERO) > 0) parts.set(each, part);
  }
  return shelf.flatMap((each) => {
    const part = parts.get(each);
    if (part === undefined) return [each];
    const rest = subtract(each.supply.quantity, part);
    const supply = { ...each.supply, quantity: part, onlyFor: car };
    const aside: OnShelf = { ...each, supply, isBoxed: true };
    return compare(rest, ZERO) > 0
      ? [{ ...each, supply: { ...each.supply, quantity: rest } }, aside]
      : [aside];
  });
};

/** The lot that it lies there as; null for bulk. */
export const lotOf = ({ source }: Pick<Supply, 'source'>): LotId | null =>
  'lot' in source ? source.lot : null;

const common = (row: StockRow): Pick<Supply, 'item' | 'quantity' | 'onlyFor'> => ({
  item: row.item,
  quantity: onHand(row),
  onlyFor: null,
});

export interface Reach {
  readonly bin: string | null;
  /** The one to take; null for bulk, or where none is there. */
  readonly lot: LotId | null;
  /** All that is good for this car and in nobody's box, from whichever lot. */
  readonly good: Exact;
}

/**
 * What of an item is good and in nobody's box, in the order to take it: for a car what came off its own donor, then what
 * goes off first, then what came first. `car`: null = for whichever car.
 */
export const openOf = (shelf: readonly OnShelf[], item: Key, car: CarId | null = null): readonly Supply[] =>
  shelf
    .flatMap(({ supply, isGood, isBoxed }) =>
      isGood && isBoxed !== true && supply.item === item && (supply.onlyFor ?? car) === car ? [supply] : [],
    )
    .toSorted((a, b) => Number(isOwn(b)) - Number(isOwn(a)) || lastDay(a).localeCompare(lastDay(b)));

const isOwn = ({ onlyFor }: Supply): boolean => onlyFor !== null;

/** Where to reach for it. */
export const reachFor = (
  shop: Pick<Shop, 'bins' | 'lots'>,
  shelf: readonly OnShelf[],
  item: Key,
  car: CarId | null = null,
): Reach => {
  const good = openOf(shelf, item, car);
  const [first] = good;
  const lot = first === undefined ? null : lotOf(first);
  return {
    bin: binOf(shop, item, lot),
    lot,
    good: good.reduce((sum, { quantity }) => add(sum, quantity), ZERO),
  };
};

const lastDay = ({ goodUntil }: Supply): Day => goodUntil ?? '9999-12-31';
