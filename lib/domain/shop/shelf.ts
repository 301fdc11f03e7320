/** What lies on the shelf as supply: lots, and bulk by its item; what is kept apart or has gone off lies there too, and is not good. */
import { ZERO, add, compare, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Day, Key, LotId } from '@/lib/domain/base/vocabulary';
import type { Catalogue } from './item';
import { lastGoodDay, lotState } from './lot-state';
import { binOf } from './rows';
import type { Shop } from './rows';
import { foundBeyond, onHand } from './stock';
import type { Stock, StockRow } from './stock';
import type { Supply } from './supply';

export interface OnShelf {
  readonly supply: Supply;
  readonly isGood: boolean;
}

/** Earliest received first. What went without a word from which lot is taken off the item's lots, the oldest first. */
export const shelfOf = (
  shop: Pick<Shop, 'lots'>,
  stock: Stock,
  catalogue: Catalogue,
  today: Day,
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
  for (const { row, lot } of lots.toSorted((a, b) => (a.lot.receivedAt < b.lot.receivedAt ? -1 : 1))) {
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
          source: { kind: 'lot', lot: lot.id },
          goodUntil: lastGoodDay(lot, shelf),
        },
        isGood,
      });
  }
  return found;
};

const common = (row: StockRow): Pick<Supply, 'item' | 'quantity' | 'onlyFor'> => ({
  item: row.item,
  quantity: onHand(row),
  onlyFor: null,
});

export interface Reach {
  readonly bin: string | null;
  /** The one to take; null for bulk, or where none is there. */
  readonly lot: LotId | null;
  /** All that is good, from whichever lot. */
  readonly good: Exact;
}

/** Where to reach for it: what goes off first is taken first, then what came first. */
export const reachFor = (shop: Pick<Shop, 'bins' | 'lots'>, shelf: readonly OnShelf[], item: Key): Reach => {
  const good = shelf.flatMap(({ supply, isGood }) => (isGood && supply.item === item ? [supply] : []));
  const [first] = good.toSorted((a, b) => lastDay(a).localeCompare(lastDay(b)));
  const lot = first?.source.kind === 'lot' ? first.source.lot : null;
  return {
    bin: binOf(shop, item, lot),
    lot,
    good: good.reduce((sum, { quantity }) => add(sum, quantity), ZERO),
  };
};

const lastDay = ({ goodUntil }: Supply): Day => goodUntil ?? '9999-12-31';
