/** Orders as they were approved: frozen, whatever is needed or offered later. */
import { ONE, exact, multiply, parseDecimal } from '@/lib/domain/base/exact';
import type { Day, Instant, Key, PersonId } from '@/lib/domain/base/vocabulary';
import type { Supply } from './supply';

export interface PurchaseRow {
  /** `PO-7`. */
  readonly id: string;
  readonly supplier: string;
  readonly ordered: Day;
  /** When it is to come, by the supplier's terms of that day. */
  readonly due: Day;
  readonly lines: readonly PurchaseLine[];
  readonly goods: number;
  readonly freight: number;
  readonly by: PersonId;
  readonly at: Instant;
  /** Why it was not sent after all; null = it stands. */
  readonly cancelled: string | null;
}

export interface PurchaseLine {
  readonly offer: string;
  readonly item: Key;
  readonly packs: number;
  /** Decimal text, in the item's unit. */
  readonly packSize: string;
  /** Of one pack. */
  readonly price: number;
  readonly number: string | null;
}

export type Purchases = Readonly<Record<string, PurchaseRow>>;

/** What is on its way: it covers needs as what is there does, and says when it comes. */
export const comingFrom = (orders: Purchases): readonly Supply[] =>
  Object.values(orders)
    .filter(({ cancelled }) => cancelled === null)
    .flatMap(({ id, due, lines }) =>
      lines.map(({ item, packs, packSize }) => ({
        item,
        quantity: multiply(exact(packs), parseDecimal(packSize) ?? ONE),
        source: { kind: 'order', order: id, due },
        goodUntil: null,
        onlyFor: null,
      })),
    );

/** `PO-8` after `PO-7`: none is ever taken out. */
export const nextPurchase = (orders: Purchases, ahead = 0): string =>
  `PO-${String(Object.keys(orders).length + 1 + ahead)}`;
